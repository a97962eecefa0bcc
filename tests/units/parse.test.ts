import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromSI, toSI } from '#units/convert.ts';
import { editable, formatIn } from '#units/format.ts';
import { parse, type Range } from '#units/parse.ts';
import { type Quantity, quantityNames, type UnitOf, unitsOf } from '#units/quantities.ts';
import { sentenceFor } from '#units/sentences.ts';
import { formatTimeOfDay, parseTimeOfDay } from '#units/timeOfDay.ts';

/** What the field reads, in its own unit. */
function read(text: string, quantity: Quantity = 'flow', unit: UnitOf = 'gpm', range: Range = {}) {
  const result = parse(text, quantity, unit, range);
  return result.ok ? Number(fromSI(quantity, result.si, unit).toPrecision(12)) : result.code;
}

function sentence(
  text: string,
  quantity: Quantity,
  unit: UnitOf,
  range: Range = {},
  name?: string,
) {
  const result = parse(text, quantity, unit, range);
  return result.ok ? 'no problem' : sentenceFor(result, name).replaceAll('\u00a0', ' ');
}

describe('parse reads numbers as people write them', () => {
  it.each([
    ['55', 55],
    ['  55 ', 55],
    ['55.', 55],
    ['.5', 0.5],
    ['+3', 3],
    ['-3', -3],
    ['−3', -3],
    ['– 3', -3],
    ['1.5e-3', 0.0015],
    ['7,5', 7.5],
    ['0,125', 0.125],
    ['1,234', 1234],
    ['1234,567', 1234.567],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1,234,567', 1234567],
    ['1.234.567', 1234567],
    ['17 235', 17235],
    ['17\u202f235', 17235],
    ['17 235,5', 17235.5],
    ['3/4', 0.75],
    ['1 1/2', 1.5],
    ['1-1/2', 1.5],
    ['-1 1/2', -1.5],
    ['1½', 1.5],
    ['2 ½', 2.5],
    ['¾', 0.75],
    ['1 1⁄4', 1.25],
  ])('%s', (text, value) => expect(read(text)).toBe(value));

  it.each([
    'abc',
    'gpm',
    '1/0',
    '1 2',
    '1,23,456',
    '1,23.4,5',
    '--3',
    '1.2.3',
    ',',
    '.',
    '17 23',
    '1e999',
  ])('refuses %s', (text) => expect(read(text)).toBe('notANumber'));

  it('knows an empty field', () => expect(read(' \u00a0 ')).toBe('empty'));

  it('never throws, and never gives anything but a finite number', () => {
    const typed = fc.oneof(fc.string(), fc.stringMatching(/^[-\d.,/ ½'"eftingpm]{0,12}$/));
    fc.assert(
      fc.property(typed, fc.constantFrom(...quantityNames), (text, quantity) => {
        const result = parse(text, quantity, unitsOf(quantity)[0] as UnitOf);
        expect(result.ok ? Number.isFinite(result.si) : result.code).toBeTruthy();
      }),
    );
  });
});

describe('one comma before three digits', () => {
  const depth: Range = { least: 0, greatest: 10 };

  it('groups thousands when the range allows that', () => {
    expect(read('1,500', 'length', 'm')).toBe(1500);
    expect(read('1,500', 'length', 'm', { least: 0, greatest: 5000 })).toBe(1500);
  });

  it('is asked about when only the decimal reading would be allowed', () => {
    expect(read('1,500', 'length', 'm', depth)).toBe('ambiguousComma');
    expect(sentence('1,500', 'length', 'm', depth, 'depth')).toBe(
      '“1,500” can be read as 1500 or as 1.5. The depth must be from 0 m to 10 m: if you mean 1.5, write it with a point.',
    );
  });

  it('is simply too much when neither reading is allowed', () => {
    expect(read('25,500', 'length', 'm', depth)).toBe('aboveGreatest');
  });
});

describe('parse reads a unit behind the number', () => {
  it.each([
    ['55 gpm', 'flow', 'm3/h', 12.4918588872],
    ['8 m3/h', 'flow', 'm3/h', 8],
    ['8m³/h', 'flow', 'm3/h', 8],
    ['8 m^3/h', 'flow', 'm3/h', 8],
    ['200 L/min', 'flow', 'm3/h', 12],
    ['200 l/min', 'flow', 'm3/h', 12],
    ['2 in', 'diameter', 'mm', 50.8],
    ['2"', 'diameter', 'mm', 50.8],
    ['1 1/2 in', 'diameter', 'mm', 38.1],
    ["10'", 'length', 'm', 3.048],
    ['5 ft 6 in', 'length', 'ft', 5.5],
    ['5\' 6"', 'length', 'ft', 5.5],
    ['5 ft 6 1/2 in', 'length', 'm', 1.6891],
    ['82.4 °F', 'temperature', 'degC', 28],
    ['82.4f', 'temperature', 'degC', 28],
    ['1 bar', 'pressure', 'kPa', 100],
    ['8 hours', 'duration', 'min', 480],
    ['50 %', 'share', '%', 50],
    ['3 ppm', 'concentration', 'mg/L', 3],
  ] as const)('%s', (text, quantity, unit, value) =>
    // Factors of NIST SP 811, worked by hand.
    expect(read(text, quantity, unit)).toBe(value),
  );

  it('refuses a unit of another quantity and lists the right ones', () => {
    expect(sentence('55 psi', 'flow', 'gpm')).toBe(
      '“psi” is not a unit known here for the flow. Use gpm, m³/h, L/min or m³/s.',
    );
  });
});

describe('sentences say what is wrong and what would be right', () => {
  const range: Range = { least: toSI('flow', 5, 'gpm'), greatest: toSI('flow', 150, 'gpm') };

  it('for an empty field', () => {
    expect(sentence('', 'flow', 'gpm')).toBe('Enter the flow in gpm, for example 50.');
    expect(sentence('', 'flow', 'm3/h')).toBe('Enter the flow in m³/h, for example 11.');
  });

  it('for text that is no number', () => {
    expect(sentence('fast', 'speed', 'rpm', {}, 'top speed')).toBe(
      '“fast” is not a number. Enter the top speed in rpm, for example 1750.',
    );
  });

  it('for too little and too much, in the unit of the field', () => {
    expect(sentence('3', 'flow', 'gpm', range)).toBe(
      '3 gpm is too little. The flow must be from 5 gpm to 150 gpm.',
    );
    expect(sentence('90', 'flow', 'm3/h', range)).toBe(
      '90 m³/h is too much. The flow must be from 1.136 m³/h to 34.07 m³/h.',
    );
    expect(sentence('-1', 'length', 'm', { least: 0 }, 'pipe length')).toBe(
      '-1 m is too little. The pipe length must be 0 m or more.',
    );
    expect(sentence('9', 'share', '%', { greatest: 0.05 })).toBe(
      '9 % is too much. The share must be 5 % or less.',
    );
  });

  it('in the unit that was typed, if one was', () => {
    expect(sentence('200 gpm', 'flow', 'm3/h', range)).toBe(
      '200 gpm is too much. The flow must be from 5 gpm to 150 gpm.',
    );
  });

  it('counts a bound reached through another unit as met', () => {
    expect(
      parse('0.5678117676 L/min', 'flow', 'gpm', { greatest: toSI('flow', 0.15, 'gpm') }),
    ).toMatchObject({
      ok: true,
      si: toSI('flow', 0.15, 'gpm'),
    });
  });
});

describe('editable', () => {
  it('is short', () => {
    expect(editable('flow', toSI('flow', 55, 'gpm'), 'gpm')).toBe('55');
    expect(editable('flow', toSI('flow', 55, 'gpm'), 'm3/h')).toBe('12.4918588872');
    expect(editable('temperature', 0, 'degF')).toBe('32');
    expect(editable('volume', toSI('volume', 17235.25, 'gal'), 'gal')).toBe('17235.25');
    expect(editable('roughness', 1.5e-6, 'mm')).toBe('0.0015');
    expect(editable('flow', Number.NaN, 'gpm')).toBe('');
  });

  it('reads back as the same stored value in every unit of every quantity', () => {
    const value = fc.double({ min: -1e9, max: 1e9, noNaN: true }).filter((v) => Math.abs(v) > 1e-6);
    fc.assert(
      fc.property(value, fc.constantFrom(...quantityNames), (shown, quantity) => {
        for (const from of unitsOf(quantity)) {
          const si = toSI(quantity, shown, from as UnitOf);
          for (const unit of unitsOf(quantity)) {
            const back = parse(editable(quantity, si, unit as UnitOf), quantity, unit as UnitOf);
            expect(back.ok).toBe(true);
            const scale = Math.max(Math.abs(si), quantity === 'temperature' ? 160 / 9 : 0);
            if (back.ok) expect(Math.abs(back.si - si)).toBeLessThanOrEqual(1e-12 * scale);
          }
        }
      }),
      { numRuns: 200 },
    );
  });

  it('what is shown for reading can be typed back', () => {
    const shown = formatIn('volume', toSI('volume', 17235, 'gal'), 'gal');
    expect(read(shown, 'volume', 'gal')).toBe(17235);
  });
});

describe('time of day', () => {
  it.each([
    ['14:30', 870],
    ['14.30', 870],
    ['1430', 870],
    ['8', 480],
    ['08:05', 485],
    ['2:30 pm', 870],
    ['2:30PM', 870],
    ['2 p.m.', 840],
    ['12 am', 0],
    ['12:15 pm', 735],
    ['24:00', 0],
    ['noon', 720],
    ['midnight', 0],
  ])('reads %s', (text, minute) => expect(parseTimeOfDay(text)).toEqual({ ok: true, minute }));

  it.each(['25:00', '12:60', '13 pm', '24:01', 'soon', '1:2'])('refuses %s', (text) =>
    expect(parseTimeOfDay(text)).toMatchObject({ ok: false, code: 'notATime' }),
  );

  it('writes both clocks', () => {
    expect(formatTimeOfDay(870)).toBe('14:30');
    expect(formatTimeOfDay(870, '12h')).toBe('2:30\u00a0pm');
    expect(formatTimeOfDay(0, '12h')).toBe('12:00\u00a0am');
    expect(formatTimeOfDay(1440)).toBe('00:00');
    expect(formatTimeOfDay(-15)).toBe('23:45');
  });

  it('every minute of the day survives both clocks', () => {
    for (let minute = 0; minute < 1440; minute += 1) {
      for (const style of ['24h', '12h'] as const) {
        expect(parseTimeOfDay(formatTimeOfDay(minute, style))).toEqual({ ok: true, minute });
      }
    }
  });
});
