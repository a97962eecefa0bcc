import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { type Block, segmentsOf } from '#core/day/day.ts';
import { dayReport } from '#core/day/dayReport.ts';
import { primedSegments } from '#core/day/priming.ts';

const priming = { ratio: 1, minutes: 5 };
const shown = (blocks: readonly Block[], by = priming) =>
  primedSegments(blocks, by)
    .filter(({ ratio }) => ratio > 0)
    .map(({ start, end, ratio, isPriming = false }) => [start, end, ratio, isPriming]);

// What a pump does when it starts: common practice, no source; minutes worked by hand.
describe('priming', () => {
  it('runs at the start of every run, and not where one block follows another', () => {
    const blocks = [
      { id: 'a', start: 60, end: 120, ratio: 0.5 },
      { id: 'b', start: 120, end: 180, ratio: 0.6 },
      { id: 'c', start: 300, end: 360, ratio: 0.4 },
    ];
    expect(shown(blocks)).toEqual([
      [60, 65, 1, true],
      [65, 120, 0.5, false],
      [120, 180, 0.6, false],
      [300, 305, 1, true],
      [305, 360, 0.4, false],
    ]);
  });

  it('does not start at midnight a run that came from the day before', () => {
    const night = [{ id: 'night', start: 1320, end: 360, ratio: 0.5 }];
    expect(shown(night)).toEqual([
      [0, 360, 0.5, false],
      [1320, 1325, 1, true],
      [1325, 1440, 0.5, false],
    ]);
    expect(shown([{ id: 'late', start: 1438, end: 60, ratio: 0.5 }])).toEqual([
      [0, 3, 1, true],
      [3, 60, 0.5, false],
      [1438, 1440, 1, true],
    ]);
  });

  it('never starts a pump that runs round the clock', () => {
    const all = [
      { id: 'a', start: 0, end: 720, ratio: 0.5 },
      { id: 'b', start: 720, end: 0, ratio: 0.6 },
    ];
    expect(primedSegments(all, priming)).toEqual(segmentsOf(all));
  });

  it('goes on into the next block, but not past the end of the run', () => {
    const short = [
      { id: 'a', start: 60, end: 62, ratio: 0.5 },
      { id: 'b', start: 62, end: 64, ratio: 0.6 },
    ];
    expect(shown(short)).toEqual([
      [60, 62, 1, true],
      [62, 64, 1, true],
    ]);
  });

  it('of no minutes or no speed changes nothing', () => {
    const one = [{ id: 'a', start: 60, end: 120, ratio: 0.5 }];
    expect(primedSegments(one, { ratio: 1, minutes: 0 })).toEqual(segmentsOf(one));
    expect(primedSegments(one)).toEqual(segmentsOf(one));
    expect(() => primedSegments(one, { ratio: -1, minutes: 5 })).toThrow(CoreError);
    expect(() => primedSegments(one, { ratio: 1, minutes: 1441 })).toThrow(CoreError);
  });

  it('keeps the minutes of the day and of the pump as they are', () => {
    const minute = fc.integer({ min: 0, max: 1439 });
    fc.assert(
      fc.property(minute, minute, fc.integer({ min: 0, max: 1440 }), (start, end, minutes) => {
        const blocks = [{ id: 'a', start, end, ratio: 0.5 }];
        const primed = primedSegments(blocks, { ratio: 0.9, minutes });
        const length = (of: typeof primed) =>
          of.reduce((sum, each) => sum + each.end - each.start, 0);
        expect(length(primed)).toBe(1440);
        const on = length(primed.filter(({ ratio }) => ratio > 0));
        expect(on).toBe(length(segmentsOf(blocks).filter(({ ratio }) => ratio > 0)));
        const prime = length(primed.filter(({ isPriming }) => isPriming === true));
        expect(prime).toBe(on === 1440 ? 0 : Math.min(minutes, on));
      }),
    );
  });
});

describe('a day that primes', () => {
  it('pays for it, and is held to its limits there', () => {
    const limit = { id: 'cover', greatestFlow: 0.005 };
    const report = dayReport({
      blocks: [{ id: 'a', start: 60, end: 120, ratio: 0.5 }],
      pointAt: (ratio) => ({
        kind: 'flowing',
        flow: 0.006 * ratio,
        power: 1000 * ratio ** 3,
        suctionVelocity: 0,
        dischargeVelocity: 0,
      }),
      volume: 60,
      needs: [],
      limits: [limit],
      quiet: [{ start: 0, end: 63, ceiling: 0.8 }],
      priming,
    });
    // 5 min at 1000 W and 55 min at 125 W; 5 min at 6 L/s and 55 min at 3 L/s.
    expect(report.energy).toBeCloseTo(5 * 60 * 1000 + 55 * 60 * 125, 6);
    expect(report.volumeMoved).toBeCloseTo(5 * 60 * 0.006 + 55 * 60 * 0.003, 12);
    expect(report.crossings).toMatchObject([{ limit, from: 60, to: 65, ratio: 1 }]);
    expect(report.quietCrossings).toMatchObject([{ from: 60, to: 63, ratio: 1 }]);
    expect(report.runMinutes).toBe(60);
  });
});
