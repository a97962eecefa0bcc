import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { netPresentValue, paybackYears } from '#core/tariff/payback.ts';

describe('what it is worth', () => {
  it('is the annuity of the tables, less the price', () => {
    // Present value of 1 a year at 5 % over 10 years: 7.7217; at 8 % over 15 years: 8.5595
    // (annuity tables, from memory; also (1 - 1.05^-10) / 0.05).
    expect(netPresentValue({ outlay: 0, yearlySaving: 1 }, 0.05, 10)).toBeCloseTo(7.7217, 4);
    expect(netPresentValue({ outlay: 0, yearlySaving: 1 }, 0.08, 15)).toBeCloseTo(8.5595, 4);
    expect(netPresentValue({ outlay: 1000, yearlySaving: 200 }, 0, 5)).toBe(0);
    // The shortest and the longest life: 1050 in a year is worth 1000 today at 5 %; 100 years, 19.8479.
    expect(netPresentValue({ outlay: 1000, yearlySaving: 1050 }, 0.05, 1)).toBeCloseTo(0, 9);
    expect(netPresentValue({ outlay: 0, yearlySaving: 1 }, 0.05, 100)).toBeCloseTo(19.8479, 4);
  });

  it('pays back in outlay over saving, or never', () => {
    expect(paybackYears({ outlay: 900, yearlySaving: 300 })).toBe(3);
    expect(paybackYears({ outlay: 900, yearlySaving: 0 })).toBeNull();
    expect(paybackYears({ outlay: 900, yearlySaving: -5 })).toBeNull();
    expect(paybackYears({ outlay: 0, yearlySaving: 0 })).toBe(0);
    expect(() => paybackYears({ outlay: -1, yearlySaving: 1 })).toThrow(CoreError);
    expect(() => netPresentValue({ outlay: 1, yearlySaving: Number.NaN }, 0, 1)).toThrow('finite');
    for (const years of [0, 101, 1.5]) {
      expect(() => netPresentValue({ outlay: 1, yearlySaving: 1 }, 0, years)).toThrow('1 to 100');
    }
  });
});
