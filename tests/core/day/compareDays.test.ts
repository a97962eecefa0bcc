import { describe, expect, it } from 'vitest';
import { compareDays } from '#core/day/compareDays.ts';
import type { Block } from '#core/day/day.ts';
import { type DayPlan, dayReport, type FlowLimit, type ServiceNeed } from '#core/day/dayReport.ts';
import { inventedPump } from './dayFixtures.ts';

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

// Expected figures in this file are arithmetic on the invented pump.
describe('two days line by line', () => {
  const limits = [{ id: 'cover', greatestFlow: 0.004 }];
  const quiet = [{ start: 1320, end: 420, ceiling: 0.5 }];
  const fast = report([{ id: 'a', start: 360, end: 600, ratio: 1 }], {
    needs: [need],
    limits,
    quiet,
  });
  const slow = report([{ id: 'a', start: 360, end: 420, ratio: 0.5 }], {
    needs: [need],
    limits,
    quiet,
  });

  it('every quantity, need and crossing has its line', () => {
    const lines = compareDays({ report: fast, cost: 2 }, { report: slow, cost: 0.5 });
    expect(lines.map(({ kind, id }) => (id === null ? kind : `${kind} ${id}`))).toEqual([
      'water',
      'turnovers',
      'runMinutes',
      'energy',
      'cost',
      'need skim',
      'limit cover',
      'quiet',
    ]);
  });

  it('a need that only the second day has stands with the needs, and each keeps to its own', () => {
    const two = [
      { id: 'cover', greatestFlow: 0.004 },
      { id: 'pipe', greatestFlow: 0.0055 },
    ];
    const blocks = [
      { id: 'a', start: 360, end: 480, ratio: 0.9 },
      { id: 'b', start: 480, end: 600, ratio: 1 },
    ];
    const needs = [need, { ...need, id: 'heat', leastFlow: 0.0055, minutes: 60 }];
    const second = report(blocks, { needs, limits: two, quiet });
    const lines = compareDays({ report: slow }, { report: second, cost: 1 });
    const told = lines.map(({ kind, id, first, second: other }) => [kind, id, first, other]);
    // Minutes by the clock: 240 above 0.004 m3/s, 120 of them above 0.0055; 60 in quiet hours.
    expect(told.slice(4)).toEqual([
      ['cost', null, null, 1],
      ['need', 'skim', 60, 240],
      ['need', 'heat', null, 120],
      ['limit', 'cover', 0, 240],
      ['limit', 'pipe', 0, 120],
      ['quiet', null, 0, 60],
    ]);
    expect(lines.at(-1)).toMatchObject({ firstWell: true, secondWell: false, difference: 60 });
    expect(lines.find(({ id }) => id === 'heat')).toMatchObject({
      firstWell: null,
      secondWell: true,
      difference: null,
      change: null,
    });
  });

  it('turned round, what the second day lacks is missing and its limits kept', () => {
    const lines = compareDays({ report: fast, cost: 2 }, { report: slow });
    const line = (kind: string) => lines.find((one) => one.kind === kind);
    expect(line('cost')).toMatchObject({ second: null, difference: null, change: null });
    expect(line('limit')).toMatchObject({ first: 240, second: 0, secondWell: true });
    expect(line('quiet')).toMatchObject({ first: 60, second: 0, secondWell: true, change: -1 });
    expect(compareDays({ report: fast }, { report: slow }).map(({ kind }) => kind)).not.toContain(
      'cost',
    );
  });

  it('a limit that only one day crosses shows 0 minutes in the other', () => {
    const line = compareDays({ report: slow }, { report: fast }).find(
      ({ kind }) => kind === 'limit',
    );
    expect(line).toEqual({
      kind: 'limit',
      id: 'cover',
      first: 0,
      second: 240,
      difference: 240,
      change: null,
      firstWell: true,
      secondWell: false,
    });
  });

  it('a price that one day lacks leaves a gap, not a zero', () => {
    const line = compareDays({ report: slow }, { report: fast, cost: 2 }).find(
      ({ kind }) => kind === 'cost',
    );
    expect(line).toMatchObject({ first: null, second: 2, difference: null, change: null });
  });

  it('a day differs from itself by nothing', () => {
    for (const line of compareDays({ report: fast, cost: 2 }, { report: fast, cost: 2 })) {
      expect(line.difference).toBe(0);
      expect(line.firstWell).toBe(line.secondWell);
    }
  });
});
