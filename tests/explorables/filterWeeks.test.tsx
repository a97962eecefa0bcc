import renderToString from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { columnPressure } from '#core/fit/gauges.ts';
import { lessonValue } from '#course/lesson/values.ts';
import { cleanCircuit, exampleBench, openingSpeed } from '#explorables/example/filter.ts';
import { createBench, loadedCircuit } from '#explorables/example/filterBench.ts';
import { createModel, hoursPerDay, momentsOf } from '#explorables/FilterWeeks/model.ts';
import { benchOf, takePad } from '#explorables/FilterWeeks/own.ts';
import { readings, sentence, spokenWeeks, table } from '#explorables/FilterWeeks/text.ts';
import FilterWeeks from '#explorables/FilterWeeks/view.tsx';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { metric } from '#units/choice.ts';

/** Pound-force per square inch [Pa], NIST SP 811 (2008), B.8. */
const psi = 6894.757;
const opened = (speed = openingSpeed) => createModel(exampleBench, speed);
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

/** A loop that is a filter and nothing else, so that everything can be worked out by hand. */
const handBench = createBench({
  clean: {
    suction: [],
    discharge: [
      {
        kind: 'equipment',
        id: 'f',
        referenceHead: 5,
        referenceFlow: 0.005,
        exponent: 2,
        factor: 1,
      },
    ],
    staticHead: 0,
    water: { ...cleanCircuit.water, density: 1000 },
  },
  filterId: 'f',
  ends: { cleanHead: 5, dirtyHead: 15 },
  curve: {
    shutoffHead: 20,
    lastFlow: 0.02,
    provenance: 'points',
    head: (flow) => 20 - 2e5 * flow * flow,
    slope: (flow) => -4e5 * flow,
  },
  power: { fixed: 0, atReference: () => 1000 },
  speeds: { reference: 3000, least: 600, top: 3000 },
  price: { perKilowattHour: 0.5, currency: '$' },
});

describe('a loop worked out by hand', () => {
  test('flow and gauge, clean and due, at full speed', () => {
    // Clean 2e5 Q2 = 20 - 2e5 Q2; due 6e5 Q2 = 20 - 2e5 Q2; p = rho g h, g = 9.80665 (NIST SP 811).
    const moments = momentsOf(handBench, 3000);
    const clean = moments[0];
    const due = moments.at(-1);
    expect(clean?.left.flow).toBeCloseTo(Math.sqrt(20 / 4e5), 9);
    expect(due?.left.flow).toBeCloseTo(Math.sqrt(20 / 8e5), 9);
    expect(clean?.left.pressure).toBeCloseTo(10 * 9806.65, 3);
    expect(due?.left.pressure).toBeCloseTo(15 * 9806.65, 3);
    // Top speed is all there is, so the flow cannot be held.
    expect(due?.held).toBeUndefined();
  });

  test('at half speed flow halves and the gauge falls to a quarter, whatever the filter holds', () => {
    // Affinity laws, ANSI/HI 14.3, exact in a loop of exponent 2.
    const [fast, slow] = [momentsOf(handBench, 3000), momentsOf(handBench, 1500)];
    fast.forEach(({ left }, at) => {
      expect((slow[at]?.left.flow ?? 0) / left.flow).toBeCloseTo(0.5, 9);
      expect((slow[at]?.left.pressure ?? 0) / left.pressure).toBeCloseTo(0.25, 9);
    });
  });

  test('holding the flow takes the square root of two of the speed when the loop doubles', () => {
    // At due r2 20 - 2e5 Q2 = 6e5 Q2 with Q2 = r0^2 20/4e5: r/r0 = sqrt 2. Power goes with its cube.
    const due = momentsOf(handBench, 1500).at(-1);
    expect((due?.held?.speed ?? 0) / 1500).toBeCloseTo(Math.SQRT2, 9);
    expect(due?.held?.power).toBeCloseTo(1000 * (Math.SQRT2 / 2) ** 3, 6);
    expect(due?.held?.flow).toBeCloseTo(momentsOf(handBench, 1500)[0]?.left.flow ?? 0, 12);
  });

  test('what holding has cost lies between nothing and the last power for all the hours', () => {
    const model = createModel(handBench, 1500);
    model.weeks.apply(8);
    const most = (model.here.value.held?.power ?? 0) - (model.clean.value.left.power ?? 0);
    const hours = 8 * 7 * hoursPerDay;
    const energy = (model.extraEnergy.value ?? 0) / 3600;
    // r/r0 = sqrt(1 + loading) here, so power goes as (1 + l)^1.5: by the integral of that over l,
    // (2/5) (2^2.5 - 1) - 1 = 0.86274, times 125 W.
    expect(energy / (125 * hours)).toBeCloseTo(0.86274, 3);
    expect(energy).toBeLessThan(most * hours);
    expect(model.extraCost.value).toBeCloseTo((energy / 1000) * 0.5, 9);
    model.weeks.apply(0);
    expect(model.extraEnergy.value).toBe(0);
  });

  test('a water column of 10 m at 1000 kg/m3 presses with 98 066.5 Pa', () => {
    // Standard gravity, NIST SP 811, B.8.
    expect(columnPressure(10, 1000)).toBeCloseTo(98_066.5, 9);
    expect(() => columnPressure(2000, 1000)).toThrow('head');
    expect(() => columnPressure(1, 1)).toThrow('density');
  });
});

describe('the example', () => {
  test('the usual sign, 10 psi above clean, never comes here: the flow gives way first, and most at low speed', () => {
    // Common practice, no source: 8 to 10 psi above clean, from the days of one fast speed.
    const riseAt = (speed: number) => {
      const { due, clean } = opened(speed);
      return (due.value.left.pressure - clean.value.left.pressure) / psi;
    };
    expect(riseAt(3450)).toBeGreaterThan(5);
    expect(riseAt(3450)).toBeLessThan(10);
    // Goes about with the square of the speed.
    expect(riseAt(1200) / riseAt(3450) / (1200 / 3450) ** 2).toBeGreaterThan(0.9);
    expect(riseAt(1200) / riseAt(3450) / (1200 / 3450) ** 2).toBeLessThan(1.4);
    expect(plain(sentence(opened(3450)))).toContain('never comes at this speed');
    expect(plain(sentence(opened(1200)))).toContain('never comes at this speed');
  });

  test('at a speed left alone the flow only falls and the gauge only rises, and the power ends lower', () => {
    const { moments, clean, due } = opened();
    expect(due.value.left.power).toBeLessThan(clean.value.left.power);
    moments.value.slice(1).forEach(({ left }, at) => {
      const before = moments.value[at]?.left;
      expect(left.flow).toBeLessThan(before?.flow ?? 0);
      expect(left.pressure).toBeGreaterThan(before?.pressure ?? Infinity);
    });
  });

  test('words for a clean filter, for one past reach, and for no flow', () => {
    const model = opened();
    model.weeks.apply(0);
    expect(plain(sentence(model))).toMatch(/^Just cleaned, at 1800 rpm: .* Write both down\./);
    model.weeks.apply(1);
    expect(sentence(model)).toMatch(/^After 1 week at/);
    model.speed.apply(3450);
    expect(sentence(model)).toContain('no longer gives');
    expect(readings(model).map(({ value }) => value)).toContain('out of reach');
    expect(table(model).rows.flat().join()).not.toMatch(/NaN|undefined/);
    const lifted = createBench({
      ...exampleBench,
      clean: { ...cleanCircuit, staticHead: 10 },
      filterId: 'filter',
      ends: { cleanHead: 1, dirtyHead: 2 },
    });
    const still = createModel(lifted, 600);
    expect(sentence(still)).toMatch(/no water moves/);
    expect([...readings(still).map(({ value }) => value), spokenWeeks(still)].join()).not.toMatch(
      /NaN|undefined/,
    );
  });

  test('reset, metric, and a first picture without script', () => {
    const model = opened();
    model.weeks.apply(8);
    model.speed.apply(99_999);
    model.reset();
    expect([model.weeks.value.value, model.speed.value.value]).toEqual([4, openingSpeed]);
    model.units.value = metric;
    expect(sentence(model)).toContain('kPa');
    expect(renderToString(<FilterWeeks id="f" />)).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the reader’s own pad', () => {
  test('the owner’s filter goes from clean to due, also inside a branch', () => {
    const bench = benchOf(ownerPad);
    expect(bench).toBeDefined();
    const model = opened();
    takePad(model, ownerPad);
    model.source.value = 'mine';
    expect(model.due.value.left.flow).toBeLessThan(model.clean.value.left.flow);
    expect(model.extraCost.value).toBeUndefined();
    expect(sentence(model)).not.toMatch(/NaN|undefined/);
    const [discharge] = exampleBench.loaded;
    expect(discharge).toBeDefined();
    const inBranch = loadedCircuit(
      {
        ...cleanCircuit,
        discharge: [
          {
            kind: 'parallel',
            id: 'p',
            branches: [{ id: 'b', lift: 0, parts: cleanCircuit.discharge }],
          },
        ],
      },
      'filter',
      { cleanHead: 1, dirtyHead: 3 },
      1,
    );
    const [group] = inBranch.discharge;
    const inner = group?.kind === 'parallel' ? group.branches[0]?.parts : [];
    expect(inner?.find(({ id }) => id === 'filter')).toMatchObject({ factor: 3 });
  });

  test('stays away while the filter’s dirty end is not known', () => {
    expect(benchOf(emptyPad('us'))).toBeUndefined();
    const discharge = ownerPad.plumbing.discharge.map((section) =>
      section.kind === 'equipment' ? { ...section, dirtyHead: null } : section,
    );
    const without = { ...ownerPad, plumbing: { ...ownerPad.plumbing, discharge } };
    expect(benchOf(without)).toBeUndefined();
  });
});

test('figures in the lesson: 16 psi at 3000 rpm are 4 psi at 1500', () => {
  // Affinity laws: pressure with the square of the speed.
  const given = { pressure: '16 psi', from: '3000 rpm', to: '1500 rpm' };
  expect(lessonValue('gaugeAtSpeed', given).value / psi).toBeCloseTo(4, 6);
  // Straight line: 4 ft + half of 20 ft.
  const filter = { clean: '4 ft', dirty: '24 ft', loading: '0.5' };
  expect(lessonValue('filterLoadedHead', filter).value / 0.3048).toBeCloseTo(14, 9);
  expect(() => lessonValue('filterHeldSpeed', { speed: '3450 rpm', weeks: '8' })).toThrow(
    'no longer gives the clean flow',
  );
});
