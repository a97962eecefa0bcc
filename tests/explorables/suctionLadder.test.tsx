import renderToString from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { lessonValue } from '#course/lesson/values.ts';
import { exampleLine } from '#explorables/SuctionLadder/example.ts';
import { createModel, type SuctionLine } from '#explorables/SuctionLadder/model.ts';
import { lineOf, takePad } from '#explorables/SuctionLadder/own.ts';
import { sentence, spoken, table } from '#explorables/SuctionLadder/text.ts';
import SuctionLadder from '#explorables/SuctionLadder/view.tsx';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { metric } from '#units/choice.ts';
import { referenceCases } from '../core/referenceCases.ts';

const foot = 0.3048; // exact, NIST SP 811
const gpm = (231 * 0.0254 ** 3) / 60; // exact, NIST SP 811
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

/** A line that loses a stated head at any flow, as the reference cases have it. */
function lineLosing(loss: number, settings: SuctionLine['opening']): SuctionLine {
  return {
    parts: [
      {
        kind: 'equipment',
        id: 'all',
        referenceHead: loss,
        referenceFlow: settings.flow,
        exponent: 2,
        factor: 1,
      },
    ],
    required: () => 3,
    opening: settings,
    greatestFlow: 2 * settings.flow,
  };
}

describe('the ladder against reference npsh.json (ISO 2533, IAPWS)', () => {
  const cases = referenceCases('npsh').filter(({ what }) => what === 'NPSH available');

  test.each(cases)('$inputs', ({ inputs, expected }) => {
    const number = (key: string) => Number(inputs[key]);
    const model = createModel(
      lineLosing(number('friction_m'), {
        altitude: number('geopotential_altitude_m'),
        temperature: number('temperature_c'),
        lift: -number('suction_head_m'),
        flow: 0.004,
      }),
    );
    const { available, margin, eye, boils } = model.rungs.value;
    const wanted = expected['npsh_available_m'] as number;
    // The cases give geopotential altitude, a map height is 0.03 % longer at 2000 m at the most.
    expect(Math.abs(available / wanted - 1)).toBeLessThan(5e-4);
    expect(margin).toBeCloseTo(available - 3, 12);
    expect(eye - boils).toBeCloseTo(margin, 9);
  });

  test('there are cases', () => expect(cases.length).toBeGreaterThan(3));
});

describe('figures in the lesson', () => {
  test('the air holds up 10.3 m of cold water at sea level', () => {
    // 101325 Pa (ISO 2533) over 1000 kg/m3 and 9.80665 m/s2; the trade says 33.9 or 34 ft.
    const found = lessonValue('airHead', { altitude: '0 m', temperature: '4 degC' }).value;
    expect(found).toBeCloseTo(101_325 / (999.975 * 9.80665), 3);
    expect(found / foot).toBeCloseTo(33.9, 1);
  });

  test('at 5000 ft the air presses with 12.228 psi', () => {
    // Reference npsh.json, printed table, 0.05 %.
    const found = lessonValue('airPressure', { altitude: '5000 ft' }).value;
    expect(Math.abs(found / (12.228 * 6894.757_293_168) - 1)).toBeLessThan(5e-4);
  });

  test('the lodge has 5.57 m', () => {
    // Reference npsh.json: 1500 m, 28 degC, -0.9 m, 1.8 m gives 5.5677 m.
    const given = { altitude: '1500 m', temperature: '28 degC', lift: '0.9 m', loss: '1.8 m' };
    expect(lessonValue('npshAvailable', given).value).toBeCloseTo(5.568, 2);
    const margin = lessonValue('suctionMargin', { ...given, required: '2.6 m' }).value;
    expect(margin).toBeCloseTo(5.568 - 2.6, 2);
  });

  test('water of 26.85 degC boils at 3536.6 Pa', () => {
    // IAPWS R7-97(2012), table 35: 0.353658941e-2 MPa at 300 K; density 996.55 (IAPWS-95, NIST).
    const found = lessonValue('boilingHead', { temperature: '26.85 degC' }).value;
    expect(found).toBeCloseTo(3536.58941 / (996.55 * 9.80665), 4);
  });
});

describe('the example', () => {
  test('more flow, height, altitude, warmth or leaves each take of the margin', () => {
    const margin = (change: (model: ReturnType<typeof createModel>) => void) => {
      const model = createModel(exampleLine);
      change(model);
      return model.rungs.value.margin;
    };
    const before = margin(() => {});
    expect(before).toBeGreaterThan(0);
    for (const name of ['flow', 'lift', 'altitude', 'temperature'] as const) {
      expect(margin((model) => model[name].press('PageUp'))).toBeLessThan(before);
    }
    const full = margin((model) => {
      model.basketFull.value = true;
    });
    expect(full).toBeLessThan(before);
  });

  test('a foot of height is a foot of margin, whatever the rest', () => {
    const model = createModel(exampleLine);
    const before = model.rungs.value.margin;
    model.lift.stepBy(1);
    expect(before - model.rungs.value.margin).toBeCloseTo(foot, 9);
  });

  test('goes from safe through narrow and cavitating to broken, and says each', () => {
    const model = createModel(exampleLine);
    expect(model.state.value).toBe('safe');
    expect(plain(sentence(model))).toMatch(
      /^At sea level, with water of 82\.0 °F and the pump 3\.00? ?ft above it, .* The margin is [\d.]+ ft\.$/,
    );
    model.altitude.apply(2000);
    model.temperature.press('End');
    model.lift.press('End');
    model.basketFull.value = true;
    const seen = new Set<string>();
    for (
      model.flow.press('Home');
      seen.size < 4 && model.flow.value.value < model.flow.max.value;
    ) {
      const state = model.state.value;
      seen.add(state);
      const said = sentence(model);
      expect(said).not.toMatch(/NaN|undefined|Infinity/);
      if (state === 'narrow') expect(said).toContain('commonly wanted');
      if (state === 'cavitates') expect(said).toContain('it cavitates.');
      if (state === 'broken') expect(said).toContain('loses its prime');
      model.flow.stepBy(1);
    }
    expect([...seen]).toEqual(['safe', 'narrow', 'cavitates', 'broken']);
  });

  test('a place on the third tread gives the flow that puts it there', () => {
    const model = createModel(exampleLine);
    const wished = model.rungs.value.height - 2;
    model.flow.apply(model.flowForLine(wished));
    expect(model.rungs.value.loss).toBeCloseTo(2, 1);
    expect(model.flowForLine(1e3)).toBeCloseTo(0, 6);
  });

  test('reset brings everything back', () => {
    const model = createModel(exampleLine);
    const before = sentence(model);
    model.altitude.press('PageUp');
    model.flow.press('Home');
    model.basketFull.value = true;
    expect(spoken(model, 'flow')).toMatch(/^0 gallons per minute; margin/);
    model.reset();
    expect(sentence(model)).toBe(before);
  });

  test('in metric every key press is a whole step', () => {
    const model = createModel(exampleLine);
    model.units.value = metric;
    model.lift.apply(1.04);
    expect(model.lift.value.value).toBe(1);
    model.altitude.apply(1234);
    expect(model.altitude.value.value).toBe(1200);
    expect(plain(table(model).rows[1]?.join(' ') ?? '')).toMatch(/^Height of the pump −1\.0 m/);
  });

  test('the first picture needs no script', () => {
    const page = renderToString(<SuctionLadder id="suction-ladder" />);
    expect(page).not.toMatch(/NaN|undefined|Infinity/);
    expect(page).toContain('NPSH available');
    expect(page).toContain('class="curve"');
  });
});

describe('the reader’s own pad', () => {
  test('takes site, pipes and need of the pad', () => {
    const pad = { ...ownerPad, limits: { ...ownerPad.limits, npshRequired: 2.5 } };
    const line = lineOf(pad);
    expect(line?.opening.altitude).toBeCloseTo(400 * foot, 9);
    expect(line?.opening.lift).toBeCloseTo(foot, 9);
    expect(line?.opening.temperature).toBe(27);
    expect(line?.required(0)).toBe(2.5);
    expect(line?.basketId).toBe('strainer');
    const model = createModel(exampleLine);
    takePad(model, pad);
    const example = sentence(model);
    model.source.value = 'mine';
    expect(sentence(model)).not.toBe(example);
    const without = model.rungs.value.loss;
    model.basketFull.value = true;
    expect(model.rungs.value.loss).toBeGreaterThan(without);
    model.flow.apply(20 * gpm);
    model.source.value = 'example';
    model.basketFull.value = false;
    expect(sentence(model)).toBe(example);
  });

  test('stays away while the pad does not say what the pump needs, or nothing at all', () => {
    expect(
      lineOf({ ...ownerPad, limits: { ...ownerPad.limits, npshRequired: null } }),
    ).toBeUndefined();
    expect(lineOf(emptyPad('metric'))).toBeUndefined();
  });
});
