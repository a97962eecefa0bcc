import { describe, expect, it } from 'vitest';
import { noteSentence, problemSentenceOf } from '#pad/formats/fileSentences.ts';
import { clockOf } from '#pad/formats/localClock.ts';
import type { FileProblem } from '#pad/formats/series.ts';
import { at, feed, readXml, taken, utc } from './meterFixtures.ts';

// Layout and codes: NAESB REQ.21 (ESPI), from memory of the published schema: unit 72 is Wh, 38 is W,
// direction 19 goes back to the grid; times are seconds since 1970 in UTC.

const noon = Date.UTC(2027, 6, 1, 12) / 1000;
const three = [0, 1, 2].map((hour) => ({ start: noon + 3600 * hour, value: 500 + hour }));
const said = (result: object) => problemSentenceOf(result as FileProblem, 'meter');

describe('Green Button files', () => {
  it('give intervals in joules: 500 Wh are 1.8 MJ (NIST SP 811, B.8)', () => {
    const { intervals, step, notes } = taken(readXml(feed(three)));
    expect(step).toBe(60);
    expect(intervals[0]).toEqual({ start: at('2027-07-01T12:00'), duration: 60, energy: 1.8e6 });
    expect(intervals).toHaveLength(3);
    expect(notes).toEqual([{ code: 'ownZone' }]);
  });

  it('follow the power of ten and take watts for power', () => {
    const kilo = taken(readXml(feed([{ start: noon, value: 2 }], { power: 3 })));
    expect(kilo.intervals[0]?.energy).toBe(2 * 3.6e6);
    const milli = taken(readXml(feed([{ start: noon, value: 2500 }], { power: -3 })));
    expect(milli.intervals[0]?.energy).toBeCloseTo(2.5 * 3600, 6);
    const watts = taken(readXml(feed([{ start: noon, duration: 1800, value: 400 }], { uom: 38 })));
    expect(watts.intervals[0]?.energy).toBe(400 * 1800);
  });

  it('read in pieces of any length they are the same', () => {
    const long = Array.from({ length: 200 }, (_, hour) => ({
      start: noon + 3600 * hour,
      value: hour,
    }));
    expect(taken(readXml(feed(long))).intervals).toHaveLength(200);
  });

  it('hold as many readings in one block as they like', () => {
    const many = Array.from({ length: 150_000 }, (_, slot) => ({
      start: noon + 900 * slot,
      duration: 900,
      value: 1,
    }));
    expect(taken(readXml(feed(many), utc, 65_536)).count).toBe(150_000);
  });

  it('leave what goes back to the grid, and other meters, aside', () => {
    const two = feed(three).replace(
      '</feed>',
      `<entry><link rel="self" href="/x/MeterReading/2"/><link rel="related" href="/x/ReadingType/8"/><content><MeterReading xmlns="http://naesb.org/espi"/></content></entry>
<entry><link rel="self" href="/x/ReadingType/8"/><content><ReadingType xmlns="http://naesb.org/espi"><flowDirection>19</flowDirection><uom>72</uom></ReadingType></content></entry>
<entry><link rel="up" href="/x/MeterReading/2/IntervalBlock"/><content><IntervalBlock xmlns="http://naesb.org/espi">${'<IntervalReading><timePeriod><duration>3600</duration><start>0</start></timePeriod><value>9</value></IntervalReading>'.repeat(9)}</IntervalBlock></content></entry></feed>`,
    );
    const { intervals, notes } = taken(readXml(two));
    expect(intervals.map(({ energy }) => energy / 3600)).toEqual([500, 501, 502]);
    expect(notes).toContainEqual({ code: 'otherSeries', count: 1 });
    const gas = said(readXml(feed(three, { uom: 169 })));
    expect(gas).toBe(
      'This file counts something else than electricity taken from the grid (unit 169 of Green Button; 72 is Wh).',
    );
  });
});

describe('the local clock of a Green Button file', () => {
  // Common practice of much of North America, no source: an hour forward at 2:00 on the second Sunday of
  // March, back at 2:00 on the first Sunday of November. In 2027 these are 14 March and 7 November.
  const eastern = { tzOffset: -18_000, dstOffset: 3600, dstStart: '360E2000', dstEnd: 'B40E2000' };
  const local = clockOf(eastern);
  const shown = (iso: string) => local(at(iso) - at('1970-01-01T00:00'));

  it.each([
    ['2027-03-14T06:59', '2027-03-14T01:59'],
    ['2027-03-14T07:00', '2027-03-14T03:00'],
    ['2027-07-01T12:00', '2027-07-01T08:00'],
    ['2027-11-07T05:59', '2027-11-07T01:59'],
    ['2027-11-07T06:00', '2027-11-07T01:00'],
    ['2027-12-31T12:00', '2027-12-31T07:00'],
  ])('%s in UTC is %s there', (inUtc, there) => {
    expect(shown(inUtc)).toBe(at(there));
  });

  it('agrees with the time zones that the machine knows, through a whole year', () => {
    // Time zone database as shipped with the runtime.
    const zones = [
      { name: 'America/New_York', rules: eastern },
      // Last Sunday of March 2:00 to last Sunday of October 3:00, one hour east.
      {
        name: 'Europe/Berlin',
        rules: { tzOffset: 3600, dstOffset: 3600, dstStart: '3E0E2000', dstEnd: 'AE0E3000' },
      },
      // First Sunday of October 2:00 to first Sunday of April 3:00: summer over the turn of the year.
      {
        name: 'Australia/Sydney',
        rules: { tzOffset: 36_000, dstOffset: 3600, dstStart: 'A40E2000', dstEnd: '440E3000' },
      },
      {
        name: 'America/Phoenix',
        rules: { tzOffset: -25_200, dstOffset: 0, dstStart: null, dstEnd: null },
      },
    ];
    for (const { name, rules } of zones) {
      const clock = clockOf(rules);
      const known = new Intl.DateTimeFormat('en-GB', {
        timeZone: name,
        year: 'numeric',
        month: '2-digit',
        day: '2-digit',
        hour: '2-digit',
        minute: '2-digit',
        hourCycle: 'h23',
      });
      for (
        let minute = Date.UTC(2027, 0, 1) / 60_000;
        minute < Date.UTC(2028, 0, 1) / 60_000;
        minute += 60
      ) {
        const parts = Object.fromEntries(
          known.formatToParts(minute * 60_000).map(({ type, value }) => [type, value]),
        );
        const want = at(
          `${parts['year']}-${parts['month']}-${parts['day']}T${parts['hour']}:${parts['minute']}`,
        );
        if (clock(minute) !== want)
          expect.fail(`${name} at ${new Date(minute * 60_000).toISOString()}`);
      }
    }
  });

  it('is taken from the file, and its days of 23 and 25 hours are said and lack nothing', () => {
    const clock = `<entry><content><LocalTimeParameters xmlns="http://naesb.org/espi"><dstEndRule>B40E2000</dstEndRule><dstOffset>3600</dstOffset><dstStartRule>360E2000</dstStartRule><tzOffset>-18000</tzOffset></LocalTimeParameters></content></entry>`;
    const from = (month: number, day: number) =>
      Array.from({ length: 48 }, (_, hour) => ({
        start: Date.UTC(2027, month, day, 5 + hour) / 1000,
        value: 1,
      }));
    const spring = taken(readXml(feed(from(2, 14), { clock })));
    expect(spring.notes.map((note) => noteSentence(note, 'meter'))).toEqual([
      '14 March 2027 has 23 hours: the clock went forward. Nothing is missing.',
    ]);
    const autumn = taken(readXml(feed(from(10, 7), { clock })));
    expect(autumn.notes.map((note) => noteSentence(note, 'meter'))).toEqual([
      '7 November 2027 has 25 hours: the clock went back. One hour of the clock counts twice.',
    ]);
    expect(spring.intervals).toHaveLength(48);
    expect(autumn.intervals).toHaveLength(48);
  });
});

describe('a Green Button file that is broken', () => {
  it.each([
    [
      '<feed><open',
      'This XML is damaged in line 1: a tag is not closed, or a sign stands where it must not. Save the file anew.',
    ],
    [
      '<html><body><p>Please log in</p></body></html>',
      'This is XML, but no Green Button data: nothing in it belongs to http://naesb.org/espi. Ask for the usage data, or take a table saved as CSV.',
    ],
    [feed([]), 'There are no readings in this file. It needs two intervals or more.'],
  ])('%#: says what is wrong and what would be right', (text, sentence) => {
    expect(said(readXml(text))).toBe(sentence);
  });

  it('names the line where it is damaged, and says when it was cut off', () => {
    const whole = feed(three);
    const lines = whole.split('\n');
    const damaged = [...lines.slice(0, 12), '<value>1</start>', ...lines.slice(12)].join('\n');
    expect(said(readXml(damaged))).toContain('This XML is damaged in line 13:');
    const cut = whole.slice(0, whole.indexOf('</IntervalBlock>'));
    expect(said(readXml(cut))).toMatch(
      /^This XML breaks off in line \d+: its last tags are not closed\./,
    );
  });

  it('counts gaps, overlaps, negative and absurd readings and goes on', () => {
    const odd = [
      ...three,
      { start: noon + 2 * 3600, value: 7 },
      { start: noon + 9 * 3600, value: -3 },
      { start: noon + 10 * 3600, value: 900_000 },
      { start: noon + 11 * 3600, value: 4 },
    ];
    const { intervals, notes } = taken(readXml(feed(odd), utc));
    expect(intervals).toHaveLength(4);
    const words = notes.map((note) => noteSentence(note, 'meter'));
    expect(words).toContain(
      '1 gap, 6.0 hours in all, the first from 1 July 2027 on. Nothing is made up for them.',
    );
    expect(words.join(' ')).toMatch(/1 interval claimed time that another had already/);
    expect(words.join(' ')).toMatch(/1 negative reading was left out, the first in line \d+\./);
    expect(words.join(' ')).toMatch(/1 reading was left out, the first in line \d+: above 200 kW/);
  });

  it('when most readings are absurd the unit is wrong', () => {
    const result = readXml(feed(three, { power: 6 }));
    expect(said(result)).toMatch(
      /^3 of 3 readings would be above 200 kW, the first in line \d+\. The unit is likely another/,
    );
  });
});
