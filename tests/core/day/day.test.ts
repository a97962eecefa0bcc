import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  type Block,
  blockAt,
  dayProblems,
  findOverlaps,
  minutesAt,
  oneSpeedDay,
  segmentsOf,
  usualThreeBlockDay,
} from '#core/day/day.ts';
import {
  isSpan,
  requireSpan,
  ringRuns,
  spanHolds,
  spanMinutes,
  unionOf,
} from '#core/time/spans.ts';
import { anyDay, anySpan } from './dayFixtures.ts';

const block = (id: string, start: number, end: number, ratio = 0.5): Block => ({
  id,
  start,
  end,
  ratio,
});

// Expected minutes in this file are counted on the clock by hand (common practice, no source).
describe('spans of the daily clock', () => {
  it('a span across midnight lasts to the next morning', () => {
    expect(spanMinutes({ start: 23 * 60 + 17, end: 5 * 60 + 43 })).toBe(386);
  });

  it('an end equal to the start means all 24 hours', () => {
    expect(spanMinutes({ start: 500, end: 500 })).toBe(1440);
    expect(spanMinutes({ start: 0, end: 1440 })).toBe(1440);
  });

  it('an end at 24:00 is the same as an end at 00:00', () => {
    expect(spanMinutes({ start: 600, end: 1440 })).toBe(spanMinutes({ start: 600, end: 0 }));
  });

  it('the end itself is outside', () => {
    expect(spanHolds({ start: 1320, end: 360 }, 359)).toBe(true);
    expect(spanHolds({ start: 1320, end: 360 }, 360)).toBe(false);
    expect(spanHolds({ start: 1320, end: 360 }, 1320)).toBe(true);
  });

  it('a union holds exactly the minutes that some span holds', () => {
    fc.assert(
      fc.property(fc.array(anySpan, { maxLength: 5 }), (spans) => {
        const union = unionOf(spans);
        for (let minute = 0; minute < 1440; minute += 1) {
          const inside = union.some(({ start, end }) => start <= minute && minute < end);
          expect(inside).toBe(spans.some((span) => spanHolds(span, minute)));
        }
      }),
      { numRuns: 40 },
    );
  });

  it('runs at both ends of the day join only where both touch midnight', () => {
    const [early, late] = [
      { start: 0, end: 120 },
      { start: 1380, end: 1440 },
    ];
    expect(ringRuns([early, late])).toEqual([{ start: 1380, end: 120 }]);
    const afterwards = { start: 60, end: 120 };
    expect(ringRuns([afterwards, late])).toEqual([afterwards, late]);
    const before = { start: 1300, end: 1439 };
    expect(ringRuns([early, before])).toEqual([early, before]);
  });

  it('a minute that is not on the clock is refused, by name', () => {
    const noStart = 'it must be a whole minute from 0 to 1439.';
    for (const minute of [-1, 1440, 1441, 0.5, Number.NaN]) {
      expect(isSpan({ start: minute, end: 60 })).toBe(false);
      expect(() => requireSpan('run', { start: minute, end: 60 })).toThrow(
        `run.start is ${minute}; ${noStart}`,
      );
      expect(() => spanMinutes({ start: minute, end: 60 })).toThrow(CoreError);
      expect(() => spanHolds({ start: 0, end: 60 }, minute)).toThrow(
        `minute is ${minute}; ${noStart}`,
      );
    }
    for (const minute of [-1, 1441, 0.5]) {
      expect(isSpan({ start: 0, end: minute })).toBe(false);
      expect(() => requireSpan('run', { start: 0, end: minute })).toThrow(
        `run.end is ${minute}; it must be a whole minute from 0 to 1440.`,
      );
    }
    expect(isSpan({ start: 1439, end: 1440 })).toBe(true);
  });

  it('runs of the ring keep the number of minutes and join over midnight', () => {
    fc.assert(
      fc.property(fc.array(anySpan, { maxLength: 5 }), (spans) => {
        const union = unionOf(spans);
        const total = union.reduce((sum, { start, end }) => sum + end - start, 0);
        const runs = ringRuns(union);
        expect(runs.reduce((sum, run) => sum + spanMinutes(run), 0)).toBe(total);
        if (total < 1440) {
          const ends = new Set(runs.map(({ end }) => end % 1440));
          for (const { start } of runs) expect(ends.has(start)).toBe(false);
        }
      }),
    );
  });
});

describe('blocks of a day', () => {
  it('a block across midnight gives two segments and the rest is off', () => {
    expect(segmentsOf([block('night', 1320, 360)])).toEqual([
      { start: 0, end: 360, blockId: 'night', ratio: 0.5 },
      { start: 360, end: 1320, blockId: null, ratio: 0 },
      { start: 1320, end: 1440, blockId: 'night', ratio: 0.5 },
    ]);
  });

  it('no block at all is a day off', () => {
    expect(segmentsOf([])).toEqual([{ start: 0, end: 1440, blockId: null, ratio: 0 }]);
  });

  it('segments cover the 1440 minutes once, in order', () => {
    fc.assert(
      fc.property(anyDay, (blocks) => {
        const segments = segmentsOf(blocks);
        let reached = 0;
        for (const { start, end } of segments) {
          expect(start).toBe(reached);
          expect(end).toBeGreaterThan(start);
          reached = end;
        }
        expect(reached).toBe(1440);
      }),
    );
  });

  it('every minute of a segment belongs to the block that holds it', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 0, max: 1439 }), (blocks, minute) => {
        const segment = segmentsOf(blocks).find(
          ({ start, end }) => start <= minute && minute < end,
        );
        expect(segment?.blockId).toBe(blockAt(blocks, minute)?.id ?? null);
      }),
    );
  });

  it('overlapping blocks are named with the minutes they share', () => {
    expect(
      findOverlaps([block('a', 1320, 360), block('b', 300, 600), block('c', 600, 700)]),
    ).toEqual([{ firstId: 'a', secondId: 'b', start: 300, end: 360, minutes: 60 }]);
  });

  it('two blocks can overlap in two places', () => {
    const overlaps = findOverlaps([block('a', 600, 120), block('b', 60, 660)]);
    expect(overlaps.map(({ start, end }) => [start, end])).toEqual([
      [60, 120],
      [600, 660],
    ]);
  });

  it('an overlap across midnight is one stretch', () => {
    const [overlap, ...more] = findOverlaps([block('a', 1300, 100), block('b', 1400, 50)]);
    expect(overlap).toMatchObject({ start: 1400, end: 50, minutes: 90 });
    expect(more).toEqual([]);
  });

  it('segments of overlapping blocks throw and name both', () => {
    expect(() => segmentsOf([block('a', 0, 120), block('b', 60, 180)])).toThrow(
      new CoreError('blocks', 'a over b from minute 60 to 120', 'blocks that share no minute'),
    );
  });

  it('problems of typed blocks come back as values', () => {
    const typed = [block('a', 0, 120), block('a', 60, 180), block('c', 12.5, 1500, Number.NaN)];
    expect(dayProblems(typed).map(({ code }) => code)).toEqual([
      'blockIdTwice',
      'blockMinute',
      'blockMinute',
      'blockRatio',
      'overlap',
    ]);
  });

  it('a block that stands still is no problem', () => {
    expect(dayProblems([block('rest', 0, 60, 0)])).toEqual([]);
  });

  it('a block off the clock or with less than no speed is named', () => {
    expect(() => segmentsOf([block('a', 1440, 60)])).toThrow(
      'block a.start is 1440; it must be a whole minute from 0 to 1439.',
    );
    expect(() => segmentsOf([block('a', 0, 60, -0.1)])).toThrow('block a.ratio is -0.1');
  });

  it('a day without problems always has segments, and one with problems never', () => {
    const wild = fc.oneof(fc.integer({ min: -5, max: 1445 }), fc.double());
    const wildBlock = fc.record({ id: fc.uuid(), start: wild, end: wild, ratio: fc.double() });
    fc.assert(
      fc.property(fc.array(wildBlock, { maxLength: 4 }), (blocks) => {
        if (dayProblems(blocks).length === 0) expect(segmentsOf(blocks).at(-1)?.end).toBe(1440);
        else expect(() => segmentsOf(blocks)).toThrow(CoreError);
      }),
    );
  });

  it('minutes at a speed add up over blocks, and off counts the unplanned ones', () => {
    const blocks = [block('a', 0, 60, 0.4), block('b', 600, 700, 0.4), block('c', 700, 800, 0)];
    expect(minutesAt(blocks, 0.4)).toBe(160);
    expect(minutesAt(blocks, 0)).toBe(1280);
  });
});

describe('ready-made days', () => {
  // Common practice, no source: 2 to 4 h high, 4 to 8 h middle, the rest low.
  it('the usual three-block day fills the 24 hours', () => {
    const blocks = usualThreeBlockDay({ high: 0.9, middle: 0.6, low: 0.4 });
    expect(findOverlaps(blocks)).toEqual([]);
    expect(minutesAt(blocks, 0)).toBe(0);
    expect(minutesAt(blocks, 0.9)).toBe(180);
    expect(minutesAt(blocks, 0.6)).toBe(360);
    expect(minutesAt(blocks, 0.4)).toBe(900);
  });

  it('a high block outside 2 to 4 hours is refused', () => {
    expect(() => usualThreeBlockDay({ high: 1, middle: 0.6, low: 0.4, highMinutes: 60 })).toThrow(
      'highMinutes is 60; it must be a number from 120 to 240 min.',
    );
  });

  it('what makes no day is refused by name', () => {
    const usual = { high: 1, middle: 0.6, low: 0.4 };
    expect(() => usualThreeBlockDay({ ...usual, middleMinutes: 200 })).toThrow(
      'middleMinutes is 200; it must be a number from 240 to 480 min.',
    );
    expect(() => usualThreeBlockDay({ ...usual, low: -1 })).toThrow('block low.ratio is -1');
    expect(() => usualThreeBlockDay({ ...usual, start: 9.5 })).toThrow('block high.start is 9.5');
    expect(() => oneSpeedDay({ ratio: 1, minutes: 1441 })).toThrow(
      'minutes is 1441; it must be a number from 0 to 1440 min.',
    );
    expect(() => oneSpeedDay({ ratio: -1, minutes: 60 })).toThrow('block run.ratio is -1');
  });

  it('a one-speed day runs so long and no longer', () => {
    expect(minutesAt(oneSpeedDay({ ratio: 1, minutes: 480, start: 1200 }), 1)).toBe(480);
    expect(minutesAt(oneSpeedDay({ ratio: 1, minutes: 1440 }), 1)).toBe(1440);
    expect(oneSpeedDay({ ratio: 1, minutes: 0 })).toEqual([]);
  });
});
