import fc from 'fast-check';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { water } from '#core/water/water.ts';
import { branch, elbows, equipment, pipe, sideBySide } from '../../oracle/circuits.ts';

/** Circuits of any shape that plumbing takes: chains and groups, up to two deep, lifts included. */
const sizes = ['sch40-1', 'sch40-1.5', 'sch40-2', 'sch40-2.5', 'pn10-63'] as const;
const leaf = fc.oneof(
  fc.tuple(fc.constantFrom(...sizes), fc.integer({ min: 1, max: 200 })).map(([s, l]) => pipe(s, l)),
  fc.tuple(fc.constantFrom(...sizes), fc.integer({ min: 1, max: 9 })).map(([s, n]) => elbows(s, n)),
  fc
    .tuple(
      fc.double({ min: 0.5, max: 20, noNaN: true }),
      fc.double({ min: 1, max: 2.2, noNaN: true }),
    )
    .map(([head, exponent]) => ({ ...equipment(head, 60), exponent }) as CircuitPart),
);
const chain = fc.array(leaf, { minLength: 1, maxLength: 4 });
const lift = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 4, noNaN: true }));
const group = (inside: fc.Arbitrary<CircuitPart[]>) =>
  fc
    .array(fc.tuple(inside, lift), { minLength: 1, maxLength: 4 })
    .map((branches) => sideBySide(...branches.map(([parts, height]) => branch(parts, height))));
const nested = fc.array(
  fc.oneof({ weight: 3, arbitrary: leaf }, { weight: 1, arbitrary: group(chain) }),
  {
    minLength: 1,
    maxLength: 4,
  },
);
export const anyCircuit: fc.Arbitrary<Circuit> = fc.record({
  suction: nested,
  discharge: fc.oneof(
    nested,
    fc.tuple(nested, group(nested)).map(([a, b]) => [...a, b]),
  ),
  staticHead: lift,
  water: fc.double({ min: 0, max: 45, noNaN: true }).map(water),
});
