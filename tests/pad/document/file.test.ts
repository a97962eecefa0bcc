import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demos, ownerPad } from '#pad/demos/demos.ts';
import { longestText, parsePad } from '#pad/document/file.ts';
import { carriesPad } from '#pad/document/fragment.ts';
import { padFragment, parseFragment } from '#pad/document/link.ts';
import { emptyPad } from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padVersion } from '#pad/document/version.ts';
import { padFileName, padFileText, serialisePad } from '#pad/document/written.ts';
import { pads } from './arbitraryPads.ts';

// Our own format and wording: these checks have no outside source.

function sentenceOf(result: ReturnType<typeof parsePad>): string {
  return result.ok ? 'opened' : result.sentence;
}

describe('a pad as a file', () => {
  test('any pad comes back from its file just as it was', () => {
    fc.assert(
      fc.property(pads, (pad) => {
        expect(parsePad(padFileText(pad))).toEqual({ ok: true, pad, from: padVersion });
        expect(parsePad(serialisePad(pad))).toEqual({ ok: true, pad, from: padVersion });
      }),
      { numRuns: 50 },
    );
  });

  test('an empty pad makes a file of its name tag and units alone', () => {
    expect(JSON.parse(padFileText(emptyPad('metric')))).toEqual({
      format: 'cubelaw-pad',
      version: padVersion,
      units: { preset: 'metric' },
      pool: { kind: 'known' },
      pump: { knowledge: { kind: 'nameplate' } },
      day: { compareWith: 'usual' },
    });
  });

  test('the file is named after the pad', () => {
    const named = (name: string): string => padFileName({ ...emptyPad(), name });
    expect(named('Garden pool (invented)')).toBe('garden-pool-invented.pad.json');
    expect(named('Bassin d’été №2')).toBe('bassin-d-ete-no2.pad.json');
    expect(named('???')).toBe('pad.pad.json');
  });
});

describe('a file that is no pad file', () => {
  const refusals: readonly (readonly [string, string])[] = [
    [
      '{"format": "cubelaw-pad", "ver',
      'This is not a pad file, or it is damaged: its text is not complete JSON. Your present pad is unchanged.',
    ],
    [
      '{"hello": 1}',
      'This is not a pad file: its “format” must be “cubelaw-pad”. Your present pad is unchanged.',
    ],
    [
      '[1, 2]',
      'This is not a pad file: its “format” must be “cubelaw-pad”. Your present pad is unchanged.',
    ],
    [
      '{"format": "cubelaw-pad", "version": "one"}',
      'This pad file has no usable “version”; it must be 0 to 2. Your present pad is unchanged.',
    ],
    [
      '{"format": "cubelaw-pad", "version": 7}',
      'This pad file is of version 7, and this page reads versions up to 2. Reload the page to get its newest edition, then open the file again. Your present pad is unchanged.',
    ],
    [
      '{"format": "cubelaw-pad", "version": 1, "pump": {"topSpeed": 20000}}',
      'This pad file cannot be opened. One value in it is wrong; the first, at pump › topSpeed: 20\u202f000\u00a0rpm is too much; it must be 10\u202f000\u00a0rpm or less. Your present pad is unchanged.',
    ],
    [
      ' '.repeat(longestText + 1),
      'This is too long for a pad file, which holds a million characters at most. Your present pad is unchanged.',
    ],
  ];

  test.each(refusals)('%.40s is refused in a sentence', (text, sentence) => {
    expect(sentenceOf(parsePad(text))).toBe(sentence);
  });

  test('no text at all makes it throw', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.json()), (text) => !parsePad(text).ok));
  });

  test('a file cut anywhere is refused', () => {
    const text = serialisePad(ownerPad);
    fc.assert(fc.property(fc.nat(text.length - 1), (end) => !parsePad(text.slice(0, end)).ok));
  });
});

describe('a pad in a link', () => {
  test('any pad comes back from its link just as it was', () => {
    fc.assert(
      fc.property(pads, (pad) => {
        expect(parseFragment(padFragment(pad))).toEqual({ ok: true, pad, from: padVersion });
      }),
      { numRuns: 50 },
    );
  });

  test.each(demos.map(({ id, pad }) => [id, pad] as const))(
    'the link of the %s example is short and needs no escaping',
    (_, pad: Pad) => {
      const fragment = padFragment(pad);
      expect(fragment).toMatch(/^#pad=1\.[A-Za-z0-9_-]+$/);
      expect(fragment.length).toBeLessThan(4000);
    },
  );

  test('only a fragment that begins so carries a pad', () => {
    expect(carriesPad('#pad=1.abc')).toBe(true);
    expect(carriesPad('#pads')).toBe(false);
    expect(carriesPad('')).toBe(false);
  });

  const damaged =
    'The pad in this link is damaged, perhaps because the link was cut short on its way. Ask for it again, or for the pad as a file. Your present pad is unchanged.';

  test('a link cut anywhere is refused in a sentence', () => {
    const fragment = padFragment(ownerPad);
    fc.assert(
      fc.property(fc.integer({ min: 5, max: fragment.length - 4 }), (end) => {
        const result = parseFragment(fragment.slice(0, end));
        expect(result.ok).toBe(false);
      }),
      { numRuns: 60 },
    );
    expect(sentenceOf(parseFragment(fragment.slice(0, 300)))).toBe(damaged);
    expect(sentenceOf(parseFragment('#pad=1.%%%'))).toBe(damaged);
    expect(sentenceOf(parseFragment('#pad=1.'))).toBe(damaged);
  });

  test('a link packed in a later way asks for a reload', () => {
    expect(sentenceOf(parseFragment('#pad=2.abc'))).toBe(
      'The pad in this link is packed in a way this page does not know yet. Reload the page to get its newest edition, then open the link again. Your present pad is unchanged.',
    );
  });

  test('a small link that unrolls into far too much is refused', async () => {
    const { deflateSync } = await import('fflate');
    const bomb = Buffer.from(deflateSync(new Uint8Array(30_000_000))).toString('base64url');
    expect(sentenceOf(parseFragment(`#pad=1.${bomb}`))).toBe(damaged);
  });
});

describe('a file that would harm', () => {
  /** Groups of branches inside one another, so deep. */
  const nested = (levels: number): unknown =>
    levels === 0
      ? { kind: 'pipe', id: 'p', sizeId: 'sch40-2', length: 3 }
      : {
          kind: 'parallel',
          id: `g${levels}`,
          branches: [
            { id: `a${levels}`, sections: [nested(levels - 1)] },
            { id: `b${levels}`, sections: [] },
          ],
        };
  const fileOf = (levels: number) =>
    JSON.stringify({ format: 'cubelaw-pad', version: 2, plumbing: { suction: [nested(levels)] } });

  test('opens three groups deep and is told at the fourth, before anything is solved', () => {
    expect(parsePad(fileOf(3))).toMatchObject({ ok: true });
    for (const levels of [4, 18]) {
      const parsed = parsePad(fileOf(levels));
      if (parsed.ok) throw new Error('it was opened');
      expect(parsed.sentence).toContain('may stand inside one another 3 deep at most');
      expect(parsed.problems[0]?.path.slice(0, 2)).toEqual(['plumbing', 'suction']);
    }
  });

  test('is told where its lists are deeper than any reader has room for', () => {
    for (const deep of [15_000, 200_000]) {
      const text = `{"format":"cubelaw-pad","version":2,"pool":${'['.repeat(deep)}${']'.repeat(deep)}}`;
      const parsed = parsePad(text);
      expect(parsed).toMatchObject({ ok: false });
      if (!parsed.ok) expect(parsed.sentence).toContain('deeper than any pad');
    }
  });

  test('with a field named at length is told in a short sentence', () => {
    const parsed = parsePad(
      JSON.stringify({ format: 'cubelaw-pad', version: 2, ['x'.repeat(900_000)]: 1 }),
    );
    if (parsed.ok) throw new Error('it was opened');
    expect(parsed.sentence.length).toBeLessThan(300);
  });

  test('with a line break in a name is told, and one of version 1 is opened without it', () => {
    const named = (version: number) =>
      parsePad(
        JSON.stringify({ format: 'cubelaw-pad', version, name: 'a\r\nEND:VCALENDAR\u2028b' }),
      );
    const now = named(2);
    if (now.ok) throw new Error('it was opened');
    expect(now.sentence).toContain('write it on one line');
    const before = named(1);
    expect(before.ok && before.pad.name).toBe('a END:VCALENDAR b');
  });
});
