import type { Tariff } from '#core/tariff/tariff.ts';
import { type TariffProblem, tariffProblems } from '#core/tariff/tariffProblems.ts';
import type { PadTariff } from '#pad/document/schema.ts';
import type { Path } from '#pad/messages/path.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';

export interface AssembledTariff {
  /** The tariff, or null while it does not price every minute of the year once. */
  readonly tariff: Tariff | null;
  readonly problems: readonly Problem[];
}

const weekdayNames = [
  'Sundays',
  'Mondays',
  'Tuesdays',
  'Wednesdays',
  'Thursdays',
  'Fridays',
  'Saturdays',
];

/** "seasons[0].dayTypes[1].bands" as a path inside the pad. */
function pathFrom(field: string): Path {
  const steps = field.split(/[.[\]]+/).filter((step) => step !== '');
  return ['tariff', ...steps.map((step) => (/^\d+$/.test(step) ? Number(step) : step))];
}

/** The core's finding as a problem of the pad. */
function fromCore(found: TariffProblem): Problem {
  const path = pathFrom(found.field);
  switch (found.code) {
    case 'noSeason':
    case 'noDayType':
    case 'noSuchDate':
    case 'seasonGap':
    case 'seasonOverlap':
    case 'holidayTwice':
      return problem(found.code, path);
    case 'sameId':
      return problem('sameId', path, { id: found.id });
    case 'seasonStartsTwice':
      return problem('seasonTwice', path);
    case 'noSuchWeekday':
      return problem('weekdayMissing', path, { weekday: 'that day' });
    case 'weekdayMissing':
    case 'weekdayTwice':
      return problem(found.code, path, { weekday: weekdayNames[found.weekday] ?? '' });
    case 'bandGap':
    case 'bandOverlap': {
      const span = { start: { minute: found.start }, end: { minute: found.end } };
      return problem(found.code, path, span);
    }
    case 'bandMinute':
    case 'money':
      return problem('wrongType', path, { expected: 'a number' });
    case 'holidayDayType':
      return problem('holidayKind', path);
  }
}

function missingPrices(tariff: PadTariff): readonly Problem[] {
  return tariff.seasons.flatMap((season, seasonAt) =>
    season.dayTypes.flatMap((dayType, typeAt) =>
      dayType.bands.flatMap((band, bandAt) => {
        if (band.price !== null) return [];
        const path = ['tariff', 'seasons', seasonAt, 'dayTypes', typeAt, 'bands', bandAt, 'price'];
        return [problem('bandPrice', path)];
      }),
    ),
  );
}

function coreTariff(tariff: PadTariff): Tariff {
  return {
    currency: tariff.currency,
    dailyCharge: tariff.dailyCharge ?? 0,
    seasons: tariff.seasons.map(({ to, ...season }) => ({
      ...season,
      ...(to === null ? {} : { to }),
      dayTypes: season.dayTypes.map((dayType) => ({
        ...dayType,
        bands: dayType.bands.map((band) => ({ ...band, price: band.price ?? 0 })),
      })),
    })),
    holidays: tariff.holidays,
  };
}

/** The tariff when it is sound, otherwise everything that is missing or wrong. */
export function assembleTariff(tariff: PadTariff): AssembledTariff {
  const core = coreTariff(tariff);
  const problems = [...missingPrices(tariff), ...tariffProblems(core).map(fromCore)];
  return { tariff: problems.length === 0 ? core : null, problems };
}
