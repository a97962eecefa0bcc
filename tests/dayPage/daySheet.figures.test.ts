import { describe, expect, it } from 'vitest';
import type { Tariff } from '#core/tariff/tariff.ts';
import { benchOf } from '#dayPage/day/bench.ts';
import { bandsOn, flatOutDay, usualDay, workOut } from '#dayPage/day/figures.ts';
import { costSteps, merged, stepPath, stepsOf } from '#dayPage/day/steps.ts';
import { defaultPad, lodgePad, rigPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { block, handBench, limit, need } from './daySheetFixtures.ts';

const date = { year: 2027, month: 7, day: 14 };
/** Half speed from 22:00 to 06:00, full speed from 12:00 to 14:00. */
const day = [block('night', 1320, 360, 1500), block('noon', 720, 840, 3000)];

/*
 * Expected values are reckoned by hand from the definitions of flow, energy and price
 * (NIST SP 811, 2008): 8 h at 0.002 m3/s and 212.5 W, 2 h at 0.004 m3/s and 1000 W.
 */
describe('a day worked out', () => {
  const worked = workOut(handBench, day, date);

  it('moves flow times time', () => {
    expect(worked.report.volumeMoved).toBeCloseTo(8 * 3600 * 0.002 + 2 * 3600 * 0.004, 9);
  });

  it('takes power times time', () => {
    expect(worked.report.energy / 3.6e6).toBeCloseTo(8 * 0.2125 + 2 * 1, 9);
  });

  it('turns the pool over so often, and filters 1 − e⁻ⁿ of it (Gage and Bidwell 1926)', () => {
    expect(worked.turnovers).toBeCloseTo(86.4 / 50, 9);
    expect(worked.filtered).toBeCloseTo(1 - Math.exp(-86.4 / 50), 9);
  });

  it('costs energy times price and the daily charge, over 1, 31 and 365 days', () => {
    const daily = 3.7 * 0.2 + 0.1;
    expect(worked.prices?.day.cost).toBeCloseTo(daily, 9);
    expect(worked.prices?.month.cost).toBeCloseTo(31 * daily, 9);
    expect(worked.prices?.season.cost).toBeCloseTo(365 * daily, 8);
    expect(worked.prices?.year.cost).toBeCloseTo(365 * daily, 8);
  });

  it('counts a block without a speed as off', () => {
    const unset = { ...block('unset', 840, 900), speed: null };
    expect(workOut(handBench, [...day, unset], date).report.runMinutes).toBe(600);
  });

  it('gives no turnovers without a volume and no price without a tariff', () => {
    const bare = workOut({ ...handBench, volume: null, tariff: null }, day, date);
    expect([bare.turnovers, bare.filtered, bare.prices]).toEqual([null, null, null]);
    expect(bare.report.volumeMoved).toBeCloseTo(86.4, 9);
  });

  it('names every need by what is missing and every crossing by its time', () => {
    const { report } = workOut({ ...handBench, needs: [need()], limits: [limit()] }, day, date);
    expect(report.needs[0]).toMatchObject({ servedMinutes: 120, shortMinutes: 60, met: false });
    expect(report.crossings[0]).toMatchObject({ from: 720, to: 840 });
  });
});

describe('the season of a date', () => {
  const allWeek = (price: number) => [
    {
      id: 'all',
      name: '',
      weekdays: [0, 1, 2, 3, 4, 5, 6],
      bands: [{ start: 0, end: 1440, price }],
    },
  ];
  const tariff: Tariff = {
    currency: '$',
    dailyCharge: 0,
    seasons: [
      { id: 'summer', name: 'Summer', from: { month: 4, day: 1 }, dayTypes: allWeek(0.4) },
      { id: 'winter', name: 'Winter', from: { month: 10, day: 1 }, dayTypes: allWeek(0.1) },
    ],
  };

  it('that began the year before is priced from there: 182 days to the end of March 2027', () => {
    const { prices } = workOut({ ...handBench, tariff }, day, { year: 2027, month: 2, day: 1 });
    expect(prices?.season.days).toBe(182);
    expect(prices?.season.cost).toBeCloseTo(182 * 3.7 * 0.1, 8);
  });

  it('gives the bands of that day', () => {
    expect(bandsOn(tariff, { year: 2027, month: 5, day: 1 })).toEqual([
      { start: 0, end: 1440, price: 0.4 },
    ]);
  });
});

describe('the days to compare with', () => {
  it('the usual day is 3 h high, 6 h middle and low for the rest (common practice, no source)', () => {
    const usual = usualDay(handBench);
    const lengths = usual.map(({ start, end }) => (end - start + 1440) % 1440);
    expect(lengths).toEqual([180, 360, 900]);
    expect(usual.map(({ speed }) => speed)).toEqual([2610, 1740, 1050]);
  });

  it('keeps its speeds within the pump', () => {
    const speeds = { reference: 3000, least: 1200, top: 1500, step: 0 };
    expect(usualDay({ ...handBench, speeds }).map(({ speed }) => speed)).toEqual([
      1305, 1200, 1200,
    ]);
  });

  it('flat out runs in whole minutes just long enough for the same water', () => {
    // 86.4 m3 at 0.004 m3/s take 21 600 s, or 360 min, from 08:00.
    expect(flatOutDay(handBench, 86.4)).toMatchObject([{ start: 480, end: 840, speed: 3000 }]);
    expect(flatOutDay(handBench, 86.41)).toMatchObject([{ start: 480, end: 841 }]);
  });

  it('flat out runs all day when the water asks for more', () => {
    expect(flatOutDay(handBench, 1e6)).toMatchObject([{ start: 480, end: 480 }]);
  });
});

describe('step lines', () => {
  const worked = workOut(handBench, day, date);
  const x = { min: 0, max: 1440 };

  it('hold each value until the next and join where blocks meet', () => {
    const steps = stepsOf(({ flow }) => flow)(worked.report);
    expect(stepPath(steps, x, { min: 0, max: 0.004 })).toBe(
      'M0.0,500.0H250.0V1000.0H500.0V0.0H583.3V1000.0H916.7V500.0H1000.0',
    );
  });

  it('of cost are cut where the price changes', () => {
    const bands = [
      { start: 0, end: 780, price: 0.1 },
      { start: 780, end: 1440, price: 0.3 },
    ];
    const noon = costSteps(bands)(worked.report).filter(({ start }) => start >= 720 && start < 840);
    // 1 kW at 0.10 and at 0.30 per kWh.
    expect(noon).toEqual([
      { start: 720, end: 780, value: 0.1 },
      { start: 780, end: 840, value: 0.3 },
    ]);
  });

  it('of one value that meet are one', () => {
    const steps = [
      { start: 0, end: 10, value: 1 },
      { start: 10, end: 20, value: 1 },
      { start: 30, end: 40, value: 1 },
    ];
    expect(merged(steps)).toEqual([
      { start: 0, end: 20, value: 1 },
      { start: 30, end: 40, value: 1 },
    ]);
  });
});

describe('the bench of a pad', () => {
  it('stands for each example pad, which lacks nothing', () => {
    for (const pad of [defaultPad, lodgePad, rigPad]) {
      const { bench, blockProblems } = benchOf(pad);
      expect(bench).not.toBeNull();
      expect(blockProblems).toEqual([]);
    }
    expect(benchOf(defaultPad).missing).toEqual([]);
  });

  it('of an empty pad is missing, and says what is missing', () => {
    const { bench, missing } = benchOf(emptyPad());
    expect(bench).toBeNull();
    expect(missing.map(({ code }) => code)).toContain('pumpUnknown');
  });
});
