/** Changes of a tariff that keep it whole: every minute of every day has one price. */
import type { PadTariff } from '#pad/document/schema.ts';
import { replaced, without } from './lists.ts';

export type Season = PadTariff['seasons'][number];
export type DayType = Season['dayTypes'][number];
export type Band = DayType['bands'][number];

const minutesPerDay = 1440;
const everyDay = [0, 1, 2, 3, 4, 5, 6] as const;

/** Whether one price holds all the time, so that one field says it all. */
export function isFlat({ seasons, holidays }: PadTariff): boolean {
  const dayTypes = seasons.flatMap((season) => season.dayTypes);
  const bands = dayTypes.flatMap((dayType) => dayType.bands);
  return seasons.length <= 1 && dayTypes.length <= 1 && bands.length <= 1 && holidays.length === 0;
}

/** The first price there is; null when none is. */
export function firstPrice({ seasons }: PadTariff): number | null {
  return seasons[0]?.dayTypes[0]?.bands[0]?.price ?? null;
}

/** The tariff with one price all year. */
export function flatTariff(tariff: PadTariff, price: number | null): PadTariff {
  const bands = [{ start: 0, end: 0, name: '', price }];
  const dayTypes = [{ id: 'every-day', name: 'Every day', weekdays: [...everyDay], bands }];
  const seasons = [
    { id: 'year', name: 'All year', from: { month: 1, day: 1 }, to: null, dayTypes },
  ];
  return { ...tariff, seasons, holidays: [] };
}

/** Minutes from one time of day round to another; a whole day when they are the same. */
export function spanLength(start: number, end: number): number {
  return (end - start + minutesPerDay) % minutesPerDay || minutesPerDay;
}

/**
 * The bands with one edge moved. A neighbour that met it at that edge moves along, so that no gap
 * and no overlap opens.
 */
export function withEdge(
  bands: readonly Band[],
  at: number,
  edge: 'start' | 'end',
  minute: number,
): readonly Band[] {
  const before = bands[at]?.[edge];
  const other = edge === 'start' ? 'end' : 'start';
  return bands.map((band, place) => {
    if (place === at) {
      // A single band that lasts all day has no neighbour but itself.
      return bands.length === 1
        ? { ...band, start: minute, end: minute }
        : { ...band, [edge]: minute };
    }
    return band[other] === before ? { ...band, [other]: minute } : band;
  });
}

/** The bands with the longest cut in two, at a full hour. */
export function withOneMore(bands: readonly Band[]): readonly Band[] {
  const lengths = bands.map(({ start, end }) => spanLength(start, end));
  const at = lengths.indexOf(Math.max(...lengths));
  const band = bands[at];
  if (band === undefined) return [{ start: 0, end: 0, name: '', price: null }];
  const half = Math.max(Math.round((lengths[at] ?? 0) / 120) * 60, 30);
  const middle = (band.start + half) % minutesPerDay;
  return [
    ...bands.slice(0, at),
    { ...band, end: middle },
    { ...band, start: middle, name: '' },
    ...bands.slice(at + 1),
  ];
}

/** The bands without one; the one before it in the day takes over its time. */
export function withoutBand(bands: readonly Band[], at: number): readonly Band[] {
  const gone = bands[at];
  if (gone === undefined) return bands;
  const rest = without(bands, at);
  return rest.map((band) => (band.end === gone.start ? { ...band, end: gone.end } : band));
}

/** The kinds of day with a day of the week given to one of them and taken from the others. */
export function withWeekday(
  dayTypes: readonly DayType[],
  at: number,
  weekday: number,
): readonly DayType[] {
  return dayTypes.map((dayType, place) => {
    const others = dayType.weekdays.filter((each) => each !== weekday);
    return { ...dayType, weekdays: place === at ? [...others, weekday].toSorted() : others };
  });
}

const weekend = [0, 6];

/** The kinds of day with one more, which takes Saturdays and Sundays and starts with the same prices. */
export function withDayType(dayTypes: readonly DayType[], id: string): readonly DayType[] {
  const bands = dayTypes[0]?.bands ?? withOneMore([]);
  const isFirst = dayTypes.length === 0;
  const weekdays = isFirst ? [...everyDay] : dayTypes.length === 1 ? weekend : [];
  const others = dayTypes.map((dayType) => ({
    ...dayType,
    weekdays: dayType.weekdays.filter((day) => !weekdays.includes(day)),
  }));
  const name = isFirst ? 'Every day' : dayTypes.length === 1 ? 'Weekend' : '';
  return [...others, { id, name, weekdays, bands }];
}

/** The kinds of day without one; the first that stays takes over its days of the week. */
export function withoutDayType(dayTypes: readonly DayType[], at: number): readonly DayType[] {
  const gone = dayTypes[at];
  const [first, ...others] = without(dayTypes, at);
  if (gone === undefined || first === undefined) return without(dayTypes, at);
  return [{ ...first, weekdays: [...first.weekdays, ...gone.weekdays].toSorted() }, ...others];
}

/**
 * The seasons with one more, half a year after the last and with its prices. Each then lasts until
 * the next begins, so that the year is covered once.
 */
export function withSeason(seasons: readonly Season[], id: string): readonly Season[] {
  const last = seasons.at(-1);
  const month = last === undefined ? 1 : ((last.from.month + 5) % 12) + 1;
  const dayTypes = last?.dayTypes ?? withDayType([], 'every-day');
  const added: Season = {
    id,
    name: '',
    from: { month, day: 1 },
    to: null,
    dayTypes: dayTypes as Season['dayTypes'],
  };
  return [...seasons.map((season) => ({ ...season, to: null })), added];
}

/** The seasons without one; those that stay last until the next begins. */
export function withoutSeason(seasons: readonly Season[], at: number): readonly Season[] {
  return without(seasons, at).map((season) => ({ ...season, to: null }));
}

/** One season or kind of day changed. */
export function changed<T>(list: readonly T[], at: number, update: (item: T) => T): readonly T[] {
  const item = list[at];
  return item === undefined ? list : replaced(list, at, update(item));
}
