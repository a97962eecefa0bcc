import { describe, expect, test } from 'vitest';
import { seasonOfSheet } from '#dayPage/day/season.ts';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';

// Our own behaviour; the calendar is that of ISO 8601.

const on = (month: number, day: number) => ({ year: 2027, month, day });
const [open, shut] = lodgePad.year.plans;

describe('the season on the printed sheet', () => {
  test('is named with its first and last day, over the new year too', () => {
    expect(seasonOfSheet(lodgePad, open?.blocks ?? [], on(5, 19))).toBe(
      'Season “Guests in the house”, 15 May to 30 September.',
    );
    expect(seasonOfSheet(lodgePad, shut?.blocks ?? [], on(1, 3))).toBe(
      'Season “House shut”, 1 October to 14 May.',
    );
  });

  test('says when the sheet is for another season, or for none', () => {
    expect(seasonOfSheet(lodgePad, open?.blocks ?? [], on(12, 1))).toBe(
      'Season “Guests in the house”, 15 May to 30 September: not on this date.',
    );
    expect(seasonOfSheet(lodgePad, [], on(12, 1))).toBe(
      'Not one of the days of the year: on this date the plan “House shut” holds, 1 October to 14 May.',
    );
  });

  test('stays away while the year has no plans, and is all year where it has one', () => {
    expect(seasonOfSheet(ownerPad, ownerPad.day.blocks, on(7, 14))).toBe('');
    const plans = lodgePad.year.plans.slice(0, 1);
    const one = { ...lodgePad, year: { ...lodgePad.year, plans } };
    expect(seasonOfSheet(one, open?.blocks ?? [], on(1, 1))).toBe(
      'Season “Guests in the house”, all year.',
    );
  });

  test('a season that ends with February ends on its last day, leap year or not', () => {
    const plans = lodgePad.year.plans.map((plan, at) =>
      at === 0 ? { ...plan, from: { month: 3, day: 1 } } : plan,
    );
    const pad = { ...lodgePad, year: { ...lodgePad.year, plans } };
    const end = (year: number) =>
      seasonOfSheet(pad, shut?.blocks ?? [], { year, month: 1, day: 1 });
    expect(end(2027)).toContain('to 28 February');
    expect(end(2028)).toContain('to 29 February');
  });
});
