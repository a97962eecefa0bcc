import { describe, expect, test } from 'vitest';
import type { CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { cubePower } from '#core/pump/power.ts';
import { pumpFromPowerLaw } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { lessonValue } from '#course/lesson/values.ts';
import { exampleSetup } from '#explorables/WaterPerKilowattHour/example.ts';
import {
  asked,
  bestStep,
  plainLaw,
  type Setup,
  startSpeed,
  stepAt,
} from '#explorables/WaterPerKilowattHour/mileage.ts';
import { createModel } from '#explorables/WaterPerKilowattHour/model.ts';
import { setupOf, takePad } from '#explorables/WaterPerKilowattHour/own.ts';
import { readings, sentence, spokenLift, table } from '#explorables/WaterPerKilowattHour/text.ts';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { padModel } from '#pad/model/assemble.ts';
import { metric } from '#units/choice.ts';
import { referenceCases } from '../core/referenceCases.ts';

/** Exact by definition (NIST SP 811, B.8). */
const gpm = (231 * 0.0254 ** 3) / 60;
const gallon = 231 * 0.0254 ** 3;
const foot = 0.3048;

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

/** Pipes that take the flow squared, before a pump whose head falls with the flow squared. */
function squareSetup(fixed: number, cube: number): Setup {
  const loop: CircuitPart = {
    kind: 'equipment',
    id: 'loop',
    referenceHead: 16,
    referenceFlow: 0.005,
    exponent: 2,
    factor: 1,
  };
  return {
    curve: pumpFromPowerLaw({ a: 20, b: 1.6e5, c: 2 }, 0.008),
    circuit: { suction: [], discharge: [loop], staticHead: 0, water: water(20) },
    power: cubePower({ fixed, cube }),
    referenceSpeed: 3000,
    leastSpeed: 200,
    topSpeed: 3000,
  };
}

describe('the best speed', () => {
  const cases = referenceCases('affinity-laws').filter(({ what }) =>
    what.startsWith('ratio with the most volume'),
  );

  test.each(cases)(
    '$inputs.fixed_power_w W fixed: found by trying where calculus puts it',
    (item) => {
      // Reference file affinity-laws: the derivative set to zero, checked on a grid.
      const { fixed_power_w: fixed, cube_power_w: cube } = item.inputs as Record<string, number>;
      const setup = squareSetup(Number(fixed), Number(cube));
      const best = bestStep(asked(setup, Number(fixed), 0));
      expect((best?.speed ?? 0) / 3000).toBeCloseTo(item.expected['speed_ratio'] ?? 0, 5);
      expect(best?.power).toBeCloseTo(item.expected['power_w'] ?? 0, 2);
      expect(plainLaw(setup).bestSpeed(Number(fixed)) / 3000).toBeCloseTo(
        item.expected['speed_ratio'] ?? 0,
        9,
      );
    },
  );

  test('in the picture, pipes of smooth plastic leave it close to the formula', () => {
    // Calculus on P0 + c r^3; friction goes as about flow^1.8, so near and not exact.
    const best = bestStep(asked(exampleSetup, exampleSetup.power.fixed, 0))?.speed ?? 0;
    const formula = plainLaw(exampleSetup).bestSpeed(exampleSetup.power.fixed);
    expect(Math.abs(best / formula - 1)).toBeLessThan(0.03);
  });

  test('a lift puts it up, and one out of reach leaves none', () => {
    const at = (lift: number) => bestStep(asked(exampleSetup, 52, lift))?.speed ?? Number.NaN;
    expect(at(2)).toBeGreaterThan(at(1));
    expect(at(1)).toBeGreaterThan(at(0));
    // The pump holds 25.5 m at no flow; nothing comes over 26 m.
    expect(at(26)).toBeNaN();
  });
});

describe('water and the lift', () => {
  test('30 gpm for 160 W is 11 250 gal for a kilowatt-hour', () => {
    // Reference file energy-factor: 11.25 gal/Wh (ANSI/APSP/ICC-15: gpm x 60 / W).
    const { value } = lessonValue('waterForKilowattHour', { flow: '30 gpm', power: '160 W' });
    expect(value / gallon).toBeCloseTo(11_250, 6);
  });

  test('45 gpm for 120 W is 22 500 gal for a kilowatt-hour', () => {
    // Reference file electricity: 0.04444 kWh for 1000 gal.
    const { value } = lessonValue('waterForKilowattHour', { flow: '45 gpm', power: '120 W' });
    expect(1000 / (value / gallon)).toBeCloseTo(0.044_444_444, 8);
  });

  test('water begins to move at the root of lift over the head at no flow', () => {
    // Reference file affinity-laws: 265 ft before 380 ft is 0.835086 of the speed.
    const setup = {
      ...squareSetup(0, 1000),
      curve: pumpFromPowerLaw({ a: 380 * foot, b: 1e5, c: 2 }, 0.02),
    };
    expect(startSpeed(asked(setup, 0, 265 * foot)) / 3000).toBeCloseTo(0.835_085_876, 8);
    const given = { lift: '265 ft', shutoff: '380 ft', top: '10000 rpm' };
    expect(lessonValue('speedForLift', given).value).toBe(8351);
  });

  test('below it no water moves and the power is wasted', () => {
    const one = asked(exampleSetup, 52, 2);
    const still = stepAt(one, startSpeed(one) * 0.99);
    expect(still.flow).toBe(0);
    expect(still.mileage).toBe(0);
    expect(still.power).toBeGreaterThan(52);
    expect(stepAt(one, startSpeed(one) * 1.01).flow).toBeGreaterThan(0);
  });

  test('without fixed draw and lift the pump keeps to the plain cube', () => {
    // Affinity laws, ANSI/HI 14.3; a square law for pump and pipes makes them exact.
    const setup = squareSetup(50, 1400);
    const one = asked(setup, 0, 0);
    const law = plainLaw(setup);
    for (const speed of [300, 1000, 2200]) {
      expect(stepAt(one, speed).mileage / law.mileageAt(speed)).toBeCloseTo(1, 6);
    }
    expect(stepAt(one, 3000).flow).toBeCloseTo(0.005, 9);
  });

  test('65 gpm at 55 ft from 1100 W is 61 % wire to water', () => {
    // Reference file energy-factor: 65 x 55 / 3960 = 0.9028 hp; 1 hp = 745.7 W (NIST SP 811).
    const given = { flow: '65 gpm', head: '55 ft', power: '1100 W' };
    expect(lessonValue('wireToWater', given).value).toBeCloseTo((0.902_78 * 745.7) / 1100, 2);
  });
});

describe('what is said', () => {
  test('the finding, with fixed draw, without, with a lift and with one out of reach', () => {
    const model = createModel(exampleSetup, 1400);
    expect(plain(sentence(model))).toMatch(
      /^At 1400 rpm the pump moves \d+ gpm and draws \d+ W: [\d ]+ gal for a kilowatt-hour\. The plain cube would promise [\d ]+ gal\. The best speed is \d+ rpm, with [\d ]+ gal; slower than that, each gallon costs more again\.$/,
    );
    expect(readings(model).formula).toMatch(/^by the formula/);
    model.fixed.apply(0);
    expect(plain(sentence(model))).toContain(
      'slower is always better; the slowest it can turn is 300 rpm',
    );
    model.lift.apply(2);
    model.speed.apply(700);
    expect(plain(sentence(model))).toMatch(
      /^At 700 rpm no water moves: .* It draws \d+ W for nothing\./,
    );
    expect(readings(model).mileage).toBe('none');
    expect(spokenLift(model)).toContain('water moves from');
    model.reset();
    expect(model.fixed.value.value).toBe(exampleSetup.power.fixed);
    expect(model.lift.value.value).toBe(0);
    expect(model.here.value.speed).toBe(1400);
  });

  test.each([0, 1, 4])('no setting leaves a hole: lift %d m', (lift) => {
    const model = createModel(exampleSetup, 300);
    model.units.value = metric;
    model.lift.apply(lift);
    const said = JSON.stringify([sentence(model), readings(model), table(model)]);
    expect(said).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the reader’s own pad', () => {
  test.each([
    ['an owner', ownerPad],
    ['a lodge', lodgePad],
  ])('%s: opens with its own lift and fixed draw, and runs as the pad says', (_, pad) => {
    const setup = setupOf(pad);
    const { running, speeds } = padModel(pad);
    if (setup === undefined || running === null || speeds === null) throw new Error('no pump');
    const model = createModel(exampleSetup, 1400);
    takePad(model, pad);
    model.source.value = 'mine';
    expect(model.fixed.value.value).toBe(running.power.fixed);
    expect(model.lift.value.value).toBe(running.circuit.staticHead);
    const top = running.runningAt(speeds.top / speeds.reference);
    model.speed.apply(speeds.top);
    expect(model.here.value.power).toBeCloseTo(top.power, 6);
    expect(sentence(model)).not.toMatch(/NaN|Infinity/);
  });

  test('a change to one leaves the other alone', () => {
    const model = createModel(exampleSetup, 1400);
    takePad(model, ownerPad);
    model.source.value = 'mine';
    model.fixed.apply(120);
    model.source.value = 'example';
    expect(model.fixed.value.value).toBe(exampleSetup.power.fixed);
    takePad(model, emptyPad('us'));
    expect(model.own.value).toBeUndefined();
  });
});

test('the flow of a lesson’s pump at 26 gpm and 150 W reads the same in both systems', () => {
  const { value } = lessonValue('waterForKilowattHour', { flow: '26 gpm', power: '150 W' });
  // Arithmetic: 26 gpm x 60 min / 0.15 kWh.
  expect(value).toBeCloseTo((26 * gpm * 3600) / 0.15, 9);
});
