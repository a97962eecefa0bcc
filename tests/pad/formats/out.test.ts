import { csvParseRows } from 'd3-dsv';
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { dayReport } from '#core/day/dayReport.ts';
import { flatTariff } from '#core/tariff/tariff.ts';
import { yearReport } from '#core/year/year.ts';
import { lodgePad } from '#pad/demos/demos.ts';
import { csvText } from '#pad/formats/csvText.ts';
import { dayCalendar } from '#pad/formats/dayCalendar.ts';
import { type DayTable, dayCsv } from '#pad/formats/dayCsv.ts';
import { yearCsv } from '#pad/formats/yearCsv.ts';
import { padModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';
import { metric, us } from '#units/choice.ts';

// What is written is read back by parsers that are not ours: d3-dsv for tables, ical.js for calendars.

describe('tables as text', () => {
  it('have a line of headings, CR LF after every line, and doubled quotes (RFC 4180, 2.1, 2.7)', () => {
    const text = csvText(
      ['A', 'B "x"'],
      [
        [1, 'two, three'],
        [null, 'four\r\nfive'],
      ],
    );
    expect(text).toBe('A,"B ""x"""\r\n1,"two, three"\r\n,"four\r\nfive"\r\n');
  });

  it('come back cell by cell through another parser, whatever was typed', () => {
    const typed = fc.string({ unit: 'grapheme', maxLength: 12 });
    fc.assert(
      fc.property(fc.array(fc.tuple(typed, typed), { minLength: 1, maxLength: 6 }), (rows) => {
        const back = csvParseRows(csvText(['a', 'b'], rows)).slice(1);
        // A line break at the very end of a file is no row of its own; other breaks are kept.
        expect(back).toHaveLength(rows.length);
        back.forEach((cells, row) => {
          cells.forEach((cell, column) => {
            // Nothing but apostrophes is put in, and only before what would begin a formula.
            const was = rows[row]?.[column] ?? '';
            expect(cell.replace(/'(?=[=+\-@])/g, '')).toBe(was.replace(/'(?=[=+\-@])/g, ''));
          });
        });
      }),
      { numRuns: 200 },
    );
  });

  it.each(['=1+2', '+1', '-1', '@SUM(A1)', '\t=1', ' =HYPERLINK("x")', '\r=1'])(
    'no cell that was typed begins like a formula: %j',
    (typed) => {
      // Common practice, no source: an apostrophe before it makes a spreadsheet take it as text.
      const [, [cell = '', number = ''] = []] = csvParseRows(csvText(['a', 'b'], [[typed, -1.5]]));
      expect(cell).toBe(typed.replace(/(?=[=+\-@])/, "'"));
      expect(number).toBe('-1.5');
    },
  );

  it('and none does where a program splits the lines at semicolons or tabs (common practice, no source)', () => {
    const bit = fc.constantFrom('=1+2', '-x', '@y', '+z', ';', ',', '\t', ' ', 'a', '"', '=');
    const typed = fc.array(bit, { maxLength: 9 }).map((bits) => bits.join(''));
    fc.assert(
      fc.property(fc.array(typed, { minLength: 1, maxLength: 4 }), (cells) => {
        const text = csvText(['a'], [cells]).split('\r\n').slice(1).join('\r\n');
        for (const by of [',', ';', '\t'])
          for (const cell of text.split(/\r\n/).flatMap((line) => line.split(by)))
            expect(cell.replaceAll('"', '')).not.toMatch(/^\s*[=+\-@]/);
      }),
      { numRuns: 300 },
    );
  });

  it('a number that is none is an empty cell', () => {
    expect(csvText(['a', 'b'], [[Number.NaN, 1 / 3]])).toBe('a,b\r\n,0.3333333\r\n');
  });
});

/** 2 L/s and 500 W from 22:00 to 06:00, 4 L/s and 1500 W from 06:00 to 08:00: invented, for reckoning by hand. */
const handDay: DayTable = {
  segments: dayReport({
    blocks: [
      { id: 'night', start: 1320, end: 360, ratio: 0.5 },
      { id: 'high', start: 360, end: 480, ratio: 1 },
    ],
    pointAt: (ratio) => ({
      kind: 'flowing',
      flow: 0.004 * ratio,
      power: ratio === 1 ? 1500 : 500,
      suctionVelocity: 1,
      dischargeVelocity: 1,
    }),
    volume: 50,
    needs: [],
    limits: [],
    quiet: [],
  }).segments,
  reference: 3000,
  date: { year: 2027, month: 7, day: 1 },
  tariff: flatTariff(0.2, 0.1, 'EUR'),
  currency: 'EUR',
  reasonOf: (id) => (id === 'night' ? '=cheap' : 'Skimming, "high"'),
  units: metric,
};

describe('the day as a table', () => {
  it('says what a calculation by hand says', () => {
    // Arithmetic: 2 L/s = 7.2 m3/h; 6 h of it are 43.2 m3; 500 W x 6 h = 3 kWh, at 0.20 it is 0.60.
    const rows = csvParseRows(dayCsv(handDay));
    expect(rows[0]).toEqual([
      'Start',
      'End',
      'Length (min)',
      'Speed (rpm)',
      'Flow (m³/h)',
      'Power (W)',
      'Water moved (m³)',
      'Energy (kWh)',
      'Price of energy (EUR)',
      'Reason',
    ]);
    expect(rows.slice(1)).toEqual([
      ['00:00', '06:00', '360', '1500', '7.2', '500', '43.2', '3', '0.6', "'=cheap"],
      ['06:00', '08:00', '120', '3000', '14.4', '1500', '28.8', '3', '0.6', 'Skimming, "high"'],
      ['08:00', '22:00', '840', '0', '0', '0', '0', '0', '0', 'Off'],
      ['22:00', '24:00', '120', '1500', '7.2', '500', '14.4', '1', '0.2', "'=cheap"],
    ]);
  });

  it('in other units and without prices has other headings and fewer columns', () => {
    const rows = csvParseRows(dayCsv({ ...handDay, units: us, tariff: null }));
    expect(rows[0]).toContain('Flow (gpm)');
    expect(rows[0]).toHaveLength(9);
    // 2 L/s in US gallons of 3.785411784 L (NIST SP 811, B.8).
    expect(Number(rows[1]?.[4])).toBeCloseTo((0.002 * 60_000) / 3.785_411_784, 4);
  });
});

describe('the year as a table', () => {
  const plan = yearPlanOf(lodgePad, padModel(lodgePad), { year: 2028 });
  if (plan === null) throw new Error('the lodge has a year');
  const report = yearReport(plan);
  const table = { year: 2028, report, currency: 'EUR', units: metric } as const;
  const column = (rows: readonly string[][], index: number) =>
    rows.slice(1).reduce((sum, row) => sum + Number(row[index]), 0);

  it('has a row for each day of the calendar and for each month, with the same sums', () => {
    const [days, months] = (['day', 'month'] as const).map((by) =>
      csvParseRows(yearCsv({ ...table, by })),
    ) as [string[][], string[][]];
    expect(days).toHaveLength(367); // 2028 is a leap year
    expect(days[60]?.[0]).toBe('2028-02-29');
    expect(months.slice(1).map(([month]) => month)).toEqual(
      Array.from({ length: 12 }, (_, index) => `2028-${String(index + 1).padStart(2, '0')}`),
    );
    for (const index of [3, 4, 5, 6, 7, 8]) {
      expect(column(months, index) / (column(days, index) || 1)).toBeCloseTo(
        column(days, index) === 0 ? 0 : 1,
        5,
      );
    }
    expect(column(days, 5)).toBeCloseTo(report.energy / 3.6e6, 1);
  });
});

const summer = {
  padName: 'Garden pool',
  blocks: [
    {
      id: 'night',
      start: 1320,
      end: 360,
      summary: 'Pool pump 1450 rpm',
      description: 'One; two, \\ three',
    },
    {
      id: 'noon',
      start: 720,
      end: 780,
      summary: 'Pool pump 2600 rpm',
      description: 'x'.repeat(200),
    },
    { id: 'round', start: 0, end: 0, summary: 'Pool pump 900 rpm', description: 'All day' },
  ],
  date: { year: 2027, month: 6, day: 30 },
  planStarts: [],
  stamp: Date.UTC(2027, 0, 2, 3, 4, 5),
} as const;

function eventsOf(text: string): readonly ICAL.Event[] {
  return new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents('vevent')
    .map((each) => new ICAL.Event(each));
}

describe('the day as a calendar', () => {
  const text = dayCalendar(summer);
  const events = eventsOf(text);

  it('has one entry a block, in floating time, over midnight where the block goes over it', () => {
    expect(events.map(({ startDate, endDate }) => `${startDate} ${endDate}`)).toEqual([
      '2027-06-30T22:00:00 2027-07-01T06:00:00',
      '2027-06-30T12:00:00 2027-06-30T13:00:00',
      '2027-06-30T00:00:00 2027-07-01T00:00:00',
    ]);
    for (const { startDate, endDate } of events) {
      expect(startDate.zone).toBe(ICAL.Timezone.localTimezone);
      expect(endDate.zone).toBe(ICAL.Timezone.localTimezone);
    }
  });

  it('keeps words, names and stamp', () => {
    expect(events.map(({ summary }) => summary)).toEqual(summer.blocks.map((each) => each.summary));
    expect(events.map((each) => each.description)).toEqual(
      summer.blocks.map((each) => each.description),
    );
    expect(new Set(events.map(({ uid }) => uid)).size).toBe(3);
    expect(events[0]?.uid).toMatch(/^[0-9a-f]{8}-night@cubelaw\.invalid$/);
    expect(text.match(/DTSTAMP:20270102T030405Z/g)).toHaveLength(3);
    expect(dayCalendar(summer)).toBe(text);
    expect(eventsOf(dayCalendar({ ...summer, padName: 'Other' }))[0]?.uid).not.toBe(events[0]?.uid);
  });

  it('is one calendar with its own entries alone, whatever the pad and its blocks are called', () => {
    const evil = fc.constantFrom(
      '\n',
      '\r\n',
      ';',
      ',',
      ':',
      '\\',
      'END:VCALENDAR',
      'BEGIN:VEVENT',
      '\u2028',
      'é',
    );
    const any = fc.oneof(
      fc.string({ maxLength: 12 }),
      fc.array(evil, { maxLength: 8 }).map((bits) => bits.join('')),
    );
    fc.assert(
      fc.property(any, any, any, (padName, summary, description) => {
        const made = dayCalendar({
          ...summer,
          padName,
          blocks: [{ id: 'a', start: 0, end: 60, summary, description }],
        });
        const calendar = new ICAL.Component(ICAL.parse(made));
        expect(calendar.name).toBe('vcalendar');
        expect(calendar.getAllSubcomponents().map(({ name }) => name)).toEqual(['vevent']);
        const known = ['version', 'prodid', 'name', 'x-wr-calname'];
        expect(
          calendar
            .getAllProperties()
            .map(({ name }) => name)
            .toSorted(),
        ).toEqual(known.toSorted());
        const shown =
          padName === ''
            ? 'Pool pump'
            : `Pool pump, ${padName.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')}`;
        // The parser knows neither name by its type, so it leaves their escapes (RFC 5545, 3.3.11).
        for (const name of ['name', 'x-wr-calname']) {
          const value = String(calendar.getFirstPropertyValue(name));
          expect(value.replace(/\\([\\;,])/g, '$1')).toBe(shown);
        }
        const [event] = eventsOf(made);
        expect(event?.summary ?? '').toBe(summary.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' '));
      }),
      { numRuns: 300 },
    );
  });

  it('no line is longer than 75 octets, and every one ends in CR LF (RFC 5545, 3.1)', () => {
    const lines = text.split('\r\n');
    expect(lines.at(-1) === '' || lines.at(-1) === 'END:VCALENDAR').toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of lines) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  });

  it('comes back every day, without end where there is one plan', () => {
    const next = events[0]?.iterator();
    const days = Array.from({ length: 3 }, () => next?.next()?.toString());
    expect(days).toEqual(['2027-06-30T22:00:00', '2027-07-01T22:00:00', '2027-07-02T22:00:00']);
    expect(text).not.toContain('UNTIL');
  });

  it.each([
    // The last night before a plan of 3 July is that of 2 July; a plan of 1 January is next year's.
    [
      [
        { month: 3, day: 1 },
        { month: 7, day: 3 },
      ],
      '2027-07-02T22:00:00',
      3,
    ],
    [[{ month: 1, day: 1 }], '2027-12-31T22:00:00', 185],
    // A plan that begins on the very day is this one; it comes again in a year.
    [[{ month: 6, day: 30 }], '2028-06-29T22:00:00', 366],
  ])('ends where the next plan of the year begins: %j', (planStarts, last, count) => {
    const [event] = eventsOf(dayCalendar({ ...summer, planStarts }));
    const each = event?.iterator();
    let [seen, latest] = [0, ''];
    for (let next = each?.next(); next; next = each?.next()) {
      seen += 1;
      latest = next.toString();
      if (seen > 400) break;
    }
    expect([latest, seen]).toEqual([last, count]);
  });
});
