import { describe, expect, test } from 'vitest';
import { cheapestDay } from '#core/planner/cheapestDay.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import { benchOf } from '#dayPage/day/bench.ts';
import { createDayModel } from '#dayPage/day/model.ts';
import { changesIn } from '#dayPage/parts/whatIf/changes.ts';
import { createWhatIf } from '#dayPage/parts/whatIf/model.ts';
import { drawnOf } from '#dayPage/parts/whatIf/picture.ts';
import { atOnce, inSlices, type RunSteps } from '#dayPage/parts/whatIf/slices.ts';
import {
  blocksText,
  findingText,
  gapsText,
  lineNotes,
  planText,
  sum,
  tableOf,
} from '#dayPage/parts/whatIf/text.ts';
import { plannerInputsOf, rowsOf, toBeSet } from '#dayPage/planning/plannerInputs.ts';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { moneyOf } from '#units/money.ts';
import { storeOf } from './daySheetFixtures.ts';

// Our own behaviour, held against the core's own cheapest day and the day sheet where it has figures.

function whatIf(pad: Pad, run: RunSteps = atOnce) {
  const day = createDayModel(storeOf(pad));
  const model = createWhatIf(day, day.pad, run);
  return { day, model, stop: model.follow() };
}

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

/** The price of the cheapest day of another pad, by the core. */
function priceOf(
  pad: Pad,
  minutes: Readonly<Record<string, number>> = {},
  set = (asked: CheapestDayInputs) => asked,
): number {
  const { bench } = benchOf(pad);
  const { date } = pad.day;
  if (bench === null || date === null) throw new Error('the pad has no day');
  const turnovers = pad.turnoverTarget ?? 1;
  const wishes = { minutes, turnovers, mayStop: true, mostChanges: null };
  const asked = plannerInputsOf(bench, rowsOf(bench), date, wishes);
  const found = asked === null ? null : cheapestDay(set(asked));
  if (found?.kind !== 'found') throw new Error('no day was found');
  return found.cost;
}

function costAt(model: ReturnType<typeof whatIf>['model'], value: number): number {
  const swept = model.sweep.value?.days.find((each) => each.value === value);
  if (swept?.day?.kind !== 'found') throw new Error(`no day at ${value}`);
  return swept.day.cost;
}

describe.each([ownerPad, lodgePad, rigPad])('one thing changed on “$name”', (pad) => {
  test('every input passes through the pad as it is, and says so in figures', () => {
    const { model, day } = whatIf(pad);
    const today = priceOf(pad);
    const sheet = day.here.value?.prices?.day.energyCost ?? Number.NaN;
    expect(model.offers.value.length).toBeGreaterThan(6);
    for (const input of model.offers.value) {
      model.choose(input.id);
      expect(costAt(model, input.present)).toBeCloseTo(today, 9);
      const own = model.own.value.find(({ value }) => value === input.present);
      expect(own?.cost).toBeCloseTo(sheet, 9);
      expect(input.values).toContain(input.present);
      const said = plain(
        [findingText(model), planText(model), blocksText(model), ...gapsText(model)].join(' '),
      );
      expect(said).not.toMatch(/NaN|undefined|Infinity|null/);
      expect(JSON.stringify(drawnOf(model))).not.toMatch(/NaN|null,|Infinity/);
      for (const row of tableOf(model).rows) expect(row).toHaveLength(6);
    }
  });
});

describe('what is swept is that and nothing else', () => {
  test('turnovers and hours as though the pad asked for them', () => {
    const { model } = whatIf(ownerPad);
    expect(costAt(model, 3)).toBeCloseTo(priceOf({ ...ownerPad, turnoverTarget: 3 }), 9);
    model.choose('need-skim');
    expect(costAt(model, 300)).toBeCloseTo(priceOf(ownerPad, { skim: 300 }), 9);
  });

  test('prices as though the tariff had them', () => {
    const { model } = whatIf(lodgePad);
    const tariff = (change: (price: number) => number): Pad => ({
      ...lodgePad,
      tariff: {
        ...lodgePad.tariff,
        seasons: lodgePad.tariff.seasons.map((season) => ({
          ...season,
          dayTypes: season.dayTypes.map((type) => ({
            ...type,
            bands: type.bands.map((band) => ({ ...band, price: change(band.price ?? 0) })),
          })),
        })),
      },
    });
    model.choose('prices');
    expect(costAt(model, 1.5)).toBeCloseTo(priceOf(tariff((price) => 1.5 * price)), 9);
    expect(costAt(model, 2)).toBeCloseTo(2 * priceOf(lodgePad), 9);
    model.choose('dear-price');
    const dear = 0.32 * 1.75;
    const value = model.chosen.value?.values.find((each) => Math.abs(each - dear) < 1e-9) ?? 0;
    expect(costAt(model, value)).toBeCloseTo(
      priceOf(tariff((price) => (price === 0.32 ? dear : price))),
      6,
    );
  });

  test('a pad without readings moves in pipes, filter and water as though it were described so', () => {
    // Without readings the circuit is as described, so a described change is the same change.
    const bare: Pad = { ...ownerPad, readings: [] };
    const { model } = whatIf(bare);
    model.choose('loading');
    const loaded = JSON.parse(JSON.stringify(bare), (key, value) =>
      key === 'loading' && value !== null ? 0.6 : value,
    ) as Pad;
    expect(costAt(model, 0.6)).toBeGreaterThan(costAt(model, 0.2));
    expect(model.lookAt(0.6)?.changed.bench.pointAt(0.5)).toMatchObject({
      flow: expect.closeTo(flowOf(loaded), 9),
    });
    model.choose('pipes-discharge');
    const next: Readonly<Record<string, string>> = {
      'sch40-2': 'sch40-2.5',
      'sch40-1.5': 'sch40-2',
    };
    const discharge = JSON.parse(JSON.stringify(bare.plumbing.discharge), (key, value) =>
      key === 'sizeId' && value !== null ? next[value] : value,
    ) as Pad['plumbing']['discharge'];
    const piped: Pad = { ...bare, plumbing: { ...bare.plumbing, discharge } };
    expect(model.lookAt(1)?.changed.bench.pointAt(0.5)).toMatchObject({
      flow: expect.closeTo(flowOf(piped), 9),
    });
    const limitOf = (pad: Pad) =>
      benchOf(pad).bench?.limits.find(({ kind }) => kind === 'dischargeVelocity')?.greatestFlow;
    expect(
      model.lookAt(1)?.changed.bench.limits.find(({ kind }) => kind === 'dischargeVelocity')
        ?.greatestFlow,
    ).toBeCloseTo(limitOf(piped) ?? Number.NaN, 9);
    model.choose('temperature');
    const cold: Pad = { ...bare, site: { ...bare.site, waterTemperature: 5 } };
    expect(model.lookAt(5)?.changed.bench.pointAt(0.5)).toMatchObject({
      flow: expect.closeTo(flowOf(cold), 9),
    });
  });

  test('a day of one price has no dear price, a filter of one end no loading', () => {
    const { model } = whatIf({
      ...rigPad,
      plumbing: {
        ...rigPad.plumbing,
        discharge: rigPad.plumbing.discharge.map((section) =>
          section.kind === 'equipment' ? { ...section, dirtyHead: null } : section,
        ),
      },
    });
    const ids = model.offers.value.map(({ id }) => id);
    expect(ids).not.toContain('dear-price');
    expect(ids).not.toContain('loading');
  });
});

/** Flow at half the reference speed of a pad without readings [m3/s]. */
function flowOf(pad: Pad): number {
  const point = benchOf(pad).bench?.pointAt(0.5);
  return point?.kind === 'flowing' ? point.flow : Number.NaN;
}

describe('in words', () => {
  test('what more costs is the difference of two days', () => {
    const { model } = whatIf(ownerPad);
    const [now, then] = [priceOf(ownerPad), priceOf({ ...ownerPad, turnoverTarget: 2.5 })];
    expect(plain(findingText(model))).toContain(
      `As the pad is, the cheapest day takes $${now.toFixed(2)}. Half a turnover more costs $${(then - now).toFixed(2)} a day.`,
    );
  });

  test('the hours that fill the cheap ones are named: a day less the five dear hours of the example', () => {
    const { model } = whatIf(ownerPad);
    model.choose('need-filter');
    // 16:00 to 21:00 is dear; ten minutes in them are the least that counts.
    expect(plain(findingText(model))).toMatch(
      /From 19 h (9|10|11) min on the pump must also run in the dear hours\./,
    );
    expect(drawnOf(model)?.flags.map(({ label }) => label)).toContain('from here it runs all day');
  });

  test('scaled prices change no plan', () => {
    const { model } = whatIf(ownerPad);
    model.choose('prices');
    expect(changesIn(model)).toEqual([]);
    expect(findingText(model)).toContain('The best plan stays the same');
  });

  test('a gap says where it begins and why', () => {
    const { model } = whatIf(ownerPad);
    model.choose('pipes-suction');
    expect(findingText(model)).toContain('Below 1-1/2 in pipe no day keeps all you ask.');
    expect(plain(gapsText(model).join(' '))).toMatch(
      /^1-1\/4 in pipe: .* and the limit “Velocity in the suction pipe” cannot be had together\./,
    );
    model.dial.apply(-2);
    expect(plain(planText(model))).toMatch(/^1-1\/4 in pipe: no day\. .* cannot be had together/);
    expect(blocksText(model)).toBe('');
  });

  test('a day that keeps its price or falls short has a word beside its line', () => {
    const { model } = whatIf(ownerPad);
    expect(lineNotes(model)).toEqual([
      'Dotted: there the day on your sheet does not keep all that is asked.',
    ]);
    model.choose('temperature');
    expect(lineNotes(model).join(' ')).toContain('at the same speed this pump is taken to draw');
    model.choose('prices');
    expect(lineNotes(model)).toEqual([]);
  });

  test('where turnovers themselves collide, their number is not said twice', () => {
    const { model } = whatIf(lodgePad);
    const said = gapsText(model);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/^[\d.]+ turnovers, the limit /);
    model.choose('need-skim');
    for (const sentence of gapsText(model)) expect(sentence).toMatch(/^\d+ h.*: /);
  });

  test('no price at all has no thousandths', () => {
    expect([0, 0.0001, -0.03, 0.009, 0.25].map((amount) => sum(amount, moneyOf('$')))).toEqual([
      '$0.00',
      '$0.00',
      '−$0.030',
      '$0.009',
      '$0.25',
    ]);
  });

  test('a pad that says too little is told so', () => {
    const { model } = whatIf(emptyPad('metric'));
    expect(findingText(model)).toBe(
      'The pad does not say enough yet to look for a day: it needs pump, pool and prices.',
    );
    expect(drawnOf(model)).toBeNull();
    expect(model.here.value).toBeNull();
  });
});

describe('the handle', () => {
  test('begins at the pad, goes its steps, keeps within the range, and comes back', () => {
    const { model } = whatIf(ownerPad);
    expect(model.isElsewhere.value).toBe(false);
    model.dial.press('ArrowRight');
    expect(model.here.value?.value).toBeCloseTo(2.1, 9);
    expect(model.here.value?.day?.kind === 'found' && model.here.value.day.cost).toBeCloseTo(
      priceOf({ ...ownerPad, turnoverTarget: 2.1 }, {}, toBeSet),
      9,
    );
    model.dial.press('End');
    expect(model.here.value?.value).toBe(4);
    model.back();
    expect(model.here.value?.value).toBe(2);
  });

  test('another input begins at the pad again', () => {
    const { model } = whatIf(ownerPad);
    model.dial.press('End');
    model.choose('temperature');
    expect(model.isElsewhere.value).toBe(false);
    expect(model.here.value?.value).toBe(27);
  });
});

describe('working it out', () => {
  test('a sweep under way says so, and a changed pad is swept anew', () => {
    const waiting = new Set<() => void>();
    const later: RunSteps = (steps, done) => {
      const go = () => void atOnce(steps, done);
      waiting.add(go);
      return () => waiting.delete(go);
    };
    const runAll = () => {
      for (const go of waiting) {
        waiting.delete(go);
        go();
      }
    };
    // A pad of its own, since what follows from a pad is kept for a handful of them only.
    const { model, day, stop } = whatIf(structuredClone(ownerPad), later);
    expect(findingText(model)).toBe('Working out the days …');
    expect(drawnOf(model)).toBeNull();
    runAll();
    expect(model.isDone.value).toBe(true);
    const [before, own] = [model.sweep.value, model.own.value];
    // A block moved changes the day on the sheet, and nothing that the cheapest day stands on.
    day.remove('skim');
    expect(model.sweep.value).toBe(before);
    expect(waiting.size).toBe(1);
    runAll();
    expect(model.own.value[0]?.cost).toBeLessThan(own[0]?.cost ?? 0);
    day.store.edit((now) => ({ ...now, turnoverTarget: 2.4 }), 'the target');
    expect(model.isDone.value).toBe(false);
    runAll();
    expect(model.here.value?.value).toBe(2.4);
    day.store.edit((now) => ({ ...now, turnoverTarget: 2.5 }), 'the target');
    stop();
    expect(waiting.size).toBe(0);
  });

  test('in slices it comes to the same, and can be called off', async () => {
    const all = whatIf(rigPad).model.sweep.value;
    const { model } = whatIf(rigPad, inSlices);
    await expect.poll(() => model.isDone.value, { timeout: 20_000 }).toBe(true);
    expect(model.sweep.value?.changes.map(({ after }) => after.value)).toEqual(
      all?.changes.map(({ after }) => after.value),
    );
    const { model: other, stop } = whatIf(rigPad, inSlices);
    stop();
    await new Promise((go) => setTimeout(go, 50));
    expect(other.isDone.value).toBe(false);
  });
});
