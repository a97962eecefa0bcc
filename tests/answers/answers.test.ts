import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demos, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { newBlock } from '#pad/document/parts.ts';
import { padFileText } from '#pad/document/written.ts';
import { answersOf, answersTo } from '../../src/answers/answers.ts';
import { pads } from '../pad/document/arbitraryPads.ts';

/** The names and units that the command promises. */
const names = [
  'problems',
  'assumptions',
  'missing',
  'poolVolumeM3',
  'speeds',
  'limits',
  'ladder',
  'day',
  'year',
  'cheapestDay',
];

function notFinite(value: unknown): boolean {
  if (typeof value === 'number') return !Number.isFinite(value);
  return typeof value === 'object' && value !== null && Object.values(value).some(notFinite);
}

describe('the answers to a pad', () => {
  test.each(demos)('name every question on $title, and no figure is lacking', ({ pad }) => {
    const answers = answersOf(pad);
    expect(Object.keys(answers)).toEqual(names);
    expect(JSON.stringify(answers)).not.toContain('"error"');
    expect(notFinite(answers)).toBe(false);
    expect(answers).toMatchObject({
      year: { year: 2027 },
      cheapestDay: { kind: 'found' },
      day: { money: expect.any(Number) },
    });
  });

  test('price one day once, whoever asks', () => {
    for (const { pad } of demos) {
      const { day } = answersOf(pad);
      if (day === null || 'error' in day) throw new Error('a day was expected');
      expect(day.sheetMoney).toBeCloseTo(day.money ?? Number.NaN, 12);
    }
  });

  // The rig by hand: 3 m3, 2 in Schedule 40 of 52.5 mm bore (ASTM D1785), one price of 0.15.
  test('agree with sums on paper', () => {
    const answers = answersOf(rigPad);
    const { speeds, day } = answers;
    if (speeds === null || 'error' in speeds) throw new Error('speeds were expected');
    const full = speeds['1'];
    if (full === undefined || full.flowM3h === undefined) throw new Error('flow was expected');
    const area = (Math.PI / 4) * (2.067 * 0.0254) ** 2;
    expect(full.suctionVelocityMs).toBeCloseTo(full.flowM3h / 3600 / area, 9);
    expect(full.turnoverH).toBeCloseTo(3 / full.flowM3h, 12);
    const shares = Object.values(full.branchShares ?? {});
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    if (day === null || 'error' in day) throw new Error('a day was expected');
    expect(day.money).toBeCloseTo(0.15 * day.energyKwh, 12);
    expect(day.monthMoney).toBeCloseTo(31 * 0.15 * day.energyKwh, 10);
    expect(day.filteredShare).toBeCloseTo(1 - Math.exp(-day.turnovers), 12);
  });

  test('are null where the pad does not say enough', () => {
    const empty = answersOf({
      ...ownerPad,
      pump: { ...ownerPad.pump, referenceSpeed: null, topSpeed: null },
    });
    expect(empty).toMatchObject({ speeds: null, ladder: null, day: null, year: null });
    const noDay = answersOf({ ...ownerPad, day: { ...ownerPad.day, blocks: [] } });
    expect(noDay.day).toBeNull();
  });

  test('count the minutes over a limit and over the quiet ceiling', () => {
    const blocks = [newBlock('fast', 600, 660, 3450), newBlock('night', 1380, 1440, 2000)];
    const { day } = answersOf({
      ...ownerPad,
      day: { ...ownerPad.day, blocks: blocks.map((one) => ({ ...one, end: one.end % 1440 })) },
    });
    expect(day).toMatchObject({ crossedMinutes: 60, quietMinutes: 60 });
  });

  test('hide none of the others when one fails', () => {
    // A day of a speed that no pump has, and a year that is laid over it.
    const odd = {
      ...rigPad,
      day: { ...rigPad.day, blocks: [newBlock('odd', 0, 60, Number.NaN)] },
    };
    const answers = answersOf(odd);
    expect(answers.day).toHaveProperty('error');
    expect(answers.poolVolumeM3).toBe(3);
    expect(answers.limits).not.toHaveProperty('error');
  });

  test('of any pad are figures that a person could read', () => {
    fc.assert(
      fc.property(pads, (pad) => {
        const answers = answersOf(pad);
        expect(notFinite(answers)).toBe(false);
        expect(JSON.stringify(answers)).not.toContain('"error"');
      }),
      { numRuns: 60 },
    );
  });
});

describe('the answers to a file', () => {
  test('say why it is no pad file', () => {
    expect(answersTo('x.json', '{"format":"other"}')).toMatchObject({
      file: 'x.json',
      accepted: false,
      sentence: expect.stringContaining('This is not a pad file'),
    });
  });

  test('are one line a file by the command', () => {
    const folder = mkdtempSync(join(tmpdir(), 'answers-'));
    const good = join(folder, 'good.json');
    const bad = join(folder, 'bad.json');
    writeFileSync(good, padFileText(rigPad));
    writeFileSync(bad, '{');
    const run = new URL('../../src/answers/run.ts', import.meta.url).pathname;
    const told = execFileSync(process.execPath, [run, good, bad, join(folder, 'none.json')], {
      encoding: 'utf8',
    });
    const lines = told
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { accepted: boolean });
    expect(lines.map(({ accepted }) => accepted)).toEqual([true, false, false]);
    expect(lines[0]).toMatchObject({ file: good, poolVolumeM3: 3 });
  });
});
