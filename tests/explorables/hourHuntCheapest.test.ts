import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cheapestDay } from '#core/planner/cheapestDay.ts';
import { askedOf, showCheapest } from '#explorables/HourHunt/cheapest.ts';
import { huntPlace } from '#explorables/HourHunt/example.ts';
import { createModel, dayKinds, type HuntPlace, workHours } from '#explorables/HourHunt/model.ts';
import { placeOf } from '#explorables/HourHunt/own.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';

const plain = (text: string | undefined) => (text ?? '').replace(/\u00a0/g, ' ');
/** The usual day with two evening hours off. */
const evening = [...'111111111333222200111111'].map(Number);
const clock = (hours: number) => hours * 60;

/** One speed that draws 100 W and moves a cubic metre in an hour; nine are wanted, two of them from 16 to 18. */
const onePlace: HuntPlace = {
  ...huntPlace,
  settings: [
    {
      speed: 1500,
      ratio: 0.5,
      point: {
        kind: 'flowing',
        flow: 1 / 3600,
        power: 100,
        suctionVelocity: 0,
        dischargeVelocity: 0,
      },
    },
  ],
  needs: [
    {
      id: 'heat',
      name: 'Heater',
      leastFlow: 0.5 / 3600,
      minutes: 120,
      shortestRun: 60,
      windows: [{ start: clock(16), end: clock(18) }],
    },
  ],
  volume: 9,
  turnovers: 1,
};

const needOf = (place: HuntPlace, change: object): HuntPlace => ({
  ...place,
  needs: place.needs.map((need) => ({ ...need, ...change })),
});

function shownOn(place: HuntPlace) {
  const model = createModel(place);
  showCheapest(model);
  return model;
}

describe('the cheapest day of the hunt', () => {
  test('takes the cheap hours, and the dear ones only where the need wants them', () => {
    const model = shownOn(onePlace);
    // Arithmetic: a tenth of a kilowatt for seven hours at $0.18 and two at $0.49.
    expect(model.here.value.price.energyCost).toBeCloseTo(0.1 * (7 * 0.18 + 2 * 0.49), 12);
    expect(model.hours.value.join('')).toBe('111111100000000011000000');
    expect(plain(model.shown.value?.words)).toMatch(/^The cheapest day costs \$0\.22\. /);
  });

  test('no change of one hour or of two makes it cheaper and keeps everything', () => {
    // Definition of a least price: nothing near it lies below it.
    const model = shownOn(huntPlace);
    const { date } = model.kind.value;
    const least = model.here.value.price.energyCost;
    const hours = model.hours.value;
    const changed = (day: readonly number[], at: number, level: number) =>
      day.map((present, hour) => (hour === at ? level : present));
    const levels = [0, 1, 2, 3];
    const singles = hours.flatMap((_, at) => levels.map((level) => changed(hours, at, level)));
    const pairs = singles.flatMap((day) =>
      hours.flatMap((_, at) => levels.map((level) => changed(day, at, level))),
    );
    // Arithmetic: kilowatts times price, summed over the hours.
    const costOf = (day: readonly number[]) =>
      day.reduce((sum, level, hour) => {
        const power = huntPlace.settings[level - 1]?.point.power ?? 0;
        return sum + (power / 1000) * (model.prices.value[hour] ?? 0);
      }, 0);
    expect(costOf(hours)).toBeCloseTo(least, 12);
    const cheaper = new Set(
      pairs.filter((day) => costOf(day) < least - 1e-9).map((day) => day.join('')),
    );
    expect(cheaper.size).toBeGreaterThan(100);
    for (const day of cheaper) {
      expect(workHours(huntPlace, [...day].map(Number), date).sound, day).toBe(false);
    }
  });

  test('any pool: costs on the widget what the search says, and never more than a sound usual day', () => {
    const wish = fc.record({
      kind: fc.integer({ min: 0, max: 3 }),
      turnovers: fc.double({ min: 0, max: 2.5, noNaN: true }),
      hours: fc.array(fc.integer({ min: 0, max: 7 }), { minLength: 3, maxLength: 3 }),
      quiet: fc.integer({ min: 0, max: 23 }),
    });
    fc.assert(
      fc.property(wish, ({ kind: at, turnovers, hours, quiet }) => {
        const place: HuntPlace = {
          ...huntPlace,
          turnovers,
          needs: huntPlace.needs.map((need, which) => ({
            ...need,
            minutes: clock(hours[which] ?? 0),
          })),
          quiet: [{ start: clock(quiet), end: clock((quiet + 5) % 24), ceiling: 0.5 }],
        };
        const model = createModel(place);
        model.chooseKind(at);
        const { usual, kind } = model;
        const asked = askedOf(place, kind.value);
        if (asked === null) throw new Error('all of it lies on whole hours');
        const found = cheapestDay(asked);
        showCheapest(model);
        const words = plain(model.shown.value?.words);
        expect(words).not.toMatch(/NaN|undefined|Infinity/);
        if (found.kind !== 'found') {
          expect(words).toMatch(/^There is no cheapest day to show/);
          expect(usual.value.sound).toBe(false);
          return;
        }
        expect(model.here.value.sound).toBe(true);
        expect(model.here.value.price.energyCost).toBeCloseTo(found.cost, 9);
        expect(words).toMatch(/It is proven that no other day of whole hours/);
        if (usual.value.sound) {
          expect(found.cost).toBeLessThanOrEqual(usual.value.price.energyCost + 1e-9);
        }
      }),
      { numRuns: 25 },
    );
  }, 30_000);

  test('on the owner’s own pad every kind of day is found and keeps everything', () => {
    const place = placeOf(ownerPad);
    if (place === undefined) throw new Error('the pad says enough');
    const model = createModel(place);
    for (const at of dayKinds(place).keys()) {
      model.chooseKind(at);
      showCheapest(model);
      expect(model.here.value.sound).toBe(true);
      expect(model.shown.value?.words).toContain('You had not found a day that keeps everything');
    }
  }, 20_000);
});

describe('what is said of it', () => {
  test('how far the best of the hunt lay above it, and the same when asked again', () => {
    const model = createModel(huntPlace);
    expect(model.tried.value).toBe(false);
    model.lay(evening);
    expect(model.tried.value).toBe(true);
    const had = model.here.value.price.energyCost;
    showCheapest(model);
    const words = plain(model.shown.value?.words);
    const more = had - model.here.value.price.energyCost;
    expect(more).toBeGreaterThan(0);
    const best = `Your own best costs $${had.toFixed(2)}, $${more.toFixed(2)} above it.`;
    expect(words).toContain(best);
    const cheapest = model.hours.value;
    model.lay(model.usual.value.hours);
    showCheapest(model);
    expect(model.hours.value).toEqual(cheapest);
    expect(plain(model.shown.value?.words)).toBe(words);
  });

  test('that the reader had found it, and that the usual day is no find', () => {
    const cheapest = shownOn(huntPlace).hours.value;
    const model = createModel(huntPlace);
    model.lay(cheapest);
    showCheapest(model);
    expect(model.shown.value?.words).toContain('Your own best costs the same: you had found it');
    expect(shownOn(huntPlace).shown.value?.words).toContain(
      'The best so far, the usual day, costs',
    );
  });

  test('nothing on another kind of day, after a reset or once the pad has changed', () => {
    const model = shownOn(huntPlace);
    model.chooseKind(1);
    expect(model.shown.value).toBeUndefined();
    model.chooseKind(0);
    expect(model.shown.value).toBeDefined();
    model.reset();
    expect(model.shown.value).toBeUndefined();
    expect(model.tried.value).toBe(false);
    model.own.value = onePlace;
    model.source.value = 'mine';
    showCheapest(model);
    expect(model.shown.value).toBeDefined();
    model.own.value = { ...onePlace, turnovers: 1.5 };
    expect(model.shown.value).toBeUndefined();
  });

  test('what cannot be had, and leaves the laid day alone', () => {
    const model = createModel(needOf(onePlace, { minutes: 180 }));
    model.lay(evening);
    const before = model.hours.value;
    showCheapest(model);
    expect(model.hours.value).toBe(before);
    expect(plain(model.shown.value?.words)).toBe(
      'There is no cheapest day to show: at these speeds no day of whole hours can do what is asked by Heater.',
    );
    const thirsty = shownOn({ ...onePlace, turnovers: 3 });
    expect(thirsty.shown.value?.words).toContain('asked by the water through the filter.');
    const still = shownOn({
      ...onePlace,
      settings: onePlace.settings.map((setting) => ({
        ...setting,
        point: { kind: 'noFlow', power: 60 },
      })),
    });
    expect(still.shown.value?.words).toContain('was found that keeps everything');
  });

  test('that a window off the hour has no cheapest day of whole hours', () => {
    const windows = [{ start: clock(15.5), end: clock(18) }];
    const model = shownOn(needOf(onePlace, { windows }));
    expect(model.shown.value?.words).toMatch(/change within an hour/);
    expect(model.shown.value?.hours).toBeUndefined();
  });
});
