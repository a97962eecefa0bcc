import { csvFormatRows, csvParseRows } from 'd3-dsv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayNumber } from '#core/time/calendar.ts';
import { lookAtCsv } from '#pad/formats/csvLook.ts';
import { createCsvRows, createLineBreaks } from '#pad/formats/csvRows.ts';
import { noteSentence, problemSentenceOf } from '#pad/formats/fileSentences.ts';
import { dateOrderOf, readClock, readMoment } from '#pad/formats/moment.ts';
import type { FileProblem } from '#pad/formats/series.ts';
import { createTemperatureCsv } from '#pad/formats/temperatureCsv.ts';
import { at, pieces, readCsv, taken, utc } from './meterFixtures.ts';

const said = (result: object) => problemSentenceOf(result as FileProblem, 'meter');
const two = (value: number) => String(value).padStart(2, '0');

/** Rows of an hour from a day on, each with its number as the amount. */
function hourly(
  count: number,
  row: (stamp: Date, index: number) => string,
  from = Date.UTC(2027, 6, 1),
): string {
  return Array.from({ length: count }, (_, index) =>
    row(new Date(from + 3.6e6 * index), index),
  ).join('\n');
}
const iso = (date: Date) => date.toISOString().slice(0, 16);

describe('rows of a table in pieces', () => {
  it('are those another parser finds in the whole', () => {
    const cell = fc.stringMatching(/^[a-z0-9 ",\n]{0,8}$/).map((text) => text.trim());
    const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), {
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(table, fc.integer({ min: 1, max: 9 }), (rows, length) => {
        const text = csvFormatRows(rows);
        const reader = createCsvRows(',');
        const found = [
          ...pieces(text, length).flatMap((piece) => reader.push(piece)),
          ...reader.end(),
        ];
        const want = csvParseRows(text);
        expect(found.map(({ cells }) => cells)).toEqual(
          want.map((row) => row.map((each) => each.trim())),
        );
      }),
    );
  });

  it('know their line, over quoted line breaks too', () => {
    const reader = createCsvRows(';');
    const rows = [...reader.push('a;b\n"1\n2";3\nlast;'), ...reader.end()];
    expect(rows.map(({ line }) => line)).toEqual([1, 2, 4]);
  });

  it('every kind of line break is one, even cut in two', () => {
    const breaks = createLineBreaks();
    expect(['a\r', '\nb\rc', '\n'].map(breaks).join('') + breaks('')).toBe('a\nb\nc\n');
  });
});

describe('dates as files write them', () => {
  const first = dayNumber({ year: 2027, month: 7, day: 1 });
  it.each([
    ['2027-07-01T14:15', 'ymd', 855, null],
    ['2027-07-01 14:15:30', 'ymd', 855.5, null],
    ['2027/7/1 2:15 PM', 'ymd', 855, null],
    ['07/01/2027 02:15 pm', 'mdy', 855, null],
    ['01.07.2027 14:15', 'dmy', 855, null],
    ['1.7.27 14:15', 'dmy', 855, null],
    ['2027-07-01T14:15:00+02:00', 'ymd', 855, 120],
    ['2027-07-01T14:15:00.000Z', 'ymd', 855, 0],
    ['2027-07-01T14:15-0500', 'ymd', 855, -300],
    ['07/01/2027', 'mdy', null, null],
    ['07/01/2027 12:00 AM', 'mdy', 0, null],
    ['2027-07-01 24:00', 'ymd', 1440, null],
  ] as const)('%s', (text, order, minute, offset) => {
    expect(readMoment(text, order)).toEqual({ day: first, minute, offset });
  });

  it.each([
    '',
    '2027-02-29',
    '13/01/2027',
    '2027-07-01 25:00',
    'July',
    '2027-07-01 10:75',
    '12.5',
    '1/1/1',
  ])('%j is none', (text) => expect(readMoment(text, 'mdy')).toBeNull());

  it('tell their order by a number above 12, a year in front or points', () => {
    expect(dateOrderOf(['05/06/2027', '05/13/2027'])).toBe('mdy');
    expect(dateOrderOf(['05/06/2027', '13/06/2027'])).toBe('dmy');
    expect(dateOrderOf(['2027-05-06'])).toBe('ymd');
    expect(dateOrderOf(['05.06.2027'])).toBe('dmy');
    expect(dateOrderOf(['05/06/2027', '05/07/2027'])).toBeNull();
  });

  it('a time of day may stand alone', () => {
    expect(readClock('2:05 pm')?.minute).toBe(845);
    expect(readClock('13:00 pm')).toBeNull();
    expect(readClock('0.25')).toBeNull();
  });
});

describe('a first look at a table', () => {
  it('finds header, columns and unit', () => {
    const text = `Account,123\nName,Invented\n\nStart,End,Usage (kWh),Cost ($)\n${hourly(5, (date, index) => `${iso(date)},${iso(new Date(date.getTime() + 3.6e6))},0.${index}5,0.1`)}`;
    expect(lookAtCsv(text, true, 'meter')).toMatchObject({
      columns: ['Start', 'End', 'Usage (kWh)', 'Cost ($)'],
      guess: { time: 0, amount: 2, unit: 'kWh', order: 'ymd', decimal: '.', atEnd: false },
      unsure: [],
    });
  });

  it.each([4, 40])('knows semicolons, decimal commas and days first, in %d rows', (count) => {
    const text = `Datum;Wert (Wh)\n${hourly(count, (date, index) => `${two(date.getUTCDate())}.07.2027 ${two(date.getUTCHours())}:00;${index},5`)}`;
    const look = lookAtCsv(text, true, 'meter');
    expect(look).toMatchObject({
      guess: { delimiter: ';', unit: 'Wh', order: 'dmy', decimal: ',' },
      unsure: [],
    });
    expect(taken(readCsv(text)).intervals[3]).toEqual({
      start: at('2027-07-01T03:00'),
      duration: 60,
      energy: 3.5 * 3600,
    });
  });

  it('joins a date and a time that stand apart, and takes 12-hour clocks', () => {
    const text = `DATE,START TIME,END TIME,USAGE,UNITS\n${hourly(30, (date) => `07/${two(date.getUTCDate())}/2027,${date.getUTCHours() % 12 || 12}:00 ${date.getUTCHours() < 12 ? 'AM' : 'PM'},x,1,kWh`)}`;
    const look = lookAtCsv(text, true, 'meter');
    expect(look).toMatchObject({ guess: { time: 0, clock: 1, amount: 3, unit: 'kWh' } });
    // Either order would do, but 7 January and 7 February do not follow one another by the hour.
    expect(look).toMatchObject({ unsure: [], guess: { order: 'mdy' } });
    expect(taken(readCsv(text)).intervals.map(({ start }) => start)).toEqual(
      Array.from({ length: 30 }, (_, hour) => at('2027-07-01T00:00') + 60 * hour),
    );
  });

  it('asks for the order of a date where nothing tells it', () => {
    const text = `date,kWh\n${hourly(5, (date) => `05/06/2027 ${date.getUTCHours()}:00,1`)}`;
    expect(lookAtCsv(text, true, 'meter')).toMatchObject({ unsure: ['order'] });
  });

  it('asks where two columns could be meant, or no unit is named', () => {
    const text = `time,north,south\n${hourly(4, (date) => `${iso(date)},1,2`)}`;
    expect(lookAtCsv(text, true, 'meter')).toMatchObject({
      amounts: [1, 2],
      unsure: ['amount', 'unit'],
    });
  });

  it.each([
    ['', 'This file is empty.'],
    ['   \n\n', 'This file is empty.'],
    [
      'hello\nworld\n',
      'No table was found in this file. It must have a column of dates and times and one of kWh, Wh, kW or W, and two rows or more.',
    ],
    [
      'time,kWh\n',
      'No table was found in this file. It must have a column of dates and times and one of kWh, Wh, kW or W, and two rows or more.',
    ],
  ])('%j: says what is wrong', (text, sentence) => {
    expect(said(lookAtCsv(text, true, 'meter'))).toBe(sentence);
  });
});

describe('intervals of a meter from a table', () => {
  it.each([
    ['kWh', 2 * 3.6e6],
    ['Wh', 2 * 3600],
    ['kW', 2000 * 3600],
    ['W', 2 * 3600],
  ] as const)('2 %s over an hour', (unit, energy) => {
    // NIST SP 811, B.8: 1 kWh is 3.6e6 J; a watt for an hour is 3600 J.
    const text = `time,use ${unit}\n${hourly(3, (date) => `${iso(date)},2`)}`;
    expect(taken(readCsv(text)).intervals[0]?.energy).toBe(energy);
  });

  it('stamped at their end begin a step earlier', () => {
    const text = `interval end,kWh\n${hourly(3, (date) => `${iso(date)},2`)}`;
    expect(taken(readCsv(text)).intervals[0]?.start).toBe(at('2027-06-30T23:00'));
  });

  it('with the newest row first are the same', () => {
    const rows = hourly(48, (date, index) => `${iso(date)},${index}`).split('\n');
    const text = (list: readonly string[]) => `time,kWh\n${list.join('\n')}`;
    expect(taken(readCsv(text([...rows].reverse()))).intervals).toEqual(
      taken(readCsv(text(rows))).intervals,
    );
  });

  it('bad rows are left out, counted, and the first is named with its line', () => {
    const rows = hourly(20, (date) => `${iso(date)},2`).split('\n');
    rows[3] = '2027-07-01T03:00';
    rows[5] = '2027-07-99T05:00,2';
    rows[7] = '2027-07-01T07:00,n/a';
    const { intervals, notes } = taken(readCsv(`time,kWh\n${rows.join('\n')}\nTotal,40\n`));
    expect(intervals).toHaveLength(17);
    const words = notes.map((note) => noteSentence(note, 'meter'));
    expect(words[0]).toBe(
      '4 rows were left out. The first: Line 5 has 1 column; it needs at least 2.',
    );
    expect(words[1]).toBe(
      '3 gaps, 3.0 hours in all, the first from 1 July 2027 on. Nothing is made up for them.',
    );
  });

  it('readings that all are below nothing are told so', () => {
    const text = `time,kWh\n${hourly(3, (date) => `${iso(date)},-1`)}`;
    expect(said(readCsv(text))).toBe(
      'All 3 readings are below 0, from line 2 on. That is what goes back to the grid; what is taken from it counts 0 or more and may stand in another column.',
    );
  });

  it('when most rows are bad nothing is taken, and the sentence says why', () => {
    const text = `time,kWh\n${hourly(20, (date, index) => `${iso(date)},${index < 6 ? 1 : 'x'}`)}`;
    const look = lookAtCsv(text.split('\n').slice(0, 6).join('\n'), true, 'meter');
    if ('code' in look) throw new Error('no look');
    expect(said(readCsv(text, look.guess))).toMatch(
      /No table was found|14 of 20 rows cannot be read/,
    );
  });

  it('a day of 23 or 25 hours lacks nothing and overlaps nothing', () => {
    const spring = hourly(48, (date) => `${iso(date)},1`, Date.UTC(2027, 2, 13)).split('\n');
    const night = spring.filter((row) => !row.startsWith('2027-03-14T02'));
    const jumped = taken(readCsv(`time,kWh\n${night.join('\n')}`));
    expect(jumped.notes).toEqual([{ code: 'clockForward', local: at('2027-03-14T03:00') }]);
    const autumn = hourly(48, (date) => `${iso(date)},1`, Date.UTC(2027, 10, 6)).split('\n');
    const twice = autumn.flatMap((row) => (row.startsWith('2027-11-07T01') ? [row, row] : [row]));
    const again = taken(readCsv(`time,kWh\n${twice.join('\n')}`));
    expect(again.notes).toEqual([{ code: 'clockBack', local: at('2027-11-07T01:00') }]);
    expect(again.intervals).toHaveLength(49);
  });

  it('an hour missing by day is a gap, and a row given twice by day an overlap', () => {
    const rows = hourly(48, (date) => `${iso(date)},1`).split('\n');
    const noon = rows.filter((row) => !row.startsWith('2027-07-01T12'));
    expect(taken(readCsv(`time,kWh\n${noon.join('\n')}`)).notes).toMatchObject([
      { code: 'gaps', count: 1, minutes: 60 },
    ]);
    const doubled = rows.flatMap((row) => (row.startsWith('2027-07-01T12') ? [row, row] : [row]));
    expect(taken(readCsv(`time,kWh\n${doubled.join('\n')}`)).notes).toMatchObject([
      { code: 'overlaps', count: 1, line: 15 },
    ]);
  });

  it('a quote that is never closed is named with its line', () => {
    const text = `time,kWh\n2027-07-01T00:00,1\n2027-07-01T01:00,"1\n${'2027-07-01T02:00,1\n'.repeat(60_000)}`;
    expect(said(readCsv(text))).toBe(
      'A quote opened in line 3 is never closed. Take the quote out, or double it.',
    );
  });

  it('fine steps are joined to quarters of an hour', () => {
    const text = `time,W\n${Array.from({ length: 120 }, (_, minute) => `${iso(new Date(Date.UTC(2027, 6, 1) + 60_000 * minute))},600`).join('\n')}`;
    const { intervals, step, count } = taken(readCsv(text));
    expect([intervals.length, step, count]).toEqual([8, 1, 120]);
    expect(intervals[0]).toEqual({
      start: at('2027-07-01T00:00'),
      duration: 15,
      energy: 600 * 900,
    });
  });
});

describe('temperatures from a table', () => {
  function read(text: string) {
    const look = lookAtCsv(text, true, 'temperature');
    if ('code' in look) throw new Error(look.code);
    const reader = createTemperatureCsv(look.guess, utc);
    reader.push(text);
    return { look, file: reader.end() };
  }

  it('are means by the hour in degrees Celsius: 32 and 41 degF are 0 and 5 degC', () => {
    // Definition of the Fahrenheit scale (NIST SP 811, B.8).
    const { look, file } = read(
      'time,air temp (°F)\n2027-01-02T05:00,32\n2027-01-02T05:30,41\n2027-01-02T06:00,14\n',
    );
    expect(look.guess.unit).toBe('degF');
    expect(file).toMatchObject({
      hours: [
        { date: { year: 2027, month: 1, day: 2 }, hour: 5, temperature: 2.5 },
        { date: { year: 2027, month: 1, day: 2 }, hour: 6, temperature: -10 },
      ],
    });
  });

  it('one that no air ever had is left out and told', () => {
    const { file } = read(
      `time,temp_C\n${hourly(10, (date, index) => `${iso(date)},${index === 3 ? 999 : -1}`)}`,
    );
    expect(file).toMatchObject({ notes: [{ code: 'absurd', count: 1, line: 5 }] });
  });
});
