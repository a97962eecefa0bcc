import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  flatTariff,
  priceAt,
  ruleOn,
  type Season,
  seasonOn,
  type Tariff,
} from '#core/tariff/tariff.ts';
import { type TariffProblem, tariffProblems } from '#core/tariff/tariffProblems.ts';
import { inventedTariff } from '../day/dayFixtures.ts';

// Days of the week below were looked up in the platform's calendar: 1 July 2026 is a Wednesday.
describe('which rule prices a date', () => {
  it('a season that wraps the new year holds in January and in December', () => {
    expect(seasonOn(inventedTariff, { month: 1, day: 1 }).id).toBe('winter');
    expect(seasonOn(inventedTariff, { month: 5, day: 31 }).id).toBe('winter');
    expect(seasonOn(inventedTariff, { month: 6, day: 1 }).id).toBe('summer');
    expect(seasonOn(inventedTariff, { month: 9, day: 30 }).id).toBe('summer');
    expect(seasonOn(inventedTariff, { month: 12, day: 31 }).id).toBe('winter');
  });

  it('weekdays and weekends have their own day type', () => {
    const types = [1, 4, 5].map((day) => ruleOn(inventedTariff, { year: 2026, month: 7, day }));
    expect(types.map(({ dayType }) => dayType.id)).toEqual(['weekday', 'weekend', 'weekend']);
  });

  it('a holiday takes the day type it names', () => {
    // 5 July 2027 is a Monday.
    expect(ruleOn(inventedTariff, { year: 2027, month: 7, day: 5 }).dayType.id).toBe('weekend');
    expect(ruleOn(inventedTariff, { year: 2027, month: 7, day: 6 }).dayType.id).toBe('weekday');
  });

  it('a holiday of one year leaves the others alone', () => {
    const once: Tariff = {
      ...inventedTariff,
      holidays: [{ year: 2026, month: 7, day: 1, dayTypeId: 'weekend' }],
    };
    expect(ruleOn(once, { year: 2026, month: 7, day: 1 }).dayType.id).toBe('weekend');
    expect(ruleOn(once, { year: 2027, month: 7, day: 1 }).dayType.id).toBe('weekday');
  });

  it('a season from 29 February starts on 1 March in a common year', () => {
    const leap = seasons([1, 1], [2, 29]);
    expect(seasonOn(leap, { month: 2, day: 28 }).id).toBe('s0');
    expect(seasonOn(leap, { month: 2, day: 29 }).id).toBe('s1');
    expect(seasonOn(leap, { month: 3, day: 1 }).id).toBe('s1');
  });

  it('before the first season of the year the last of three holds', () => {
    const three = seasons([3, 1], [6, 1], [10, 1]);
    expect(seasonOn(three, { month: 2, day: 1 }).id).toBe('s2');
    expect(seasonOn(three, { month: 7, day: 1 }).id).toBe('s1');
  });

  it('what has no rule is refused by name', () => {
    const date = { year: 2026, month: 7, day: 1 };
    expect(() => ruleOn(inventedTariff, { ...date, day: 32 })).toThrow('day is 32');
    expect(() => ruleOn(withWeekdays([[0]]), date)).toThrow(
      'season s is 1; it must be a day type for each weekday.',
    );
    expect(() => seasonOn({ ...inventedTariff, seasons: [] }, date)).toThrow('seasons is empty');
    const gap = withBands([[60, 120]]);
    expect(priceAt(gap, date, 60)).toBe(0.2);
    expect(() => priceAt(gap, date, 120)).toThrow('day type d is 120; it must be bands that cover');
  });

  it('the price changes on the minute, and the night band holds over midnight', () => {
    const date = { year: 2026, month: 7, day: 1 };
    const prices = [0, 419, 420, 959, 960, 1259, 1260, 1439].map((minute) =>
      priceAt(inventedTariff, date, minute),
    );
    expect(prices).toEqual([0.11, 0.11, 0.22, 0.22, 0.48, 0.48, 0.11, 0.11]);
  });
});

describe('problems of a tariff', () => {
  it('a sound tariff has none', () => {
    expect(tariffProblems(inventedTariff)).toEqual([]);
    expect(tariffProblems(flatTariff(0.18, 0.35, 'crowns'))).toEqual([]);
  });

  it('no season at all', () => {
    expect(codes({ ...inventedTariff, seasons: [] })).toContain('noSeason');
  });

  it('a gap between bands is named by its minutes, across midnight as one', () => {
    expect(
      tariffProblems(
        withBands([
          [60, 600],
          [600, 1380],
        ]),
      ),
    ).toEqual([{ code: 'bandGap', field: 'seasons[0].dayTypes[0].bands', start: 1380, end: 60 }]);
  });

  it('an overlap of bands is named by its minutes and the later band', () => {
    expect(
      tariffProblems(
        withBands([
          [0, 720],
          [700, 1440],
        ]),
      ),
    ).toEqual([
      { code: 'bandOverlap', field: 'seasons[0].dayTypes[0].bands[1]', start: 700, end: 720 },
    ]);
  });

  it('a band off the clock, a price that is no number, a charge without end', () => {
    expect(codes(withBands([[0, 1500]]))).toEqual(['bandMinute', 'bandGap']);
    expect(codes(withBands([[0, 1440]], Number.NaN))).toEqual(['money']);
    expect(codes({ ...flatTariff(0.1), dailyCharge: Number.POSITIVE_INFINITY })).toEqual(['money']);
  });

  it('a weekday with no day type, with two, and one that does not exist', () => {
    const problems = tariffProblems(
      withWeekdays([
        [0, 1, 2, 3, 4, 5],
        [5, 7],
      ]),
    );
    expect(problems.map((each) => [each.code, 'weekday' in each && each.weekday])).toEqual([
      ['weekdayTwice', 5],
      ['weekdayMissing', 6],
      ['noSuchWeekday', 7],
    ]);
  });

  it('seasons that start on no day, or on the same day', () => {
    expect(codes(seasons([2, 30], [6, 1]))).toEqual(['noSuchDate']);
    expect(tariffProblems(seasons([6, 1], [6, 1]))[0]).toEqual({
      code: 'seasonStartsTwice',
      field: 'seasons[1].from',
      otherId: 's0',
    });
  });

  it('a last day that leaves a gap or reaches into the next season', () => {
    expect(codes(withEnd([3, 1], [5, 30]))).toEqual(['seasonGap']);
    expect(codes(withEnd([3, 1], [6, 1]))).toEqual(['seasonOverlap']);
    expect(codes(withEnd([3, 1], [5, 31]))).toEqual([]);
  });

  it('a last day that there is not, and none told beside a first day that there is not', () => {
    expect(tariffProblems(withEnd([3, 1], [4, 31]))).toEqual([
      { code: 'noSuchDate', field: 'seasons[0].to' },
    ]);
    expect(tariffProblems(withEnd([2, 30], [5, 30]))).toEqual([
      { code: 'noSuchDate', field: 'seasons[0].from' },
    ]);
    const { seasons: list, ...rest } = withEnd([3, 1], [5, 30]);
    const [first, second] = list as [Season, Season];
    const unreal = { ...rest, seasons: [first, { ...second, from: { month: 6, day: 31 } }] };
    expect(tariffProblems(unreal)).toEqual([{ code: 'noSuchDate', field: 'seasons[1].from' }]);
  });

  it('a season without a day type, and a band off the clock beside sound ones', () => {
    expect(tariffProblems(tariffOf([]))).toEqual([
      { code: 'noDayType', field: 'seasons[0].dayTypes' },
    ]);
    const beside = [
      [0, 1440],
      [-60, 1500],
    ] as const;
    for (const bands of [beside, beside.toReversed()]) {
      expect(codes(withBands(bands))).toEqual(['bandMinute']);
    }
  });

  it('the greatest price that is still one', () => {
    expect(codes(withBands([[0, 1440]], 1e9))).toEqual([]);
    expect(codes(withBands([[0, 1440]], 1.001e9))).toEqual(['money']);
  });

  it('the same holiday in other years is not twice', () => {
    const on = (...years: readonly (number | undefined)[]) =>
      codes({
        ...flatTariff(0.1),
        holidays: years.map((year) => ({
          month: 5,
          day: 1,
          dayTypeId: 'all',
          ...(year === undefined ? {} : { year }),
        })),
      });
    expect(on(2027, 2028)).toEqual([]);
    expect(on(2027, 2027)).toEqual(['holidayTwice']);
    expect(on(undefined, 2027)).toEqual(['holidayTwice']);
    expect(on(2027, undefined)).toEqual(['holidayTwice']);
  });

  it('28 and 29 February both end on the eve of 1 March', () => {
    const winter = (day: number) => {
      const { seasons: list, ...rest } = seasons([11, 1], [3, 1]);
      const [first, second] = list as [Season, Season];
      return { ...rest, seasons: [{ ...first, to: { month: 2, day } }, second] };
    };
    expect(codes(winter(28))).toEqual([]);
    expect(codes(winter(29))).toEqual([]);
    expect(codes(winter(27))).toEqual(['seasonGap']);
    // On the eve of June the end of February is three months early.
    expect(codes(withEnd([1, 1], [2, 28]))).toEqual(['seasonGap']);
  });

  it('the same name twice, a holiday on no day, of an unknown day type, or twice', () => {
    const twice = {
      ...flatTariff(0.1),
      seasons: [...flatTariff(0.1).seasons, ...flatTariff(0.1).seasons],
    };
    expect(codes(twice)).toContain('sameId');
    const holidays = [
      { month: 4, day: 31, dayTypeId: 'all' },
      { month: 5, day: 1, dayTypeId: 'feast' },
      { month: 5, day: 1, year: 2027, dayTypeId: 'all' },
    ];
    expect(codes({ ...flatTariff(0.1), holidays })).toEqual([
      'noSuchDate',
      'holidayDayType',
      'holidayTwice',
    ]);
  });

  it('wild numbers are reported and never throw', () => {
    const wild = fc.oneof(fc.double(), fc.integer({ min: -10, max: 2000 }));
    fc.assert(
      fc.property(wild, wild, wild, wild, wild, (start, end, price, month, day) => {
        const { seasons: list, ...rest } = withBands([[start, end]], price);
        const tariff = {
          ...rest,
          seasons: list.map((each) => ({ ...each, from: { month, day } })),
        };
        expect(Array.isArray(tariffProblems(tariff))).toBe(true);
      }),
    );
  });
});

function codes(tariff: Tariff): readonly TariffProblem['code'][] {
  return tariffProblems(tariff).map(({ code }) => code);
}

const everyDay = [0, 1, 2, 3, 4, 5, 6];

function withBands(spans: readonly (readonly [number, number])[], price = 0.2): Tariff {
  const bands = spans.map(([start, end]) => ({ start, end, price }));
  return tariffOf([{ id: 'd', name: 'd', weekdays: everyDay, bands }]);
}

function withWeekdays(lists: readonly (readonly number[])[]): Tariff {
  const bands = [{ start: 0, end: 1440, price: 0.2 }];
  return tariffOf(
    lists.map((weekdays, index) => ({ id: `d${index}`, name: 'd', weekdays, bands })),
  );
}

function tariffOf(dayTypes: Season['dayTypes']): Tariff {
  const from = { month: 1, day: 1 };
  return { currency: '', dailyCharge: 0, seasons: [{ id: 's', name: 's', from, dayTypes }] };
}

function seasons(...starts: readonly (readonly [number, number])[]): Tariff {
  const { dayTypes } = flatTariff(0.2).seasons[0] as Season;
  return {
    ...flatTariff(0.2),
    seasons: starts.map(([month, day], index) => ({
      id: `s${index}`,
      name: 's',
      from: { month, day },
      dayTypes,
    })),
  };
}

/** A season with a stated last day, the next one from 1 June. */
function withEnd([month, day]: readonly [number, number], to: readonly [number, number]): Tariff {
  const { seasons: list, ...rest } = seasons([month, day], [6, 1]);
  const [first, second] = list as [Season, Season];
  return { ...rest, seasons: [{ ...first, to: { month: to[0], day: to[1] } }, second] };
}
