import { describe, expect, it } from 'vitest';
import { findOverlaps, minutesAt } from '#core/day/day.ts';
import { fitPower, type PowerReading } from '#core/fit/fitPower.ts';
import { meanVelocity } from '#core/hydraulics/pipe.ts';

// One installation with 2 in plumbing on 230 V: common practice, no source. Used in tests only.
const litresPerGallon = 3.785_411_784; // exact, NIST SP 811 B.8
const flowOf = (gpm: number) => (gpm * litresPerGallon) / 60_000;
const facts = [
  { rpm: 3450, gpm: 102.5, watts: 2300 },
  { rpm: 3000, gpm: 86, watts: 1530, amps: 6.7 },
  { rpm: 2000, gpm: 55, watts: 505, amps: 2.3 }, // "just over 500 W"
  { rpm: 1000, gpm: 29.5, watts: 130, amps: 1 }, // "a little under 30 gpm"
] as const;
const reading = (at: 0 | 1 | 2 | 3): PowerReading => ({
  id: `${facts[at].rpm} rpm`,
  ratio: facts[at].rpm / 3450,
  power: facts[at].watts,
});
const lowestRatio = 1000 / 3450;

describe('facts of the trade (common practice, no source)', () => {
  it('a fit to the highest and the lowest power predicts the two between within 2 %', () => {
    const fit = fitPower([reading(0), reading(3)]);
    for (const between of [reading(1), reading(2)]) {
      expect(Math.abs(fit.powerAt(between.ratio) / between.power - 1)).toBeLessThan(0.02);
    }
  });

  it('a fit to the two highest misses the lowest by nearly a fifth', () => {
    const miss = 1 - fitPower([reading(0), reading(1)]).powerAt(lowestRatio) / 130;
    expect(miss).toBeGreaterThan(0.17);
    expect(miss).toBeLessThan(0.2);
  });

  it.each([0.01, 0.02, 0.03, 0.05])(
    'the band of the fit to the two highest holds the lowest when watts are good to %f',
    (share) => {
      const band = fitPower([reading(0), reading(1)], { share }).bandAt(lowestRatio);
      expect(band.low).toBeLessThan(130);
      expect(band.high).toBeGreaterThan(130);
    },
  );

  it('the lowest speed is named as the reading that would narrow the two-highest fit most', () => {
    const fit = fitPower([reading(0), reading(1)], { leastRatio: lowestRatio });
    expect(fit.narrowing.ratio).toBeCloseTo(lowestRatio, 12);
    expect(fit.narrowing.widthAfter).toBeLessThan(fit.narrowing.widthBefore / 2);
  });

  it('flow is proportional to speed within 10 %', () => {
    for (const { rpm, gpm } of facts) {
      const proportional = (facts[0].gpm * rpm) / facts[0].rpm;
      expect(Math.abs(gpm / proportional - 1)).toBeLessThan(0.1);
    }
  });

  it('the power factor the currents imply falls, and is below 0.6 at the lowest speed', () => {
    const factors = facts.flatMap((fact) =>
      'amps' in fact ? [fact.watts / (230 * fact.amps)] : [],
    );
    expect([...factors].sort((a, b) => b - a)).toEqual(factors);
    expect(factors.at(-1)).toBeLessThan(0.6);
  });

  it('55 gpm in 2 in is 6 ft/s in Schedule 80 and 12 % less in Schedule 40', () => {
    // Least walls of 2 in pipe, ASTM D1785: outside 2.375 in, 0.218 in and 0.154 in.
    const metresPerInch = 0.0254;
    const feetPerSecond = (wall: number) =>
      meanVelocity(flowOf(55), (2.375 - 2 * wall) * metresPerInch) / 0.3048;
    expect(feetPerSecond(0.218)).toBeCloseTo(5.98, 2);
    expect(feetPerSecond(0.154)).toBeCloseTo(5.26, 2);
    expect(1 - feetPerSecond(0.154) / 6).toBeCloseTo(0.12, 2);
  });

  it('a usual day of 2-4 h high and 4-8 h middle leaves 12-18 h low', () => {
    for (const [high, middle, low] of [
      [2, 4, 18],
      [4, 8, 12],
    ] as const) {
      const blocks = [
        { id: 'high', start: 8 * 60, end: (8 + high) * 60, ratio: 1 },
        { id: 'middle', start: (8 + high) * 60, end: (8 + high + middle) * 60, ratio: 0.6 },
        { id: 'low', start: (8 + high + middle) * 60, end: 8 * 60, ratio: 0.3 },
      ];
      // Ends are minutes of the day, so one past midnight is told by the clock.
      const onTheClock = blocks.map((block) => ({
        ...block,
        start: block.start % 1440,
        end: block.end % 1440,
      }));
      expect(findOverlaps(onTheClock)).toEqual([]);
      expect([1, 0.6, 0.3].map((ratio) => minutesAt(onTheClock, ratio) / 60)).toEqual([
        high,
        middle,
        low,
      ]);
    }
  });
});
