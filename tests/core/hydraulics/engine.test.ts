import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { pumpFromThreePoints } from '#core/pump/pump.ts';
import { oracleCircuits, pumpPoints } from '../../oracle/circuits.ts';
import { type EngineModel, openEngine } from '../../oracle/engine.ts';
import { flowWithEngineFriction } from '../../oracle/swamee.ts';

/*
 * Oracle: OWA-EPANET through npm epanet-js, a general water-network engine. Its friction is
 * Swamee–Jain, good to about 1 % of Colebrook–White (Swamee and Jain 1976), and its gravity is
 * 32.2 ft/s2. Head goes about as flow squared, and pipe is only a part of the head, so flows may
 * differ by up to half a percent. With that friction put in place of ours, nothing but rounding of
 * its constants is left: 3.2e-5 at the most when this was written.
 */
const allowedByItsFriction = 5e-3;
const leftWhenFrictionIsTheSame = 5e-5;

const curve = pumpFromThreePoints(pumpPoints);

test('at least 12 circuits are solved by the engine as well', () => {
  expect(oracleCircuits.length).toBeGreaterThanOrEqual(12);
});

describe.each(oracleCircuits)('$name', ({ circuit, ratios }) => {
  let engine: EngineModel;
  beforeAll(async () => {
    engine = await openEngine(pumpPoints, circuit);
  });
  afterAll(() => engine.close());

  test.each(ratios)('at ratio %f the engine finds the same flow', (ratio) => {
    const theirs = engine.flowAt(ratio);
    const ours = operatingPoint(curve, circuit, ratio);
    if (ours.kind !== 'flowing') throw new Error('no flow where the engine finds one');
    const withTheirFriction = flowWithEngineFriction(pumpPoints, circuit, ratio);
    expect(Math.abs(ours.flow / theirs - 1)).toBeLessThan(allowedByItsFriction);
    expect(Math.abs(withTheirFriction / theirs - 1)).toBeLessThan(leftWhenFrictionIsTheSame);
  });
});
