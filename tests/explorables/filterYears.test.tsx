import fc from 'fast-check';
import renderToString from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { flatTariff } from '#core/tariff/tariff.ts';
import { water } from '#core/water/water.ts';
import { lessonValue } from '#course/lesson/values.ts';
import type { Ask, FilterSetup, Worked } from '#explorables/FilterYears/ask.ts';
import { exampleBasis, ofArea } from '#explorables/FilterYears/basis.ts';
import { carried } from '#explorables/FilterYears/carry.ts';
import { solveExample } from '#explorables/FilterYears/example.ts';
import { createModel, openingAsk } from '#explorables/FilterYears/model.ts';
import { ownFilters, takePad } from '#explorables/FilterYears/own.ts';
import { createSolver } from '#explorables/FilterYears/solve.ts';
import { readings, sentence, spokenInterval, table } from '#explorables/FilterYears/text.ts';
import FilterYears from '#explorables/FilterYears/view.tsx';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { metric } from '#units/choice.ts';

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

/** A loop that is a filter and nothing else, so that everything can be worked out by hand. */
const solveByHand = createSolver({
  curve: {
    shutoffHead: 20,
    lastFlow: 0.02,
    provenance: 'points',
    head: (flow) => 20 - 2e5 * flow * flow,
    slope: (flow) => -4e5 * flow,
  },
  power: { fixed: 0, atReference: () => 1000 },
  circuit: {
    suction: [],
    discharge: [
      {
        kind: 'equipment',
        id: 'f',
        referenceHead: 1,
        referenceFlow: 0.005,
        exponent: 2,
        factor: 1,
      },
    ],
    staticHead: 0,
    water: water(25),
  },
  filterId: 'f',
  reference: 3000,
  top: 3000,
  tariff: flatTariff(0.2, 9, '$'),
});
const tenDays: FilterSetup = { cleanHead: 5, dirtyHead: 15, due: 10, interval: 10 };
const steady: FilterSetup = { cleanHead: 5, dirtyHead: 5, due: 100, interval: 100 };
const handAsk = (change: Partial<Ask> = {}): Ask => ({
  way: 'left',
  speed: 3000,
  minutes: 600,
  filters: [tenDays, steady],
  ...change,
});
/** Flow at full speed where pump and filter meet [m3/s]: k Q2 = 20 - 2e5 Q2, k = 2e5 clean, 6e5 due. */
const flowAt = (day: number) => Math.sqrt(20 / (2e5 + 2e5 + 4e5 * ((day + 0.5) / 10)));
const cleanFlow = Math.sqrt(20 / 4e5);

describe('a loop worked out by hand', () => {
  test('the flow sinks day by day and comes back with each cleaning; the energy is watts times hours', () => {
    const { filters } = solveByHand(handAsk());
    const [loading, clean] = filters;
    expect(loading.cycle).toHaveLength(10);
    loading.cycle.forEach(({ flow, power, minutes }, day) => {
      expect(flow / flowAt(day)).toBeCloseTo(1, 8);
      expect([power, minutes]).toEqual([1000, 600]);
    });
    // 36 whole cycles and the first five days of another make 365 days.
    const days = Array.from({ length: 365 }, (_, at) => flowAt(at % 10) * 36_000);
    expect(loading.water / days.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 8);
    expect(loading.cleanings).toBe(37);
    expect(clean.water).toBeCloseTo(365 * cleanFlow * 36_000, 4);
    // 1 kW for 10 h a day at 0.20; the daily charge is left out.
    expect(clean.cost).toBeCloseTo(365 * 10 * 0.2, 8);
    expect(clean.energy / 3.6e6).toBeCloseTo(3650, 8);
  });

  test('kept with hours the run is as much longer as the flow is less, to the minute', () => {
    const { filters, asked } = solveByHand(handAsk({ way: 'hours' }));
    expect(asked).toBeCloseTo(cleanFlow * 36_000, 6);
    filters[0].cycle.forEach(({ minutes }, day) => {
      expect(minutes).toBe(Math.ceil((600 * cleanFlow) / flowAt(day)));
    });
  });

  test('kept with speed, speed goes as the flow that was lost and power as its cube', () => {
    // Affinity laws, ANSI/HI 14.3, exact in a loop of exponent 2 without lift.
    const { filters } = solveByHand(handAsk({ way: 'speed', speed: 1200 }));
    filters[0].cycle.forEach(({ flow, speed, power }, day) => {
      const ratio = cleanFlow / flowAt(day);
      expect(speed / (1200 * ratio)).toBeCloseTo(1, 7);
      expect(power / (1000 * (0.4 * ratio) ** 3)).toBeCloseTo(1, 6);
      expect(flow / (0.4 * cleanFlow)).toBeCloseTo(1, 7);
    });
    expect(filters[0].lackDays).toBe(0);
  });

  test('where top speed or the whole day is too little, the days are counted', () => {
    // At top speed already, no day but none is kept: every loaded day is short.
    expect(solveByHand(handAsk({ way: 'speed' })).filters[0].lackDays).toBe(365);
    const round = solveByHand(handAsk({ way: 'hours', minutes: 1440 }));
    expect(round.filters[0].lackDays).toBe(365);
    expect(round.filters[1].lackDays).toBe(0);
  });

  test('cleaned twice as often it takes less, never more, for the same water', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 4, max: 60 }),
        fc.double({ min: 1.2, max: 8, noNaN: true }),
        fc.constantFrom('hours' as const, 'speed' as const),
        (interval, times, way) => {
          const filter = { cleanHead: 2, dirtyHead: 2 * times, due: interval, interval };
          const { filters, oftener } = solveByHand(
            handAsk({ way, speed: 1500, minutes: 300, filters: [filter, steady] }),
          );
          expect(oftener.interval).toBe(Math.round(interval / 2));
          expect(oftener.energy).toBeLessThan(filters[0].energy);
          expect(oftener.cleanings).toBeGreaterThan(filters[0].cleanings);
        },
      ),
      { numRuns: 12 },
    );
  });
});

describe('a filter of twice the area', () => {
  test('loses as the power of half the velocity, and takes twice as long to load', () => {
    // h = c v^n (filter law of the neighbours): at n = 1 half the head, at n = 2 a quarter.
    expect(ofArea(tenDays, 2, 1)).toEqual({
      cleanHead: 2.5,
      dirtyHead: 7.5,
      due: 20,
      interval: 20,
    });
    expect(ofArea(tenDays, 2, 2)).toMatchObject({ cleanHead: 1.25, dirtyHead: 3.75 });
  });
});

describe('the picture of the lesson', () => {
  const first: Worked = carried(solveExample(openingAsk(exampleBasis)));
  const opened = () => {
    const model = createModel(exampleBasis, first);
    model.solver.value = solveExample;
    return model;
  };

  test('opens with what the page carries, to the figures shown', () => {
    const waiting = createModel(exampleBasis, first);
    expect(sentence(waiting)).toBe(sentence(opened()));
    const html = renderToString(<FilterYears id="y" first={first} />);
    expect(plain(html)).toContain(plain(sentence(waiting)).slice(0, 60));
    expect(html).not.toMatch(/NaN|Infinity|undefined/);
  });

  test('left alone: less water, no more watts, dearer water', () => {
    const model = opened();
    model.way.value = 'left';
    const [small] = model.worked.value.filters;
    const [fresh, due] = [small.cycle[0], small.cycle.at(-1)];
    if (fresh === undefined || due === undefined) throw new Error('there is no cycle');
    expect(due.flow).toBeLessThan(fresh.flow);
    expect(due.power).toBeLessThan(fresh.power);
    expect(due.power / due.flow).toBeGreaterThan(fresh.power / fresh.flow);
    expect(plain(sentence(model))).toMatch(/The draw sinks too, from \d+ W to \d+ W; but the same/);
  });

  test('hours keep the water for less than speed does, and the words say by how much', () => {
    const model = opened();
    const hours = model.worked.value.filters[0].energy;
    expect(plain(sentence(model))).toMatch(/To move .* a day through the small filter .* each\.$/);
    model.way.value = 'speed';
    expect(model.worked.value.filters[0].energy).toBeGreaterThan(hours);
    expect(plain(sentence(model))).toMatch(/\d+ % more speed, \d+ % more power/);
    model.units.value = metric;
    expect(sentence(model)).toMatch(/m³/);
    expect(table(model).rows).toHaveLength(9);
    expect(readings(model)).toHaveLength(2);
    expect(plain(spokenInterval(model, 1))).toMatch(/^112 days, 4 cleanings, \d+ kWh$/);
  });

  test('says when no water moves, and when the day or the speed does not reach', () => {
    const model = opened();
    model.speed.apply(3450);
    model.way.value = 'speed';
    expect(plain(sentence(model))).toMatch(
      /even 3450 rpm is too little on \d+ days: clean it sooner/,
    );
    model.way.value = 'hours';
    model.hours.apply(24);
    expect(plain(sentence(model))).toMatch(/even round the clock is too little/);
  });

  test('a filter never loses less dirty than clean, and is never cleaned after it is due', () => {
    const model = opened();
    const [small] = model.filters;
    small.cleanHead.apply(20);
    expect(small.dirtyHead.value.value).toBe(small.cleanHead.value.value);
    small.due.apply(30);
    expect(small.interval.value.value).toBe(30);
    expect(() => sentence(model)).not.toThrow();
    model.reset();
    expect(model.asked.value).toEqual(openingAsk(exampleBasis));
  });

  test('follows the reader’s own filter, and stays away without both its ends', () => {
    const model = opened();
    takePad(model, lodgePad);
    model.source.value = 'mine';
    expect(model.filters[0].interval.value.value).toBe(21);
    expect(plain(sentence(model))).toContain('through your filter');
    expect(sentence(model)).not.toMatch(/NaN|Infinity|undefined/);
    expect(ownFilters(ownerPad)).toBeDefined();
    takePad(model, emptyPad('us'));
    expect(model.own.value).toBeUndefined();
    expect(sentence(model)).toContain('the small filter');
  });

  test('a draw that rounds to the same stays, and every one day is every day', () => {
    const model = opened();
    takePad(model, ownerPad);
    model.source.value = 'mine';
    model.way.value = 'left';
    expect(plain(sentence(model))).toMatch(/The draw stays at \d+ W; but/);
    model.filters[0].interval.apply(2);
    expect(plain(sentence(model))).toContain('Cleaned every day instead of every 2 days, ');
  });

  test('the lesson quotes the same figures', () => {
    const { filters, oftener } = solveExample(openingAsk(exampleBasis));
    expect(lessonValue('filterYearEnergy', { way: 'hours' }).value).toBe(filters[0].energy);
    // Arithmetic: money saved over cleanings more.
    expect(lessonValue('cleaningEarns', { way: 'hours' }).value).toBeCloseTo(
      (filters[0].cost - oftener.cost) / (oftener.cleanings - filters[0].cleanings),
      9,
    );
    expect(() => lessonValue('filterYearEnergy', {})).toThrow('Say which way');
  });
});
