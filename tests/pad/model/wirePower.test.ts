import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { settableRatios } from '#core/planner/inputs.ts';
import { wirePower } from '#core/pump/power.ts';
import { emptyPad, newPipe, newReading } from '#pad/document/parts.ts';
import type { Pad, Pump } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';

/** An invented data sheet: three points with the watts at each; no source, for tests only. */
const sheet = [
  { flow: 0, head: 22, power: 700 },
  { flow: 0.004, head: 18, power: 1000 },
  { flow: 0.0065, head: 11, power: 1150 },
] as const;

function padOf(pump: Partial<Pump>, more: Partial<Pad> = {}): Pad {
  const empty = emptyPad();
  return {
    ...empty,
    plumbing: {
      ...empty.plumbing,
      discharge: [newPipe('return', { bore: 0.045, length: 40 })],
    },
    pump: {
      ...empty.pump,
      referenceSpeed: 3450,
      leastSpeed: 600,
      topSpeed: 3450,
      knowledge: { kind: 'curve', points: sheet.map((point) => ({ ...point })) },
      ...pump,
    },
    ...more,
  };
}

function powerOf(pad: Pad) {
  const { running } = padModel(pad);
  if (running === null) throw new Error('the pad does not run');
  return running.power;
}

const fixedCodes = (pad: Pad) =>
  padModel(pad)
    .assumptions.map(({ code }) => code)
    .filter((code) => code.startsWith('fixed'));

describe('the watts of a data sheet hold the fixed draw already', () => {
  test.each([null, 0, 60])('with a fixed draw of %s they stand at the reference speed', (given) => {
    const power = powerOf(padOf({ fixedPower: given }));
    for (const { flow, power: watts } of sheet) {
      expect(wirePower(power, flow, 1)).toBeCloseTo(watts, 9);
    }
  });

  test('a fixed draw that is typed is split from them, and is all there is at no speed', () => {
    const power = powerOf(padOf({ fixedPower: 60 }));
    expect(power.fixed).toBe(60);
    // P = 60 + r^3 (1000 - 60) at the flow that corresponds to the point of 1000 W.
    expect(wirePower(power, 0.002, 0.5)).toBeCloseTo(60 + 940 / 8, 9);
  });

  test('0 W typed stays 0 W, and nothing is assumed', () => {
    const pad = padOf({ fixedPower: 0 });
    expect(powerOf(pad).fixed).toBe(0);
    expect(fixedCodes(pad)).toEqual([]);
  });

  test('one that nobody typed is the usual share of full power, and said to be assumed', () => {
    const pad = padOf({});
    const { running } = padModel(pad);
    const top = running?.pointAt(1);
    if (running == null || top?.kind !== 'flowing') throw new Error('no water moves');
    // 4 % of full power: common practice, no source.
    expect(running.power.fixed).toBeCloseTo(0.04 * wirePower(running.power, top.flow, 1), 9);
    expect(fixedCodes(pad)).toEqual(['fixedShareTypical']);
  });

  test('a fixed draw above all the watts takes them whole, and no more', () => {
    const power = powerOf(padOf({ fixedPower: 5000 }));
    expect(power.fixed).toBe(700);
    for (const { flow, power: watts } of sheet) {
      expect(wirePower(power, flow, 1)).toBeCloseTo(watts, 9);
    }
  });

  test('whatever the sheet and whatever the fixed draw, the sheet stands', () => {
    const watts = fc.double({ min: 1, max: 5000, noNaN: true });
    fc.assert(
      fc.property(
        fc.tuple(watts, watts, watts),
        fc.option(fc.double({ min: 0, max: 3000, noNaN: true })),
        (given, fixedPower) => {
          const points = sheet.map((point, at) => ({ ...point, power: given[at] as number }));
          const power = powerOf(padOf({ fixedPower, knowledge: { kind: 'curve', points } }));
          points.forEach((point) => {
            expect(wirePower(power, point.flow, 1) / point.power).toBeCloseTo(1, 9);
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  test('watts read at two speeds still tell the fixed draw from the rest', () => {
    // Made from 90 W + r^3 x 1000 W: the display is believed against the sheet.
    const read = (id: string, speed: number) =>
      newReading(id, { speed, power: 90 + 1000 * (speed / 3450) ** 3 });
    const readings = [read('a', 3450), read('b', 1725), read('c', 1000)];
    const pad = padOf(
      {},
      { readings, instruments: { ...emptyPad().instruments, powerShare: 0.01 } },
    );
    const { running } = padModel(pad);
    expect(running?.powerAt(1)).toBeGreaterThan(1090 * 0.97);
    expect(running?.powerAt(1)).toBeLessThan(1090 * 1.03);
    expect(running?.power.fixed).toBeGreaterThan(70);
    expect(running?.power.fixed).toBeLessThan(110);
  });
});

describe('a fixed draw that is typed stands whatever else is known', () => {
  test('with an efficiency', () => {
    const points = sheet.map((point) => ({ ...point, power: null }));
    const pad = padOf({ efficiency: 0.6, fixedPower: 0, knowledge: { kind: 'curve', points } });
    expect(powerOf(pad).fixed).toBe(0);
    expect(fixedCodes(pad)).toEqual([]);
  });

  test('with a nameplate', () => {
    const knowledge = {
      kind: 'nameplate',
      power: 1100,
      powerMeans: 'shaft',
      flow: null,
      head: null,
    } as const;
    for (const fixedPower of [0, 60]) {
      const pad = padOf({ fixedPower, knowledge });
      expect(powerOf(pad).fixed).toBeCloseTo(fixedPower, 9);
      expect(fixedCodes(pad)).toEqual([]);
    }
  });
});

describe('less power than the water takes up', () => {
  test('is told in a sentence at the watts that say so', () => {
    const points = sheet.map((point) => ({ ...point, power: 31 }));
    const pad = padOf({ knowledge: { kind: 'curve', points } });
    const found = padModel(pad).problems.filter(({ code }) => code === 'powerBelowWater');
    expect(found).toHaveLength(1);
    const [first] = found;
    if (first === undefined) throw new Error('it is not told');
    const { path, values } = first;
    expect(path.slice(0, 3)).toEqual(['pump', 'knowledge', 'points']);
    expect(path.at(-1)).toBe('power');
    const { running } = padModel(pad);
    const top = running?.pointAt(1);
    if (top?.kind !== 'flowing') throw new Error('no water moves');
    // rho g Q H at full speed, water of 26 degC.
    const hydraulic = 996.78 * 9.80665 * top.flow * top.head;
    expect((values['hydraulic'] as { value: number }).value / hydraulic).toBeCloseTo(1, 4);
  });

  test('of a reading is told at the reading', () => {
    const points = sheet.map((point) => ({ ...point, power: null }));
    const readings = [newReading('a', { speed: 3450, power: 30 })];
    const pad = padOf({ knowledge: { kind: 'curve', points } }, { readings });
    const found = padModel(pad).problems.filter(({ code }) => code === 'powerBelowWater');
    expect(found.map(({ path }) => path)).toEqual([['readings', 0, 'power']]);
  });

  test('is not told of a sound pad', () => {
    const codes = padModel(padOf({})).problems.map(({ code }) => code);
    expect(codes).not.toContain('powerBelowWater');
  });
});

describe('a speed step larger than the range', () => {
  test('is told, and leaves the two ends', () => {
    const pad = padOf({ speedStep: 9000 });
    expect(padModel(pad).problems.map(({ code, path }) => `${code} ${path.join('/')}`)).toContain(
      'speedStepLarge pump/speedStep',
    );
    const speeds = padModel(pad).speeds;
    if (speeds === null) throw new Error('no speeds');
    const { least, top, step, reference } = speeds;
    const range = { least: least / reference, top: top / reference, step: step / reference };
    expect(settableRatios(range)).toEqual([600 / 3450, 1]);
  });
});

describe('a speed step finer than a pump can be set', () => {
  test('is told, and 1 rpm is taken', () => {
    const model = padModel(padOf({ speedStep: 1e-12 }));
    const codes = model.problems.map(({ code, path }) => `${code} ${path.join('/')}`);
    expect(codes).toContain('speedStepSmall pump/speedStep');
    expect(model.speeds?.step).toBe(1);
  });
});
