import { describe, expect, test } from 'vitest';
import { capstonePad } from '#course/CapstoneSteps/capstonePad.ts';
import { capstoneSteps } from '#course/CapstoneSteps/steps.ts';
import { workCapstone } from '#course/CapstoneSteps/worked.ts';
import { judge } from '#course/Check/question.ts';
import { padFragment, parseFragment } from '#pad/document/link.ts';
import { padModel } from '#pad/model/assemble.ts';
import { metric, us } from '#units/choice.ts';

const gpm = (231 * 0.0254 ** 3) / 60; // exact, NIST SP 811
const foot = 0.3048; // exact, NIST SP 811

const steps = capstoneSteps(us);
const step = (id: string) => {
  const found = steps.find((one) => one.id === id);
  if (found === undefined) throw new RangeError(`no step ${id}`);
  return found;
};

describe('the capstone by hand', () => {
  test('22 psi, 6 inHg and 2 ft make about 59.6 ft', () => {
    // Common practice: 2.31 ft/psi and 1.13 ft/inHg, off by up to 0.6 % in warm water.
    const byHand = 22 * 2.31 + 6 * 1.13 + 2;
    expect(step('head').answer / foot / byHand).toBeCloseTo(1, 2);
    expect(judge(step('head'), byHand * foot).right).toBe(true);
  });

  test('the curve has that head between its points of 60 and 80 gpm', () => {
    // Straight line between (60, 65.5) and (80, 53): 69.4 gpm; the smooth curve lies a little outside.
    const byHand = 60 + ((65.5 - 59.6) / (65.5 - 53)) * 20;
    expect(judge(step('flow'), byHand * gpm).right).toBe(true);
    expect(step('flow').answer / gpm).toBeGreaterThan(byHand);
  });

  test('speeds follow the flow (affinity laws), in steps of 10 rpm upwards', () => {
    const flow = step('flow').answer / gpm;
    for (const [id, wanted] of [
      ['speed-skim', 42],
      ['speed-heat', 32],
      ['speed-filter', 21],
    ] as const) {
      const exact = (3450 * wanted) / flow;
      expect(step(id).answer % 10).toBe(0);
      // The rule taught, and no step more: the ladder of the sheet has the same.
      expect(step(id).answer).toBe(10 * Math.ceil(exact / 10));
    }
  });

  test('50 W stay and 1600 W follow the cube', () => {
    // Arithmetic: (1650 - 250) / (7/8) = 1600, 1650 - 1600 = 50.
    const ratio = step('speed-skim').answer / 3450;
    expect(step('power').answer).toBeCloseTo(50 + 1600 * ratio ** 3, 9);
  });

  test('the day sheet draws what the hand works out, to a third of a watt', () => {
    const { plan, model } = workCapstone();
    for (const { speed, power } of plan) {
      expect(Math.abs((model.running?.powerAt(speed / 3450) ?? 0) - power)).toBeLessThan(0.33);
    }
  });

  test('hours, water, energy and both prices come out as by hand', () => {
    // Arithmetic on the steps before: 10 h, 1 h and 3 h.
    const speeds = ['filter', 'heat', 'skim'].map((id) => step(`speed-${id}`).answer);
    const watts = speeds.map((speed) => 50 + 1600 * (speed / 3450) ** 3);
    const kilowattHours = [10, 1, 3].reduce(
      (sum, hours, at) => sum + (hours * (watts[at] ?? 0)) / 1000,
      0,
    );
    const flow = step('flow').answer / gpm;
    const gallons = [10, 1, 3].reduce(
      (sum, hours, at) => sum + hours * 60 * flow * ((speeds[at] ?? 0) / 3450),
      0,
    );
    expect(step('hours').answer).toBe(10);
    expect(judge(step('energy'), kilowattHours * 3.6e6).right).toBe(true);
    expect(judge(step('turnovers'), gallons / 18_000).right).toBe(true);
    expect(judge(step('price'), kilowattHours * 0.2 + 0.3).right).toBe(true);
    // Seven hours at $0.20 and one at $0.42, 1.65 kW.
    expect(judge(step('old-price'), 1.65 * (7 * 0.2 + 0.42)).right).toBe(true);
  });

  test('about a sixth of the energy is left, and the old day was too fast for its suction pipe', () => {
    const old = 8 * 1.65 * 3.6e6;
    expect(old / step('energy').answer).toBeGreaterThan(5.5);
    expect(old / step('energy').answer).toBeLessThan(6.5);
    // 6 ft/s: common practice.
    expect(step('velocity').answer / foot).toBeGreaterThan(6);
  });
});

describe('the steps', () => {
  test.each([
    ['US', us],
    ['metric', metric],
  ] as const)('%s: one answer is right, and each slip is named', (_, units) => {
    for (const one of capstoneSteps(units)) {
      expect(judge(one, one.answer)).toEqual({ right: true, says: 'Right.' });
      for (const slip of one.slips) {
        expect(judge(one, slip.value), `${one.id}: ${slip.says}`).toEqual({
          right: false,
          says: slip.says,
        });
      }
      expect([one.prompt, one.shown, ...one.working].join(' ')).not.toMatch(
        /NaN|undefined|Infinity/,
      );
    }
  });

  test('both systems ask for the same numbers', () => {
    const answers = (units: typeof us) =>
      capstoneSteps(units).map(({ id, answer }) => [id, answer] as const);
    expect(answers(metric)).toEqual(answers(us));
  });
});

describe('the pad behind it', () => {
  test('two covers on a balanced tee: with one blocked the other may take all of full speed', () => {
    const stop = padModel(capstonePad).limits.find(({ hard }) => hard);
    expect((stop?.greatestFlow ?? 0) / gpm).toBeCloseTo(110, 9);
  });

  test('has no problem, and its day serves every need and crosses no limit', () => {
    const { model, report } = workCapstone();
    expect(model.problems).toEqual([]);
    expect(report.needs.map(({ met }) => met)).toEqual([true, true, true]);
    expect(report.crossings).toEqual([]);
    expect(padModel(capstonePad).limits.length).toBeGreaterThan(1);
  });

  test('travels in a link and comes back as it was', () => {
    const back = parseFragment(padFragment(capstonePad));
    expect(back.ok && back.pad).toEqual(capstonePad);
  });
});
