import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayReport } from '#core/day/dayReport.ts';
import { wirePower } from '#core/pump/power.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import { yearReport } from '#core/year/year.ts';
import { benchOf } from '#dayPage/day/bench.ts';
import { workOut } from '#dayPage/day/figures.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { newBlock } from '#pad/document/parts.ts';
import type { Pad, PadBlock } from '#pad/document/schema.ts';
import type { Problem } from '#pad/messages/problems.ts';
import { padModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';

// Our own rule: a day is one day whoever works it out. No outside source.

const date = { year: 2027, month: 7, day: 14 };
const { leastSpeed, topSpeed } = ownerPad.pump;
if (leastSpeed === null || topSpeed === null) throw new Error('the example has no speeds');

/** The example pad with this day, with nothing that changes through the year. */
function padWith(blocks: readonly PadBlock[], standbyPower: number | null = null): Pad {
  return {
    ...ownerPad,
    pump: { ...ownerPad.pump, standbyPower },
    day: { ...ownerPad.day, date, blocks, oldBlocks: blocks },
    year: {
      ...ownerPad.year,
      plans: [],
      waterTemperatures: [],
      frostHours: [],
      cleaningDays: null,
      frostSpeed: null,
    },
  };
}

function pricesOf(pad: Pad) {
  const model = padModel(pad);
  const { bench } = benchOf(pad);
  const { tariff } = model;
  const year = yearPlanOf(pad, model, { year: date.year });
  const season: Pad['year']['plans'][number] = {
    id: 'all',
    name: '',
    from: { month: 1, day: 1 },
    blocks: [...pad.day.blocks],
    withoutNeeds: [],
    turnovers: null,
  };
  const planned = { ...pad, year: { ...pad.year, plans: [season] } };
  const byPlan = yearPlanOf(planned, padModel(planned), { year: date.year });
  if (tariff === null || bench === null || year === null || byPlan === null) {
    throw new Error('the example has no price');
  }
  const byModel = (blocks: typeof model.blocks) => {
    const plan = model.planOf(blocks);
    if (plan === null) throw new Error('the example cannot be planned');
    return priceDay(tariff, date, dayReport(plan).segments).cost;
  };
  const onDate = (of: typeof year) =>
    yearReport(of).byDay.find((day) => day.date.month === 7 && day.date.day === 14)?.cost;
  return {
    sheet: workOut(bench, pad.day.blocks, date).prices?.day.cost,
    model: byModel(model.blocks),
    old: byModel(model.oldBlocks),
    year: onDate(year),
    season: onDate(byPlan),
  };
}

function same(pad: Pad): number {
  const { sheet = Number.NaN, ...others } = pricesOf(pad);
  for (const [by, price] of Object.entries(others)) expect(price, by).toBeCloseTo(sheet, 9);
  return sheet;
}

function codes(problems: readonly Problem[]) {
  return problems.map(({ code, path }) => `${code} ${path.join('/')}`);
}

describe('a day has one price, whoever asks', () => {
  test('with blocks faster and slower than the pump, which run at its limits', () => {
    const wished = [newBlock('a', 0, 300, 9000), newBlock('b', 600, 900, 50)];
    const held = [newBlock('a', 0, 300, topSpeed), newBlock('b', 600, 900, leastSpeed)];
    expect(same(padWith(wished))).toBeCloseTo(same(padWith(held)), 9);
  });

  test('with blocks that claim the same minutes, of which the first keeps them', () => {
    const wished = [newBlock('a', 0, 300, 2000), newBlock('b', 200, 900, 1500)];
    const held = [newBlock('a', 0, 300, 2000), newBlock('b', 300, 900, 1500)];
    expect(same(padWith(wished))).toBeCloseTo(same(padWith(held)), 9);
  });

  test('with watts drawn while the pump is stopped', () => {
    const blocks = [newBlock('a', 480, 960, 2000), newBlock('b', 1000, 1060, 0)];
    const tariffless = same(padWith(blocks, 0));
    expect(same(padWith(blocks, 12))).toBeGreaterThan(tariffless);
  });

  test('whatever the blocks and whatever it draws while stopped', () => {
    const minute = fc.integer({ min: 0, max: 1439 });
    const speed = fc.option(fc.integer({ min: 0, max: 10_000 }));
    const block = fc.tuple(minute, minute, speed);
    fc.assert(
      fc.property(
        fc.array(block, { maxLength: 5 }),
        fc.option(fc.double({ min: 0, max: 200, noNaN: true })),
        (given, standby) => {
          const blocks = given.map(([start, end, rpm], at) => newBlock(`b${at}`, start, end, rpm));
          same(padWith(blocks, standby));
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('watts while the pump is stopped', () => {
  const blocks = [newBlock('a', 480, 960, 2000)];
  const workedWith = (standby: number | null) => {
    const { bench } = benchOf(padWith(blocks, standby));
    if (bench === null) throw new Error('the example has no bench');
    return { bench, worked: workOut(bench, blocks, date) };
  };

  test('are energy of the day, and no minutes of it', () => {
    const [without, having] = [workedWith(null).worked.report, workedWith(10).worked.report];
    // 16 hours stopped at 10 W are 576 kJ.
    expect(having.energy - without.energy).toBeCloseTo(16 * 3600 * 10, 6);
    expect(having.runMinutes).toBe(without.runMinutes);
    expect(having.volumeMoved).toBe(without.volumeMoved);
  });

  test('are in the price of month, season and year', () => {
    const [without, having] = [workedWith(null).worked.prices, workedWith(10).worked.prices];
    for (const of of ['month', 'season', 'year'] as const) {
      const more = (having?.[of].energy ?? 0) - (without?.[of].energy ?? 0);
      expect(more).toBeCloseTo((having?.[of].days ?? 0) * 16 * 3600 * 10, 3);
    }
  });

  test('are what the running pad draws at no speed, and what the bench tells', () => {
    const { running, standbyPower } = padModel(padWith(blocks, 10));
    expect(running?.powerAt(0)).toBe(10);
    expect(running?.runningAt(0)).toEqual({ kind: 'noFlow', power: 10 });
    expect(running && wirePower(running.power, 0, 0)).toBe(10);
    expect(standbyPower).toBe(10);
    expect(workedWith(10).bench.standbyPower).toBe(10);
    expect(workedWith(null).bench.standbyPower).toBe(0);
  });

  test('are said to be taken as 0 where nobody gave them and the day stops the pump', () => {
    const said = (pad: Pad) => padModel(pad).assumptions.map(({ code }) => code);
    expect(said(padWith(blocks))).toContain('standbyNone');
    expect(said(padWith(blocks, 0))).not.toContain('standbyNone');
    expect(said(padWith([newBlock('a', 0, 0, 2000)]))).not.toContain('standbyNone');
    expect(said(padWith([]))).not.toContain('standbyNone');
  });
});

describe('speeds outside the pump’s range', () => {
  test('are flagged in the days of the seasons as on the sheet', () => {
    const pad: Pad = {
      ...ownerPad,
      year: {
        ...ownerPad.year,
        plans: [
          {
            id: 'all',
            name: '',
            from: { month: 1, day: 1 },
            blocks: [newBlock('a', 0, 300, 9000), newBlock('b', 200, 900, 50)],
            withoutNeeds: [],
            turnovers: null,
          },
        ],
      },
    };
    expect(codes(padModel(pad).problems)).toEqual([
      'speedTooFast year/plans/0/blocks/0/speed',
      'speedTooSlow year/plans/0/blocks/1/speed',
      'blockOverlap year/plans/0/blocks/1',
    ]);
  });

  test('in frost run at the limit, and are flagged', () => {
    const frosty = (frostSpeed: number): Pad => ({
      ...padWith([newBlock('a', 480, 960, 2000)]),
      year: { ...ownerPad.year, plans: [], frostHours: Array(12).fill(30), frostSpeed },
    });
    const costOf = (pad: Pad) => {
      const plan = yearPlanOf(pad, padModel(pad), { year: date.year });
      if (plan === null) throw new Error('the example has no year');
      return yearReport(plan).cost;
    };
    expect(costOf(frosty(9000))).toBeCloseTo(costOf(frosty(topSpeed)), 6);
    expect(costOf(frosty(50))).toBeCloseTo(costOf(frosty(leastSpeed)), 6);
    expect(codes(padModel(frosty(9000)).problems)).toEqual(['speedTooFast year/frostSpeed']);
    expect(codes(padModel(frosty(50)).problems)).toEqual(['speedTooSlow year/frostSpeed']);
    expect(codes(padModel(frosty(0)).problems)).toEqual([]);
  });

  test('for priming and an override are flagged', () => {
    const pump = { ...ownerPad.pump, primingSpeed: 9000, overrideSpeed: 50 };
    expect(codes(padModel({ ...ownerPad, pump }).problems)).toEqual([
      'speedTooFast pump/primingSpeed',
      'speedTooSlow pump/overrideSpeed',
    ]);
  });
});
