import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  dayEnergy,
  energyPerVolume,
  joulesPerKilowattHour,
  type PoweredSpan,
  priceDay,
  priceDays,
  priceMonth,
  priceSeason,
  priceYear,
} from '#core/tariff/pricing.ts';
import { flatTariff, priceAt, type Tariff } from '#core/tariff/tariff.ts';
import { type CalendarDate, daysInMonth, nextDay } from '#core/time/calendar.ts';
import { spanHolds } from '#core/time/spans.ts';
import { anyDay, inventedPump, inventedTariff, shifted } from '../day/dayFixtures.ts';

interface PricedCase {
  readonly what: string;
  readonly inputs: {
    readonly blocks: readonly { start: string; end: string; power_w: number }[];
    readonly tariff: readonly { start: string; end: string; price_per_kwh: number }[];
    readonly days: number;
    readonly daily_charge: number;
  };
  readonly expected: { readonly energy_kwh: number; readonly cost: number };
  readonly tolerance: { readonly absolute: number };
}

// Reference file electricity: invented tariffs priced in exact fractions per minute.
const file = new URL('../../reference/cases/electricity.json', import.meta.url);
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: PricedCase[] }).cases;

const minuteOf = (clock: string) => {
  const [hours = '', minutes = ''] = clock.split(':');
  return Number(hours) * 60 + Number(minutes);
};

const anyDate: fc.Arbitrary<CalendarDate> = fc.record({
  year: fc.integer({ min: 1900, max: 2200 }),
  month: fc.integer({ min: 1, max: 12 }),
  day: fc.integer({ min: 1, max: 28 }),
});

const anySpans: fc.Arbitrary<readonly PoweredSpan[]> = anyDay.map((blocks) =>
  blocks.map((block) => ({ ...block, power: inventedPump(block.ratio).power })),
);

describe('days priced in the reference file', () => {
  for (const { what, inputs, expected, tolerance } of cases.filter((each) => each.inputs.blocks)) {
    it(what, () => {
      const spans = inputs.blocks.map((block) => ({
        start: minuteOf(block.start),
        end: minuteOf(block.end),
        power: block.power_w,
      }));
      const bands = inputs.tariff.map((band) => ({
        start: minuteOf(band.start),
        end: minuteOf(band.end),
        price: band.price_per_kwh,
      }));
      const tariff = withBands(flatTariff(0, inputs.daily_charge), bands);
      const price = priceDays(tariff, { year: 2027, month: 1, day: 1 }, inputs.days, spans);
      const energyKwh = price.energy / joulesPerKilowattHour;
      expect(Math.abs(energyKwh - expected.energy_kwh)).toBeLessThanOrEqual(tolerance.absolute);
      expect(Math.abs(price.cost - expected.cost)).toBeLessThanOrEqual(tolerance.absolute);
    });
  }

  it('price of moving water', () => {
    // Reference file electricity: 45 gpm at 120 W takes 0.0444 kWh per 1000 gal.
    const gallon = 231 * 0.0254 ** 3; // NIST SP 811, exact
    const perThousand = energyPerVolume(120, (45 * gallon) / 60) * 1000 * gallon;
    expect(perThousand / joulesPerKilowattHour).toBeCloseTo(0.044_444_444_444, 10);
  });
});

function withBands(
  tariff: Tariff,
  bands: readonly { start: number; end: number; price: number }[],
): Tariff {
  return {
    ...tariff,
    seasons: tariff.seasons.map((season) => ({
      ...season,
      dayTypes: season.dayTypes.map((dayType) => ({ ...dayType, bands })),
    })),
  };
}

describe('the price of a day', () => {
  it('is the sum of its 1440 minutes', () => {
    fc.assert(
      fc.property(anySpans, anyDate, (spans, date) => {
        let cost = 0;
        for (let minute = 0; minute < 1440; minute += 1) {
          const power = spans.find((span) => spanHolds(span, minute))?.power ?? 0;
          cost += (power / 1000 / 60) * priceAt(inventedTariff, date, minute);
        }
        const price = priceDay(inventedTariff, date, spans);
        expect(price.energyCost).toBeCloseTo(cost, 9);
        expect(price.cost).toBeCloseTo(cost + 0.35, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('holds in its bands all the energy of the day', () => {
    fc.assert(
      fc.property(anySpans, anyDate, (spans, date) => {
        const { energy, byBand } = priceDay(inventedTariff, date, spans);
        const inBands = byBand.reduce((sum, band) => sum + band.energy, 0);
        expect(Math.abs(energy - dayEnergy(spans))).toBeLessThanOrEqual(1e-9 * (1 + energy));
        expect(inBands).toBeCloseTo(energy, 6);
      }),
    );
  });

  it('does not change when blocks and bands turn together', () => {
    fc.assert(
      fc.property(anySpans, anyDate, fc.integer({ min: 0, max: 1439 }), (spans, date, by) => {
        const turned: Tariff = {
          ...inventedTariff,
          seasons: inventedTariff.seasons.map((season) => ({
            ...season,
            dayTypes: season.dayTypes.map((dayType) => ({
              ...dayType,
              bands: dayType.bands.map((band) => shifted(band, by)),
            })),
          })),
        };
        const after = priceDay(
          turned,
          date,
          spans.map((span) => shifted(span, by)),
        );
        expect(after.cost).toBeCloseTo(priceDay(inventedTariff, date, spans).cost, 9);
      }),
    );
  });
});

describe('the price of a period', () => {
  const spans = [{ start: 900, end: 1380, power: 400 }];

  it('of a month is the sum of its days', () => {
    fc.assert(
      fc.property(anySpans, anyDate, (run, { year, month }) => {
        let date: CalendarDate = { year, month, day: 1 };
        let cost = 0;
        for (let day = 1; day <= daysInMonth(year, month); day += 1) {
          cost += priceDay(inventedTariff, date, run).cost;
          date = nextDay(date);
        }
        expect(priceMonth(inventedTariff, year, month, run).cost).toBeCloseTo(cost, 7);
      }),
      { numRuns: 30 },
    );
  });

  it('of a year is the sum of its months', () => {
    for (const year of [2027, 2028]) {
      const months = Array.from({ length: 12 }, (_, index) =>
        priceMonth(inventedTariff, year, index + 1, spans),
      );
      const cost = months.reduce((sum, month) => sum + month.cost, 0);
      expect(priceYear(inventedTariff, year, spans).cost).toBeCloseTo(cost, 8);
    }
  });

  it('of a leap year has 366 daily charges', () => {
    const year = priceYear(inventedTariff, 2028, []);
    expect(year.cost).toBeCloseTo(366 * 0.35, 9);
    expect(year.dailyCharge).toBeCloseTo(366 * 0.35, 9);
    expect(year.energyCost).toBe(0);
  });

  it('is the charges of its days and the price of its energy', () => {
    const { cost, energyCost, dailyCharge } = priceMonth(inventedTariff, 2027, 2, spans);
    // A month of one price: 28 days of 8 h at 0.4 kW and 0.21 a kWh.
    expect(energyCost).toBeCloseTo(28 * 8 * 0.4 * 0.21, 9);
    expect(dailyCharge).toBeCloseTo(28 * 0.35, 9);
    expect(cost).toBeCloseTo(energyCost + dailyCharge, 9);
  });

  it('of a year counts the days of each type', () => {
    // 2027, by the platform's calendar: June to September hold 122 days, 34 of them on a Saturday
    // or Sunday; 5 July is a Monday and priced as a weekend.
    const counts = priceYear(inventedTariff, 2027, spans).byDayType.map(
      ({ days, day }) => [day.season.id, day.dayType.id, days] as const,
    );
    const weekendDays = platformWeekendDays(2027, 5, 9);
    expect(counts).toEqual([
      ['winter', 'all', 365 - 122],
      ['summer', 'weekday', 122 - weekendDays - 1],
      ['summer', 'weekend', weekendDays + 1],
    ]);
  });

  it('of a season that wraps the new year ends in the next', () => {
    // October to May: 31 + 30 + 31 + 31 + 28 + 31 + 30 + 31 days, one more before a leap February.
    expect(priceSeason(inventedTariff, 2026, 'winter', spans).days).toBe(243);
    expect(priceSeason(inventedTariff, 2027, 'winter', spans).days).toBe(244);
    expect(priceSeason(inventedTariff, 2027, 'summer', spans).days).toBe(122);
  });

  it('of a season from 29 February starts on 1 March in a common year', () => {
    const [all] = flatTariff(0.2).seasons;
    if (!all) throw new Error('a flat tariff has one season');
    const tariff = {
      ...flatTariff(0.2),
      seasons: [all, { ...all, id: 'spring', from: { month: 2, day: 29 } }],
    };
    expect(priceSeason(tariff, 2027, 'spring', []).days).toBe(306);
    expect(priceSeason(tariff, 2028, 'spring', []).days).toBe(307);
  });

  it('of no days is nothing', () => {
    expect(priceDays(inventedTariff, { year: 2027, month: 1, day: 1 }, 0, spans).cost).toBe(0);
  });
});

function platformWeekendDays(year: number, firstMonth: number, endMonth: number): number {
  let count = 0;
  const date = new Date(Date.UTC(year, firstMonth, 1));
  while (date.getUTCMonth() < endMonth) {
    if (date.getUTCDay() % 6 === 0) count += 1;
    date.setUTCDate(date.getUTCDate() + 1);
  }
  return count;
}

describe('what pricing refuses', () => {
  it('a tariff with a problem, named by its field', () => {
    const broken = withBands(flatTariff(0.2), [{ start: 0, end: 600, price: 0.2 }]);
    expect(() => priceYear(broken, 2027, [])).toThrow(
      'seasons[0].dayTypes[0].bands is bandGap; it must be part of a tariff without problems.',
    );
  });

  it('the same tariff for one day', () => {
    const broken = withBands(flatTariff(0.2), [{ start: 0, end: 600, price: 0.2 }]);
    expect(() => priceDay(broken, { year: 2027, month: 1, day: 1 }, [])).toThrow('bandGap');
  });

  it('stretches off the clock or without a power, by name', () => {
    const day = { year: 2027, month: 1, day: 1 };
    const off = [{ start: 0, end: 1441, power: 1 }];
    const drained = [
      { start: 0, end: 60, power: 1 },
      { start: 60, end: 90, power: -1 },
    ];
    for (const price of [
      dayEnergy,
      (spans: readonly PoweredSpan[]) => priceDay(inventedTariff, day, spans),
      (spans: readonly PoweredSpan[]) => priceDays(inventedTariff, day, 2, spans),
    ]) {
      expect(() => price(off)).toThrow('spans[0].end is 1441');
      expect(() => price(drained)).toThrow('spans[1].power is -1');
    }
  });

  it('a number of days that is none, and a first day that there is not', () => {
    const first = { year: 2027, month: 1, day: 1 };
    for (const days of [-1, 0.5, 36601, Number.NaN]) {
      expect(() => priceDays(inventedTariff, first, days, [])).toThrow(
        `days is ${days}; it must be a whole number from 0 to 36600.`,
      );
    }
    expect(priceDays(inventedTariff, first, 36600, []).days).toBe(36600);
    const never = { year: 2027, month: 2, day: 30 };
    expect(() => priceDays(inventedTariff, never, 0, [])).toThrow(CoreError);
  });

  it('an unknown season, a day that does not exist, a power that is no number', () => {
    expect(() => priceSeason(inventedTariff, 2027, 'autumn', [])).toThrow(CoreError);
    expect(() => priceDay(inventedTariff, { year: 2027, month: 2, day: 29 }, [])).toThrow(
      CoreError,
    );
    const spans = [{ start: 0, end: 60, power: Number.NaN }];
    expect(() => priceYear(inventedTariff, 2027, spans)).toThrow(CoreError);
  });

  it('never answers with no number', () => {
    const wild = fc.oneof(fc.double(), fc.integer({ min: -10, max: 1500 }));
    fc.assert(
      fc.property(wild, wild, wild, wild, fc.double(), (start, end, power, year, price) => {
        try {
          const tariff = withBands(flatTariff(0.1), [{ start: 0, end: 1440, price }]);
          const priced = priceYear(tariff, year, [{ start, end, power }]);
          expect(Number.isFinite(priced.cost)).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(CoreError);
        }
      }),
    );
  });
});
