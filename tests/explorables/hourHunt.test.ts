import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Tariff } from '#core/tariff/tariff.ts';
import { lessonValue } from '#course/lesson/values.ts';
import { huntPlace } from '#explorables/HourHunt/example.ts';
import { createModel, type HuntPlace, workHours } from '#explorables/HourHunt/model.ts';
import { placeOf, takePad } from '#explorables/HourHunt/own.ts';
import { hourSpoken, needLines, priceSteps, sentence, table } from '#explorables/HourHunt/text.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { flatAt } from '../dayPage/oddPads.ts';

const plain = (text: string) => text.replace(/\u00a0/g, ' ');
const gallon = 231 * 0.0254 ** 3; // exact, NIST SP 811

interface Case {
  readonly what: string;
  readonly inputs: {
    readonly blocks: readonly { start: string; end: string; power_w: number }[];
    readonly tariff: readonly { start: string; end: string; price_per_kwh: number }[];
  };
  readonly expected: { readonly energy_kwh: number; readonly cost: number };
}

const clock = (text: string) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
const file = new URL('../reference/cases/electricity.json', import.meta.url);
const cases: readonly Case[] = JSON.parse(readFileSync(file, 'utf8')).cases;

/** A published case of whole hours as a place: one setting for each power. */
function placeOfCase({ inputs }: Case): { place: HuntPlace; hours: number[] } {
  const powers = inputs.blocks.map(({ power_w }) => power_w);
  const bands = inputs.tariff.map(({ start, end, price_per_kwh }) => ({
    start: clock(start),
    end: clock(end),
    price: price_per_kwh,
  }));
  const dayType = { id: 'all', name: 'every day', weekdays: [0, 1, 2, 3, 4, 5, 6], bands };
  const season = { id: 'all', name: 'all year', from: { month: 1, day: 1 }, dayTypes: [dayType] };
  const tariff: Tariff = { currency: '', dailyCharge: 0, seasons: [season] };
  const point = { kind: 'flowing', flow: 0.002, suctionVelocity: 0, dischargeVelocity: 0 } as const;
  const settings = powers.map((power, at) => ({
    speed: 100 * (at + 1),
    ratio: 0.1 * (at + 1),
    point: { ...point, power },
  }));
  const hours = Array.from({ length: 24 }, (_, hour) => {
    const at = inputs.blocks.findIndex(({ start, end }) => {
      const [from, to] = [clock(start), clock(end)];
      const minute = hour * 60;
      return from < to ? minute >= from && minute < to : minute >= from || minute < to;
    });
    return at + 1;
  });
  const bare = { needs: [], limits: [], quiet: [], volume: 50, turnovers: null };
  return { place: { ...bare, settings, tariff, year: 2027 }, hours };
}

describe('a day of hours', () => {
  const wholeHours = cases.filter(({ what }) =>
    [
      'flat tariff, one block',
      'flat tariff, two speeds',
      'two prices, block across the dear band',
    ].includes(what),
  );

  // Reference electricity.json: exact fractions per minute.
  test.each(wholeHours)('$what costs what the reference says', (one) => {
    const { place, hours } = placeOfCase(one);
    const worked = workHours(place, hours, { year: 2027, month: 7, day: 14 });
    expect(worked.price.energyCost).toBeCloseTo(one.expected.cost, 9);
    expect(worked.report.energy / 3.6e6).toBeCloseTo(one.expected.energy_kwh, 9);
  });

  test('all three cases were found', () => {
    expect(wholeHours).toHaveLength(3);
  });
});

describe('the hunt', () => {
  test('opens with three hours fast, six in the middle and the rest slow, from nine on', () => {
    // Common practice, no source: the usual day of the trade.
    const model = createModel(huntPlace);
    expect(model.hours.value.join('')).toBe('111111111333222222111111');
    expect(model.here.value.sound).toBe(true);
    expect(plain(sentence(model))).toMatch(/as much as the usual day\. Every need is met\. Best/);
  });

  test('moves the water of its hours', () => {
    // Arithmetic: flow times time, summed over the hours.
    const model = createModel(huntPlace);
    const flows = huntPlace.settings.map(({ point }) =>
      point.kind === 'flowing' ? point.flow : 0,
    );
    const [slow = 0, middle = 0, fast = 0] = flows;
    const water = 3600 * (15 * slow + 6 * middle + 3 * fast);
    expect(model.here.value.report.volumeMoved / water).toBeCloseTo(1, 12);
  });

  test('a night hour off saves its own price and leaves the water to tell what is missing', () => {
    const model = createModel(huntPlace);
    const before = model.here.value.price.energyCost;
    const power = huntPlace.settings[0]?.point.power ?? 0;
    model.setHour(2, 0);
    // Arithmetic: $0.18 from midnight to seven on a summer weekday.
    expect(before - model.here.value.price.energyCost).toBeCloseTo((power / 1000) * 0.18, 12);
    for (let hour = 0; hour < 24; hour += 1) model.setHour(hour, hour < 3 ? 1 : 0);
    const slow = huntPlace.settings[0]?.point;
    const moved = (slow?.kind === 'flowing' ? slow.flow : 0) * 3 * 3600;
    expect(model.here.value.shortWater / gallon).toBeCloseTo(40_000 - moved / gallon, 6);
    expect(plain(sentence(model))).toMatch(
      /But the day isn’t good enough: Skimming is short by 3 h, Heater is short by 4 h, Salt cell is short by 5 h and the water is short by/,
    );
  });

  test('keeps the best sound day and never an unsound one', () => {
    const model = createModel(huntPlace);
    const usual = model.usual.value.price.energyCost;
    model.lay(Array.from({ length: 24 }, () => 0));
    expect(model.here.value.price.energyCost).toBe(0);
    expect(model.best.value?.price.energyCost).toBe(usual);
    const lean = [...'222221111333211100000111'].map(Number);
    model.lay(lean);
    expect(model.here.value.sound).toBe(true);
    const found = model.here.value.price.energyCost;
    expect(found).toBeLessThan(0.8 * usual);
    model.lay(model.usual.value.hours);
    expect(model.best.value?.price.energyCost).toBe(found);
    model.chooseKind(3);
    expect(model.best.value?.hours).toBe(model.usual.value.hours);
    model.chooseKind(0);
    expect(model.best.value?.price.energyCost).toBe(found);
    model.reset();
    expect(model.best.value?.price.energyCost).toBe(usual);
  });

  test('everything in the cheap hours is dearer than the usual day, or does not reach', () => {
    const model = createModel(huntPlace);
    model.lay([...'333333300333200000000000'].map(Number));
    const { sound, report, price } = model.here.value;
    expect(sound).toBe(false);
    expect(report.volumeMoved / gallon).toBeLessThan(40_000);
    expect(price.energyCost).toBeGreaterThan(0);
  });

  test('any day can be laid; its price is never negative and its words are whole', () => {
    const day = fc.array(fc.integer({ min: -2, max: 9 }), { minLength: 24, maxLength: 24 });
    const model = createModel(huntPlace);
    fc.assert(
      fc.property(day, fc.integer({ min: 0, max: 3 }), (hours, kind) => {
        model.chooseKind(kind);
        model.lay(hours);
        expect(model.here.value.price.energyCost).toBeGreaterThanOrEqual(0);
        const words = [sentence(model), hourSpoken(model, 5), ...table(model).rows.flat()];
        expect(words.join(' ')).not.toMatch(/NaN|undefined|Infinity/);
        const best = model.best.value;
        if (model.here.value.sound && best !== undefined) {
          expect(best.price.energyCost).toBeLessThanOrEqual(model.here.value.price.energyCost);
        }
      }),
      { numRuns: 60 },
    );
    const before = model.hours.value;
    model.lay([1, 2]);
    model.chooseKind(17);
    expect(model.hours.value).toBe(before);
  });

  test('four kinds of day, and the price of each hour by its own band', () => {
    const model = createModel(huntPlace);
    expect(model.kinds.value.map(({ season, dayType }) => `${season} ${dayType}`)).toEqual([
      'Summer weekday',
      'Summer weekend',
      'Winter weekday',
      'Winter weekend',
    ]);
    expect(model.prices.value.filter((price) => price === 0.49)).toHaveLength(5);
    expect(priceSteps([0.2, 0.3, 0.2, 0.5])).toEqual([0, 1, 0, 2]);
  });
});

describe('on the reader’s own pad', () => {
  test('the speeds are those its needs ask for, and the usual day is priced', () => {
    const model = createModel(huntPlace);
    takePad(model, ownerPad);
    model.source.value = 'mine';
    const speeds = model.place.value.settings.map(({ speed }) => speed);
    expect(speeds).toHaveLength(3);
    expect(speeds).toEqual([...speeds].sort((a, b) => a - b));
    expect(needLines(model).map(({ name }) => name)).toContain('Gas heater');
    expect(sentence(model)).not.toMatch(/NaN|undefined/);
    model.reset();
    expect(model.source.value).toBe('example');
  });

  test('sums have no cents where they buy nothing, and a price keeps the places it has', () => {
    const model = createModel(huntPlace);
    takePad(model, { ...ownerPad, tariff: flatAt(70.5, 'Ft') });
    model.source.value = 'mine';
    expect(plain(hourSpoken(model, 3))).toMatch(/, 70\.50 Ft a kilowatt-hour$/);
    expect(plain(sentence(model))).toMatch(/costs \d+ Ft,/);
    expect(plain(table(model).rows[12]?.at(-1) ?? '')).toMatch(/^\d+\.\d Ft$/);
  });

  test('a pad that does not say enough gives no place', () => {
    expect(placeOf(emptyPad('us'))).toBeUndefined();
  });
});

describe('figures of the lesson', () => {
  test('190 W from 14:00 to 18:00 on a summer weekday cost $0.289', () => {
    // Arithmetic: 0.38 kWh at $0.27 and 0.38 kWh at $0.49.
    const given = { day: 'summer weekday', power: '190 W', from: '14:00', to: '18:00' };
    expect(lessonValue('runPrice', given).value).toBeCloseTo(0.38 * 0.27 + 0.38 * 0.49, 12);
  });

  test('with nothing but water to move, speed goes as one over the root of the price', () => {
    // Calculus, checked by search: least of p r^3 + (2 - r)^3 over r, two equal stretches.
    const ratio = 2.7;
    let best = { share: 0, cost: Number.POSITIVE_INFINITY };
    for (let dear = 0.001; dear < 2; dear += 0.0005) {
      const cost = ratio * dear ** 3 + (2 - dear) ** 3;
      if (cost < best.cost) best = { share: dear / (2 - dear), cost };
    }
    expect(lessonValue('speedForPrice', { ratio: '2.7' }).value).toBeCloseTo(best.share, 3);
  });

  test('the next thousand gallons get dearer with speed at the same price', () => {
    const next = (from: string, to: string) =>
      lessonValue('waterPrice', { from, to, price: '0.18' }).value;
    // Power climbs faster than flow (affinity laws), so each step costs more than the one before.
    expect(next('1500 rpm', '2200 rpm')).toBeGreaterThan(next('1000 rpm', '1500 rpm'));
  });
});
