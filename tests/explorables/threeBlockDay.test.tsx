import { render } from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { lessonValue } from '#course/lesson/values.ts';
import type { Bench } from '#explorables/ThreeBlockDay/bench.ts';
import {
  exampleBench,
  exampleSetting,
  exampleWorker,
  openingBlocks,
} from '#explorables/ThreeBlockDay/example.ts';
import { workOut } from '#explorables/ThreeBlockDay/figures.ts';
import { createModel } from '#explorables/ThreeBlockDay/model.ts';
import { benchOf, takePad } from '#explorables/ThreeBlockDay/own.ts';
import {
  sentence,
  spokenBegin,
  table,
  usualText,
  wishText,
} from '#explorables/ThreeBlockDay/text.ts';
import ThreeBlockDay from '#explorables/ThreeBlockDay/view.tsx';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { metric } from '#units/choice.ts';

const first = exampleWorker(openingBlocks);

function opened() {
  const model = createModel(exampleSetting, first);
  model.worker.value = exampleWorker;
  return model;
}

const plain = (text: string) => text.replace(/\u00a0/g, ' ');
const kilowattHour = 3.6e6;

/** A bench whose watts are those of a published case: speed ratio 1 and 2 stand for two powers. */
function caseBench(powers: Readonly<Record<number, number>>): Bench {
  const band = (start: number, end: number, price: number) => ({
    start: start * 60,
    end: end * 60,
    price,
  });
  const bands = [band(0, 16, 0.21), band(16, 21, 0.48), band(21, 24, 0.21)];
  const dayTypes = [{ id: 'a', name: 'a', weekdays: [0, 1, 2, 3, 4, 5, 6], bands }];
  return {
    ...exampleBench,
    needs: [],
    pointAt: (ratio) => ({
      kind: 'flowing',
      flow: 0.001 * ratio,
      power: powers[ratio] ?? 0,
      suctionVelocity: 0,
      dischargeVelocity: 0,
    }),
    tariff: {
      currency: '$',
      dailyCharge: 0,
      seasons: [{ id: 'y', name: 'y', from: { month: 1, day: 1 }, dayTypes }],
    },
  };
}

describe('a day of blocks', () => {
  test('two prices, a block across the dear band and one across midnight: 4.8 kWh for 1.494', () => {
    // tests/reference/cases/electricity.json, "two prices, block across the dear band".
    const day = workOut(caseBench({ 1: 150, 2: 900 }), [
      { id: 'a', start: 14 * 60, end: 18 * 60, ratio: 2 },
      { id: 'b', start: 22 * 60, end: 6 * 60, ratio: 1 },
    ]);
    expect(day.report.energy / kilowattHour).toBeCloseTo(4.8, 9);
    expect(day.cost).toBeCloseTo(1.494, 9);
    // Arithmetic: two hours of 0.9 kW at 0.48.
    expect(day.dearCost).toBeCloseTo(0.864, 9);
    expect(day.parts.map(({ energy }) => energy / kilowattHour)).toEqual([3.6, 1.2]);
  });

  test('opens as the usual day of the trade: 3 h high, 6 h middle, the rest low', () => {
    // Common practice, no source: 2 to 4 h, 4 to 8 h, the rest.
    const model = opened();
    expect(model.here.value.parts.map(({ minutes }) => minutes / 60)).toEqual([3, 6, 15]);
    expect(model.usual.value).toBe(true);
    expect(model.here.value.report.runMinutes).toBe(1440);
  });

  test('the parts add up to the day', () => {
    const { parts, report, cost } = opened().here.value;
    const sum = (value: (part: (typeof parts)[number]) => number) =>
      parts.reduce((total, part) => total + value(part), 0);
    expect(sum(({ water }) => water)).toBeCloseTo(report.volumeMoved, 9);
    expect(sum(({ energy }) => energy) / report.energy).toBeCloseTo(1, 12);
    expect(sum(({ cost: each }) => each)).toBeCloseTo(cost, 12);
  });

  test('most water from the slow block, dearest gallons in the fast one', () => {
    // Affinity laws, ANSI/HI 14.3: energy for the same water goes with the square of the speed.
    const [high, middle, low] = opened().here.value.parts.map(
      ({ water, energy }) => [water, energy / water] as const,
    );
    expect(low?.[0]).toBeGreaterThan(high?.[0] ?? 0);
    expect(low?.[0]).toBeGreaterThan(middle?.[0] ?? 0);
    expect((high?.[1] ?? 0) / (middle?.[1] ?? 1)).toBeGreaterThan((2600 / 1800) ** 1.5);
    expect((high?.[1] ?? 0) / (middle?.[1] ?? 1)).toBeLessThan((2600 / 1800) ** 2);
  });
});

describe('setting it', () => {
  test('an end stops an hour short of its neighbours, and the day stays whole', () => {
    const model = opened();
    model.begins.middle.apply(0);
    expect(model.begins.middle.value.value).toBe(10 * 60);
    model.begins.low.apply(99_999);
    expect(model.begins.low.value.value).toBe(1425);
    model.begins.high.apply(-99);
    expect(model.begins.high.value.value).toBe(45);
    expect(model.here.value.report.runMinutes).toBe(1440);
    expect(model.usual.value).toBe(false);
    expect(usualText(model)).toContain('are not the usual ones');
    model.reset();
    expect(model.begins.high.value.value).toBe(540);
    expect(model.here.value.parts.map(({ speed }) => Math.round(speed))).toEqual([
      2600, 1800, 1200,
    ]);
  });

  test('stopping instead of running low leaves the salt cell short and turns nothing at night', () => {
    const model = opened();
    model.stops.value = true;
    const { report, parts } = model.here.value;
    expect(report.runMinutes).toBe(9 * 60);
    expect(parts[2]?.energy).toBe(0);
    expect(report.needs.filter(({ met }) => !met).map(({ need }) => need.id)).toEqual(['salt']);
    // 14 h asked, 9 h served.
    expect(plain(sentence(model))).toContain('Not every need is met: Salt cell is 5 h short.');
    expect(plain(table(model).rows[2]?.[3] ?? '')).toBe('0');
  });

  test('says water, energy, price and who pays it', () => {
    const words = plain(sentence(opened())).replace(/\u202f/g, ' ');
    expect(words).toMatch(
      /^The day moves [\d ]+ gal, \d\.\d turnovers, with \d\.\d\d kWh for \$\d\.\d\d\. Of that, high \(3 h at 2600 rpm\) \d+ % of the water and \d+ % of the price; middle/,
    );
    expect(words).toMatch(/Every need is met\.$/);
    expect(plain(spokenBegin(opened(), 'low'))).toMatch(
      /^Low block begins at 18:00, the day costs \$\d\.\d\d$/,
    );
    expect(plain(wishText(exampleBench.needs[0] as never, opened()))).toBe(
      'Skim the surface: 50 gpm or more for 3 h, between 08:00 and 18:00',
    );
  });

  test('in metric units the numbers change and the day does not', () => {
    const model = opened();
    model.units.value = metric;
    expect(sentence(model)).toContain('m³');
    expect(table(model).columns.join()).toContain('m³/h');
  });

  test('the first picture needs no script, and stands until the rest has come', () => {
    const model = createModel(exampleSetting, first);
    model.speeds.high.apply(3000);
    expect(model.here.value).toBe(first);
    const html = render(<ThreeBlockDay id="day" setting={exampleSetting} first={first} />);
    expect(html).toContain(sentence(opened()));
    expect(html).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe('the reader’s own pad', () => {
  test('is offered when pool, pump and prices are known, and keeps its limits', () => {
    const model = opened();
    takePad(model, ownerPad);
    model.source.value = 'mine';
    expect(model.setting.value.needs.length).toBeGreaterThan(2);
    expect(sentence(model)).not.toMatch(/NaN|undefined/);
    // The invented owner wants it quiet from 22:00 to 07:00, at 1800 rpm at the most.
    expect(sentence(model)).not.toContain('quiet hours');
    model.speeds.low.apply(2400);
    expect(sentence(model)).toContain('It is too fast for your quiet hours.');
    // Covers of the invented owner are marked for 112 gpm each; suction runs at 6 ft/s at the most.
    model.speeds.high.apply(3450);
    expect(sentence(model)).toContain('passes');
  });

  test('stays away while it does not say enough', () => {
    expect(benchOf(emptyPad('us'))).toBeUndefined();
    const model = opened();
    takePad(model, emptyPad('metric'));
    model.source.value = 'mine';
    expect(model.setting.value).toBe(exampleSetting);
  });
});

describe('figures in the lesson', () => {
  test('800 W for four hours are 3.2 kWh', () => {
    // Definition of the kilowatt-hour.
    const given = { power: '800 W', from: '10:00', to: '14:00' };
    expect(lessonValue('blockEnergy', given).value / kilowattHour).toBeCloseTo(3.2, 12);
  });

  test('a mistake in a block stops the build in words', () => {
    expect(() => lessonValue('dayWater', { blocks: '9 to 12' })).toThrow('"9" is no block');
    expect(() => lessonValue('dayBlockFlow', { blocks: '09:00-12:00@2600', block: '2' })).toThrow(
      'There is no block 2.',
    );
  });
});
