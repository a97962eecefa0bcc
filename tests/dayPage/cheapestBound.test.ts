import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { benchOf } from '#dayPage/day/bench.ts';
import { type WorkedDay, workOut } from '#dayPage/day/figures.ts';
import { cheapestOn, padBlocks, plannerInputsOf, rowsOf } from '#dayPage/planning/plannerInputs.ts';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { newNeed } from '#pad/document/parts.ts';
import type { Pad, PadBlock } from '#pad/document/schema.ts';
import { withoutOverlap } from '#pad/model/assembleDay.ts';
import { toSI } from '#units/convert.ts';

const date = { year: 2027, month: 7, day: 14 };

function asked(pad: Pad) {
  const { bench } = benchOf(pad);
  if (bench === null) throw new Error('a pump was expected');
  const turnovers = pad.turnoverTarget ?? 1;
  const laid = pad.day.blocks.map(({ speed }) => speed);
  const rows = rowsOf(bench, laid);
  const inputs = plannerInputsOf(bench, rows, date, {
    minutes: {},
    turnovers,
    mayStop: true,
    mostChanges: null,
  });
  if (inputs === null) throw new Error('prices were expected');
  return { bench, turnovers, rows, found: cheapestOn(bench, date, inputs).found };
}

/** Whether the sheet itself finds nothing missing and nothing crossed. */
function keepsAll({ report, turnovers }: WorkedDay, wanted: number): boolean {
  return (
    report.needs.every(({ met }) => met) &&
    report.crossings.length + report.quietCrossings.length === 0 &&
    (turnovers ?? 0) >= wanted
  );
}

const primed = (pad: Pad): Pad => ({
  ...pad,
  pump: { ...pad.pump, primingSpeed: 1700, primingMinutes: 6, standbyPower: 12 },
});
const anyStep = (pad: Pad, speedStep: number | null): Pad => ({
  ...pad,
  pump: { ...pad.pump, speedStep },
});

const tried: readonly (readonly [string, Pad])[] = [
  ['owner', ownerPad],
  ['owner, any speed', anyStep(ownerPad, null)],
  ['owner, priming and standby', primed(ownerPad)],
  ['lodge, any speed', anyStep(lodgePad, null)],
  ['rig, steps of 5', anyStep(rigPad, 5)],
  ['rig, priming and standby', primed(rigPad)],
];

// The oracle is the sheet: its own minutes, needs, limits and prices.
describe.each(tried)('on %s', (_, pad) => {
  const { bench, turnovers, rows, found } = asked(pad);

  test('no day of the sheet that keeps everything costs less than the bound', () => {
    if (found.kind !== 'found') throw new Error('a day was expected');
    const best = padBlocks(found, bench.speeds.reference);
    const speeds = rows.map(({ ratio }) => ratio * bench.speeds.reference);
    const change = fc.record({
      block: fc.nat(11),
      start: fc.integer({ min: -25, max: 8 }),
      end: fc.integer({ min: -8, max: 25 }),
      speed: fc.integer({ min: -2, max: 4 }),
    });
    let kept = 0;
    fc.assert(
      fc.property(
        fc.array(change, { maxLength: 6 }),
        fc.constantFrom(0, 0, 0, -40, -7, 9, 33),
        (changes, shift) => {
          const turn = (minute: number) => (((minute + shift) % 1440) + 1440) % 1440;
          const moved = best.map((block, place): PadBlock => {
            const own = changes.filter((each) => each.block % best.length === place);
            const at = speeds.findIndex((speed) => Math.abs(speed - (block.speed ?? 0)) < 1e-3);
            const by = own.reduce((sum, each) => sum + each.speed, 0);
            const nudge = (minute: number, add: number) => (((minute + add) % 1440) + 1440) % 1440;
            const sum = (of: (each: (typeof own)[number]) => number) =>
              own.reduce((all, each) => all + of(each), 0);
            return {
              ...block,
              start: turn(
                nudge(
                  block.start,
                  sum(({ start }) => start),
                ),
              ),
              end: turn(
                nudge(
                  block.end,
                  sum(({ end }) => end),
                ),
              ),
              speed: speeds[Math.min(speeds.length - 1, Math.max(0, at + by))] ?? block.speed,
            };
          });
          const day = workOut(bench, withoutOverlap(moved), date);
          if (!keepsAll(day, turnovers)) return;
          kept += 1;
          expect(day.prices?.day.energyCost).toBeGreaterThanOrEqual(found.bound * (1 - 1e-9));
        },
      ),
      { numRuns: 400 },
    );
    expect(kept).toBeGreaterThan(3);
  });

  test('the day given keeps everything on the sheet, and no block of it is shorter than 15 min', () => {
    if (found.kind !== 'found') throw new Error('a day was expected');
    const blocks = padBlocks(found, bench.speeds.reference);
    const day = workOut(bench, blocks, date);
    expect(keepsAll(day, turnovers * (1 - 1e-9))).toBe(true);
    for (const { start, end } of blocks)
      expect((end - start + 1440) % 1440 || 1440).toBeGreaterThanOrEqual(15);
    const { step } = bench.speeds;
    if (step > 0)
      for (const { speed } of blocks) {
        const steps = (speed ?? 0) / step;
        const isEnd = speed === bench.speeds.least || speed === bench.speeds.top;
        expect(isEnd || Math.abs(steps - Math.round(steps)) < 1e-9).toBe(true);
      }
  });
});

test('a need that only a narrow band of speeds serves is found, whatever the grid', () => {
  // Served from 28.6 to 28.7 gpm alone: about two rpm on this pad.
  const narrow = newNeed('narrow', 'filtering', {
    leastFlow: toSI('flow', 28.6, 'gpm'),
    greatestFlow: toSI('flow', 28.7, 'gpm'),
    minutes: 120,
  });
  const pad = { ...anyStep(ownerPad, null), needs: [narrow] };
  expect(asked(pad).found).toMatchObject({ kind: 'found' });
});

test('a day on the sheet is never said to be both cheaper and impossible', () => {
  const first = asked(anyStep(ownerPad, null));
  if (first.found.kind !== 'found') throw new Error('a day was expected');
  // The day as found, laid on the sheet and asked again.
  const blocks = padBlocks(first.found, first.bench.speeds.reference);
  const again = asked({
    ...anyStep(ownerPad, null),
    day: { ...ownerPad.day, blocks: [...blocks] },
  });
  if (again.found.kind !== 'found') throw new Error('a day was expected');
  const sheet = workOut(again.bench, blocks, date).prices?.day.energyCost ?? 0;
  expect(again.found.bound).toBeLessThanOrEqual(sheet * (1 + 1e-9));
});
