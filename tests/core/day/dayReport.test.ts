import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { type Block, oneSpeedDay, segmentsOf } from '#core/day/day.ts';
import { type DayPlan, dayReport, type FlowLimit, type ServiceNeed } from '#core/day/dayReport.ts';
import { spanHolds } from '#core/time/spans.ts';
import { anyDay, anyNeed, anySpan, inventedPump, shifted } from './dayFixtures.ts';

type Plan = DayPlan<ServiceNeed, FlowLimit>;

function report(blocks: readonly Block[], more: Partial<Plan> = {}) {
  return dayReport({
    blocks,
    pointAt: inventedPump,
    volume: 60,
    needs: [],
    limits: [],
    quiet: [],
    ...more,
  });
}

const need: ServiceNeed = {
  id: 'skim',
  leastFlow: 0.003,
  minutes: 120,
  windows: [],
  shortestRun: 0,
};

// Expected figures in this file are arithmetic on the invented pump, written out where not plain.
describe('a day to the minute', () => {
  it('water, turnovers, energy and running time of one block', () => {
    const day = report([{ id: 'a', start: 1380, end: 300, ratio: 0.5 }]);
    expect(day.runMinutes).toBe(360);
    expect(day.volumeMoved).toBeCloseTo(0.003 * 360 * 60, 9);
    expect(day.turnovers).toBeCloseTo((0.003 * 360 * 60) / 60, 9);
    expect(day.energy).toBeCloseTo((60 + 1500 / 8) * 360 * 60, 6);
  });

  it('a pump too slow to lift the water still takes its power', () => {
    const day = report([{ id: 'a', start: 0, end: 60, ratio: 0.2 }], {
      pointAt: () => ({ kind: 'noFlow', power: 40 }),
      needs: [{ ...need, leastFlow: 0 }],
    });
    expect(day.energy).toBe(40 * 3600);
    expect(day.volumeMoved).toBe(0);
    expect(day.runMinutes).toBe(60);
    expect(day.needs[0]?.servedMinutes).toBe(0);
  });

  it('asks the pump once for each speed and never for off', () => {
    const asked: number[] = [];
    report(
      [
        { id: 'a', start: 0, end: 60, ratio: 0.4 },
        { id: 'b', start: 100, end: 160, ratio: 0.4 },
        { id: 'c', start: 200, end: 260, ratio: 0 },
      ],
      {
        pointAt: (ratio) => {
          asked.push(ratio);
          return inventedPump(ratio);
        },
      },
    );
    expect(asked).toEqual([0.4]);
  });

  it('equals the sum of its 1440 minutes taken one by one', () => {
    fc.assert(
      fc.property(anyDay, (blocks) => {
        const day = report(blocks);
        let volume = 0;
        let energy = 0;
        for (let minute = 0; minute < 1440; minute += 1) {
          const block = blocks.find((each) => spanHolds(each, minute));
          if (!block || block.ratio === 0) continue;
          volume += 0.006 * block.ratio * 60;
          energy += (60 + 1500 * block.ratio ** 3) * 60;
        }
        expect(day.volumeMoved).toBeCloseTo(volume, 8);
        expect(Math.abs(day.energy - energy)).toBeLessThanOrEqual(1e-9 * (1 + energy));
      }),
      { numRuns: 50 },
    );
  });

  it('adding a block never reduces the water moved', () => {
    fc.assert(
      fc.property(anyDay, fc.double({ min: 0, max: 1, noNaN: true }), (blocks, ratio) => {
        const gap = segmentsOf(blocks).find(({ blockId }) => blockId === null);
        if (!gap) return;
        const more = [...blocks, { id: 'more', start: gap.start, end: gap.end, ratio }];
        expect(report(more).volumeMoved).toBeGreaterThanOrEqual(report(blocks).volumeMoved - 1e-9);
      }),
    );
  });

  it('a pump that answers with no number is refused', () => {
    const pointAt = () => ({ ...inventedPump(1), flow: Number.NaN }) as ReturnType<Plan['pointAt']>;
    expect(() => report(oneSpeedDay({ ratio: 1, minutes: 60 }), { pointAt })).toThrow(CoreError);
  });
});

describe('needs of a day', () => {
  it('a need is met by its minutes at or above its flow', () => {
    const [served] = report([{ id: 'a', start: 0, end: 90, ratio: 0.5 }], { needs: [need] }).needs;
    expect(served).toMatchObject({
      servedMinutes: 90,
      shortMinutes: 30,
      longestRun: 90,
      met: false,
    });
  });

  it('a flow solved to within the slack of its need still serves it', () => {
    const blocks = [{ id: 'a', start: 0, end: 120, ratio: 0.5 * (1 - 1e-8) }];
    expect(report(blocks, { needs: [need] }).needs[0]?.met).toBe(true);
  });

  it('a flow below what it takes does not serve a need', () => {
    const blocks = [{ id: 'a', start: 0, end: 600, ratio: 0.49 }];
    expect(report(blocks, { needs: [need] }).needs[0]).toMatchObject({
      servedMinutes: 0,
      shortMinutes: 120,
      runs: [],
      met: false,
    });
  });

  it('a need that asks for no flow is served by the least there is', () => {
    const trickle = () => ({ ...inventedPump(1), flow: 0 });
    const blocks = [{ id: 'a', start: 0, end: 120, ratio: 0.1 }];
    const needs = [{ ...need, leastFlow: 0 }];
    expect(report(blocks, { pointAt: trickle, needs }).needs[0]?.met).toBe(true);
  });

  it('too much flow does not serve a need with a greatest flow', () => {
    const gentle = { ...need, leastFlow: 0.001, greatestFlow: 0.002 };
    const blocks = [{ id: 'a', start: 0, end: 120, ratio: 0.5 }];
    expect(report(blocks, { needs: [gentle] }).needs[0]?.servedMinutes).toBe(0);
  });

  it('only minutes inside the windows count, and a window may cross midnight', () => {
    const night = { ...need, windows: [{ start: 1380, end: 60 }] };
    const day = report([{ id: 'a', start: 1200, end: 30, ratio: 0.5 }], { needs: [night] });
    expect(day.needs[0]?.servedMinutes).toBe(90);
  });

  it('a run across midnight is one run', () => {
    const long = { ...need, shortestRun: 100 };
    const day = report([{ id: 'a', start: 1380, end: 60, ratio: 0.5 }], { needs: [long] });
    expect(day.needs[0]?.runs).toEqual([{ start: 1380, end: 60, minutes: 120, counted: true }]);
    expect(day.needs[0]?.met).toBe(true);
  });

  it('neighbouring blocks at other speeds make one run, runs too short do not count', () => {
    const long = { ...need, shortestRun: 100 };
    const blocks = [
      { id: 'a', start: 0, end: 60, ratio: 0.5 },
      { id: 'b', start: 60, end: 110, ratio: 0.9 },
      { id: 'c', start: 600, end: 690, ratio: 0.9 },
    ];
    const [served] = report(blocks, { needs: [long] }).needs;
    expect(served).toMatchObject({ servedMinutes: 110, longestRun: 110, shortMinutes: 10 });
    expect(served?.runs.map(({ counted }) => counted)).toEqual([true, false]);
  });

  it('round the clock is one run of 1440 minutes', () => {
    const all = { ...need, minutes: 1440, shortestRun: 1440 };
    const blocks = [{ id: 'a', start: 300, end: 300, ratio: 0.5 }];
    expect(report(blocks, { needs: [all] }).needs[0]?.met).toBe(true);
  });

  it.each([
    [{ leastFlow: -1 }, 'need skim.leastFlow is -1'],
    [{ minutes: -1 }, 'need skim.minutes is -1'],
    [{ shortestRun: -1 }, 'need skim.shortestRun is -1'],
    [{ windows: [{ start: 0, end: 1441 }] }, 'need skim.windows[0].end is 1441'],
  ])('a need out of its contract is refused by name: %j', (wrong, message) => {
    expect(() => report([], { needs: [{ ...need, ...wrong }] })).toThrow(message);
  });

  it('a greatest flow below the least is refused', () => {
    expect(() => report([], { needs: [{ ...need, greatestFlow: 0.001 }] })).toThrow(
      'need skim.greatestFlow is 0.001; it must be the least flow or more.',
    );
  });
});

describe('limits and quiet hours', () => {
  const limit: FlowLimit = { id: 'cover', greatestFlow: 0.004 };

  it('a crossing says from when to when and how far', () => {
    const blocks = [
      { id: 'a', start: 1380, end: 30, ratio: 0.8 },
      { id: 'b', start: 30, end: 60, ratio: 0.9 },
      { id: 'c', start: 60, end: 300, ratio: 0.5 },
    ];
    expect(report(blocks, { limits: [limit] }).crossings).toEqual([
      { limit, from: 1380, to: 60, minutes: 120, flow: 0.006 * 0.9, ratio: 0.9 },
    ]);
  });

  it('a speed above that of a limit crosses it, whatever the flow is today', () => {
    const stop = { ...limit, greatestFlow: 1, greatestRatio: 0.7 };
    const at = (ratio: number) =>
      report([{ id: 'a', start: 0, end: 60, ratio }], { limits: [stop] }).crossings;
    expect(at(0.7)).toEqual([]);
    expect(at(0.71)).toMatchObject([{ limit: stop, from: 0, to: 60, ratio: 0.71 }]);
  });

  it('a flow at the limit does not cross it', () => {
    const blocks = [{ id: 'a', start: 0, end: 60, ratio: 0.004 / 0.006 }];
    expect(report(blocks, { limits: [limit] }).crossings).toEqual([]);
  });

  it('every crossing tells its own greatest flow', () => {
    const blocks = [
      { id: 'a', start: 60, end: 120, ratio: 0.8 },
      { id: 'b', start: 600, end: 660, ratio: 0.9 },
    ];
    const flows = report(blocks, { limits: [limit] }).crossings.map(({ flow }) => flow);
    expect(flows).toEqual([0.006 * 0.8, 0.006 * 0.9]);
  });

  it('a pump at rest crosses no limit, were it one of no flow at all', () => {
    expect(report([], { limits: [{ id: 'shut', greatestFlow: 0 }] }).crossings).toEqual([]);
  });

  it('a limit or a quiet hour out of its contract is refused by name', () => {
    expect(() => report([], { limits: [{ id: 'cover', greatestFlow: -1 }] })).toThrow(
      'limit cover.greatestFlow is -1',
    );
    expect(() => report([], { quiet: [{ start: 1440, end: 0, ceiling: 1 }] })).toThrow(
      'quiet.start is 1440',
    );
    expect(() => report([], { quiet: [{ start: 0, end: 60, ceiling: -1 }] })).toThrow(
      'quiet.ceiling is -1',
    );
  });

  it('quiet hours are crossed only where they hold', () => {
    const quiet = { start: 1320, end: 420, ceiling: 0.5 };
    const blocks = [{ id: 'a', start: 360, end: 600, ratio: 0.8 }];
    expect(report(blocks, { quiet: [quiet] }).quietCrossings).toEqual([
      { quiet, from: 360, to: 420, minutes: 60, ratio: 0.8 },
    ]);
  });
});

describe('the clock is a ring', () => {
  it('turning blocks, windows and quiet hours together changes no total', () => {
    fc.assert(
      fc.property(
        anyDay,
        anyNeed,
        anySpan,
        fc.integer({ min: 0, max: 1439 }),
        (blocks, wanted, hours, by) => {
          const limits = [{ id: 'cover', greatestFlow: 0.004 }];
          const before = report(blocks, {
            needs: [wanted],
            limits,
            quiet: [{ ...hours, ceiling: 0.5 }],
          });
          const after = report(
            blocks.map((block) => shifted(block, by)),
            {
              needs: [{ ...wanted, windows: wanted.windows.map((each) => shifted(each, by)) }],
              limits,
              quiet: [{ ...shifted(hours, by), ceiling: 0.5 }],
            },
          );
          expect(after.volumeMoved).toBeCloseTo(before.volumeMoved, 8);
          expect(Math.abs(after.energy - before.energy)).toBeLessThan(1e-9 * (1 + before.energy));
          expect(after.runMinutes).toBe(before.runMinutes);
          expect(after.needs[0]?.servedMinutes).toBe(before.needs[0]?.servedMinutes);
          expect(after.needs[0]?.longestRun).toBe(before.needs[0]?.longestRun);
          expect(minutesOf(after.crossings)).toBe(minutesOf(before.crossings));
          expect(minutesOf(after.quietCrossings)).toBe(minutesOf(before.quietCrossings));
        },
      ),
    );
  });
});

function minutesOf(crossings: readonly { readonly minutes: number }[]): number {
  return crossings.reduce((sum, { minutes }) => sum + minutes, 0);
}

describe('watts while the pump is stopped', () => {
  const plan = {
    blocks: [{ id: 'a', start: 1320, end: 360, ratio: 0.5 }],
    pointAt: () =>
      ({
        kind: 'flowing',
        flow: 0.002,
        power: 150,
        suctionVelocity: 1,
        dischargeVelocity: 1,
      }) as const,
    volume: 60,
    needs: [],
    limits: [],
    quiet: [],
  };

  it('are energy, and no minutes the pump turns', () => {
    // By hand: 8 h at 150 W and 16 h at 5 W.
    const report = dayReport({ ...plan, standbyPower: 5 });
    expect(report.energy).toBeCloseTo(3600 * (8 * 150 + 16 * 5), 6);
    expect(report.runMinutes).toBe(480);
    expect(report.segments.find(({ kind }) => kind === 'off')?.power).toBe(5);
    expect(dayReport(plan).energy).toBeCloseTo(3600 * 8 * 150, 6);
  });

  it('are refused below zero', () => {
    expect(() => dayReport({ ...plan, standbyPower: -1 })).toThrow(CoreError);
  });
});
