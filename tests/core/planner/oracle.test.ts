import { beforeAll, describe, expect, it } from 'vitest';
import { cheapestDay } from '#core/planner/cheapestDay.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import { type Highs, openHighs, oracleMinutes, oracleSlots } from '../../oracle/cheapestDay.ts';
import { anyCase, ordinaryCase, seeded } from './cases.ts';

/*
 * Every number here is checked against HiGHS (npm highs), on programmes that tests/oracle writes
 * from the statement of the problem. CHEAPEST_DAY_CASES sets how many random days are tried.
 */
const cases = Number(process.env['CHEAPEST_DAY_CASES'] ?? 140);
const share = (part: number) => Math.max(1, Math.round(cases * part));

let highs: Highs;
beforeAll(async () => {
  highs = await openHighs();
});

/** What the two solvers may differ by: HiGHS stops at 1e-7 of a row. */
const slack = (cost: number) => 2e-6 * Math.abs(cost) + 1e-7;

interface Tally {
  days: number;
  impossible: number;
  widest: number;
}

/** Bound and cost lie on the right sides of the oracle's optimum; gives back how wide the gap is. */
function compare(inputs: CheapestDayInputs, name: string, integerMinutes: Tally): void {
  const result = cheapestDay(inputs);
  const shares = oracleMinutes(highs, inputs, false);
  integerMinutes.days += 1;
  if (result.kind !== 'found') {
    integerMinutes.impossible += 1;
    // Where parts of minutes would do, whole ones must not.
    if (shares !== null) expect(oracleMinutes(highs, inputs, true)?.cost ?? null, name).toBeNull();
    expect(result.kind, name).toBe('none');
    return;
  }
  if (shares === null) throw new Error(`${name}: HiGHS finds no day`);
  expect(result.cost, name).toBeGreaterThanOrEqual(shares.cost - slack(shares.cost));
  expect(result.bound, name).toBeGreaterThanOrEqual(shares.cost - slack(shares.cost));
  if (result.bound > shares.cost + slack(shares.cost)) {
    const whole = oracleMinutes(highs, inputs, true);
    expect(result.bound, name).toBeLessThanOrEqual((whole?.cost ?? 0) + slack(shares.cost));
  }
  integerMinutes.widest = Math.max(integerMinutes.widest, result.gap);
}

const newTally = (): Tally => ({ days: 0, impossible: 0, widest: 0 });
/** A long run says what it found. */
function told(what: string, found: Readonly<Record<string, number>>): void {
  if (cases <= 140) return;
  const counts = Object.entries(found).map(([name, count]) => `${name} ${count}`);
  process.stdout.write(`${what}: ${counts.join(', ')}\n`);
}

const long = { timeout: 3_600_000 };

describe('against a general solver', () => {
  it('ordinary days: within 0.01 % of the proven bound', long, () => {
    const integerMinutes = newTally();
    for (let seed = 0; seed < share(0.4); seed += 1)
      compare(ordinaryCase(seed), `ordinary ${seed}`, integerMinutes);
    told('ordinary', { ...integerMinutes });
    expect(integerMinutes.widest).toBeLessThanOrEqual(1e-4);
  });

  it('any days: within 0.1 %, and impossible only where the solver says so', long, () => {
    const integerMinutes = newTally();
    for (let seed = 0; seed < share(0.6); seed += 1)
      compare(
        anyCase(seed, { grid: 1, speeds: [1, 58], runs: false }),
        `any ${seed}`,
        integerMinutes,
      );
    told('any', { ...integerMinutes });
    expect(integerMinutes.widest).toBeLessThanOrEqual(1e-3);
    expect(integerMinutes.impossible).toBeGreaterThan(0);
  });

  it(
    'a bound is never above the price of whole minutes, where branches were left out early',
    long,
    () => {
      const integerMinutes = newTally();
      for (const seed of [2570, 302, 90])
        compare(
          anyCase(seed, { grid: 1, speeds: [1, 58], runs: false }),
          `any ${seed}`,
          integerMinutes,
        );
      expect(integerMinutes.widest).toBeLessThanOrEqual(1e-3);
    },
  );

  it('on an hourly grid the exact optimum of a programme in whole hours', long, () => {
    let [days, widest] = [0, 0];
    for (let seed = 0; seed < share(0.15); seed += 1) {
      const inputs = {
        ...anyCase(seed, { grid: 60, speeds: [1, 6], runs: false }),
        minuteStep: 60,
      };
      const whole = oracleMinutes(highs, inputs, true, 60);
      const result = cheapestDay(inputs);
      expect(result.kind, `hourly ${seed}`).toBe(whole === null ? 'none' : 'found');
      if (result.kind !== 'found' || whole === null || whole.cost > 1e9) continue;
      days += 1;
      const off = Math.abs(result.cost - whole.cost);
      widest = Math.max(widest, off / Math.max(Math.abs(whole.cost), 1e-3));
    }
    told('hourly', { days, widest });
    expect(days).toBeGreaterThan(3);
    expect(widest).toBeLessThan(2e-6);
  });
});

describe('few changes, against a slot programme with binary speeds', () => {
  it.each([
    { grid: 120, part: 0.08, most: 6 },
    { grid: 60, part: 0.03, most: 4 },
  ])('on a grid of $grid minutes the exact optimum', long, ({ grid, part, most }) => {
    let days = 0;
    for (let seed = 0; seed < share(part); seed += 1) {
      const inputs = {
        ...anyCase(seed, { grid, speeds: [2, 5], runs: false }),
        minuteStep: grid,
        mostChanges: seeded(seed + 7).whole(1, most),
      };
      const slots = oracleSlots(highs, inputs, grid);
      const result = cheapestDay(inputs);
      expect(result.kind, `few ${seed}`).toBe(slots === null ? 'none' : 'found');
      if (result.kind !== 'found' || slots === null || slots.cost > 1e9) continue;
      days += 1;
      expect(result.gap, `few ${seed}`).toBeLessThanOrEqual(1e-6);
      expect(Math.abs(result.cost - slots.cost), `few ${seed}`).toBeLessThan(slack(slots.cost));
    }
    told(`every ${grid} minutes`, { days });
    expect(days).toBeGreaterThan(1);
  });

  it(
    'to the minute it is never dearer than on the grid, and within 0.1 % of its bound but for a few',
    long,
    () => {
      let [days, wide] = [0, 0];
      for (let seed = 0; seed < share(0.02); seed += 1) {
        const inputs = { ...ordinaryCase(seed + 20, 4), mostChanges: 4 };
        // Every span of these days begins and ends on the hour.
        const slots = oracleSlots(highs, inputs, 60);
        const result = cheapestDay(inputs);
        if (result.kind === 'none') {
          expect(slots, `few ${seed}`).toBeNull();
          continue;
        }
        if (result.kind !== 'found') throw new Error(`few ${seed}: ${result.kind}`);
        // Beyond its patience the search settles for 0.2 %.
        expect(result.gap).toBeLessThanOrEqual(2e-3);
        wide += Number(result.gap > 1e-3);
        days += 1;
        if (slots !== null) expect(result.cost).toBeLessThanOrEqual(slots.cost * (1 + 1e-3));
      }
      told('to the minute', { days, wide });
      expect(wide).toBeLessThanOrEqual(days / 20);
    },
  );
});
