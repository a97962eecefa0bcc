import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/errors.ts';
import { gaugeGrades, gaugeTolerance, pressureHead, totalDynamicHead } from '#core/gauges.ts';
import { casesOf } from './numericCases.ts';

const pascalPerPsi = 6894.757_293_168; // NIST SP 811 B.8
const pascalPerInHg = 3386.389; // conventional, NIST SP 811 B.8
const feet = 0.3048; // exact, NIST SP 811

describe('total dynamic head against the reference cases', () => {
  const cases = casesOf('hydraulics-conversions');
  for (const { inputs, expected, relative } of cases.filter(
    (one) => one.what === 'TDH from gauges',
  )) {
    it(JSON.stringify(inputs), () => {
      const inches = (key: string) =>
        inputs[key] === undefined ? undefined : inputs[key] * 0.0254;
      const head = totalDynamicHead({
        dischargePressure: (inputs['discharge_psi'] as number) * pascalPerPsi,
        suctionVacuum: (inputs['vacuum_inhg'] as number) * pascalPerInHg,
        gaugeHeight: (inputs['gauge_height_difference_ft'] as number) * feet,
        density: inputs['density_kg_m3'] as number,
        flow:
          inputs['flow_gpm'] === undefined
            ? undefined
            : (inputs['flow_gpm'] * 3.785_411_784) / 60_000,
        dischargeBore: inches('discharge_bore_in'),
        suctionBore: inches('suction_bore_in'),
      });
      const wanted = (expected['total_dynamic_head_ft'] as number) * feet;
      expect(Math.abs(head / wanted - 1)).toBeLessThanOrEqual(relative);
    });
  }

  for (const { inputs, expected, relative } of cases.filter(
    (one) => one.what === 'one psi' || one.what === 'one inch of mercury',
  )) {
    it(`pressure as head ${JSON.stringify(inputs)}`, () => {
      const pressure =
        inputs['pressure_psi'] === undefined
          ? (inputs['vacuum_inhg'] as number) * pascalPerInHg
          : inputs['pressure_psi'] * pascalPerPsi;
      const head = pressureHead(pressure, inputs['density_kg_m3'] as number) / feet;
      expect(Math.abs(head / (expected['head_ft'] as number) - 1)).toBeLessThanOrEqual(relative);
    });
  }
});

describe('gauges', () => {
  const pair = { dischargePressure: 1e5, suctionVacuum: 2e4, gaugeHeight: 0.3, density: 998 };

  it('equal bores leave the velocity term out', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.05, noNaN: true }), (flow) => {
        const withBores = { ...pair, flow, dischargeBore: 0.0525, suctionBore: 0.0525 };
        expect(totalDynamicHead(withBores)).toBeCloseTo(totalDynamicHead(pair), 12);
      }),
    );
  });

  it('a narrower discharge tapping adds velocity head', () => {
    const narrow = { ...pair, flow: 0.004, dischargeBore: 0.04, suctionBore: 0.0525 };
    expect(totalDynamicHead(narrow)).toBeGreaterThan(totalDynamicHead(pair));
  });

  it('the velocity term is the velocity heads apart, and needs both bores', () => {
    // Bernoulli: (V2^2 - V1^2)/2g with V = Q / (pi/4 D^2).
    const flow = 0.004;
    const head = (bore: number) => (flow / ((Math.PI / 4) * bore ** 2)) ** 2 / (2 * 9.80665);
    const gained = totalDynamicHead({ ...pair, flow, dischargeBore: 0.04, suctionBore: 0.06 });
    expect(gained - totalDynamicHead(pair)).toBeCloseTo(head(0.04) - head(0.06), 12);
    for (const known of [
      { dischargeBore: 0.04, suctionBore: 0.06 },
      { flow, suctionBore: 0.06 },
    ]) {
      expect(totalDynamicHead({ ...pair, ...known })).toBe(totalDynamicHead(pair));
    }
    expect(totalDynamicHead({ ...pair, flow, dischargeBore: 0.04 })).toBe(totalDynamicHead(pair));
  });

  it('the middle half of the scale has its ends', () => {
    const within = (reading: number) => gaugeTolerance({ grade: 'A', span: 100 }, reading);
    // ASME B40.100 grade A, "2-1-2 %": from memory.
    expect([24, 25, 75, 76].map(within)).toEqual([2, 1, 1, 2]);
  });

  it('grade B is good to 2 % of the span in the middle half and 3 % outside it', () => {
    // ASME B40.100 grade B, "3-2-3 %": from memory.
    expect(gaugeTolerance({ grade: 'B', span: 400_000 }, 200_000)).toBe(8000);
    expect(gaugeTolerance({ grade: 'B', span: 400_000 }, 50_000)).toBe(12_000);
    expect(gaugeTolerance({ grade: 'B', span: 400_000 }, 390_000)).toBe(12_000);
  });

  it('grades grow ever wider', () => {
    const ends = Object.values(gaugeGrades).map((grade) => grade.ends);
    expect([...ends].sort((a, b) => a - b)).toEqual(ends);
  });

  it('refuses a vacuum deeper than the atmosphere', () => {
    expect(() => totalDynamicHead({ ...pair, suctionVacuum: 150_000 })).toThrow(CoreError);
  });
});
