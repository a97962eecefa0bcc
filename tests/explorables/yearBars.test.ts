import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { flatTariff } from '#core/tariff/tariff.ts';
import { lessonValue } from '#course/lesson/values.ts';
import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { operatingStateAt } from '#explorables/example/machine.ts';
import { carriedYear } from '#explorables/YearBars/example.ts';
import {
  coldMonths,
  createModel,
  planYear,
  sameWater,
  scaleOf,
  seasonMonths,
} from '#explorables/YearBars/model.ts';
import { takePad } from '#explorables/YearBars/own.ts';
import { placeFrom } from '#explorables/YearBars/place.ts';
import { frostText, paybackText, sentence, table } from '#explorables/YearBars/text.ts';
import { lodgePad } from '#pad/demos/demoLodge.ts';
import { emptyPad } from '#pad/document/parts.ts';

const yearPlace = placeFrom(carriedYear);

const plain = (text: string) => text.replace(/\u00a0/g, ' ');

describe('a pump priced in another currency', () => {
  test('costs hundreds of dollars, and tens of thousands of yen, until it is typed', () => {
    // A power of ten by what energy costs: 31 yen against some 0.2 or 0.5 dollars a kilowatt-hour.
    const yen = flatTariff(31, 0, '¥');
    expect(scaleOf(yen, flatTariff(0.3, 0, '$'))).toBe(100);
    expect(scaleOf(flatTariff(0.28, 0, '€'), flatTariff(0.3, 0, '$'))).toBe(1);
    expect(scaleOf(flatTariff(0, 0, '€'), flatTariff(0.3, 0, '$'))).toBe(1);
    const model = createModel(yearPlace);
    model.own.value = { ...yearPlace, tariff: yen };
    const before = model.outlay.value.value;
    model.source.value = 'mine';
    const scale = scaleOf(yen, yearPlace.tariff);
    expect(model.outlay.value.value).toBe(before * scale);
    model.outlay.apply(80_000);
    expect(model.outlay.value.value).toBeCloseTo(80_000, 6);
    model.reset();
    expect(model.outlay.value.value).toBe(before);
  });
});

describe('the year of two pumps', () => {
  test('at one price a year is its hours times its power times the price', () => {
    // Arithmetic: 153 days of May to September at 8 h, 212 at 4 h, all at top speed.
    const model = createModel(yearPlace);
    const { season, rest } = model.oneSpeed.value;
    const year = planYear(
      { ...yearPlace, tariff: flatTariff(0.2, 0.5) },
      { season, rest, frostSpeed: 0 },
      seasonMonths(5, 9),
      Array.from({ length: 12 }, () => 0),
    );
    const kilowattHours = ((153 * 8 + 212 * 4) * season.at.power) / 1000;
    expect(year.energy / 3.6e6).toBeCloseTo(kilowattHours, 6);
    expect(year.cost).toBeCloseTo(0.2 * kilowattHours + 0.5 * 365, 6);
    expect(year.months).toHaveLength(12);
  });

  test('a night of frost adds the hours the day does not run already', () => {
    // Arithmetic: from 22:00 to 08:00 are ten hours, and the day run starts at 08:00.
    const model = createModel(yearPlace);
    model.frostNights.apply(0);
    const before = model.oneSpeed.value.energy;
    model.frostNights.apply(4);
    const power = model.oneSpeed.value.rest.at.power;
    expect((model.oneSpeed.value.energy - before) / 3.6e6).toBeCloseTo(
      (3 * 4 * 10 * power) / 1000,
      6,
    );
  });

  test('the slow pump moves the same water, or says what it lacks', () => {
    const model = createModel(yearPlace);
    const { season } = model.oneSpeed.value;
    const slow = model.variable.value.season;
    const water = (day: typeof season) => day.at.flow * day.minutes;
    // To the minute: rounded up, never down.
    expect(water(slow)).toBeGreaterThanOrEqual(water(season));
    expect(water(slow) - water(season)).toBeLessThan(slow.at.flow);
    model.seasonHours.apply(20 * 3600);
    model.seasonSpeed.apply(600);
    expect(model.variable.value.season.minutes).toBe(1440);
    expect(plain(sentence(model))).toMatch(
      /In the season, 600 rpm round the clock still moves \d+ % less/,
    );
    const stuck = sameWater({ speed: 600, flow: 0, power: 60 }, season);
    expect(stuck).toMatchObject({ minutes: 1440, wanted: Number.POSITIVE_INFINITY });
  });

  test('hardly any hours make the payback long, and none make it never', () => {
    const model = createModel(yearPlace);
    const usual = model.payback.value ?? 0;
    // Arithmetic: outlay over saving.
    expect(usual).toBeCloseTo(700 / model.saving.value, 12);
    model.seasonHours.apply(3600);
    model.restHours.apply(3600);
    expect(model.payback.value).toBeGreaterThan(2 * usual);
    model.seasonHours.apply(0);
    model.restHours.apply(0);
    model.frostNights.apply(0);
    expect(model.payback.value).toBeNull();
    expect(sentence(model)).toMatch(/never come back/);
    expect(sentence(model)).not.toMatch(/NaN|Infinity|undefined/);
    model.outlay.apply(0);
    expect(model.payback.value).toBe(0);
    model.reset();
    expect(model.payback.value).toBe(usual);
  });

  test('a season may run over the new year, and frost lies opposite', () => {
    const names = (months: readonly boolean[]) =>
      months.flatMap((inside, index) => (inside ? [index + 1] : []));
    expect(names(seasonMonths(5, 9))).toEqual([5, 6, 7, 8, 9]);
    expect(names(seasonMonths(11, 3))).toEqual([1, 2, 3, 11, 12]);
    expect(names(seasonMonths(7, 7))).toEqual([7]);
    expect(names(seasonMonths(1, 12))).toHaveLength(12);
    expect(names(coldMonths(5, 9))).toEqual([1, 2, 12]);
    expect(names(coldMonths(11, 3))).toEqual([6, 7, 8]);
    const model = createModel(yearPlace);
    expect(frostText(model)).toBe('December, January and February');
    model.firstMonth.value = 11;
    model.lastMonth.value = 3;
    expect(frostText(model)).toBe('June, July and August');
    expect(table(model).rows).toHaveLength(13);
  });

  test('payback in words', () => {
    expect(plain(paybackText(1.14))).toBe('1.1 years');
    expect(paybackText(0.05)).toBe('under a month');
    expect(paybackText(80)).toBe('more than 50 years');
    expect(paybackText(null)).toBe('never');
  });

  test('follows the reader’s own pump and tariff, and stays away without them', () => {
    const model = createModel(yearPlace);
    takePad(model, lodgePad);
    model.source.value = 'mine';
    expect(model.place.value.tariff.currency).toBe('€');
    expect(sentence(model)).toMatch(/€/);
    expect(sentence(model)).not.toMatch(/NaN|Infinity|undefined/);
    takePad(model, emptyPad('us'));
    expect(model.own.value).toBeUndefined();
    expect(model.place.value).toBe(yearPlace);
  });

  test('carries the pump of the other lessons point for point', () => {
    for (const speed of [600, 1500, 1725, 3450]) {
      const { flow, power } = operatingStateAt(exampleMachine, speed);
      expect(yearPlace.runningAt(speed).flow / flow).toBeCloseTo(1, 6);
      expect(yearPlace.runningAt(speed).power / power).toBeCloseTo(1, 6);
    }
  });
});

describe('figures of the lesson', () => {
  test('summer 2027, June to September, has 88 weekdays and 34 weekend days', () => {
    // Calendar (ISO 8601): 1 June 2027 is a Tuesday; 122 days.
    const first = new Date(Date.UTC(2027, 5, 1));
    const days = Array.from({ length: 122 }, (_, at) =>
      new Date(+first + at * 86_400_000).getUTCDay(),
    );
    const weekend = days.filter((day) => day === 0 || day === 6).length;
    const count = (kind: string) => lessonValue('seasonDays', { season: 'summer', kind }).value;
    expect(count('weekend')).toBe(weekend);
    expect(count('weekday')).toBe(122 - weekend);
    expect([122 - weekend, weekend]).toEqual([88, 34]);
  });

  test('the label of the worked example is that of the reference', () => {
    // Reference energy-factor.json, "80 - 0.004 Q^2": 6.599 against 6.369, and 2.626 with one speed.
    const file = new URL('../reference/cases/energy-factor.json', import.meta.url);
    const { cases } = JSON.parse(readFileSync(file, 'utf8'));
    const found = (start: string) =>
      cases.find(
        (one: { what: string; inputs: Record<string, unknown> }) =>
          one.what.startsWith(start) &&
          one.inputs['pump_head_ft'] === '80 - 0.004 Q^2 at top speed',
      ).expected;
    const variable = found('variable-speed');
    const given = {
      'top-flow': '80.97763301789159 gpm',
      horsepower: String(variable.hydraulic_horsepower),
      'low-power': '180 W',
      'high-power': '1000 W',
    };
    expect(lessonValue('weightedEnergyFactor', given).value).toBeCloseTo(
      variable.wef_kgal_per_kwh,
      6,
    );
    expect(lessonValue('leastEnergyFactor', given).value).toBeCloseTo(
      variable.least_wef_kgal_per_kwh,
      6,
    );
    const one = lessonValue('energyFactor', { flow: given['top-flow'], power: '1850 W' });
    expect(one.value).toBeCloseTo(found('single-speed').wef_kgal_per_kwh, 6);
  });

  test('180 h of frost at half speed take 46.3 kWh, flat out 304.6', () => {
    // Arithmetic: (52 + 1640 / 8) W x 180 h, and 1692 W x 180 h.
    const given = { fixed: '52 W', cube: '1640 W', from: '3450 rpm', time: '180 h' };
    const energy = (to: string) => lessonValue('frostEnergy', { ...given, to }).value / 3.6e6;
    expect(energy('1725 rpm')).toBeCloseTo(46.26, 9);
    expect(energy('3450 rpm')).toBeCloseTo(304.56, 9);
  });

  test('the freeze control of the rule starts at 40 degF', () => {
    // 10 CFR 431.465(h); reference energy-factor.json.
    expect(lessonValue('frostStart', {}).value).toBeCloseTo((40 - 32) / 1.8, 9);
  });
});
