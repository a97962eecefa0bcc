import { describe, expect, test } from 'vitest';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import type { Pad } from '#pad/document/schema.ts';
import { withValueAt } from '#pad/messages/path.ts';
import type { Problem } from '#pad/messages/problems.ts';
import { padModel } from '#pad/model/assemble.ts';
import { toSI } from '#units/convert.ts';

function codes(problems: readonly Problem[]) {
  return problems.map(({ code, path }) => `${code} ${path.join('/')}`);
}

describe('the volume of the pool', () => {
  test('a sloped rectangle holds its area times its mean depth', () => {
    // Plane geometry; the US gallon is 231 cubic inches (NIST SP 811, appendix B).
    const gallons = 32 * 16 * ((3.5 + 7) / 2) * (1728 / 231);
    expect(padModel(ownerPad).volume).toBeCloseTo(toSI('volume', gallons, 'gal'), 9);
  });

  test('a stadium is a rectangle with two half circles', () => {
    const depth = { kind: 'uniform', depth: 1.5 } as const;
    const pad = withValueAt(lodgePad, ['pool', 'depth'], depth);
    expect(padModel(pad).volume).toBeCloseTo(1.5 * (5 * 5 + Math.PI * 2.5 ** 2), 9);
  });

  const outlined = (outline: unknown): Pad =>
    withValueAt(
      withValueAt(lodgePad, ['pool', 'depth'], { kind: 'uniform', depth: 1 }),
      ['pool', 'outline'],
      outline,
    );

  test('missing sizes are named one by one', () => {
    const model = padModel(outlined({ kind: 'rectangle', length: null, width: 0 }));
    expect(model.volume).toBeNull();
    expect(codes(model.missing.volume)).toEqual([
      'poolSize pool/outline/length',
      'poolSize pool/outline/width',
    ]);
  });

  test('an impossible shape is a problem, not a crash', () => {
    const straight = { kind: 'straight', radius: null };
    const cases: readonly (readonly [unknown, string])[] = [
      [{ kind: 'stadium', length: 3, width: 5 }, 'poolWidth pool/outline'],
      [
        {
          kind: 'twoRadius',
          length: 4,
          firstRadius: 3,
          secondRadius: 1,
          sides: [straight, straight],
        },
        'poolEnds pool/outline',
      ],
      [{ kind: 'polygon', vertices: [{ x: 0, y: 0 }] }, 'poolCorners pool/outline'],
    ];
    for (const [outline, code] of cases) {
      expect(codes(padModel(outlined(outline)).problems)).toContain(code);
    }
  });
});
