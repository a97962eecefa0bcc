import fc from 'fast-check';
import renderToString from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { lessonValue } from '#course/lesson/values.ts';
import { examplePool } from '#explorables/MixingParcels/example.ts';
import { createModel, parcelsOf, passedBy } from '#explorables/MixingParcels/model.ts';
import { poolOf, takePad } from '#explorables/MixingParcels/own.ts';
import { sentence, spoken, table } from '#explorables/MixingParcels/text.ts';
import MixingParcels from '#explorables/MixingParcels/view.tsx';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { metric } from '#units/choice.ts';
import { allowance, referenceCases } from '../core/referenceCases.ts';

const gallon = 231 * 0.0254 ** 3; // exact, NIST SP 811
const hour = 3600;
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
const oneAnHour = (turnovers: number) =>
  passedBy({ volume: 3600, flow: 1, time: 0 }, turnovers * hour);

describe('passed the filter, against reference mixing.json (Gage and Bidwell 1926)', () => {
  const cases = referenceCases('mixing').filter(
    ({ inputs }) => inputs['turnovers'] !== undefined && inputs['filter_efficiency'] === undefined,
  );
  test.each(cases)('$inputs', (item) => {
    const wanted = item.expected['share'] as number;
    expect(
      Math.abs(oneAnHour(Number(item.inputs['turnovers'])).share - wanted),
    ).toBeLessThanOrEqual(allowance(item, wanted));
  });
  test('there are cases', () => expect(cases.length).toBeGreaterThan(6));

  test('once, often and never are the terms of a Poisson count', () => {
    // Poisson table, mean 1: 0.3679, 0.3679, 0.2642 for none, one, two or more; mean 2: 0.1353, 0.2707, 0.5940.
    const one = oneAnHour(1);
    expect(one.never).toBeCloseTo(0.3679, 4);
    expect(one.once).toBeCloseTo(0.3679, 4);
    expect(one.often).toBeCloseTo(0.2642, 4);
    const two = oneAnHour(2);
    expect(two.never).toBeCloseTo(0.1353, 4);
    expect(two.once).toBeCloseTo(0.2707, 4);
    expect(two.often).toBeCloseTo(0.594, 4);
  });

  test('a hundred parcels stay a hundred, and none comes back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (from, more) => {
          const [before, after] = [oneAnHour(from), oneAnHour(from + more)].map(parcelsOf);
          if (before === undefined || after === undefined) throw new Error('two were asked for');
          expect(before.never + before.once + before.often).toBe(100);
          expect(Math.min(before.never, before.once, before.often)).toBeGreaterThanOrEqual(0);
          expect(after.never).toBeLessThanOrEqual(before.never);
        },
      ),
    );
  });
});

describe('the example', () => {
  test('opens at one turnover: 63 % passed, 37 parcels wait', () => {
    // 19 200 gal at 40 gpm for 8 h = 480 min: exactly one turnover. 63 %: Water 13(17) 2350, abstract.
    const model = createModel(examplePool);
    expect(model.here.value.turnovers).toBeCloseTo(1, 12);
    expect(model.parcels.value).toEqual({ never: 37, once: 37, often: 26 });
    expect(plain(sentence(model))).toBe(
      'In 8.0 h at 40 gpm the pump moves 1.00 times the 19 200 gal of the pool. 63 % of the water has passed the filter: 37 % once, 26 % more than once. 37 % has never been there. Until 95 % has passed, it takes 24 h.',
    );
  });

  test('half the flow takes twice the time to the same share', () => {
    const model = createModel(examplePool);
    const { share } = model.here.value;
    model.flow.apply(model.flow.value.value / 2);
    model.time.apply(16 * hour);
    expect(model.here.value.share).toBeCloseTo(share, 9);
  });

  test('no flow and no time are told in words', () => {
    const model = createModel(examplePool);
    model.time.press('Home');
    expect(sentence(model)).toContain('just been started');
    model.flow.press('Home');
    expect(sentence(model)).toBe('No water moves, so none has passed the filter.');
    expect(model.turnover.value).toBeUndefined();
    expect(table(model).rows.flat().join(' ')).not.toMatch(/NaN|undefined|Infinity/);
    expect(spoken(model, 'flow')).toBe('0 gallons per minute; 0 percent has passed the filter');
  });

  test('nearly all is not written as all', () => {
    const model = createModel(examplePool);
    model.flow.press('End');
    model.time.press('End');
    expect(model.here.value.share).toBeLessThan(1);
    expect(plain(sentence(model))).not.toContain(' 100 % of the water');
  });

  test('reset brings all three back', () => {
    const model = createModel(examplePool);
    const before = sentence(model);
    for (const name of ['volume', 'flow', 'time'] as const) model[name].press('PageUp');
    expect(sentence(model)).not.toBe(before);
    model.reset();
    expect(sentence(model)).toBe(before);
  });

  test('in metric every key press is a whole step', () => {
    const model = createModel(examplePool);
    model.units.value = metric;
    model.volume.apply(63.4);
    expect(model.volume.value.value).toBe(63);
  });

  test('the first picture needs no script', () => {
    const page = renderToString(<MixingParcels id="mixing-parcels" />);
    expect(page).not.toMatch(/NaN|undefined|Infinity/);
    expect(page).toContain('37 have never passed');
    const squares = /class="mixing-never" d="([^"]+)"/.exec(page)?.[1] ?? '';
    expect(squares.match(/M/g)).toHaveLength(37);
  });
});

describe('the reader’s own pad', () => {
  test('takes the volume of the pad and the flow of its day', () => {
    const pool = poolOf(ownerPad);
    // 32 ft by 16 ft, 3.5 to 7 ft: 32 x 16 x 5.25 = 2688 cubic feet.
    expect(pool?.volume).toBeCloseTo(2688 * 0.3048 ** 3, 9);
    expect(pool?.flow).toBeGreaterThan(0);
    const model = createModel(examplePool);
    const before = sentence(model);
    takePad(model, ownerPad);
    model.source.value = 'mine';
    model.time.apply(20 * hour);
    expect(plain(sentence(model))).toContain('In 20 h');
    model.source.value = 'example';
    expect(sentence(model)).toBe(before);
  });

  test('stays away while the pad says too little', () => {
    expect(poolOf(emptyPad('metric'))).toBeUndefined();
  });
});

describe('figures in the lesson', () => {
  const value = (name: string, given: Record<string, string>) => lessonValue(name, given).value;

  test('volumes as in reference pool-volume.json', () => {
    const circle = { shape: 'circle', length: '24 ft', depth: '4 ft' };
    expect(value('poolVolume', circle) / gallon).toBeCloseTo(13_536.429, 2);
    const sloped = {
      shape: 'rectangle',
      length: '32 ft',
      width: '16 ft',
      shallow: '3.5 ft',
      deep: '8 ft',
    };
    expect(value('poolVolume', sloped) / gallon).toBeCloseTo(22_022.649, 2);
    const ellipse = { shape: 'ellipse', length: '30 ft', width: '15 ft', depth: '5 ft' };
    expect(value('poolVolume', ellipse) / gallon).toBeCloseTo(13_219.169, 2);
    expect(() => value('poolVolume', { shape: 'cloud', length: '1 m' })).toThrow(
      'No shape is called "cloud"',
    );
  });

  test('turnovers and hours as in reference mixing.json', () => {
    // 20 000 gal, 40 gpm, 8 h: 0.96 turnovers. 75 m3, 9 m3/h: 24.964 h to 95 %.
    const run = { volume: '20000 gal', flow: '40 gpm', time: '8 h' };
    expect(value('turnovers', run)).toBeCloseTo(0.96, 9);
    const to95 = { volume: '75 m3', flow: '9 m3/h', share: '95 %' };
    expect(value('timeForShare', to95) / hour).toBeCloseTo(24.964, 3);
    expect(value('filteredShare', { turnovers: '1', efficiency: '50 %' })).toBeCloseTo(0.39347, 5);
    expect(value('turnoversForShare', { share: '95 %' })).toBeCloseTo(2.9957, 4);
  });

  test('the day the lesson prices: slow is cheaper, but not without end', () => {
    // Fixed 52 W and cube 1640 W of the home picture put the best speed at (52 / 3280)^(1/3) = 0.251.
    const energy = (turnovers: string, time: string) =>
      value('turningEnergy', { volume: '16000 gal', turnovers, time });
    expect(energy('2', '24 h')).toBeLessThan(energy('2', '12 h'));
    expect(energy('2', '12 h')).toBeLessThan(energy('2', '8 h'));
    expect(energy('1.5', '17 h')).toBeLessThan(energy('1.5', '24 h'));
    const speed = value('turningSpeed', { volume: '16000 gal', turnovers: '1.5', time: '24 h' });
    expect(speed).toBeGreaterThan(600);
    expect(speed / 3450).toBeLessThan(0.251);
  });
});
