import { describe, expect, test } from 'vitest';
import { headShares, systemHead } from '#core/hydraulics/circuit.ts';
import { lessonValue } from '#course/lesson/values.ts';
import { exampleScene, openingFlow } from '#explorables/CircuitBuilder/example.ts';
import { circuitOf, createModel } from '#explorables/CircuitBuilder/model.ts';
import { circuitOfPad, takePad } from '#explorables/CircuitBuilder/own.ts';
import { sentence, shares, table } from '#explorables/CircuitBuilder/text.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';

const gpm = (231 * 0.0254 ** 3) / 60;
const foot = 0.3048;

const model = () => createModel(exampleScene, openingFlow);
const headOf = (one: ReturnType<typeof model>, id: string) =>
  one.heads.value.find(({ piece }) => piece.id === id)?.head ?? 0;

describe('a circuit from its parts', () => {
  test('the heads of its pieces add up to the head of the whole', () => {
    // Energy balance of parts in a row; the parts one by one by core/circuit.ts.
    const one = model();
    one.setCount('cell', 1);
    one.lift.apply(4 * foot);
    const sum = one.heads.value.reduce((all, { head }) => all + head, 0);
    expect(sum + one.here.value.lift).toBeCloseTo(one.here.value.head, 10);
    const built = { counts: { cell: 1 }, lift: 4 * foot };
    expect(systemHead(circuitOf(exampleScene, built), 50 * gpm)).toBeCloseTo(
      one.here.value.head,
      10,
    );
  });

  test('a heater of 7 ft at 60 gpm takes 4.86 ft at 50 gpm', () => {
    // Arithmetic: 7 x (50/60)^2.
    expect(headOf(model(), 'heater') / foot).toBeCloseTo(4.8611, 4);
  });

  test('eight elbows of 2 in pipe at 50 gpm take 1.62 ft', () => {
    // Crane TP-410: K = 30 f_T each, f_T 0.0190 in 2 in pipe; V = 0.4085 x 50 / 2.067^2 = 4.78 ft/s,
    // V^2/2g = 0.3551 ft; 8 x 0.57 x 0.3551 = 1.619 ft.
    expect(headOf(model(), 'elbows') / foot).toBeCloseTo(1.619, 2);
  });

  test('two equal lines lose between a quarter and 2^-1.75 of what one loses', () => {
    // Fittings go as the square, 2^-2; smooth turbulent pipe as 1.75 by Blasius at the least.
    const one = model();
    const before = headOf(one, 'lines');
    one.setCount('lines', 2);
    const left = headOf(one, 'lines') / before;
    expect(left).toBeGreaterThan(0.25);
    expect(left).toBeLessThan(2 ** -1.75);
  });

  test('without lift the curve starts at nothing; lift pushes all of it up alike', () => {
    const one = model();
    const flat = one.line.value;
    expect(flat[0]?.head).toBe(0);
    one.lift.apply(6 * foot);
    one.line.value.forEach(({ head }, index) => {
      expect(head - (flat[index]?.head ?? 0)).toBeCloseTo(6 * foot, 9);
    });
    one.flow.apply(0);
    expect(sentence(one)).toMatch(/^At no flow the circuit takes 6\.0\sft\. 6\.0\sft is lift/);
  });

  test('counts keep to what a piece allows, and unknown pieces change nothing', () => {
    const one = model();
    const count = (id: string) => {
      const piece = exampleScene.pieces.find((candidate) => candidate.id === id);
      return piece === undefined ? undefined : one.countOf(piece);
    };
    one.setCount('returns', 0);
    expect(count('returns')).toBe(1);
    one.setCount('returns', 99);
    expect(count('returns')).toBe(4);
    one.setCount('returns', Number.NaN);
    one.setCount('nothing', 1);
    expect(count('returns')).toBe(4);
    one.reset();
    expect(count('returns')).toBe(1);
    expect(one.isKept.value).toBe(true);
  });

  test('compares with the circuit that was kept', () => {
    const one = model();
    one.setCount('heater', 0);
    // Arithmetic: the heater alone is gone, 7 x (50/60)^2 = 4.9 ft.
    expect(sentence(one)).toMatch(/That is 4\.9\sft less than in the circuit you compare with/);
    one.keep();
    expect(sentence(one)).not.toMatch(/compare/);
    one.setCount('heater', 1);
    expect(sentence(one)).toMatch(/That is 4\.9\sft more than/);
  });

  test('the bar holds every piece that is in, and the lift', () => {
    const one = model();
    one.setCount('basket', 0);
    one.lift.apply(2 * foot);
    const ids = shares(one).map(({ id }) => id);
    expect(ids).toEqual(['lines', 'filter', 'heater', 'pipe', 'elbows', 'returns', '-lift']);
    expect(table(one).rows.flat().join(' ')).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the reader’s own circuit', () => {
  test('opens as the pad has it, each part to be left out', () => {
    const one = model();
    takePad(one, ownerPad);
    one.source.value = 'mine';
    const scene = circuitOfPad(ownerPad);
    expect(scene?.pieces.map(({ id }) => id)).toContain('heater');
    const flow = one.flow.value.value;
    const whole = one.here.value.head;
    // The heater stands in the row, so the circuit takes less by just its share.
    const circuit = circuitOf(scene ?? exampleScene, { counts: {}, lift: 0 });
    const heater = headShares(circuit, flow).find(({ id }) => id === 'heater')?.head ?? 0;
    expect(heater).toBeGreaterThan(0);
    one.setCount('heater', 0);
    expect(whole - one.here.value.head).toBeCloseTo(heater, 9);
    one.source.value = 'example';
    expect(headOf(one, 'heater')).toBeGreaterThan(0);
  });

  test('with everything left out, nothing is taken, and that is told', () => {
    const one = model();
    takePad(one, ownerPad);
    one.source.value = 'mine';
    for (const { id } of one.scene.value.pieces) one.setCount(id, 0);
    one.lift.apply(0);
    expect(one.here.value.head).toBe(0);
    expect(sentence(one)).toMatch(/^Nothing is left in the circuit/);
  });

  test('a pad that describes no pipes leaves the switch away', () => {
    expect(circuitOfPad(emptyPad())).toBeUndefined();
  });
});

test('figures of the lesson: of two lines, one twice as long, the short one takes 59 to 60 %', () => {
  // Equal loss: Q1/Q2 = 2^(1/m), m 1.75 (Blasius) to 1.852 (Hazen–Williams): 59.2 to 59.8 %.
  const given = { pipe: 'sch40-2', first: '40 ft', second: '80 ft', flow: '60 gpm' };
  const share = lessonValue('splitFlow', given).value / (60 * gpm);
  expect(share).toBeGreaterThan(0.592);
  expect(share).toBeLessThan(0.598);
  expect(
    lessonValue('exampleCircuit', { flow: '50 gpm', piece: 'heater' }).value / foot,
  ).toBeCloseTo(4.8611, 4);
  expect(() => lessonValue('exampleCircuit', { flow: '50 gpm', piece: 'cell' })).toThrow(
    'no piece',
  );
});
