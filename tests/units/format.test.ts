import { describe, expect, it } from 'vitest';
import { metric, type UnitChoice, unitFor, us, withUnit } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { format, formatIn, speak, symbolFor } from '#units/format.ts';
import { formatMoney, formatPrice, moneyOf } from '#units/money.ts';

const gpm = (value: number) => toSI('flow', value, 'gpm');
/** Hard and thin spaces written as _ so that a test can be read. */
const seen = (text: string) => text.replace(/[\u00a0\u202f]/g, '_');

describe('format', () => {
  it('shows as many figures as the quantity deserves', () => {
    expect(seen(format('flow', gpm(51.3), us))).toBe('51_gpm');
    expect(seen(format('flow', gpm(102.5), us))).toBe('103_gpm');
    expect(seen(format('flow', gpm(51.3), metric))).toBe('11.7_m³/h');
    expect(seen(format('diameter', 0.0525018, us))).toBe('2.067_in');
    expect(seen(format('diameter', 0.0525018, metric))).toBe('52.5_mm');
    expect(seen(format('velocity', 1.8288, us))).toBe('6.00_ft/s');
    expect(seen(format('temperature', 28, us))).toBe('82.4_°F');
    expect(seen(format('speed', 1750, us))).toBe('1750_rpm');
    expect(seen(format('power', 61.875, us))).toBe('62_W');
  });

  it('groups thousands with a thin space from five digits on', () => {
    expect(seen(format('volume', toSI('volume', 17235.1, 'gal'), us))).toBe('17_235_gal');
    expect(seen(format('volume', toSI('volume', 9000, 'gal'), us))).toBe('9000_gal');
    expect(seen(formatIn('volume', 1234.5678, 'L'))).toBe('1_234_568_L');
  });

  it('holds number and unit together with a space that cannot break', () => {
    expect(format('head', 3, metric)).toBe('3.00\u00a0m');
  });

  it('never shows minus zero, and writes a true minus sign', () => {
    expect(format('head', -0, metric, { withUnit: false })).toBe('0');
    expect(format('head', -0.0004, metric, { withUnit: false })).toBe('0');
    expect(format('head', -0.0004, metric, { withUnit: false, places: 2 })).toBe('0.00');
    expect(format('head', -1.5, metric, { withUnit: false })).toBe('\u22121.50');
  });

  it('takes another number of figures, fixed places, or no unit', () => {
    expect(format('flow', gpm(51.34), us, { digits: 4, withUnit: false })).toBe('51.34');
    expect(format('flow', gpm(51.34), us, { places: 1, withUnit: false })).toBe('51.3');
    expect(format('flow', gpm(51.34), us, { withUnit: false })).toBe('51');
  });

  it('shows a missing value as a dash and never as zero', () => {
    expect(format('flow', Number.NaN, us)).toBe('–');
    expect(speak('flow', Number.NaN, us)).toBe('not known');
  });
});

describe('speech', () => {
  it('says the unit in words', () => {
    expect(speak('flow', gpm(51), us)).toBe('51 gallons per minute');
    expect(speak('flow', gpm(1), us, { places: 0 })).toBe('1 gallon per minute');
    expect(speak('head', -2, metric)).toBe('minus 2.00 metres');
    expect(speak('volume', toSI('volume', 17235.1, 'gal'), us)).toBe('17235 gallons');
  });
});

describe('the choice of units', () => {
  const mixed: UnitChoice = { preset: 'metric', overrides: { pressure: 'psi' } };

  it('takes one quantity apart from its preset', () => {
    expect(unitFor(mixed, 'pressure')).toBe('psi');
    expect(unitFor(mixed, 'flow')).toBe('m3/h');
    expect(symbolFor(mixed, 'flow')).toBe('m³/h');
  });

  it('passes over an override that is no unit of its quantity', () => {
    const spoiled = { preset: 'us', overrides: { flow: 'psi' } } as unknown as UnitChoice;
    expect(unitFor(spoiled, 'flow')).toBe('gpm');
  });

  it('keeps no override that equals the preset', () => {
    expect(withUnit(mixed, 'pressure', 'kPa')).toEqual(metric);
    expect(withUnit(metric, 'pressure', 'psi')).toEqual(mixed);
  });
});

describe('money', () => {
  it('puts a sign before and a code after the amount', () => {
    expect(formatMoney(0.44, '$')).toBe('$0.44');
    expect(seen(formatMoney(12345.678, 'EUR'))).toBe('12_345.68_EUR');
    expect(formatMoney(-3, '€')).toBe('\u2212€3.00');
    expect(formatMoney(-0.001, '$')).toBe('$0.00');
    expect(formatMoney(Number.NaN, '$')).toBe('–');
  });

  it('has the places of the currency', () => {
    // ISO 4217, minor units: none in yen, thousandths of a Kuwaiti dinar; from memory.
    expect(seen(formatMoney(178.26, 'JPY'))).toBe('178_JPY');
    expect(seen(formatMoney(0.1234, 'KWD'))).toBe('0.123_KWD');
    expect(seen(formatMoney(1.5, 'USD'))).toBe('1.50_USD');
    // A word is no code; neither is nothing at all.
    expect(seen(formatMoney(1.5, 'credits'))).toBe('1.50_credits');
    expect(formatMoney(1.5, '')).toBe('1.50');
  });

  it('drops cents where a kilowatt-hour has a high number, whatever the sign', () => {
    const priced = (...prices: readonly number[]) => prices.map((price) => ({ price }));
    // One sign for two currencies: 31 a kilowatt-hour is yen, 0.6 is yuan.
    expect(formatMoney(90.24, moneyOf('¥', priced(31)))).toBe('¥90');
    expect(formatMoney(2.43, moneyOf('¥', priced(0.6)))).toBe('¥2.43');
    expect(seen(formatMoney(255.25, moneyOf('Ft', priced(36, 70.5))))).toBe('255_Ft');
    expect(seen(formatPrice(70.5, moneyOf('Ft', priced(70.5))))).toBe('70.50_Ft per_kWh');
    expect(seen(formatPrice(36, moneyOf('Ft', priced(36))))).toBe('36_Ft per_kWh');
  });

  it('prints a price with the places a tariff has', () => {
    expect(seen(formatPrice(0.22, '$'))).toBe('$0.22 per_kWh');
    expect(seen(formatPrice(0.2245, '$'))).toBe('$0.2245 per_kWh');
  });

  it('shows no more figures than asked for, before the point as well', () => {
    expect(format('power', 1403, us, { digits: 2 })).toBe('1400\u00a0W');
    expect(format('power', 9.96, us, { digits: 2 })).toBe('10\u00a0W');
  });
});
