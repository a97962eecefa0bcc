import { describe, expect, test } from 'vitest';
import { cubePower } from '#core/pump/power.ts';
import { type PumpCurve, pumpFromPoints } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { operatingStateAt } from '#explorables/example/machine.ts';
import { openingFor, type Rig, walkAt } from '#explorables/example/rig.ts';
import { exampleRig } from '#explorables/example/valve.ts';
import { createModel } from '#explorables/ValveWalk/model.ts';
import { rigOf, takePad } from '#explorables/ValveWalk/own.ts';
import { readings, sentence, spokenValve, table } from '#explorables/ValveWalk/text.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { padModel } from '#pad/model/assemble.ts';
import { metric } from '#units/choice.ts';
import { referenceCases } from '../core/referenceCases.ts';

/** Exact by definition (NIST SP 811, B.8). */
const gpm = (231 * 0.0254 ** 3) / 60;
const foot = 0.3048;
const gravity = 9.80665;

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

/** Pipes of one coefficient, in gpm and ft, before a pump of points. */
function loopRig(curve: PumpCurve, k: number, ratio: number, staticHead = 0): Rig {
  const reference = { referenceHead: k * 50 ** 2 * foot, referenceFlow: 50 * gpm };
  return {
    pumps: [
      { id: 'a', label: 'the pump', curve, power: cubePower({ fixed: 0, cube: 1000 }), points: [] },
    ],
    circuit: {
      suction: [],
      discharge: [{ kind: 'equipment', id: 'loop', ...reference, exponent: 2, factor: 1 }],
      staticHead,
      water: water(20),
    },
    valveBore: 0.0525018,
    filter: undefined,
    ratio,
  };
}

const [pumpA, pumpB] = exampleRig.pumps;

describe('where pump and pipes meet', () => {
  const cases = referenceCases('operating-point').filter(({ what }) => what === 'curve by points');

  test.each(cases)('a sheet of points at ratio $inputs.speed_ratio', ({ inputs, expected }) => {
    // Reference file operating-point: scipy's monotone interpolator and four root finders.
    const points = inputs['points'] as unknown as [number, number][];
    const curve = pumpFromPoints(
      points.map(([flow, head]) => ({ flow: flow * gpm, head: head * foot })),
    );
    const rig = loopRig(curve, Number(inputs['k']), Number(inputs['speed_ratio']));
    const walk = walkAt(rig, rig.pumps[0], 0, 1);
    expect(walk.flow / gpm).toBeCloseTo(expected['flow_gpm'] ?? 0, 6);
    expect(walk.head / foot).toBeCloseTo(expected['head_ft'] ?? 0, 6);
    expect(walk.valveHead).toBe(0);
  });

  test('a gap of a quarter takes nine velocity heads of the whole pipe', () => {
    // Borda–Carnot: (1/a - 1)^2 with a = 1/4; bore of 2 in Schedule 40 after ASTM D1785.
    const { flow, valveHead } = walkAt(exampleRig, pumpA, 0, 0.25);
    const velocity = flow / ((Math.PI / 4) * 0.0525018 ** 2);
    expect(exampleRig.valveBore).toBeCloseTo(0.0525018, 6);
    expect(valveHead).toBeCloseTo((9 * velocity ** 2) / (2 * gravity), 6);
  });

  test('a filter due for cleaning takes what its two ends differ by', () => {
    // Arithmetic on the example: 24 ft at 60 gpm less 3.1 m at 4 L/s, as the flow squared.
    const { flow, dirtHead } = walkAt(exampleRig, pumpA, 1, 1);
    const due = 24 * foot * (flow / (60 * gpm)) ** 2;
    expect(dirtHead).toBeCloseTo(due - 3.1 * (flow / 0.004) ** 2, 9);
  });
});

test('pump A is the pump of the home picture: the same flow, and watts that agree to one', () => {
  // The home picture: 52 W fixed and 1640 W by the cube, in the same pipes at full speed.
  const { flow, power } = walkAt(exampleRig, pumpA, 0, 1);
  expect(flow).toBeCloseTo(operatingStateAt(exampleMachine, 3450).flow, 9);
  expect(Math.abs(power - (52 + 1640))).toBeLessThan(0.5);
});

describe('what a setting does', () => {
  test('closing the valve: less flow, more head, fewer watts, less water for a kilowatt-hour', () => {
    // Common practice, no source: pumps with radial wheels draw less as they are throttled.
    const walks = [1, 0.5, 0.25, 0.1, 0.03].map((open) => walkAt(exampleRig, pumpA, 0, open));
    for (const [index, walk] of walks.slice(1).entries()) {
      const before = walks[index];
      expect(walk.flow).toBeLessThan(before?.flow ?? 0);
      expect(walk.head).toBeGreaterThan(before?.head ?? 0);
      expect(walk.power).toBeLessThan(before?.power ?? 0);
      expect(walk.mileage).toBeLessThan(before?.mileage ?? 0);
    }
  });

  test('the larger pump gives a little more water for a lot more watts, past the end of its sheet', () => {
    const small = walkAt(exampleRig, pumpA, 0, 1);
    const large = walkAt(exampleRig, pumpB ?? pumpA, 0, 1);
    expect(large.flow / small.flow).toBeGreaterThan(1);
    expect(large.power / small.power).toBeGreaterThan(large.flow / small.flow);
    expect(small.extrapolated).toBe(false);
    expect(large.extrapolated).toBe(true);
  });

  test('a flow pointed at comes back from the opening found for it', () => {
    const open = openingFor(exampleRig, pumpA, 0.5, 0.003);
    expect(walkAt(exampleRig, pumpA, 0.5, open).flow).toBeCloseTo(0.003, 4);
    expect(openingFor(exampleRig, pumpA, 0, 1)).toBe(1);
    expect(openingFor(exampleRig, pumpA, 0, -1)).toBe(0);
  });
});

describe('what is said', () => {
  test('open, throttled, shut and past the end of the sheet', () => {
    const model = createModel(exampleRig);
    expect(plain(sentence(model))).toMatch(
      /^With the valve wide open and a clean filter, pump A gives \d+ gpm at [\d.]+ ft and draws \d+ W\. A kilowatt-hour moves \d+ gal\.$/,
    );
    model.open.apply(0.1);
    model.loading.apply(0.5);
    expect(plain(sentence(model))).toMatch(
      /^With the valve 10 % open and a filter 50 % of the way to dirty, .* Of that head the valve takes [\d.]+ ft and the dirt takes [\d.]+ ft, for nothing\. .*; with valve open and filter clean it moves \d+ gal\.$/,
    );
    model.open.apply(0);
    // The example's sheet begins at 25.5 m, which is 83.66 ft.
    expect(plain(sentence(model))).toMatch(
      /^The valve is shut\. No water moves, pump A holds 83\.7 ft of head and still draws \d+ W/,
    );
    expect(spokenValve(model)).toMatch(/^shut, 0 gallons per minute/);
    expect(readings(model).mileage).toBe('none');
    model.reset();
    model.choosePump('b');
    // The larger pump's sheet ends at 6.2 L/s, which is 98.3 gpm.
    expect(plain(sentence(model))).toContain('The curve ends at 98 gpm: this point lies past it');
    model.choosePump('no such pump');
    expect(model.pump.value.id).toBe('b');
  });

  test('a lift out of reach is told, not drawn as a number', () => {
    const curve = pumpFromPoints([
      { flow: 0, head: 10 },
      { flow: 0.005, head: 5 },
    ]);
    const model = createModel(loopRig(curve, 0.009, 0.5, 4));
    expect(plain(sentence(model))).toBe(
      'No water moves: the pump makes 8.2 ft of head and does not reach the height that the water must.',
    );
  });

  test.each([0, 0.005, 0.13, 1])('no setting leaves a hole: valve %d', (open) => {
    const model = createModel(exampleRig);
    model.units.value = metric;
    model.open.apply(open);
    const said = JSON.stringify([sentence(model), readings(model), table(model)]);
    expect(said).not.toMatch(/NaN|Infinity|undefined/);
    expect(table(model).rows).toHaveLength(9);
  });
});

describe('the reader’s own pad', () => {
  test('stands where the pad says it runs at top speed, and its filter can load', () => {
    const pad = ownerPad;
    const rig = rigOf(pad);
    const { running, speeds } = padModel(pad);
    if (rig === undefined || running === null || speeds === null) throw new Error('no pump');
    const top = running.pointAt(speeds.top / speeds.reference);
    const loading = rig.filter?.loading ?? 0;
    expect(walkAt(rig, rig.pumps[0], loading, 1).flow).toBeCloseTo(
      top.kind === 'flowing' ? top.flow : 0,
      9,
    );
  });

  test('is offered only while there is one, and reset goes back to the example', () => {
    const model = createModel(exampleRig);
    takePad(model, emptyPad('us'));
    expect(model.own.value).toBeUndefined();
    takePad(model, ownerPad);
    model.source.value = 'mine';
    expect(model.pump.value.label).toBe('your pump');
    expect(sentence(model)).toContain('your pump gives');
    model.reset();
    expect(model.pump.value.label).toBe('pump A');
    expect(model.open.value.value).toBe(1);
  });
});
