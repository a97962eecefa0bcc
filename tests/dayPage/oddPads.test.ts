import { describe, expect, test } from 'vitest';
import { createDayModel } from '#dayPage/day/model.ts';
import { createFinder } from '#dayPage/parts/cheapest/model.ts';
import { findingText as cheapestText } from '#dayPage/parts/cheapest/text.ts';
import { worthTexts } from '#dayPage/parts/cheapest/worthText.ts';
import type { Shown } from '#dayPage/parts/sure/model.ts';
import { axisOf, pileOf, riseOf, rowsFor } from '#dayPage/parts/sure/plot.ts';
import { findingText as sureText, valueText } from '#dayPage/parts/sure/text.ts';
import { createWhatIf } from '#dayPage/parts/whatIf/model.ts';
import { drawnOf } from '#dayPage/parts/whatIf/picture.ts';
import { atOnce } from '#dayPage/parts/whatIf/slices.ts';
import { sum, tableOf, findingText as whatIfText } from '#dayPage/parts/whatIf/text.ts';
import { createYear } from '#dayPage/parts/year/model.ts';
import { findingText as yearText } from '#dayPage/parts/year/text.ts';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { padReader } from '#pad/document/padReader.ts';
import { newCover } from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { minutesEntry } from '#ui/controls/minutesEntry.ts';
import { moneyOf } from '#units/money.ts';
import { needName } from '#words/needsAndLimits.ts';
import { storeOf } from './daySheetFixtures.ts';
import { plain, sureness } from './howSureFixtures.ts';
import {
  collidingPad,
  contradictedPad,
  crowdedPad,
  flatAt,
  freePad,
  restingPad,
  stoppedPad,
  yenPad,
} from './oddPads.ts';

// Our own behaviour: what a reader with an odd pad is told first.

const dayOf = (pad: Pad) => createDayModel(storeOf(pad));

function finderOf(pad: Pad) {
  return createFinder(dayOf(pad), () => () => {});
}

function whatIfOf(pad: Pad) {
  const day = dayOf(pad);
  const model = createWhatIf(day, day.pad, atOnce);
  model.follow();
  return model;
}

function yearOf(pad: Pad) {
  const day = dayOf(pad);
  return createYear(day, day.pad);
}

describe('the cheapest day of an odd pad', () => {
  test('what costs nothing extra is told once, each name once, with how many bear it', () => {
    const model = finderOf(crowdedPad);
    const told = worthTexts(model);
    expect(told.filter((line) => line.includes('nothing extra'))).toHaveLength(1);
    const names = new Set(model.needs.value.map(({ need }) => needName(need)));
    expect(names.size).toBeLessThan(24);
    for (const name of names) expect(told.join(' ')).toContain(name);
    expect(told.join(' ')).toMatch(/Heating \(\d of them\)/);
  });

  test('energy for nothing makes nothing dear', () => {
    expect(worthTexts(finderOf(freePad))).toEqual([
      'Energy costs nothing on this day, so nothing that you ask does.',
    ]);
  });

  test('a limit that every speed crosses is named, and moving no water is no way out', () => {
    const said = plain(cheapestText(finderOf(stoppedPad)));
    expect(said).toBe(
      'No speed of this pump keeps the limit “Flow marked on the suction covers”, so no water can be moved. Do not run it: nothing may cross this limit.',
    );
  });

  test('a need that would have to go entirely is not asked to be shorter', () => {
    const covers = [newCover('old', { markedFlow: 9 / 3600 })];
    const model = finderOf({
      ...ownerPad,
      limits: { ...ownerPad.limits, suctionCovers: covers },
    });
    expect(plain(cheapestText(model))).toMatch(/It would do to do without Gas heater\.$/);
  });

  test('a way out is rounded up, so that it is enough', () => {
    // 12 m3/h is what the heater bears already: the way out has to be more than that.
    const model = finderOf(lodgePad);
    model.turnovers.apply(4);
    const bears = /a heater that bears ([\d.]+) m³\/h/.exec(plain(cheapestText(model)));
    expect(Number(bears?.[1])).toBeGreaterThan(12);
  });

  test('an empty sheet is not set beside it, and a day that moves too little is told of', () => {
    expect(cheapestText(finderOf(restingPad))).not.toContain('the day on your sheet');
    const model = finderOf(ownerPad);
    model.turnovers.apply(3.2);
    expect(cheapestText(model)).toMatch(/the day on your sheet, which moves too little water/);
  });

  test('money without a small unit has no point in it', () => {
    const said = plain(cheapestText(finderOf(yenPad)));
    expect(said).toMatch(/^The cheapest day takes ¥\d+ of energy: ¥\d+ less than /);
    expect(said).not.toContain('0.0');
  });
});

describe('what if on an odd pad', () => {
  test('where no value brings a day there is no picture, but the reason and what to try', () => {
    const model = whatIfOf(collidingPad);
    expect(model.isBarren.value).toBe(true);
    expect(drawnOf(model)).toBeNull();
    expect(plain(whatIfText(model))).toBe(
      'As the pad is, there is no day that keeps all you ask, and changing this alone brings none. 10 h of Heat pump cannot be had on this pad at all. It would do to ask 2 h less of Heat pump. Try above instead: Hours of “Heat pump”.',
    );
    model.choose('need-heat');
    expect(model.isBarren.value).toBe(false);
    expect(drawnOf(model)).not.toBeNull();
  });

  test('a price that is nothing everywhere still has marks that mean something', () => {
    const drawn = drawnOf(whatIfOf(freePad));
    const labels = drawn?.y.axis.ticks.map(({ label }) => label) ?? [];
    // The two lines lie on one another, and one name stands for both.
    expect([drawn?.cheapestName, drawn?.ownLabel]).toEqual(['both days', undefined]);
    expect(labels.length).toBeGreaterThan(2);
    for (const label of labels) expect(label.length).toBeLessThanOrEqual(4);
  });

  test('with one price there are no dear hours', () => {
    const onePrice: Pad = { ...ownerPad, needs: [], quiet: [], tariff: flatAt(0.15, '$') };
    const model = whatIfOf(onePrice);
    expect(whatIfText(model)).toContain('on the pump runs all day');
    expect(whatIfText(model)).not.toContain('hours');
  });

  test('no change is told twice at one value', () => {
    const model = whatIfOf(contradictedPad);
    for (const input of model.offers.value) {
      model.choose(input.id);
      for (const row of tableOf(model).rows) {
        const told = (row.at(-1) ?? '').split(/(?<=\.) /).filter((each) => each !== '');
        expect(new Set(told).size, `${input.id}: ${told.join(' ')}`).toBe(told.length);
      }
    }
  });

  test('the names of the two lines keep apart on a phone, as wide as the style lets them be', () => {
    // The style keeps 0.58 em a letter and half an em of 16 px; the picture is 316 px wide.
    const wide = (text: string) => (0.58 * 16 * text.length + 8) / 316;
    for (const pad of [ownerPad, lodgePad]) {
      const model = whatIfOf(pad);
      for (const input of model.offers.value) {
        model.choose(input.id);
        const drawn = drawnOf(model);
        if (drawn?.cheapestLabel === undefined || drawn.ownLabel === undefined) continue;
        const boxes = [
          { ...drawn.cheapestLabel, width: wide(drawn.cheapestName) },
          { ...drawn.ownLabel, width: wide('the day on your sheet') },
        ].map(({ x, y, above, ends, width }) => ({
          left: ends ? x - width : x,
          right: ends ? x : x + width,
          top: above ? y - 0.08 : y + 0.01,
          bottom: above ? y - 0.01 : y + 0.08,
        }));
        const [one, other] = boxes;
        if (one === undefined || other === undefined) throw new Error('two labels');
        const across = Math.min(one.right, other.right) - Math.max(one.left, other.left);
        const down = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
        expect(Math.min(across, down), `${pad.name}, ${input.id}`).toBeLessThanOrEqual(0.015);
      }
    }
  });

  test('no plan at the handle has a block too short to be set', () => {
    // Nobody sets a pump for less than ten minutes; common practice, no source.
    const model = whatIfOf(yenPad);
    const day = model.here.value?.day;
    if (day?.kind !== 'found') throw new Error('no day');
    for (const { start, end } of day.blocks) {
      expect((end - start + 1440) % 1440 || 1440).toBeGreaterThanOrEqual(10);
    }
  });

  test('a small sum has one place more than its currency', () => {
    expect([0.4, 3.81, 12.6].map((amount) => sum(amount, moneyOf('¥', [{ price: 31 }])))).toEqual([
      '¥0.4',
      '¥3.8',
      '¥13',
    ]);
  });
});

describe('how sure an odd day is', () => {
  test('where nothing runs there is nothing to be sure of', () => {
    const { model } = sureness(restingPad);
    expect(model.shown.value).toEqual([]);
    expect(sureText(model)).toMatch(/^Nothing runs on the day on your sheet yet/);
  });

  test('readings that cannot all be right are told before any figure', () => {
    expect(sureText(sureness(contradictedPad).model)).toMatch(
      /^Some of your readings cannot all be right/,
    );
    expect(sureText(sureness(ownerPad).model)).not.toContain('cannot all be right');
  });

  test('pads that all say the same pile up no higher than any other', () => {
    const best = 1.25;
    const band = { low: best, high: best };
    const certain: Shown = {
      of: 'cost',
      best,
      band,
      trial: band,
      parts: false,
      told: band,
      dots: Array.from({ length: 200 }, () => best),
    };
    const units = ownerPad.units;
    const height = rowsFor([certain], units);
    expect(height).toBeLessThanOrEqual(24);
    const pile = pileOf(certain, axisOf(certain, units));
    const tops = pile.map(({ row }) => row * riseOf(pile, height) + 1);
    expect(Math.max(...tops)).toBeLessThanOrEqual(height + 1e-9);
    expect(riseOf(pile.slice(0, 5), height)).toBe(1);
  });

  test('a band too narrow for yen has a tenth of one', () => {
    const saying = { units: sureness(yenPad).model.units, currency: dayOf(yenPad).currency };
    expect(valueText(saying, 'cost', 135.28, { low: 135, high: 137 })).toBe('¥135.3');
    expect(valueText(saying, 'cost', 135.28, { low: 120, high: 150 })).toBe('¥135');
  });
});

describe('a time in a field', () => {
  test('has no more figures than read back as the same minute', () => {
    const entry = minutesEntry('time', lodgePad.units);
    // By hand: 308 min are 5.1333… h, and 5.13 h are 307.8 min.
    expect([308, 90, 60, 45, 1, 0, 1440].map(entry.format)).toEqual([
      '5.13',
      '1.5',
      '1',
      '0.75',
      '0.02',
      '0',
      '24',
    ]);
    for (let minutes = 0; minutes <= 1440; minutes += 1) {
      expect(entry.parse(entry.format(minutes))).toEqual({ ok: true, value: minutes });
    }
  });
});

describe('a currency of thousands', () => {
  // Some three thousand dong buy a kilowatt-hour, some twenty million a pump; from memory.
  const pad: Pad = {
    ...lodgePad,
    tariff: flatAt(3000, '₫'),
    year: { ...lodgePad.year, price: 20_000_000 },
  };

  test('can be kept in a pad file', () => {
    const parsed = padReader.parse(JSON.stringify(pad));
    expect(parsed.ok ? [] : parsed).toEqual([]);
  });

  test('is told in whole units', () => {
    expect(plain(cheapestText(finderOf(pad)))).toMatch(/^The cheapest day takes ₫\d+ of energy/);
  });
});

describe('the year of an odd pad', () => {
  test('what nothing may cross comes first, with its days, and not in a remark at the end', () => {
    const covers = stoppedPad.limits.suctionCovers.map((cover) => ({
      ...cover,
      markedFlow: 0.0015,
    }));
    const model = yearOf({
      ...stoppedPad,
      limits: { ...stoppedPad.limits, suctionCovers: covers },
    });
    expect(plain(yearText(model))).toMatch(
      /^Stop: on 365 days the flow is above what is marked on the suction covers\. Do not run this plan\. The year/,
    );
    expect(model.crossed.value[0]?.limit.hard).toBe(true);
  });

  test('a softer limit is named where it is crossed', () => {
    const fast: Pad = { ...ownerPad, limits: { ...ownerPad.limits, dischargeVelocity: 0.4 } };
    expect(plain(yearText(yearOf(fast)))).toMatch(
      /Limits crossed: that on return velocity on 365 days\. It costs/,
    );
  });

  test('a year in which nothing runs says so, and saves nothing', () => {
    const model = yearOf(restingPad);
    expect(model.runs.value).toBe(false);
    expect(yearText(model)).toMatch(/^Nothing runs in the year 2027 yet\./);
    expect(yearText(model)).not.toContain('less than');
  });

  test('many needs left short are counted, the worst of them named', () => {
    const said = plain(yearText(yearOf(crowdedPad)));
    expect(said).toMatch(/Short of their hours: .* on 365 days, .* and \d+ more needs\./);
    expect(said.length).toBeLessThan(600);
  });

  test('the turnovers of a season go into the pad, can be undone, and stay with the plan', () => {
    const day = dayOf(lodgePad);
    const model = createYear(day, day.pad);
    expect(model.turnoversOf('open')).toBe(lodgePad.turnoverTarget);
    model.wishTurnovers('open', 1.4);
    expect(day.pad.value.year.plans.map(({ turnovers }) => turnovers)).toEqual([1.4, null]);
    expect(model.turnoversOf('open')).toBe(1.4);
    model.addPlan(5, 15);
    expect(model.turnoversOf('open')).toBe(1.4);
    day.store.undo();
    day.store.undo();
    expect(model.turnoversOf('open')).toBe(lodgePad.turnoverTarget);
  });
});
