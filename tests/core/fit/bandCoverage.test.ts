import { describe, expect, it } from 'vitest';
import { coverage, type Setting, settings } from './hiddenLoss.ts';

/** More pads by an environment variable: `BAND_PADS=2000 npm run unit -- bandCoverage`. */
const pads = Number(process.env['BAND_PADS'] ?? 200);

const all = Object.keys(settings) as Setting[];
// A 95 % band should hold 95 % of truths; with 200 pads the count itself is good to about 1.5 %.
const fewest = 0.93;
// Bands are right over all that may be hidden; where it is always the same they may hold a little less.
const fewestOfOne = 0.9;

describe(`the 95 % bands of ${pads} invented pads`, () => {
  const cases = [
    ['with a loss that nobody described, as any power of the flow from 1 to 2', 'any', fewest],
    ['with a valve that nobody described, its loss as the square', 'square', fewestOfOne],
    ['as described, within a tenth', 'none', fewest],
  ] as const;
  describe.each(cases)('%s', (_, hidden, least) => {
    it.each(all)(
      `hold flow, head and power in ${100 * least} of 100 cases at each speed: %s`,
      (setting) => {
        const found = coverage(setting, pads, hidden);
        expect(found.filter(({ share }) => share < least)).toEqual([]);
      },
    );
  });
});

describe('the bands of pads that are as described', () => {
  // Flow goes with speed (affinity, ANSI/HI 14.6), so a meter of 10 % and nothing else would tell it
  // at every speed to 2 x 1.96 x 0.051/sqrt(n), with the 1 % of the model in it; the pads have one, two
  // or three readings, so 15.2 % in the mean. Who knows pump and pipes as well must not be told less.
  const byMeterAlone =
    [1, 2, 3].reduce((sum, count) => sum + 1 / Math.sqrt(count), 0) *
    ((2 * 1.96 * Math.hypot(0.05, 0.01)) / 3);

  it.each([
    // Read at 0.45 of the speed and above: without a gauge that says nothing of a slower one.
    ['meter and gauges', 0.4],
    ['meter only', 0.55],
  ] as const)('are no wider in flow than the meter alone makes them: %s', (setting, slowest) => {
    const flows = coverage(setting, pads, 'none').filter(
      ({ answer, ratio }) => answer === 'flow' && ratio >= slowest,
    );
    expect(flows.filter(({ width }) => width >= byMeterAlone)).toEqual([]);
  });
});
