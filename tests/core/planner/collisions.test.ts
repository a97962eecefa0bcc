import { describe, expect, it } from 'vitest';
import { cheapestDay } from '#core/planner/cheapestDay.ts';
import { cheapestDayCollisions } from '#core/planner/collisions.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import { anyCase } from './cases.ts';

const hour = 60;

/** One pump of three speeds, 0.002, 0.003 and 0.004 m3/s. Invented. */
const asked: CheapestDayInputs = {
  speeds: [0.5, 0.75, 1].map((ratio) => ({ ratio, flow: 0.004 * ratio, power: 900 * ratio ** 3 })),
  mayStop: true,
  leastVolume: 0,
  needs: [],
  limits: [],
  quiet: [],
  prices: [{ start: 0, end: 1440, price: 0.2 }],
};

const need = (id: string, leastFlow: number, minutes: number, start: number, end: number) => ({
  id,
  leastFlow,
  minutes,
  windows: [{ start: start * hour, end: end * hour }],
  shortestRun: 0,
});

// The figures expected are arithmetic: flow x time, and the hours of the clock.
describe('what cannot be had together', () => {
  it('more water than the pump moves in a day', () => {
    const found = cheapestDayCollisions({ ...asked, leastVolume: 400 });
    expect(found).toMatchObject([{ kind: 'volume' }]);
    expect(found[0]?.kind === 'volume' && found[0].shortVolume).toBeCloseTo(
      400 - 0.004 * 86_400,
      6,
    );
  });

  it('water against a limit on the flow, with the flow it would take', () => {
    const limits = [
      { id: 'filter', greatestFlow: 0.0025 },
      { id: 'heater', greatestFlow: 0.0039 },
    ];
    const found = cheapestDayCollisions({ ...asked, limits, leastVolume: 200 });
    expect(found).toMatchObject([
      { kind: 'volume' },
      { kind: 'limit', limitId: 'filter', flowWanted: 0.003 },
    ]);
    expect(found[0]?.kind === 'volume' && found[0].shortVolume).toBeCloseTo(
      200 - 0.002 * 86_400,
      6,
    );
  });

  it('two needs that cannot share their hours, whatever else is asked for', () => {
    const gentle = { ...need('solar', 0.002, 180, 9, 13), greatestFlow: 0.0025 };
    const needs = [gentle, need('cleaner', 0.004, 120, 9, 13), need('skimming', 0.002, 240, 8, 20)];
    expect(cheapestDayCollisions({ ...asked, needs, leastVolume: 50 })).toEqual([
      { kind: 'need', needId: 'solar', shortMinutes: expect.closeTo(60, 6) },
      { kind: 'need', needId: 'cleaner', shortMinutes: expect.closeTo(60, 6) },
    ]);
  });

  it('a need against quiet hours, with the ceiling it would take', () => {
    const needs = [need('cleaner', 0.003, 120, 20, 23)];
    const quiet = [
      { start: 6 * hour, end: 7 * hour, ceiling: 0.5 },
      { start: 21 * hour, end: 6 * hour, ceiling: 0.6 },
    ];
    expect(cheapestDayCollisions({ ...asked, needs, quiet })).toEqual([
      { kind: 'need', needId: 'cleaner', shortMinutes: expect.closeTo(60, 6) },
      { kind: 'quiet', place: 1, ceilingWanted: 0.75 },
    ]);
  });

  it('a pump that may not stop against quiet hours below its slowest speed', () => {
    const quiet = [{ start: 0, end: 6 * hour, ceiling: 0.3 }];
    expect(cheapestDayCollisions({ ...asked, quiet, mayStop: false })).toEqual([
      { kind: 'quiet', place: 0, ceilingWanted: 0.5 },
      { kind: 'mustRun' },
    ]);
  });

  it('a window shorter than the shortest run', () => {
    const needs = [{ ...need('cleaner', 0.003, 30, 9, 10), shortestRun: 90 }];
    expect(cheapestDayCollisions({ ...asked, needs })).toMatchObject([
      { kind: 'need', needId: 'cleaner' },
    ]);
  });

  it('nothing, where a day is found', () => {
    expect(cheapestDayCollisions({ ...asked, leastVolume: 100 })).toEqual([]);
  });

  it('too few changes, with how many are enough', () => {
    const needs = [need('cleaner', 0.004, 60, 9, 10), need('solar', 0.002, 60, 14, 15)];
    const gentle = needs.map((each) => ({ ...each, greatestFlow: each.leastFlow }));
    const result = cheapestDay({ ...asked, needs: gentle, mostChanges: 1 });
    expect(result).toMatchObject({ kind: 'none', collision: [], changesEnough: 4 });
  });
});

describe('whatever collides', () => {
  it('is settled when any one of it gives way by what it says', () => {
    let seen = 0;
    for (let seed = 0; seed < 120; seed += 1) {
      const inputs = anyCase(seed, { grid: 1, speeds: [2, 20], runs: false });
      const found = cheapestDayCollisions(inputs);
      const only = {
        ...inputs,
        needs: inputs.needs.filter(({ id }) =>
          found.some((each) => each.kind === 'need' && each.needId === id),
        ),
        leastVolume: found.some(({ kind }) => kind === 'volume') ? inputs.leastVolume : 0,
        limits: inputs.limits.filter(() => found.some(({ kind }) => kind === 'limit')),
        quiet: inputs.quiet.filter((_, place) =>
          found.some((each) => each.kind === 'quiet' && each.place === place),
        ),
        mayStop: !found.some(({ kind }) => kind === 'mustRun'),
      };
      for (const member of found) {
        if (member.kind !== 'need') continue;
        seen += 1;
        const needs = only.needs.map((each) =>
          each.id === member.needId
            ? {
                ...each,
                minutes: Math.max(0, Math.floor(each.minutes - member.shortMinutes + 1e-6)),
              }
            : each,
        );
        expect(cheapestDayCollisions(only).length, `seed ${seed}`).toBeGreaterThan(0);
        expect(cheapestDayCollisions({ ...only, needs }), `seed ${seed}`).toEqual([]);
      }
    }
    expect(seen).toBeGreaterThan(10);
  });
});
