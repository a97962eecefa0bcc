import fc from 'fast-check';
import renderToString from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { lessonValue } from '#course/lesson/values.ts';
import { exampleScene } from '#explorables/NeedsLadder/example.ts';
import { createModel, ladderOf, type Scene } from '#explorables/NeedsLadder/model.ts';
import { sceneOf, takePad } from '#explorables/NeedsLadder/own.ts';
import { spread } from '#explorables/NeedsLadder/spread.ts';
import { coverText, fateText, sentence, spoken, table } from '#explorables/NeedsLadder/text.ts';
import NeedsLadder from '#explorables/NeedsLadder/view.tsx';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';

const gpm = (231 * 0.0254 ** 3) / 60; // exact, NIST SP 811
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
const open = () => createModel(exampleScene, 1300);

/** A loop of one resistance: head 15 m at 0.005 m3/s, square law. */
const loop: Scene = {
  ...exampleScene,
  curve: {
    shutoffHead: 20,
    lastFlow: 0.01,
    provenance: 'threePoints',
    head: (flow) => 20 - 2e5 * flow * flow,
    slope: (flow) => -4e5 * flow,
  },
  circuit: {
    ...exampleScene.circuit,
    suction: [],
    discharge: [
      {
        kind: 'equipment',
        id: 'loop',
        referenceHead: 15,
        referenceFlow: 0.005,
        exponent: 2,
        factor: 1,
      },
    ],
  },
  needs: [0.0025, 0.004].map((leastFlow, place) => ({
    id: String(place),
    kind: 'filtering',
    name: `Need ${place}`,
    leastFlow,
    minutes: 60,
    windows: [],
    shortestRun: 0,
  })),
  limits: [],
  covers: [],
  referenceSpeed: 3000,
  leastSpeed: 300,
  topSpeed: 3000,
};

describe('rungs and ceilings', () => {
  test('in a loop without lift the rung follows the flow', () => {
    // Affinity laws, ANSI/HI 14.6: at 3000 rpm 20 - 2e5 Q^2 = 6e5 Q^2 meets at Q = 0.005, so half of it hangs at 1500.
    const { steps } = ladderOf(loop);
    expect(steps.map(({ speed }) => speed)).toEqual([
      expect.closeTo(1500, 6),
      expect.closeTo(2400, 6),
    ]);
  });

  test('a ceiling hangs where the pump gives its flow; one past the top speed hangs nowhere', () => {
    const limit = (greatestFlow: number) =>
      ({ id: 'filterRate', kind: 'filterRate', greatestFlow, hard: false }) as const;
    const { ceilings, stop } = ladderOf({ ...loop, limits: [limit(0.003), limit(0.02)] });
    expect(ceilings[0]?.speed).toBeCloseTo(1800, 6);
    expect(ceilings[1]?.speed).toBeUndefined();
    expect(stop).toBeUndefined();
  });
});

describe('the hard stop (16 CFR 1450, ANSI/APSP/ICC-16; sharing with one blocked from memory)', () => {
  test('two covers of 60 gpm, one blocked, stop at 60 gpm', () => {
    const model = open();
    model.speed.press('End');
    expect(model.here.value.flow / gpm).toBeLessThanOrEqual(60 + 1e-9);
    // One step more would be past it.
    expect(model.here.value.flow / gpm).toBeGreaterThan(59.5);
    expect(model.crossed.value.filter(({ hard }) => hard)).toEqual([]);
    expect(sentence(model)).toContain('no speed may pass it.');
  });

  test('no wish of hand, key, field or link gets past it', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (wish) => {
        const model = open();
        model.speed.apply(wish);
        model.speed.stepBy(1000);
        expect(model.crossed.value.filter(({ hard }) => hard)).toEqual([]);
        expect(model.here.value.speed).toBeLessThanOrEqual(model.ladder.value.fastest);
      }),
    );
    // Nor does a model that opens beyond it.
    expect(createModel(exampleScene, 9999).here.value.flow / gpm).toBeLessThanOrEqual(60 + 1e-9);
  });

  test('opening both covers on the picture moves no stop', () => {
    const model = open();
    const { stop } = model.ladder.value;
    model.blocked.value = false;
    expect(model.ladder.value.stop).toBe(stop);
    model.speed.press('End');
    expect(plain(coverText(model, 0))).toBe('passes 30 gpm, 60 gpm marked');
    model.blocked.value = true;
    expect(plain(coverText(model, 0))).toBe('passes 60 gpm, 60 gpm marked');
    expect(plain(coverText(model, 1))).toBe('blocked (60 gpm marked)');
    expect(coverText(model, 7)).toBe('');
  });

  test('a need past the covers is served at no speed, and says why', () => {
    const model = open();
    const cleaner = model.ladder.value.steps.at(-1);
    if (cleaner === undefined) throw new Error('the example has a cleaner');
    for (const key of ['Home', 'End']) {
      model.speed.press(key);
      expect(model.fateOf(cleaner)).toBe('never');
    }
    expect(fateText(model, cleaner)).toBe('never: past the flow marked on the suction covers');
  });

  test('covers that bear less than the slowest speed draws forbid every speed', () => {
    const limit = {
      id: 'suctionCover:a',
      kind: 'suctionCover',
      greatestFlow: 1e-4,
      hard: true,
    } as const;
    const model = createModel({ ...exampleScene, limits: [limit], covers: [1e-4] }, 1300);
    expect(model.mayRun.value).toBe(false);
    expect(sentence(model)).toContain('It must not run.');
    expect(model.ladder.value.steps.map((step) => model.fateOf(step))).not.toContain('served');
    expect(table(model).rows.flat().join(' ')).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('the example', () => {
  test('more is served the higher the speed, and soft ceilings are told when crossed', () => {
    const model = open();
    let before = 0;
    for (
      model.speed.press('Home');
      model.speed.value.value < model.speed.max.value;
      model.speed.stepBy(10)
    ) {
      const served = model.ladder.value.steps.filter(
        (step) => model.fateOf(step) === 'served',
      ).length;
      expect(served).toBeGreaterThanOrEqual(before);
      expect(sentence(model)).not.toMatch(/NaN|undefined|Infinity/);
      before = served;
    }
    expect(before).toBe(4);
    expect(sentence(model)).toContain('Crossed: the rate of the filter.');
  });

  test('a heater that gets too much is told', () => {
    const needs = exampleScene.needs.map((need) => ({
      ...need,
      greatestFlow: need.leastFlow * 1.2,
    }));
    const model = createModel({ ...exampleScene, needs }, 1300);
    model.speed.press('End');
    const [first] = model.ladder.value.steps;
    if (first === undefined) throw new Error('the example has needs');
    expect(model.fateOf(first)).toBe('tooFast');
    expect(plain(fateText(model, first))).toBe('takes 22 gpm at most');
  });

  test('no flow is told in words', () => {
    const model = createModel(
      { ...exampleScene, circuit: { ...exampleScene.circuit, staticHead: 8 } },
      700,
    );
    expect(model.here.value.flow).toBe(0);
    expect(sentence(model)).toContain('Nothing is served.');
    expect(spoken(model)).toMatch(/0 of 5 served$/);
  });

  test('reset brings speed and covers back', () => {
    const model = open();
    const before = sentence(model);
    model.speed.press('End');
    model.blocked.value = false;
    model.reset();
    expect(sentence(model)).toBe(before);
    expect(model.blocked.value).toBe(true);
  });

  test('the first picture needs no script', () => {
    const page = renderToString(<NeedsLadder id="needs-ladder" />);
    expect(page).not.toMatch(/NaN|undefined|Infinity/);
    expect(page).toContain('Quick clean');
    expect(page).toContain('covers: stop');
  });
});

test('names keep their distance and their order', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 9 }),
      (wishes) => {
        const places = spread(wishes, 0.1, 0, 1);
        const sorted = [...places].sort((a, b) => a - b);
        for (let at = 1; at < sorted.length; at += 1) {
          expect((sorted[at] ?? 0) - (sorted[at - 1] ?? 0)).toBeGreaterThanOrEqual(0.1 - 1e-9);
        }
        wishes.forEach((wish, a) => {
          wishes.forEach((other, b) => {
            if (wish < other) expect(places[a] ?? 0).toBeLessThan(places[b] ?? 0);
          });
        });
      },
    ),
  );
});

describe('the reader’s own pad', () => {
  test('shows the needs, limits and covers of the pad', () => {
    const scene = sceneOf(ownerPad);
    expect(scene?.needs.map(({ name }) => name)).toEqual(ownerPad.needs.map(({ name }) => name));
    const model = open();
    const before = sentence(model);
    takePad(model, ownerPad);
    model.source.value = 'mine';
    model.speed.press('End');
    expect(model.crossed.value.filter(({ hard }) => hard)).toEqual([]);
    expect(sentence(model)).not.toMatch(/NaN|undefined|Infinity/);
    model.reset();
    expect(sentence(model)).toBe(before);
  });

  test('stays away while pump or needs are not known', () => {
    expect(sceneOf(emptyPad('us'))).toBeUndefined();
    expect(sceneOf({ ...ownerPad, needs: [] })).toBeUndefined();
  });
});

describe('figures in the lesson', () => {
  const value = (name: string, given: Record<string, string>) => lessonValue(name, given).value;

  test('covers, filter and cell', () => {
    // 16 CFR 1450 and ANSI/APSP/ICC-16: marked flow; one blocked, from memory. The rest is arithmetic.
    expect(value('coversBear', { covers: '2', marked: '60 gpm' }) / gpm).toBeCloseTo(60, 9);
    expect(value('coversBear', { covers: '3', marked: '60 gpm' }) / gpm).toBeCloseTo(120, 9);
    expect(value('coversBear', { covers: '1', marked: '60 gpm' }) / gpm).toBeCloseTo(60, 9);
    expect(value('filterBears', { area: '3 ft2', rate: '20 gpm/ft2' }) / gpm).toBeCloseTo(60, 9);
    // 20 000 gal are 75.708 m3; at 2 g/m3 that is 151.4 g; at 25 g/h 6.057 h.
    const cell = { volume: '20000 gal', use: '2 mg/L', output: '25 g/h' };
    expect(value('cellTime', cell) / 3600).toBeCloseTo(6.057, 3);
  });

  test('rungs and stop of the picture stand in order', () => {
    const rungs = ['filtering', 'saltCell', 'heating', 'skimming'].map((need) =>
      value('rungSpeed', { need }),
    );
    expect([...rungs].sort((a, b) => a - b)).toEqual(rungs);
    expect(value('stopSpeed', {})).toBeGreaterThan(rungs.at(-1) ?? Number.POSITIVE_INFINITY);
    expect(value('stopFlow', {}) / gpm).toBeCloseTo(60, 9);
    expect(() => value('rungSpeed', { need: 'cleaner' })).toThrow('No rung serves "cleaner".');
  });
});
