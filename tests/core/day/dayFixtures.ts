import fc from 'fast-check';
import type { Block } from '#core/day/day.ts';
import type { RunningPoint, ServiceNeed } from '#core/day/dayReport.ts';
import type { Band, Tariff } from '#core/tariff/tariff.ts';
import type { Span } from '#core/time/spans.ts';

/** A pump and loop without lift: flow as speed, power with a fixed draw. Our own invention. */
export function inventedPump(ratio: number): RunningPoint {
  return {
    kind: 'flowing',
    flow: 0.006 * ratio,
    power: 60 + 1500 * ratio ** 3,
    suctionVelocity: 2 * ratio,
    dischargeVelocity: 3 * ratio,
  };
}

/** Two seasons, weekdays and weekends, a band across midnight. Our own invention. */
export const inventedTariff: Tariff = {
  currency: 'crowns',
  dailyCharge: 0.35,
  seasons: [
    {
      id: 'winter',
      name: 'Winter',
      from: { month: 10, day: 1 },
      to: { month: 5, day: 31 },
      dayTypes: [dayType('all', [0, 1, 2, 3, 4, 5, 6], [band(0, 1440, 0.21)])],
    },
    {
      id: 'summer',
      name: 'Summer',
      from: { month: 6, day: 1 },
      dayTypes: [
        dayType(
          'weekday',
          [1, 2, 3, 4, 5],
          [band(1260, 420, 0.11), band(420, 960, 0.22), band(960, 1260, 0.48)],
        ),
        dayType('weekend', [0, 6], [band(1260, 420, 0.11), band(420, 1260, 0.22)]),
      ],
    },
  ],
  holidays: [{ month: 7, day: 5, dayTypeId: 'weekend' }],
};

function dayType(id: string, weekdays: readonly number[], bands: readonly Band[]) {
  return { id, name: id, weekdays, bands };
}

function band(start: number, end: number, price: number): Band {
  return { start, end, price };
}

/** Days whose blocks never overlap: cuts of the ring, every other stretch or all of them planned. */
export const anyDay: fc.Arbitrary<readonly Block[]> = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 0, max: 1439 }), { minLength: 1, maxLength: 8 }),
    fc.array(fc.option(fc.double({ min: 0, max: 1.2, noNaN: true })), {
      minLength: 8,
      maxLength: 8,
    }),
  )
  .map(([cuts, ratios]) => {
    const sorted = cuts.toSorted((a, b) => a - b);
    return sorted.flatMap((start, index): readonly Block[] => {
      const ratio = ratios[index];
      const end = sorted[(index + 1) % sorted.length] ?? start;
      return typeof ratio === 'number' ? [{ id: `b${index}`, start, end, ratio }] : [];
    });
  });

export const anySpan: fc.Arbitrary<Span> = fc.record({
  start: fc.integer({ min: 0, max: 1439 }),
  end: fc.integer({ min: 0, max: 1440 }),
});

export const anyNeed: fc.Arbitrary<ServiceNeed> = fc
  .record({
    leastFlow: fc.double({ min: 0, max: 0.007, noNaN: true }),
    room: fc.option(fc.double({ min: 0, max: 0.004, noNaN: true })),
    minutes: fc.integer({ min: 0, max: 1440 }),
    shortestRun: fc.integer({ min: 0, max: 300 }),
    windows: fc.array(anySpan, { maxLength: 3 }),
  })
  .map(({ room, ...need }) => ({
    id: 'need',
    ...need,
    ...(room === null ? {} : { greatestFlow: need.leastFlow + room }),
  }));

/** The same stretch so many minutes later on the ring. */
export function shifted<S extends Span>(span: S, by: number): S {
  const length = (span.end - span.start + 1440) % 1440;
  const start = (span.start + by) % 1440;
  return { ...span, start, end: (start + length) % 1440 };
}
