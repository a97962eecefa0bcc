import type { ServiceNeed } from '#core/day/dayReport.ts';
import type { CheapestDayInputs, SpeedRow } from '#core/planner/inputs.ts';

/** A stream of numbers that is the same on every machine: Park and Miller, 1988. */
export function seeded(seed: number) {
  let state = (seed * 7919 + 12_345) % 2_147_483_647 || 1;
  const next = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return {
    between: (low: number, high: number) => low + (high - low) * next(),
    whole: (low: number, high: number) => low + Math.floor((high - low + 1) * next()),
    one: <T>(list: readonly T[]): T => list[Math.floor(list.length * next())] as T,
    chance: (share: number) => next() < share,
  };
}

export type Seeded = ReturnType<typeof seeded>;

/** A loop without lift: flow as speed, power with a fixed draw. Invented. */
export function inventedSpeeds(count: number, fixed = 45, cube = 1800): readonly SpeedRow[] {
  return Array.from({ length: count }, (_, place) => {
    const ratio = 0.18 + (0.82 * place) / Math.max(1, count - 1);
    return { ratio, flow: 0.0063 * ratio, power: fixed + cube * ratio ** 3 };
  });
}

/** Any ends on a grid of so many minutes. */
function anySpan(random: Seeded, grid: number) {
  const start = random.whole(0, 1440 / grid - 1) * grid;
  const length = random.whole(1, 1440 / grid) * grid;
  return { start, end: (start + length) % 1440 };
}

function anyPrices(random: Seeded, grid: number, bands: number) {
  const cuts = new Set<number>();
  while (cuts.size < bands) cuts.add(random.whole(0, 1440 / grid - 1) * grid);
  const sorted = [...cuts].sort((a, b) => a - b);
  return sorted.map((start, place) => ({
    start,
    end: sorted[(place + 1) % sorted.length] ?? start,
    price: random.whole(5, 60) / 100,
  }));
}

function anyNeed(random: Seeded, grid: number, place: number, runs: boolean): ServiceNeed {
  const leastFlow = random.between(0.0012, 0.0052);
  const greatestFlow = random.chance(0.2) ? leastFlow + random.between(0.0002, 0.003) : undefined;
  return {
    id: `need ${place}`,
    leastFlow,
    ...(greatestFlow === undefined ? {} : { greatestFlow }),
    minutes: random.whole(1, 360 / grid) * grid - (grid > 1 && random.chance(0.1) ? 1 : 0),
    windows: Array.from({ length: random.whole(0, 2) }, () => anySpan(random, grid)),
    shortestRun: runs && random.chance(0.6) ? random.whole(1, 180 / grid) * grid : 0,
  };
}

export interface CaseShape {
  /** Minutes on which spans begin and end. */
  readonly grid: number;
  readonly speeds: readonly [number, number];
  readonly runs: boolean;
}

/** Any day's problem: one to five prices, up to four needs, up to two quiet times. Invented. */
export function anyCase(seed: number, shape: CaseShape): CheapestDayInputs {
  const random = seeded(seed);
  const { grid } = shape;
  const speeds = inventedSpeeds(
    random.whole(...shape.speeds),
    random.between(0, 120),
    random.between(600, 2600),
  ).map((row) => ({ ...row, power: row.power * random.between(0.97, 1.03) }));
  return {
    speeds,
    mayStop: random.chance(0.8),
    leastVolume: random.chance(0.1) ? 0 : random.between(5, 330),
    needs: Array.from({ length: random.whole(0, 4) }, (_, place) =>
      anyNeed(random, grid, place, shape.runs),
    ),
    limits: random.chance(0.4)
      ? [{ id: 'filter', greatestFlow: random.between(0.003, 0.0063) }]
      : [],
    quiet: Array.from({ length: random.chance(0.4) ? random.whole(1, 2) : 0 }, () => ({
      ...anySpan(random, grid),
      ceiling: random.between(0.15, 0.9),
    })),
    prices: anyPrices(random, grid, random.whole(1, 5)),
  };
}

/** A household day: two or three prices, up to three needs in wide windows. Invented. */
export function ordinaryCase(seed: number, speeds = 58): CheapestDayInputs {
  const random = seeded(seed);
  const hour = 60;
  const peak = random.whole(15, 17) * hour;
  const evening = peak + random.whole(3, 5) * hour;
  const night = random.whole(21, 23) * hour;
  const prices = random.chance(0.5)
    ? [
        { start: night, end: 7 * hour, price: 0.11 },
        { start: 7 * hour, end: peak, price: 0.22 },
        { start: peak, end: evening, price: 0.48 },
        ...(night > evening ? [{ start: evening, end: night, price: 0.22 }] : []),
      ]
    : [
        { start: evening, end: peak, price: 0.18 },
        { start: peak, end: evening, price: 0.45 },
      ];
  const wide = () => {
    const start = random.whole(7, 10) * hour;
    return [{ start, end: start + random.whole(6, 10) * hour }];
  };
  const needs = [
    {
      id: 'skimming',
      leastFlow: 0.0025,
      minutes: random.whole(3, 6) * hour,
      windows: wide(),
      shortestRun: 0,
    },
    {
      id: 'cleaner',
      leastFlow: 0.0038,
      minutes: random.whole(4, 8) * 30,
      windows: wide(),
      shortestRun: 0,
    },
    {
      id: 'salt cell',
      leastFlow: 0.0018,
      minutes: random.whole(6, 10) * hour,
      windows: [],
      shortestRun: 0,
    },
  ].slice(0, random.whole(1, 3));
  return {
    speeds: inventedSpeeds(speeds, random.between(30, 70), random.between(1400, 2200)),
    mayStop: random.chance(0.8),
    leastVolume: random.between(60, 140),
    needs,
    limits: [{ id: 'filter', greatestFlow: random.between(0.0045, 0.006) }],
    quiet: random.chance(0.4) ? [{ start: 22 * hour, end: 6 * hour, ceiling: 0.5 }] : [],
    prices: fixNight(prices),
  };
}

/** Where the evening ends after the night begins, the night begins with its end. */
function fixNight<P extends { readonly start: number; readonly end: number }>(
  prices: readonly P[],
) {
  const [night, , peak] = prices;
  if (prices.length !== 3 || night === undefined || peak === undefined) return prices;
  return [{ ...night, start: peak.end % 1440 }, ...prices.slice(1)];
}

/** Twelve speeds, one price, and nothing asked for. */
export const nothingAsked: CheapestDayInputs = {
  speeds: inventedSpeeds(12),
  mayStop: true,
  leastVolume: 0,
  needs: [],
  limits: [],
  quiet: [],
  prices: [{ start: 0, end: 1440, price: 0.25 }],
};
