import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { type Block, blockAt, usualThreeBlockDay } from '#core/day/day.ts';
import {
  type DayReport,
  dayReport,
  type FlowLimit,
  type QuietHours,
  type RunningPoint,
  type ServiceNeed,
} from '#core/day/dayReport.ts';
import { type DayPrice, priceDay } from '#core/tariff/pricing.ts';
import { priceAt, ruleOn, type Tariff } from '#core/tariff/tariff.ts';
import { type CalendarDate, nextDay } from '#core/time/calendar.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';

/** One speed the reader may give an hour. */
export interface Setting {
  /** [rpm] */
  readonly speed: number;
  /** Speed over reference speed [-]. */
  readonly ratio: number;
  readonly point: RunningPoint;
}

export type HuntNeed = ServiceNeed & { readonly name: string };
export type HuntLimit = FlowLimit & { readonly name: string };

/** All that a day is hunted on: plain data, so that a page can carry it. */
export interface HuntPlace {
  /** One to three, from slow to fast. */
  readonly settings: readonly Setting[];
  readonly needs: readonly HuntNeed[];
  readonly limits: readonly HuntLimit[];
  readonly quiet: readonly QuietHours[];
  /** Water in the pool [m3]. */
  readonly volume: number;
  /** Turnovers wanted [-]; none when null. */
  readonly turnovers: number | null;
  readonly tariff: Tariff;
  /** Year whose calendar tells the kinds of day apart. */
  readonly year: number;
  /** Draw while the pump is stopped [W]; none when left out. */
  readonly standbyPower?: number | undefined;
}

/** A kind of day the tariff prices apart, with one date of that kind. */
export interface DayKind {
  readonly season: string;
  readonly dayType: string;
  readonly date: CalendarDate;
}

/** What runs in each of the 24 hours: 0 is off, 1 the slowest setting. */
export type Hours = readonly number[];

export interface Worked {
  readonly hours: Hours;
  readonly report: DayReport<HuntNeed, HuntLimit>;
  readonly price: DayPrice;
  /** Water that is missing [m3], 0 or more. */
  readonly shortWater: number;
  /** Whether every need is met and nothing is crossed. */
  readonly sound: boolean;
}

/** The days the tariff prices apart, in the order of the year that starts in summer's first month. */
export function dayKinds({ tariff, year }: Pick<HuntPlace, 'tariff' | 'year'>): DayKind[] {
  const found = new Map<unknown, DayKind>();
  let date: CalendarDate = { year, month: 6, day: 1 };
  for (let days = 0; days < 365; days += 1) {
    const { season, dayType } = ruleOn(tariff, date);
    if (!found.has(dayType)) {
      found.set(dayType, { season: season.name, dayType: dayType.name, date });
    }
    date = nextDay(date);
  }
  return [...found.values()];
}

/** Three hours fast, six in the middle, slow for the rest: the usual day of the trade, hour by hour. */
export function usualHours({ settings }: HuntPlace): Hours {
  const ratio = (place: number) =>
    settings[Math.min(place, settings.length - 1)]?.ratio ?? settings[0]?.ratio ?? 0;
  const blocks = usualThreeBlockDay({ low: ratio(0), middle: ratio(1), high: ratio(2) });
  return Array.from({ length: 24 }, (_, hour) => {
    const running = blockAt(blocks, hour * 60)?.ratio;
    return 1 + settings.findIndex((setting) => setting.ratio === running);
  });
}

function blocksOf({ settings }: HuntPlace, hours: Hours): Block[] {
  return hours.flatMap((level, hour) => {
    const ratio = settings[level - 1]?.ratio;
    return ratio === undefined
      ? []
      : [{ id: `hour-${hour}`, start: hour * 60, end: (hour + 1) * 60, ratio }];
  });
}

const standing: RunningPoint = { kind: 'noFlow', power: 0 };

/** A day of hours worked out and priced. */
export function workHours(place: HuntPlace, hours: Hours, date: CalendarDate): Worked {
  const { settings, volume, turnovers } = place;
  const report = dayReport({
    ...place,
    blocks: blocksOf(place, hours),
    pointAt: (ratio) => settings.find((setting) => setting.ratio === ratio)?.point ?? standing,
  });
  // Millilitres do not count: sums of rounded numbers may miss the target by the last place.
  const missing = (turnovers ?? 0) * volume - report.volumeMoved;
  const shortWater = missing > 1e-6 * volume ? missing : 0;
  const kept = report.crossings.length === 0 && report.quietCrossings.length === 0;
  return {
    hours,
    report,
    price: priceDay(place.tariff, date, report.segments),
    shortWater,
    sound: kept && shortWater === 0 && report.needs.every(({ met }) => met),
  };
}

/** What was said of the cheapest day of one kind. */
export interface Shown {
  /** The place it was looked for on; on a changed one it no longer holds. */
  readonly place: HuntPlace;
  /** The day, or nothing where none keeps everything. */
  readonly hours: Hours | undefined;
  readonly words: string;
}

export interface HourHuntModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  readonly own: Signal<HuntPlace | undefined>;
  readonly place: ReadonlySignal<HuntPlace>;
  readonly kinds: ReadonlySignal<readonly DayKind[]>;
  readonly kindAt: ReadonlySignal<number>;
  readonly kind: ReadonlySignal<DayKind>;
  /** What a tap gives an hour. */
  readonly brush: ReadonlySignal<number>;
  readonly hours: ReadonlySignal<Hours>;
  readonly here: ReadonlySignal<Worked>;
  readonly usual: ReadonlySignal<Worked>;
  /** The cheapest sound day laid so far on this kind of day. */
  readonly best: ReadonlySignal<Worked | undefined>;
  /** Whether a day was laid by hand on this kind of day, so that the answer no longer spoils the hunt. */
  readonly tried: ReadonlySignal<boolean>;
  /** What was said of the cheapest of this kind of day, once asked for. */
  readonly shown: ReadonlySignal<Shown | undefined>;
  /** Price of energy in each hour, at its first minute. */
  readonly prices: ReadonlySignal<readonly number[]>;
  chooseKind(place: number): void;
  chooseBrush(level: number): void;
  /** Sets one hour; the only way a single hour changes. */
  setHour(hour: number, level: number): void;
  /** Lays a whole day at once. */
  lay(hours: Hours): void;
  /** Counts a day as found, when it is sound, without laying it. */
  recall(hours: Hours): void;
  /** Keeps what was said of the cheapest day, and lays it where there is one. */
  show(cheapest: Shown): void;
  reset(): void;
}

type Kept<Thing = Hours> = Readonly<Record<string, Thing>>;

/** A day laid hour by hour, its price beside the usual day's, and the best sound one kept. */
export function createModel(example: HuntPlace): HourHuntModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<HuntPlace | undefined>(undefined);
  const place = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const kinds = computed(() => dayKinds(place.value));
  const askedKind = signal(0);
  const kindAt = computed(() => Math.min(askedKind.value, kinds.value.length - 1));
  const kind = computed(() => kinds.value[kindAt.value] as DayKind);
  const askedBrush = signal(1);
  const most = computed(() => place.value.settings.length);
  // Days and finds stand by whose pad and which kind of day they were laid for.
  const key = computed(() => `${source.value}/${kindAt.value}`);
  const laid = signal<Kept>({});
  const found = signal<Kept>({});
  const answers = signal<Kept<Shown>>({});

  const work = (hours: Hours) => workHours(place.value, hours, kind.value.date);
  const within = (hours: Hours) => hours.map((level) => Math.max(0, Math.min(level, most.value)));
  const usual = computed(() => work(usualHours(place.value)));
  const hours = computed(() => within(laid.value[key.value] ?? usual.value.hours));
  const here = computed(() => work(hours.value));
  const best = computed(() => {
    const kept = found.value[key.value];
    const worked = kept === undefined ? undefined : work(within(kept));
    if (worked?.sound) return worked;
    return usual.value.sound ? usual.value : undefined;
  });

  const recall = (day: Hours) => {
    const worked = work(within(day));
    const so = best.peek();
    if (!worked.sound) return;
    if (so === undefined || worked.price.energyCost < so.price.energyCost - 1e-9) {
      found.value = { ...found.peek(), [key.peek()]: worked.hours };
    }
  };
  const lay = (day: Hours) => {
    if (day.length !== 24) return;
    batch(() => {
      laid.value = { ...laid.peek(), [key.peek()]: within(day) };
      recall(day);
    });
  };
  return {
    units,
    source,
    own,
    place,
    kinds,
    kindAt,
    kind,
    brush: computed(() => Math.min(askedBrush.value, most.value)),
    hours,
    here,
    usual,
    best,
    tried: computed(() => laid.value[key.value] !== undefined),
    shown: computed(() => {
      const answer = answers.value[key.value];
      return answer?.place === place.value ? answer : undefined;
    }),
    prices: computed(() =>
      Array.from({ length: 24 }, (_, hour) =>
        priceAt(place.value.tariff, kind.value.date, hour * 60),
      ),
    ),
    chooseKind: (at) => {
      if (kinds.peek()[at] !== undefined) askedKind.value = at;
    },
    chooseBrush: (level) => {
      askedBrush.value = level;
    },
    setHour: (hour, level) =>
      lay(hours.peek().map((present, at) => (at === hour ? level : present))),
    lay,
    recall,
    show: (cheapest) =>
      batch(() => {
        answers.value = { ...answers.peek(), [key.peek()]: cheapest };
        if (cheapest.hours !== undefined) lay(cheapest.hours);
      }),
    reset: () =>
      batch(() => {
        source.value = 'example';
        askedKind.value = 0;
        askedBrush.value = 1;
        laid.value = {};
        found.value = {};
        answers.value = {};
      }),
  };
}
