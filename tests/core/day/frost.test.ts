import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Block } from '#core/day/day.ts';
import { withFrost } from '#core/day/frost.ts';
import { spanHolds } from '#core/time/spans.ts';
import { anyDay, anySpan } from './dayFixtures.ts';

describe('frost over a plan', () => {
  // Definition: minute by minute the faster of plan and frost speed.
  it('turns the pump at least so fast in every minute of frost, and leaves the others alone', () => {
    fc.assert(
      fc.property(
        anyDay,
        fc.array(anySpan, { maxLength: 3 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (blocks, frost, ratio) => {
          const laid = withFrost(blocks, frost, ratio);
          for (let minute = 0; minute < 1440; minute += 7) {
            const at = (of: readonly Block[]) =>
              of.find((block) => spanHolds(block, minute))?.ratio ?? 0;
            const isCold = frost.some((span) => spanHolds(span, minute));
            expect(at(laid)).toBe(isCold ? Math.max(at(blocks), ratio) : at(blocks));
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  // Definition: what is laid is either a block of the plan or one of frost, and frost alone starts the pump.
  it('leaves every block its name, and names its own by their first minute', () => {
    fc.assert(
      fc.property(anyDay, fc.array(anySpan, { minLength: 1, maxLength: 3 }), (blocks, frost) => {
        const planned = new Map(blocks.map(({ id, ratio }) => [id, ratio]));
        for (const { id, start, ratio } of withFrost(blocks, frost, 0.45)) {
          const before = planned.get(id);
          expect([before, Math.max(before ?? 0, 0.45)]).toContain(ratio);
          if (before === undefined) {
            expect(id).toBe(`frost-${start}`);
            expect(frost.some((span) => spanHolds(span, start))).toBe(true);
          }
        }
      }),
    );
  });

  it('leaves a plan alone without frost, and without a speed for it', () => {
    const plan: readonly Block[] = [{ id: 'night', start: 1320, end: 360, ratio: 0.3 }];
    expect(withFrost(plan, [], 0.5)).toBe(plan);
    expect(withFrost(plan, [{ start: 0, end: 60 }], 0)).toBe(plan);
  });

  it('cuts nothing where the plan already runs at the frost speed', () => {
    const plan: readonly Block[] = [{ id: 'day', start: 300, end: 900, ratio: 0.3 }];
    expect(withFrost(plan, [{ start: 600, end: 700 }], 0.3)).toEqual(plan);
  });

  it('refuses a speed below nothing', () => {
    expect(() => withFrost([], [{ start: 0, end: 60 }], -0.1)).toThrow('ratio is -0.1');
  });
});
