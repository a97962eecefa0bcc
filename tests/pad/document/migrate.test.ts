import { describe, expect, test } from 'vitest';
import { parsePad } from '#pad/document/file.ts';
import { migrate } from '#pad/document/migrate.ts';
import { newPipe } from '#pad/document/parts.ts';

// Our own format: these checks have no outside source.

/** A whole file as the first draft of the format had it. */
const draft = {
  format: 'cubelaw-pad',
  version: 0,
  name: 'Old file',
  units: 'metric',
  temperature: 24,
  volume: 48,
  lift: 0,
  parts: [
    { side: 'suction', kind: 'pipe', sizeId: 'pn10-63', length: 12 },
    { side: 'discharge', kind: 'pipe', sizeId: 'pn10-63', length: 20 },
    { side: 'discharge', kind: 'fitting', fitting: 'elbow90', sizeId: 'pn10-63', count: 4 },
  ],
  pump: {
    fullSpeed: 2900,
    slowest: 1000,
    volts: 230,
    points: [
      [0, 18],
      [0.004, 12],
    ],
  },
  readings: [{ rpm: 2900, pressure: 90_000, watts: 900 }],
  day: [{ from: '22:30', to: '06:00', rpm: 1400 }],
};

describe('a file of the first draft', () => {
  const parsed = parsePad(JSON.stringify(draft));
  const pad = parsed.ok ? parsed.pad : undefined;

  test('opens, and says which version it was', () => {
    expect(parsed).toMatchObject({ ok: true, from: 0 });
    expect(pad).toMatchObject({ version: 2, name: 'Old file', units: { preset: 'metric' } });
  });

  test('keeps every value it held', () => {
    expect(pad?.site.waterTemperature).toBe(24);
    expect(pad?.pool).toEqual({ kind: 'known', volume: 48 });
    expect(pad?.plumbing.suction).toEqual([newPipe('s1', { sizeId: 'pn10-63', length: 12 })]);
    expect(pad?.plumbing.discharge.map(({ id }) => id)).toEqual(['d1', 'd2']);
    expect(pad?.pump).toMatchObject({ referenceSpeed: 2900, leastSpeed: 1000, voltage: 230 });
    expect(pad?.pump.knowledge).toEqual({
      kind: 'curve',
      points: [
        { flow: 0, head: 18, power: null },
        { flow: 0.004, head: 12, power: null },
      ],
    });
    expect(pad?.readings).toMatchObject([{ id: 'r1', speed: 2900, power: 900 }]);
    expect(pad?.day.blocks).toMatchObject([{ id: 'b1', start: 1350, end: 360, speed: 1400 }]);
  });

  test('may be bare, or hold nonsense that is then refused in words', () => {
    expect(parsePad('{"format":"cubelaw-pad","version":0,"units":"us"}').ok).toBe(true);
    const odd = parsePad(
      '{"format":"cubelaw-pad","version":0,"units":"us","day":[{"from":"soon"}]}',
    );
    expect(odd).toMatchObject({ ok: false });
  });

  test('is not changed by being read', () => {
    const before = structuredClone(draft);
    migrate(draft);
    expect(draft).toEqual(before);
  });
});

test('a file of the present version passes through as it is', () => {
  const document = { format: 'cubelaw-pad', version: 2, name: 'x' };
  expect(migrate(document)).toEqual({ kind: 'present', document, from: 2 });
});

describe('a file of version 1', () => {
  const first = {
    format: 'cubelaw-pad',
    version: 1,
    name: 'First',
    pump: { referenceSpeed: 3450, fixedPower: 30 },
    needs: [{ id: 'n1', kind: 'skimming', leastFlow: 0.002, minutes: 120 }],
    limits: { suctionCovers: [{ id: 'c1', markedFlow: 0.004, branchId: null }] },
    year: { frostSpeed: 1500 },
  };
  const parsed = parsePad(JSON.stringify(first));
  const pad = parsed.ok ? parsed.pad : undefined;

  test('opens with every value it held', () => {
    expect(parsed).toMatchObject({ ok: true, from: 1 });
    expect(pad).toMatchObject({
      version: 2,
      name: 'First',
      pump: { referenceSpeed: 3450, fixedPower: 30 },
      year: { frostSpeed: 1500 },
    });
    expect(pad?.needs).toMatchObject([{ id: 'n1', leastFlow: 0.002, minutes: 120 }]);
  });

  test('has the new fields unknown, and no cover taken to be balanced', () => {
    expect(pad?.pump).toMatchObject({
      primingSpeed: null,
      primingMinutes: null,
      overrideSpeed: null,
      standbyPower: null,
    });
    expect(pad?.needs[0]?.branchId).toBeNull();
    expect(pad?.limits.coversBalanced).toBe(false);
  });
});
