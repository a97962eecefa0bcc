import { signal } from '@preact/signals';
import { describe, expect, test } from 'vitest';
import type { ShortNeed } from '#core/year/yearBeside.ts';
import { createDayModel } from '#dayPage/day/model.ts';
import { createYear } from '#dayPage/parts/year/model.ts';
import { needsOfSeason } from '#dayPage/parts/year/seasons.ts';
import { saidText, seasonShortText, seasonText } from '#dayPage/parts/year/seasonText.ts';
import { besideTable, monthTable } from '#dayPage/parts/year/tables.ts';
import { findingText, measureWords, years } from '#dayPage/parts/year/text.ts';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import type { Pad, PadYear } from '#pad/document/schema.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
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
    expect(model.shown.value?.kind).toBe('oldPump');
    expect(model.shown.value?.cost).toBeCloseTo(2 * 8 * 365 * 0.2, 6);
    expect(model.shown.value?.minutes).toBe(365 * 480);
    expect(model.shown.value?.water).toBeNull();
    const worth = model.worth.value;
    const saving = 1168 - (model.mine.value?.cost ?? Number.NaN);
    expect(worth?.saving).toBeCloseTo(saving, 6);
    expect(worth?.payback).toBeCloseTo(1000 / saving, 6);
    expect(worth?.present).toBeCloseTo(10 * saving - 1000, 4);
    expect(plain(findingText(model))).toMatch(
      /The \$1 ?000 for the pump are back in [\d.]+ years?\. Over 10 years, with interest, it is worth \$[\d .]+ more than it costs\./,
    );
  });

  test('a short time has its own unit', () => {
    expect([0.01, 1 / 12, 0.14, 0.2, 0.96, 1.04, 3.44, 12].map(years).map(plain)).toEqual([
      'less than a month',
      '1 month',
      '2 months',
      '0.2 years',
      '1.0 year',
      '1.0 year',
      '3.4 years',
      '12 years',
    ]);
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
    expect(rows).toHaveLength(13);
    expect([rows[0]?.[0], rows[12]?.[0]]).toEqual(['January', 'The year']);
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
    const [summer] = model.seasons.value;
    if (summer === undefined) throw new Error('there is no season');
    expect(plain(seasonText(model, summer))).toMatch(
      /^1 May to 30 September, 153 days: 4 blocks, 24 h a day, \$[\d.]+ a day on average\.$/,
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

  test('a plan has a name and a first day of its own; two never begin on one day', () => {
    const { model, day } = year(lodgePad);
    const plans = () => day.pad.value.year.plans;
    model.renamePlan('shut', 'Winter');
    model.movePlan('shut', 4, 31);
    // April has 30 days.
    expect(plans().map(({ id, from }) => [id, from.month, from.day])).toEqual([
      ['shut', 4, 30],
      ['open', 5, 15],
    ]);
    expect(plans()[0]?.name).toBe('Winter');
    model.movePlan('shut', 5, 15);
    expect(plans()[0]?.from).toEqual({ month: 4, day: 30 });
    const said = model.said.value;
    if (said === null) throw new Error('nothing was said');
    expect(saidText(model, said)).toBe(
      'Another plan begins on 15 May already. Choose another day.',
    );
    day.store.undo();
    expect(plans().map(({ id }) => id)).toEqual(['open', 'shut']);
  });

  test('a need left out of a season no longer counts there, and can be put back', () => {
    const { model, day } = year(lodgePad);
    const skimming = (of: readonly ShortNeed<NamedNeed>[] = []) =>
      of.find(({ need }) => need.id === 'skim')?.days ?? 0;
    const shutShort = () => skimming(model.seasons.value[1]?.short);
    const all = skimming(model.short.value);
    // Calendar (ISO 8601): 1 October to 14 May are 226 days of 2027; four slow hours never skim.
    expect(shutShort()).toBe(226);
    expect(skimming(model.seasons.value[0]?.short)).toBe(all - 226);
    expect(plain(findingText(model))).toContain(`Skim before and after guests on ${all} days`);
    model.holdNeed('shut', 'skim', false);
    expect(shutShort()).toBe(0);
    expect(skimming(model.short.value)).toBe(all - 226);
    const [, shut] = day.pad.value.year.plans;
    if (shut === undefined) throw new Error('there is no plan');
    expect(needsOfSeason(day.pad.value, shut).map(({ holds }) => holds)).toEqual([
      false,
      true,
      true,
    ]);
    for (const id of ['heat', 'filter']) model.holdNeed('shut', id, false);
    const facts = model.seasons.value[1];
    if (facts === undefined) throw new Error('there is no season');
    expect(seasonShortText(facts, 0)).toBe('No need holds in this season.');
    day.store.undo();
    day.store.undo();
    model.holdNeed('shut', 'skim', true);
    expect(shutShort()).toBe(226);
  });

  test('the cheapest day of a season serves its needs on every day, costs less, and can be undone', () => {
    const { model, day } = year(lodgePad);
    for (const id of ['skim', 'heat']) model.holdNeed('shut', id, false);
    const winter = () => {
      const facts = model.seasons.value[1];
      if (facts === undefined) throw new Error('there is no season');
      return facts;
    };
    model.wishTurnovers('shut', 0.5);
    const before = day.pad.value.year.plans[1]?.blocks;
    model.layCheapest('shut');
    expect(model.said.value?.said.kind).toBe('found');
    expect(winter().short).toEqual([]);
    expect(winter().crossedDays).toBe(0);
    expect(day.pad.value.year.plans[1]?.blocks).not.toBe(before);
    day.store.undo();
    expect(day.pad.value.year.plans[1]?.blocks).toBe(before);
  });

  test('a season that asks too much says what collides', () => {
    const { model, day } = year(lodgePad);
    model.wishTurnovers('open', 20);
    const before = day.pad.value.year.plans;
    model.layCheapest('open');
    const said = model.said.value;
    if (said === null) throw new Error('nothing was said');
    expect(said.said.kind).toBe('none');
    expect(saidText(model, said)).toMatch(/turnovers asked for.* cannot be had.*in this season/);
    expect(day.pad.value.year.plans).toBe(before);
  });

  test('a plan can be looked at on the sheet, on its first day', () => {
    const { model, day } = year(lodgePad);
    model.layOnSheet('shut');
    expect(day.pad.value.day.date).toEqual({ year: 2027, month: 10, day: 1 });
    expect(day.blocks.value).toHaveLength(1);
  });
});

describe('years set beside', () => {
  test('one speed moves the water of the year, for more energy', () => {
    const { model } = year(lodgePad, { frostSpeed: null });
    const mine = model.side.value;
    const one = model.besides.value.find(({ kind }) => kind === 'oneSpeed');
    if (mine === null || one === undefined) throw new Error('there is no year');
    const ratio = (one.water ?? 0) / (mine.water ?? 1);
    expect(ratio).toBeGreaterThanOrEqual(1 - 1e-6);
    // To the minute a day: a pump of 15 m3/h moves a quarter of a cubic metre in one.
    expect(((one.water ?? 0) - (mine.water ?? 0)) / 365).toBeLessThan(0.3);
    expect(one.energy).toBeGreaterThan(mine.energy);
    expect(one.minutes).toBeLessThan(mine.minutes);
    expect(one.extra).toBeLessThan(0.01);
  });

  test('the reader chooses what is shown beside, and in which measure', () => {
    const { model } = year(lodgePad);
    expect(model.shown.value?.kind).toBe('oldPump');
    model.show('plan');
    model.setOtherPlan('old');
    expect(findingText(model)).toContain('than your old day all year');
    model.show('oneSpeed');
    // In frost it has no slower speed, so that the shut months move more than they did.
    expect(plain(findingText(model))).toMatch(
      /than top speed alone, for the same water, which moves \d+ % more, because in frost/,
    );
    expect(model.measures.value).toEqual(['money', 'energy', 'water', 'hours', 'gas']);
    model.setMeasure('gas');
    const gas = measureWords(model, 'gas');
    const [, side] = [model.mine.value, model.side.value];
    // Definition: 320 g come with each kilowatt-hour.
    expect(side === null ? 0 : gas.of(side)).toBeCloseTo(
      ((model.mine.value?.energy ?? 0) / 3.6e6) * 0.32,
      9,
    );
    expect(monthTable(model).caption).toContain('Greenhouse gas');
  });

  test('without a factor there is no gas to show, and without a price no payback', () => {
    const { model } = year(ownerPad);
    expect(model.measures.value).not.toContain('gas');
    model.setMeasure('gas');
    expect(model.measure.value).toBe('money');
    const names = besideTable(model).rows.map(([name]) => name);
    expect(names).toEqual([
      'Price',
      'Energy',
      'Water moved',
      'Hours of running',
      'Days a need is short',
      'You save in a year',
    ]);
  });

  test('the short table has a column for each year and no broken figure', () => {
    const { model } = year(lodgePad);
    const { columns, rows } = besideTable(model);
    expect(columns).toHaveLength(5);
    expect(rows.every((row) => row.length === 5)).toBe(true);
    expect(rows.map(([name]) => name)).toContain('The pump is paid back in');
    expect(JSON.stringify(rows)).not.toMatch(/NaN|undefined|Infinity/);
    expect(rows.find(([name]) => name === 'Water moved')?.[4]).toBe('–');
  });
});
