import { describe, expect, test } from 'vitest';
import { hazenWilliams, hazenWilliamsFactor } from '#core/hydraulics/hazenWilliams.ts';
import { lessonValue } from '#course/lesson/values.ts';
import { logSide } from '#explorables/MoodyPicture/logSide.ts';
import { createModel, regimeOf } from '#explorables/MoodyPicture/model.ts';
import { takePad } from '#explorables/MoodyPicture/own.ts';
import { hazenNote, sentence, table, timesText } from '#explorables/MoodyPicture/text.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { metric } from '#units/choice.ts';
import { referenceCases } from '../core/referenceCases.ts';

const gpm = (231 * 0.0254 ** 3) / 60;
const foot = 0.3048;

const model = (temperature = 20) =>
  createModel({
    pipes: ['sch40-2', 'sch40-1.5', 'sch40-3', 'pn10-63'],
    flow: 45 * gpm,
    greatestFlow: 120 * gpm,
    temperature,
  });

/** Darcy–Weisbach cases of the sizes that the picture has. */
const sizes: Readonly<Record<string, string>> = {
  '1.5': 'sch40-1.5',
  '2': 'sch40-2',
  '3': 'sch40-3',
};
const cases = referenceCases('pipe-friction-loss').filter(
  ({ what, inputs }) =>
    what === 'Darcy-Weisbach' &&
    inputs['schedule'] === 40 &&
    inputs['temperature_c'] === 20 &&
    String(inputs['nominal_in']) in sizes &&
    Number(inputs['flow_gpm']) <= 120,
);

describe('the point on the chart', () => {
  test.each(cases)('$inputs.flow_gpm gpm in $inputs.nominal_in in Schedule 40', (one) => {
    // Reference pipe-friction-loss.json: Colebrook-White by fluids 1.0.22, water by IAPWS.
    const { inputs, expected } = one;
    const picture = model();
    picture.choosePipe(sizes[String(inputs['nominal_in'])] as string);
    const here = picture.at(Number(inputs['flow_gpm']) * gpm);
    expect(here.reynolds).toBeCloseTo(expected['reynolds'] as number, -1);
    expect(here.factor).toBeCloseTo(expected['friction_factor'] as number, 7);
    expect(here.loss / here.length).toBeCloseTo((expected['head_loss_per_100'] as number) / 100, 7);
  });

  test('there are cases to compare with', () => expect(cases.length).toBeGreaterThan(3));

  test('layered below 2000, turbulent above 4000, either between', () => {
    // Hydraulic Institute Engineering Data Book: the bounds of laminar and turbulent flow.
    expect([600, 2000, 2001, 3999, 4000, 1e5].map(regimeOf)).toEqual([
      'layered',
      'layered',
      'either',
      'either',
      'turbulent',
      'turbulent',
    ]);
  });

  test('in layered flow twice the flow loses twice, twice the bore a sixteenth', () => {
    // Hagen–Poiseuille: h = 128 nu L Q / (pi g D^4).
    const picture = model();
    const { twice, regime, factor, reynolds } = picture.at(picture.flowAt(900));
    expect(regime).toBe('layered');
    expect(twice.flow).toBeCloseTo(2, 9);
    expect(twice.length).toBeCloseTo(2, 9);
    expect(twice.bore).toBeCloseTo(1 / 16, 9);
    expect(factor * reynolds).toBeCloseTo(64, 9);
  });

  test('in smooth turbulent flow twice the flow loses by the power 1.75 to 1.85, twice the bore by -4.7 to -4.9', () => {
    // Blasius 1913 gives 1.75 and -4.75, Hazen–Williams 1.852 and -4.87: the truth lies between them.
    const { twice } = model().at(60 * gpm);
    expect(Math.log2(twice.flow)).toBeGreaterThan(1.75);
    expect(Math.log2(twice.flow)).toBeLessThan(1.852);
    expect(Math.log2(twice.bore)).toBeLessThan(-4.7);
    expect(Math.log2(twice.bore)).toBeGreaterThan(-4.87);
  });

  test('a rusty wall counts only where the water tumbles', () => {
    // Moody 1944: one laminar line for every wall; 0.15 mm for galvanised iron.
    const picture = model();
    const losses = () =>
      [picture.at(picture.flowAt(1500)).loss, picture.at(60 * gpm).loss] as const;
    const [smoothSlow, smoothFast] = losses();
    picture.chooseWall('rusty');
    const [rustySlow, rustyFast] = losses();
    expect(rustySlow).toBeCloseTo(smoothSlow, 12);
    expect(rustyFast / smoothFast).toBeGreaterThan(1.3);
    expect(picture.here.value.hazen).toBeUndefined();
    expect(hazenNote(picture.here.value)).toBe('C 150 is for new plastic');
  });
});

describe('Hazen–Williams beside it', () => {
  test('its factor gives its own head back, and takes no notice of temperature', () => {
    // Darcy–Weisbach written out by hand: h = f L/D V^2/2g.
    const [flow, bore] = [50 * gpm, 2.067 * 0.0254];
    const velocity = flow / ((Math.PI / 4) * bore ** 2);
    const factor = hazenWilliamsFactor(flow, bore, 150);
    const head = (factor * 100 * velocity ** 2) / (bore * 2 * 9.80665);
    expect(head).toBeCloseTo(hazenWilliams({ flow, bore, length: 100, c: 150 }), 10);
    expect(() => hazenWilliamsFactor(0, bore, 150)).toThrow('flow');
    expect(model(5).here.value.hazen).toBe(model(35).here.value.hazen);
  });

  test('within 3 % at 60 gpm in 2 in pipe, more than 5 % too little at 10 gpm', () => {
    // The Accuracy of core/hazenWilliams.ts rests on reference pipe-friction-loss.json at 20 degC.
    const picture = model();
    const off = (flow: number) => {
      const { hazen, loss } = picture.at(flow * gpm);
      return (hazen ?? 0) / loss - 1;
    };
    expect(Math.abs(off(60))).toBeLessThan(0.03);
    expect(off(10)).toBeLessThan(-0.05);
  });
});

describe('setting the flow', () => {
  test('steps are fine where the flow is little, and whole above 5 gpm', () => {
    const picture = model();
    picture.flow.stepBy(1);
    expect(picture.flow.value.value / gpm).toBeCloseTo(46, 9);
    picture.flow.press('Home');
    expect(picture.here.value.reynolds).toBeCloseTo(600, 6);
    picture.flow.stepBy(1);
    expect((picture.flow.value.value / gpm) * 10).toBeCloseTo(
      Math.round((picture.flow.value.value / gpm) * 10),
      9,
    );
    expect(picture.flow.value.value / gpm).toBeLessThan(1);
    picture.flow.press('End');
    expect(picture.flow.value.value / gpm).toBeCloseTo(120, 9);
    picture.choosePipe('no-such-pipe');
    picture.reset();
    expect(picture.flow.value.value / gpm).toBeCloseTo(45, 9);
  });

  test('says what it finds, in both systems', () => {
    const picture = model();
    expect(sentence(picture)).toMatch(
      /^45\sgpm in 2 in Schedule 40 has a Reynolds number of 68.600/,
    );
    expect(sentence(picture)).toMatch(/100\sft lose 3\.\d\d?\sft|100\sft lose 3\.\d\sft/);
    picture.units.value = metric;
    expect(sentence(picture)).toMatch(/100\sm lose /);
    expect(table(picture).rows.flat().join(' ')).not.toMatch(/NaN|Infinity|undefined/);
    expect([timesText(3.478), timesText(2), timesText(1 / 16), timesText(1)]).toEqual([
      '3.5 ×',
      '2 ×',
      '1/16',
      '1 ×',
    ]);
  });
});

describe('the reader’s own pipes', () => {
  test('come with their own length', () => {
    const picture = model();
    takePad(picture, ownerPad);
    picture.source.value = 'mine';
    picture.choosePipe('return-run');
    expect(picture.here.value.length / foot).toBeCloseTo(52, 9);
    expect(sentence(picture)).toMatch(/^With 45\sgpm through your pump, “Return 2 in Schedule 40”/);
  });

  test('a pad that does not say enough leaves the switch away', () => {
    const picture = model();
    takePad(picture, emptyPad());
    expect(picture.own.value).toBeUndefined();
  });
});

test('log paper: marks at whole multiples of powers of ten', () => {
  const { axis } = logSide('x', 0.02, 30, [0.1, 1, 10]);
  expect(axis.ticks.map(({ label }) => label)).toEqual(['0.1', '1', '10']);
  const fine = (axis.fine ?? []).map((value) => Number((10 ** value).toPrecision(6)));
  expect(fine.slice(0, 3)).toEqual([0.02, 0.03, 0.04]);
  expect(fine.at(-1)).toBe(30);
  expect(fine).toHaveLength(8 + 9 + 9 + 3);
});

test('figures of the lesson: 45 gpm in 2 in pipe is at a Reynolds number of about 69 000 at 20 degC', () => {
  // Re = 4 Q / (pi D nu): 4 x 2.839e-3 / (pi x 0.0525018 x 1.00337e-6) = 68 620.
  const given = { pipe: 'sch40-2', flow: '45 gpm', temperature: '20 degC' };
  expect(lessonValue('reynolds', given).value / 68_620).toBeCloseTo(1, 3);
  // Hagen–Poiseuille and Colebrook differ; length does nothing to a ratio.
  const twice = lessonValue('lossTimes', { ...given, 'to-flow': '90 gpm' });
  expect(Math.log2(twice.value)).toBeCloseTo(1.8, 1);
});
