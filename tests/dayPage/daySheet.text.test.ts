import { describe, expect, it } from 'vitest';
import type { Said } from '#dayPage/day/edit.ts';
import { workOut } from '#dayPage/day/figures.ts';
import {
  crossingsByQuiet,
  crossingText,
  dateText,
  needText,
  needWhy,
  quietText,
} from '#dayPage/day/servedText.ts';
import {
  crossingsByLimit,
  dayKindText,
  findingText,
  fromTo,
  isInvented,
  lengthText,
  saidText,
  spanText,
} from '#dayPage/day/text.ts';
import { us } from '#units/choice.ts';
import { block, handBench, limit, need } from './daySheetFixtures.ts';

const date = { year: 2027, month: 7, day: 14 };
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
const noon = { start: 720, end: 960 };

describe('what came of a change', () => {
  const sentences: readonly (readonly [Said, string])[] = [
    [
      { kind: 'gaveWay', block: noon, edge: 'start', minute: 780 },
      'The block 12:00–16:00 gave way and now starts at 13:00.',
    ],
    [
      { kind: 'neighbourShort', grip: 'end', neighbour: noon, minute: 945 },
      'This is as far as it goes, 15:45: the block 12:00–16:00 keeps at least 15 min. To have its time as well, remove it.',
    ],
    [
      { kind: 'selfShort', grip: 'start', minute: 945 },
      'This is as far as it goes, 15:45: a block lasts at least 15 min. To be rid of it, remove it.',
    ],
    [
      { kind: 'wouldCover', grip: 'end', neighbour: noon, wish: 1020, stays: 720, minute: 945 },
      'With its end at 17:00 this block would run over the whole of 12:00–16:00, so it stays at 12:00. It can go as far as 15:45.',
    ],
    [
      { kind: 'tooShort', grip: 'start', wish: 955, stays: 720, minute: 945 },
      'With its start at 15:55 this block would be too short, so it stays at 12:00. A block lasts at least 15 min: give 15:45 or earlier.',
    ],
    [
      { kind: 'splitOff', block: { start: 1260, end: 540 }, taken: { start: 180, end: 540 } },
      'The day was full, so the block 21:00–09:00 gave up 03:00–09:00 to the new one.',
    ],
    [{ kind: 'tooMany' }, 'A day holds at most 48 blocks. Remove one first.'],
    [{ kind: 'noRoom' }, 'There is no room for another block. Make one shorter, or remove one.'],
  ];

  for (const [said, sentence] of sentences) {
    it(`is told for ${said.kind}`, () => expect(plain(saidText(said))).toBe(sentence));
  }
});

describe('the finding', () => {
  const day = [block('night', 1320, 360, 1500), block('noon', 720, 840, 3000)];
  const quiet = [{ start: 1260, end: 420, ceiling: 0.4 }];

  /* 86.4 m3 are 22 824.5 gal of 231 in³ (NIST SP 811, B.8); 3.7 kWh and $0.84 by hand. */
  it('says what the day moves, takes and costs, and that all is well', () => {
    expect(plain(findingText(workOut(handBench, day, date), us, '$'))).toBe(
      'This day moves 22 824 gal, 1.73 turnovers (82 % of the water filtered), for 3.70 kWh and $0.84. No limit is crossed.',
    );
  });

  it('says that every need is met', () => {
    const bench = { ...handBench, needs: [need({ minutes: 120 })] };
    expect(findingText(workOut(bench, day, date), us, '$')).toContain(' Every need is met.');
  });

  it('names what is short and by how much', () => {
    const bench = {
      ...handBench,
      needs: [need({ minutes: 165 }), need({ id: 'b', name: 'Heater' })],
    };
    expect(plain(findingText(workOut(bench, day, date), us, '$'))).toContain(
      ' Skimming is short by 45 min and Heater is short by 1 h.',
    );
  });

  it('puts a hard stop first', () => {
    const bench = { ...handBench, limits: [limit()] };
    expect(findingText(workOut(bench, day, date), us, '$')).toMatch(
      /^Stop: from 12:00 to 14:00 the flow is above what is marked on the suction covers\. Do not run this day\. This day/,
    );
  });

  it('names the limits crossed and the quiet hours', () => {
    const limits = [limit({ id: 'filterRate', kind: 'filterRate', hard: false })];
    const text = findingText(workOut({ ...handBench, limits, quiet }, day, date), us, '$');
    expect(text).toMatch(
      / It crosses the limit on filter rate\. It is too fast in the quiet hours\.$/,
    );
    expect(text).not.toContain('No limit');
  });

  it('asks for a block where nothing runs', () => {
    expect(findingText(workOut(handBench, [], date), us, '$')).toBe(
      'Nothing runs on this day yet. Add a block and give it a speed.',
    );
  });

  it('gives each limit once with its times', () => {
    const twice = [...day, block('eve', 960, 990, 3000)];
    const { report } = workOut({ ...handBench, limits: [limit()], quiet }, twice, date);
    // 0.004 m3/s are 63.4 gpm and 0.0035 are 55.5 gpm (NIST SP 811, B.8).
    expect(crossingsByLimit(report).map((each) => plain(crossingText(each, 3000, us)))).toEqual([
      'Flow marked on the suction covers: 63 gpm from 12:00 to 14:00 and from 16:00 to 16:30; at most 55 gpm.',
    ]);
    expect(crossingsByQuiet(report).map((each) => plain(quietText(each, 3000, us)))).toEqual([
      'Quiet hours 21:00–07:00: 1500 rpm from 22:00 to 06:00; at most 1200 rpm.',
    ]);
  });

  it('says why a need is short when its runs are', () => {
    const needs = [need({ shortestRun: 180 })];
    const [service] = workOut({ ...handBench, needs }, day, date).report.needs;
    if (service === undefined) throw new Error('no service');
    expect(plain(needText(service))).toBe('short by 3 h: 0 min of 3 h');
    expect(plain(needWhy(service) ?? '')).toBe(
      'A run counts from 3 h on; 12:00–14:00 is too short.',
    );
  });
});

describe('small words', () => {
  it('tell spans, lengths and dates', () => {
    expect(spanText({ start: 1320, end: 360 })).toBe('22:00–06:00');
    expect(spanText({ start: 0, end: 1440 })).toBe('all day');
    expect(fromTo({ start: 480, end: 480 })).toBe('all day');
    expect([0, 45, 120, 150].map((each) => plain(lengthText(each)))).toEqual([
      '0 min',
      '45 min',
      '2 h',
      '2 h 30 min',
    ]);
    // 14 July 2027 is a Wednesday (ISO 8601 calendar).
    expect(dateText(date)).toBe('Wednesday, 14 July 2027');
    expect(dayKindText(date, null)).toBe('Wednesday');
  });

  it('know a pad that says it is made up', () => {
    expect(isInvented({ name: 'Garden pool (invented)', notes: '' })).toBe(true);
    expect(isInvented({ name: 'Mine', notes: '' })).toBe(false);
  });
});
