import { signal } from '@preact/signals';
import { describe, expect, test } from 'vitest';
import { lodgePad, ownerPad } from '#pad/demos.ts';
import { emptyPad } from '#pad/parts.ts';
import type { Pad, PadYear } from '#pad/schema.ts';
import { createDayModel } from '#widgets/DaySheet/model.ts';
import { createYear } from '#widgets/YearSheet/model.ts';
import { findingText, monthTable, planText } from '#widgets/YearSheet/text.ts';
import { storeOf } from './daySheetFixtures.ts';

// Our own behaviour, held against the core's own year where it has figures.

function year(pad: Pad, given: Partial<PadYear> = {}) {
  const day = createDayModel(storeOf({ ...pad, year: { ...pad.year, ...given } }));
  return { day, model: createYear(day, day.pad) };
}

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

describe('the year on the sheet', () => {
  test('of a pad that says nothing of the year costs what its price table says', () => {
    const { model, day } = year(ownerPad);
    expect(model.mine.value?.cost).toBeCloseTo(day.here.value?.prices?.year.cost ?? Number.NaN, 6);
  });

  test('sets the pump before beside it: watts times hours over the calendar', () => {
    // Flat tariff of one price, so that the arithmetic is by hand: 2 kW x 8 h x 365 x price.
    const flat: Pad = {
      ...ownerPad,
      tariff: {
        ...ownerPad.tariff,
        dailyCharge: null,
        holidays: [],
        seasons: ownerPad.tariff.seasons.slice(0, 1).map((season) => ({
          ...season,
          to: null,
          dayTypes: season.dayTypes.slice(0, 1).map((type) => ({
            ...type,
            weekdays: [0, 1, 2, 3, 4, 5, 6],
            bands: [{ start: 0, end: 0, name: '', price: 0.2 }],
          })),
        })),
      },
    };
    const { model } = year(flat, {
      oldPower: 2000,
      oldMinutes: 480,
      price: 1000,
      interest: 0,
      lifetime: 10,
    });
    expect(model.other.value?.kind).toBe('oldPump');
    expect(model.other.value?.cost).toBeCloseTo(2 * 8 * 365 * 0.2, 6);
    const worth = model.worth.value;
    const saving = 1168 - (model.mine.value?.cost ?? Number.NaN);
    expect(worth?.saving).toBeCloseTo(saving, 6);
    expect(worth?.payback).toBeCloseTo(1000 / saving, 6);
    expect(worth?.present).toBeCloseTo(10 * saving - 1000, 4);
    expect(plain(findingText(model))).toMatch(
      /The \$1 ?000\.00 for the pump are back in [\d.]+ years?\. Over 10 years, with interest, it is worth \$[\d .]+ more than it costs\./,
    );
  });

  test('says that a price never comes back when nothing is saved', () => {
    const { model } = year(ownerPad, { oldPower: 1, oldMinutes: 60, price: 1000 });
    expect(findingText(model)).toContain('never come back this way');
  });

  test('tells gas, days short and the months of the lodge', () => {
    const { model } = year(lodgePad);
    const words = plain(findingText(model));
    expect(words).toMatch(/^The year 2027 takes [\d .]+ kWh and costs /);
    expect(words).toMatch(/With it comes [\d .]+ kg of greenhouse gas\./);
    expect(words).not.toMatch(/NaN|undefined|Infinity/);
    const { rows } = monthTable(model);
    expect(rows).toHaveLength(12);
    expect(rows[0]?.[0]).toBe('January');
  });

  test('asks for what it lacks', () => {
    const { model } = year(emptyPad());
    expect(findingText(model)).toBe(
      'The pad does not say enough yet for a year: it needs pump, pool and prices.',
    );
    expect(monthTable(model).rows).toEqual([]);
  });
});

describe('days by season', () => {
  test('the day on the sheet is kept as a plan, in the order of the year, and can be taken away', () => {
    const { model, day } = year(ownerPad);
    model.addPlan(10, 1);
    model.addPlan(5, 1);
    const plans = () => day.pad.value.year.plans;
    expect(plans().map(({ from }) => from.month)).toEqual([5, 10]);
    expect(plans()[0]?.blocks).toEqual(ownerPad.day.blocks);
    expect(plain(planText(plans()[0] as (typeof ownerPad)['year']['plans'][number]))).toBe(
      'from 1 May: 4 blocks, 24 h a day',
    );
    model.addPlan(5, 1);
    expect(plans()).toHaveLength(2);
    model.removePlan(plans()[0]?.id ?? '');
    expect(plans().map(({ from }) => from.month)).toEqual([10]);
    day.store.undo();
    expect(plans()).toHaveLength(2);
  });

  test('the year follows the pad it is given, not the one under the hand', () => {
    const day = createDayModel(storeOf(ownerPad));
    const calm = signal<Pad>(ownerPad);
    const model = createYear(day, calm);
    const before = model.mine.value;
    model.set(['cleaningDays'], 30, 'cleaning');
    expect(model.mine.value).toBe(before);
    calm.value = day.pad.value;
    expect(model.mine.value?.volumeMoved).toBeLessThan(before?.volumeMoved ?? 0);
  });
});
