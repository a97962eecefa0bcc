import { describe, expect, it } from 'vitest';
import { craneMultipliers, endCoefficients } from '#core/hydraulics/fittings.ts';
import {
  bendMultiplier,
  handbookValves,
  mitreMultiplier,
  roundedInletK,
} from '#core/hydraulics/handbookFittings.ts';

// Crane TP-410, page A-29: rows from memory, but for radii of 1.5 and 3 bores.
describe('rows of the handbook beyond the fittings of a pad', () => {
  it.each([
    [1, 20],
    [1.5, 14],
    [4, 14],
    [20, 50],
  ])('a bend of radius %d has n = %d', (radius, n) => expect(bendMultiplier(radius)).toBe(n));

  it('agrees with the bends of the pad', () => {
    expect(bendMultiplier(1.5)).toBe(craneMultipliers.elbow90Long);
    expect(bendMultiplier(3)).toBe(craneMultipliers.bend90Wide);
  });

  it('a mitre loses more the sharper it turns, and at a right angle more than an elbow', () => {
    const angles = [15, 30, 45, 60, 75, 90];
    const all = angles.map(mitreMultiplier);
    expect(all).toEqual(all.toSorted((one, other) => one - other));
    expect(mitreMultiplier(90)).toBe(2 * craneMultipliers.elbow90);
  });

  it('a rounder inlet loses less, and a sharp one what the pad counts', () => {
    const all = [0, 0.02, 0.04, 0.06, 0.1, 0.15].map(roundedInletK);
    expect(all).toEqual(all.toSorted((one, other) => other - one));
    expect(all[0]).toBe(endCoefficients.squareInlet);
    expect(roundedInletK(0.4)).toBe(0.04);
    expect(endCoefficients.roundedInlet).toBe(roundedInletK(0.15));
  });

  it('a disc that lifts loses more than one that swings', () => {
    expect(handbookValves.footValvePoppet).toBeGreaterThan(handbookValves.footValveHinged);
    expect(handbookValves.liftCheckValve).toBeGreaterThan(craneMultipliers.swingCheckValve);
  });

  it.each([() => bendMultiplier(5), () => bendMultiplier(0), () => mitreMultiplier(50)])(
    'what is not printed is not guessed',
    (row) => expect(row).toThrow(/one of|between|1 to 20/),
  );
});
