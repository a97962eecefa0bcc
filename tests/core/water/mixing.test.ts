import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  filteredShare,
  sharePassed,
  turnoversForShare,
  turnoversInRun,
  turnoverTime,
} from '#core/water/mixing.ts';
import { allowance, referenceCases } from '../referenceCases.ts';

const gallon = 231 * 0.0254 ** 3; // exact, NIST SP 811

// Reference file mixing: Gage and Bidwell 1926 (the 98 % from memory); Simmonds et al. 2021.
describe('mixing against the reference cases', () => {
  for (const item of referenceCases('mixing')) {
    it(`${item.what} ${JSON.stringify(item.inputs)}`, () => {
      const got = answers(item.inputs as Readonly<Record<string, number>>);
      for (const [key, expected] of Object.entries(item.expected)) {
        expect(Math.abs((got[key] ?? Number.NaN) - expected)).toBeLessThanOrEqual(
          allowance(item, expected),
        );
      }
    });
  }

  function answers(inputs: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
    const { turnovers = Number.NaN, filter_efficiency: efficiency, hours = Number.NaN } = inputs;
    if (inputs['share'] !== undefined) {
      const flow = (inputs['flow_m3_h'] as number) / 3600;
      const time = turnoverTime(inputs['volume_m3'] as number, flow);
      return { hours: (turnoversForShare(inputs['share']) * time) / 3600 };
    }
    if (inputs['volume_gal'] !== undefined) {
      const flow = ((inputs['flow_gpm'] as number) * gallon) / 60;
      const moved = turnoversInRun(inputs['volume_gal'] * gallon, flow, hours * 3600);
      return { turnovers: moved, share: filteredShare(moved) };
    }
    return { share: filteredShare(turnovers, efficiency) };
  }
});

const anyEfficiency = fc.double({ min: 0.01, max: 1, noNaN: true });

describe('a perfectly mixed pool', () => {
  it('more turnovers never filter less, and never all of it in ten', () => {
    const turnovers = fc.double({ min: 0, max: 10, noNaN: true });
    fc.assert(
      fc.property(turnovers, turnovers, anyEfficiency, (a, b, efficiency) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)];
        expect(filteredShare(less, efficiency)).toBeLessThanOrEqual(
          filteredShare(more, efficiency),
        );
        expect(filteredShare(more, efficiency)).toBeLessThan(1);
      }),
    );
  });

  it('a share asked for is the share reached', () => {
    const share = fc.double({ min: 0, max: 0.9999, noNaN: true });
    fc.assert(
      fc.property(share, anyEfficiency, (wanted, efficiency) => {
        const reached = filteredShare(turnoversForShare(wanted, efficiency), efficiency);
        expect(reached).toBeCloseTo(wanted, 12);
      }),
    );
  });

  it('no turnovers filter nothing', () => {
    expect(filteredShare(0)).toBe(0);
    expect(turnoversForShare(0)).toBe(0);
  });

  it('what cannot be is refused', () => {
    expect(() => turnoversForShare(1)).toThrow('share is 1; it must be from 0 to below 1.');
    expect(() => filteredShare(1, 0)).toThrow(CoreError);
    expect(() => filteredShare(Number.NaN)).toThrow(CoreError);
    expect(() => turnoverTime(60, 0)).toThrow(CoreError);
    expect(() => turnoversInRun(0, 1, 1)).toThrow(CoreError);
  });
});

describe('how often water has passed', () => {
  // Poisson's distribution at mean 1: 0.3679, 0.3679, 0.1839, 0.0613 (any table of it; from memory).
  it('is Poisson’s: at one turnover 37 % never, 37 % once, 18 % twice, 6 % three times', () => {
    const shares = [0, 1, 2, 3].map((times) => sharePassed(1, times));
    for (const [times, known] of [0.3679, 0.3679, 0.1839, 0.0613].entries()) {
      expect(shares[times]).toBeCloseTo(known, 4);
    }
  });

  it('leaves out nothing: never is what the filter has not had, and all shares make one', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20, noNaN: true }), (turnovers) => {
        expect(sharePassed(turnovers, 0)).toBeCloseTo(1 - filteredShare(turnovers), 12);
        const all = Array.from({ length: 101 }, (_, times) => sharePassed(turnovers, times));
        expect(all.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
        // Mean number of passes: the turnovers.
        const mean = all.reduce((sum, share, times) => sum + share * times, 0);
        expect(mean).toBeCloseTo(turnovers, 8);
      }),
    );
  });

  it('is refused for half a time, for less than none and for more than a hundred', () => {
    for (const times of [0.5, -1, 101]) {
      expect(() => sharePassed(1, times)).toThrow(`times is ${times}`);
    }
    expect(() => sharePassed(-1, 0)).toThrow('turnovers is -1');
  });
});
