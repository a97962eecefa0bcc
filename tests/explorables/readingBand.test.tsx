import renderToString from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { lessonValue } from '#course/lesson/values.ts';
import { contradictionText } from '#explorables/ReadingBand/contradictions.ts';
import { examplePad, openingChoice } from '#explorables/ReadingBand/example.ts';
import { exampleFitter, fitterOf } from '#explorables/ReadingBand/exampleFit.ts';
import { createModel } from '#explorables/ReadingBand/model.ts';
import { notesOf, takePad } from '#explorables/ReadingBand/own.ts';
import { halfWidth, type NotePad } from '#explorables/ReadingBand/pad.ts';
import { lineText, sentence, table, verdict } from '#explorables/ReadingBand/text.ts';
import ReadingBand from '#explorables/ReadingBand/view.tsx';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { metric } from '#units/choice.ts';

const first = exampleFitter(openingChoice);
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

function opened() {
  const model = createModel(examplePad, openingChoice, first);
  model.fitter.value = exampleFitter;
  return model;
}

/** Half the band of the power at the slowest speed [-]. */
const slowWidth = (fitted: ReturnType<typeof exampleFitter>) =>
  halfWidth(fitted.known[0] as never, 'power');

// One installation: common practice, no source. Used in tests only.
const traded: NotePad = {
  speeds: { least: 1000, top: 3450 },
  lines: [
    [3450, 2300],
    [3000, 1530],
    [2000, 505],
    [1000, 130],
  ].map(([speed = 0, power = 0]) => ({ id: `${speed}`, speed, power, pressure: undefined })),
};

describe('facts of the trade (common practice, no source)', () => {
  const fitter = fitterOf(traded);
  const choose = (...ids: string[]) => fitter({ ids, gauges: false, slip: false });

  test('the two highest alone miss the lowest by more than the display may, and their wide band holds it', () => {
    // 2300 W at 3450, 1530 at 3000, 130 at 1000 rpm.
    const { foretold } = choose('3450', '3000', '1000');
    expect(foretold?.measured).toBe(130);
    // A display is taken as good to 5 %.
    expect(Math.abs((foretold?.said.best ?? 130) / 130 - 1)).toBeGreaterThan(0.05);
    expect(foretold?.said.low).toBeLessThan(0.8 * 130);
    expect(foretold?.said.high).toBeGreaterThan(1.2 * 130);
  });

  test('with the two highest, the watts at a low speed are what narrows the power most', () => {
    const { next } = choose('3450', '3000');
    expect(next.power.instrument).toBe('wattMeter');
    expect(next.power.speed).toBeLessThan(1100);
    expect(next.power.after).toBeLessThan(next.power.before / 4);
  });

  test('the lowest narrows the slow end more than the middle one does', () => {
    const two = slowWidth(choose('3450', '3000'));
    const middle = slowWidth(choose('3450', '3000', '2000'));
    const lowest = slowWidth(choose('3450', '3000', '1000'));
    expect(middle).toBeLessThan(two);
    expect(lowest).toBeLessThan(middle);
  });
});

describe('the notebook', () => {
  test('opens with the two fastest notes, and the band only narrows as notes are added', () => {
    const model = opened();
    const widths = [slowWidth(model.fitted.value)];
    for (const id of ['at-1900', 'at-900']) {
      model.use(id, true);
      widths.push(slowWidth(model.fitted.value));
    }
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
    expect(plain(sentence(model))).toMatch(/^With 4 of 4 notes the power at 600 rpm is somewhere/);
    expect(model.fitted.value.residuals.map(verdict)).toEqual(Array(8).fill('fits'));
  });

  test('two fast notes and a slow one: says by how much the fast ones would have missed', () => {
    const model = opened();
    model.use('at-900', true);
    expect(plain(sentence(model))).toMatch(
      /Without its slowest note the fit would have said \d+ W at 900 rpm, where the display shows 142 W: \d+ % too little\./,
    );
  });

  test('a swapped figure is found by its residual, and taken back by reset', () => {
    const model = opened();
    for (const id of ['at-1900', 'at-900']) model.use(id, true);
    model.slip.value = true;
    expect(sentence(model)).toMatch(/^These notes cannot all be right\. At 1900 rpm the watts/);
    expect(model.used.value.find(({ id }) => id === 'at-1900')?.power).toBe(340);
    expect(table(model).rows.flat()).toContain('does not fit');
    model.reset();
    expect(model.used.value.map(({ speed }) => speed)).toEqual([3450, 2800]);
    expect(sentence(model)).not.toContain('cannot all be right');
  });

  test('gauges narrow the flow and not the watts', () => {
    const with_ = exampleFitter(openingChoice);
    const without = exampleFitter({ ...openingChoice, gauges: false });
    const fast = (fitted: typeof with_) => fitted.known.at(-1) as never;
    expect(halfWidth(fast(with_), 'flow')).toBeLessThan(0.7 * halfWidth(fast(without), 'flow'));
    expect(slowWidth(with_) / slowWidth(without)).toBeCloseTo(1, 1);
    const model = opened();
    model.gauges.value = false;
    expect(plain(lineText(examplePad.lines[0] as never, model))).toBe('3450 rpm: 1990 W');
  });

  test('no note at all still gives a band, and a table of it', () => {
    const model = opened();
    for (const { id } of examplePad.lines) model.use(id, false);
    expect(sentence(model)).toMatch(/^With no notes, from the description/);
    expect(sentence(model)).not.toMatch(/NaN|undefined|Infinity/);
    expect(table(model).rows.length).toBeGreaterThan(3);
    model.answer.value = 'flow';
    model.units.value = metric;
    expect(plain(sentence(model))).toContain('m³/h');
  });

  test('before the fit has come the first picture stands, and needs no script', () => {
    const model = createModel(examplePad, openingChoice, first);
    model.use('at-900', true);
    expect(model.fitted.value).toBe(first);
    const html = renderToString(<ReadingBand id="b" first={first} />);
    expect(html).toContain('With 2 of 4 notes');
    expect(html).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the reader’s own notes', () => {
  test('come with all their readings in use, and each can be left out', () => {
    const model = opened();
    takePad(model, ownerPad);
    model.source.value = 'mine';
    expect(model.pad.value.lines.map(({ speed }) => speed)).toEqual([3450, 2400, 1500]);
    expect(model.used.value).toHaveLength(3);
    const all = slowWidth(model.fitted.value);
    model.use(model.pad.value.lines[2]?.id ?? '', false);
    expect(model.used.value).toHaveLength(2);
    expect(slowWidth(model.fitted.value)).toBeGreaterThan(all);
    model.gauges.value = false;
    expect(sentence(model)).not.toMatch(/NaN|undefined/);
    model.source.value = 'example';
    expect(model.used.value.map(({ speed }) => speed)).toEqual([3450, 2800]);
  });

  test('stay away while there is no reading', () => {
    expect(notesOf(emptyPad('us'))).toBeUndefined();
    expect(notesOf({ ...ownerPad, readings: [] })).toBeUndefined();
  });
});

test('every contradiction has its sentence', () => {
  const at = (id: string) => id;
  const pair = { slowerId: 'slow', fasterId: 'fast' };
  const all = [
    { kind: 'powerFallsWithSpeed', ...pair },
    { kind: 'flowFallsWithSpeed', ...pair },
    { kind: 'pressureFallsWithSpeed', ...pair },
    { kind: 'flowRisesFasterThanSpeed', ...pair },
    { kind: 'gaugesDisagreeWithMeter', id: 'a', measured: 1, byGauges: { low: 2, high: 3 } },
    { kind: 'headAboveShutoff', id: 'a', head: 2, shutoffHead: 1 },
    { kind: 'powerBelowHydraulic', id: 'a', power: 1, hydraulic: 2 },
    { kind: 'powerAboveApparent', id: 'a', power: 2, apparent: 1 },
    { kind: 'offTheFit', id: 'a', quantity: 'power', deviations: 9 },
  ] as const;
  const said = all.map((each) => contradictionText(each, at));
  expect(new Set(said).size).toBe(all.length);
  for (const text of said) expect(text).toMatch(/^[A-Z].*\.$/);
});

test('figures in the lesson: a grade B gauge to 60 psi is good to 3 % of that at its low end', () => {
  // ASME B40.100, grade B: 3-2-3 % of span (from memory).
  const { value } = lessonValue('gaugeError', { reading: '5 psi' });
  expect(value / 6894.757).toBeCloseTo(1.8, 3);
  expect(() => lessonValue('bandLow', { notes: '1234' })).toThrow('There is no note at 1234 rpm.');
});
