import { describe, expect, test } from 'vitest';
import { searchCheapestDay } from '#core/planner/cheapestDay.ts';
import { createDayModel } from '#dayPage/day/model.ts';
import { createFinder, type StartSearch } from '#dayPage/parts/cheapest/model.ts';
import { findingText } from '#dayPage/parts/cheapest/text.ts';
import { worthTexts } from '#dayPage/parts/cheapest/worthText.ts';
import { turnoversText } from '#dayPage/planning/collisionText.ts';
import { reasoned } from '#dayPage/planning/plannerInputs.ts';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { emptyPad, newBlock } from '#pad/document/parts.ts';
import type { Pad, PadBlock } from '#pad/document/schema.ts';
import { needName } from '#words/needsAndLimits.ts';
import { storeOf } from './daySheetFixtures.ts';

/** The search, run at once where the page would run it in a worker. */
const atOnce: StartSearch = (inputs, tell) => {
  const steps = searchCheapestDay(inputs);
  for (;;) {
    const step = steps.next();
    if (step.done) {
      tell({ kind: 'done', found: step.value });
      return () => {};
    }
    tell({ kind: 'progress', progress: step.value });
  }
};

const never: StartSearch = () => () => {};

const withBlocks = (...blocks: readonly PadBlock[]): Pad => ({
  ...ownerPad,
  day: { ...ownerPad.day, blocks },
});

function finder(pad: Pad, start: StartSearch = atOnce) {
  const day = createDayModel(storeOf(pad));
  return { day, model: createFinder(day, start) };
}

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');

describe.each([ownerPad, lodgePad, rigPad])('the cheapest day of “$name”', (pad) => {
  // The oracle is the day sheet's own reckoning, minute by minute, and the tariff's own prices.
  test('costs what the day sheet makes of it, keeps every need and crosses nothing', () => {
    const { model } = finder(pad);
    const found = model.found.value;
    const worked = model.worked.value;
    if (found?.kind !== 'found' || worked === null) throw new Error(findingText(model));
    expect(worked.prices?.day.energyCost).toBeCloseTo(found.cost, 9);
    expect(worked.report.volumeMoved).toBeCloseTo(found.volumeMoved, 6);
    expect(worked.report.needs.filter(({ met }) => !met)).toEqual([]);
    expect(worked.report.crossings).toEqual([]);
    expect(worked.report.quietCrossings).toEqual([]);
    expect(found.bound).toBeLessThanOrEqual(found.cost);
    expect(found.gap).toBeLessThan(1e-3);
  });

  test('is never dearer than the day on the sheet or the usual one, where these keep everything', () => {
    const { model, day } = finder(pad);
    const cost = model.worked.value?.prices?.day.energyCost ?? Number.NaN;
    const wanted = model.turnovers.value.value;
    for (const other of [day.here.value, model.usual.value]) {
      if (other === null || other.prices === null) continue;
      const { report, turnovers, prices } = other;
      const keeps =
        report.needs.every(({ met }) => met) &&
        report.crossings.length + report.quietCrossings.length === 0 &&
        (turnovers ?? 0) >= wanted;
      if (keeps) expect(cost).toBeLessThanOrEqual(prices.day.energyCost + 1e-9);
    }
  });

  test('grows no cheaper when more is asked, and says what each thing costs', () => {
    const { model } = finder(pad);
    const cost = () => {
      const found = model.found.value;
      return found?.kind === 'found' ? found.cost : Number.POSITIVE_INFINITY;
    };
    const before = cost();
    // The water and each need by its name, once, in a line of its own or with others.
    const told = worthTexts(model).join(' ');
    for (const { need } of model.needs.value) expect(told.split(needName(need))).toHaveLength(2);
    expect(told).toContain('water to be moved');
    model.turnovers.apply(model.turnovers.value.value + 0.5);
    expect(cost()).toBeGreaterThanOrEqual(before - 1e-4 * before);
    model.reset();
    expect(cost()).toBe(before);
    expect(model.isTried.value).toBe(false);
  });
});

describe('trying', () => {
  test('an hour of a need changes nothing on the pad', () => {
    const { model, day } = finder(ownerPad);
    const [first] = model.needs.value;
    first?.dial.apply(600);
    expect(model.asked.value?.needs.find(({ id }) => id === first?.need.id)?.minutes).toBe(600);
    expect(day.pad.value).toBe(ownerPad);
  });

  test('too much is told in a sentence that names what collides and a way out', () => {
    const { model } = finder(ownerPad);
    model.turnovers.apply(6);
    expect(model.found.value?.kind).toBe('none');
    expect(plain(findingText(model))).toMatch(
      /^6 turnovers .*cannot be had together\. It would do to move [\d ]+ gal less/,
    );
    expect(model.blocks.value).toEqual([]);
    expect(model.worked.value).toBeNull();
    expect(worthTexts(model)).toEqual([]);
  });

  test('each way out is a sentence part of its own', () => {
    const { model } = finder(lodgePad);
    model.turnovers.apply(4);
    expect(plain(findingText(model))).toMatch(
      /^4 turnovers, .* It would do to move .* less \(3\.\d+ turnovers\), to have a heater that bears 12\.[1-9] m³\/h or to allow \d+ rpm in the quiet hours\.$/,
    );
  });

  test('what the sheet leaves undone is closed off before the usual day is named', () => {
    const { model } = finder(withBlocks(newBlock('slow', 600, 900, 1000)));
    expect(findingText(model)).toMatch(
      /, which moves too little water and leaves 4 needs short; and \$\S+ less than /,
    );
  });

  test('a proof to less than a cent is told in money, not in thousandths of a percent', () => {
    for (const pad of [ownerPad, lodgePad, rigPad]) {
      const { model } = finder(pad);
      const found = model.found.value;
      if (found?.kind !== 'found') throw new Error(findingText(model));
      expect(found.cost - found.bound).toBeLessThan(0.005);
      expect(findingText(model)).not.toContain('0.00');
      expect(findingText(model)).toMatch(
        /would be even .0\.01 cheaper\. |costs less\. |more than 0\.\d %\. /,
      );
    }
  });

  test('a count of turnovers takes its plural', () => {
    expect([0, 1, 1.001, 3.96, 2].map(turnoversText)).toEqual([
      '0 turnovers',
      '1 turnover',
      '1 turnover',
      '3.96 turnovers',
      '2 turnovers',
    ]);
  });

  test('what lacks is named: prices, volume, or a pump that can lift the water', () => {
    const { seasons: _, ...tariff } = ownerPad.tariff;
    const said = (pad: Pad) => findingText(finder(pad).model);
    expect(said({ ...ownerPad, tariff: { ...tariff, seasons: [] } })).toMatch(/needs prices\.$/);
    expect(said({ ...ownerPad, pool: emptyPad('us').pool })).toMatch(
      /needs the volume of the pool\./,
    );
    const plumbing = { ...ownerPad.plumbing, staticHead: 40 };
    expect(said({ ...ownerPad, plumbing })).toContain('No speed of this pump moves water');
  });

  test('a pad that says too little is told so', () => {
    const { model } = finder(emptyPad('metric'));
    expect(findingText(model)).toBe(
      'The pad does not say enough yet to look for a day: it needs pump, pool and prices.',
    );
  });
});

describe('with few changes of speed', () => {
  const few = (pad: Pad): Pad => ({ ...pad, needs: pad.needs.slice(0, 1), quiet: [] });

  test('the search is made, keeps to them, and costs no less than the day without that limit', () => {
    const { model } = finder(few(ownerPad));
    const free = model.found.value;
    const stop = model.follow();
    model.mostChanges.value = 2;
    const found = model.found.value;
    if (found?.kind !== 'found' || free?.kind !== 'found') throw new Error(findingText(model));
    expect(found.changes).toBeLessThanOrEqual(2);
    expect(found.cost).toBeGreaterThanOrEqual(free.bound);
    stop();
  });

  test('the search tells that it is under way, can be called off, and starts anew', () => {
    const { model } = finder(few(ownerPad), never);
    const stop = model.follow();
    model.mostChanges.value = 2;
    expect(findingText(model)).toBe('Looking for the cheapest day …');
    model.cancel();
    expect(findingText(model)).toBe('The search was called off. Change anything to start it anew.');
    model.turnovers.apply(0.5);
    expect(model.searching.value.kind).toBe('searching');
    stop();
  });

  test('a search that cannot be run is told', () => {
    const { model } = finder(few(ownerPad), (_, tell) => {
      tell({ kind: 'failed' });
      return () => {};
    });
    const stop = model.follow();
    model.mostChanges.value = 2;
    expect(findingText(model)).toMatch(/^The search could not be run/);
    stop();
  });
});

describe('laid on the sheet', () => {
  test('it takes the place of the day, with its reasons, and undo brings that back', () => {
    const { model, day } = finder(ownerPad);
    const blocks = model.blocks.value;
    model.lay();
    expect(day.blocks.value.map(({ start, speed }) => ({ start, speed }))).toEqual(
      blocks.map(({ start, speed }) => ({ start, speed })),
    );
    expect(day.blocks.value.every(({ reason }) => reason !== '')).toBe(true);
    expect(day.compareWith.value).toBe('old');
    expect(day.store.undoLabel.value).toBe('the cheapest day');
    day.store.undo();
    expect(day.pad.value).toBe(ownerPad);
  });

  test('a block that serves nothing is there for the water', () => {
    const block = { id: 'a', start: 0, end: 60, speed: 1000, reason: '' };
    expect(reasoned([block], null)[0]?.reason).toBe('Moving the water');
  });
});
