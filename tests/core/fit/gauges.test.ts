import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  columnPressure,
  gaugeGrades,
  gaugeTolerance,
  pressureHead,
  roundedDynamicHead,
  totalDynamicHead,
} from '#core/fit/gauges.ts';
import { casesOf } from '../numericCases.ts';

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

describe('a water column', () => {
  it('presses as the conventional columns of the tables', () => {
    // NIST SP 811 B.8, conventional water of 1000 kg/m3: foot 2.989067e3 Pa, inch 249.0889 Pa.
    expect(columnPressure(feet, 1000)).toBeCloseTo(2989.067, 3);
    expect(columnPressure(0.0254, 1000)).toBeCloseTo(249.0889, 4);
    expect(columnPressure(-feet, 1000)).toBeCloseTo(-2989.067, 3);
  });

  it('has the head of the pressure at its foot', () => {
    const head = fc.double({ min: -100, max: 100, noNaN: true });
    fc.assert(
      fc.property(head, fc.double({ min: 500, max: 1500, noNaN: true }), (height, density) => {
        expect(pressureHead(columnPressure(height, density), density)).toBeCloseTo(height, 10);
      }),
    );
  });
});

describe('the rounded factors of the trade', () => {
  // 2.31 ft a psi and 1.13 ft an inch of mercury: common practice, no source.
  it('add 23.1 ft for 10 psi, 11.3 ft for 10 inHg and the height between the gauges', () => {
    const dry = { dischargePressure: 0, suctionVacuum: 0, gaugeHeight: 0, density: 998 };
    const inFeet = (change: Partial<typeof dry>) =>
      roundedDynamicHead({ ...dry, ...change }) / feet;
    expect(inFeet({ dischargePressure: 10 * pascalPerPsi })).toBeCloseTo(23.1, 9);
    expect(inFeet({ suctionVacuum: 10 * pascalPerInHg })).toBeCloseTo(11.3, 9);
    expect(inFeet({ gaugeHeight: -1.5 * feet })).toBeCloseTo(-1.5, 12);
    const all = { dischargePressure: 2e4, suctionVacuum: 3e4, gaugeHeight: 0.4 };
    expect(inFeet(all)).toBeCloseTo(
      inFeet({ dischargePressure: 2e4 }) + inFeet({ suctionVacuum: 3e4 }) + 0.4 / feet,
      9,
    );
  });

  it('take a suction under pressure as less head, and whatever density', () => {
    const pair = { dischargePressure: 5e4, suctionVacuum: -2e4, gaugeHeight: 0, density: 998 };
    const drawn = roundedDynamicHead({ ...pair, suctionVacuum: 0 });
    expect(roundedDynamicHead(pair)).toBeLessThan(drawn);
    expect(roundedDynamicHead({ ...pair, density: 1025 })).toBe(roundedDynamicHead(pair));
  });

  it('are never further than 1 % from the exact head of a pool pump', () => {
    // Water from 5 to 38 degC holds 1000 to 993 kg/m3 (IAPWS SR6-08(2011)).
    const pressure = fc.double({ min: 1e4, max: 3e5, noNaN: true });
    const vacuum = fc.double({ min: 0, max: 8e4, noNaN: true });
    const dense = fc.double({ min: 993, max: 1000, noNaN: true });
    fc.assert(
      fc.property(pressure, vacuum, dense, (press, drawn, density) => {
        const pair = { dischargePressure: press, suctionVacuum: drawn, gaugeHeight: 0, density };
        expect(Math.abs(roundedDynamicHead(pair) / totalDynamicHead(pair) - 1)).toBeLessThan(0.01);
      }),
    );
  });
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
