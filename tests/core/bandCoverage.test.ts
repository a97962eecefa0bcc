import { describe, expect, it } from 'vitest';
import { coverage, type Setting, settings } from './hiddenLoss.ts';

/** More pads by an environment variable: `BAND_PADS=2000 npm run unit -- bandCoverage`. */
const pads = Number(process.env['BAND_PADS'] ?? 200);

// A 95 % band should hold 95 % of truths; with 200 pads the count itself is good to about 1.5 %.
describe(`the 95 % bands of ${pads} invented pads with a loss that nobody described`, () => {
  const all = Object.keys(settings) as Setting[];

  it.each(all)(
    'hold flow, head and power in at least 93 of 100 cases at each speed: %s',
    (setting) => {
      const found = coverage(setting, pads);
      expect(found.filter(({ share }) => share < 0.93)).toEqual([]);
    },
  );

  it('are no wider than tells something: with a meter the flow is known to a fifth', () => {
    const flows = coverage('meter and gauges', pads).filter(({ answer }) => answer === 'flow');
    for (const { width } of flows) expect(width).toBeLessThan(0.2);
  });
});
