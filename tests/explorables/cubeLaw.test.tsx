import renderToString from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { CubeLawModel, full, pointAt, sweep, thriftiestSpeed } from '#explorables/CubeLaw/model.ts';
import { sentence, spoken, table } from '#explorables/CubeLaw/text.ts';
import CubeLaw from '#explorables/CubeLaw/view.tsx';
import { speeds } from '#explorables/example/demo.ts';
import { metric } from '#units/choice.ts';

describe('one pump at any speed', () => {
  it('moves water about in proportion to the speed', () => {
    // Affinity laws, no lift: flow goes as speed. Smooth pipe bends it by a few parts in a hundred,
    // for friction grows a little slower than the square (Colebrook, 1939).
    for (const point of sweep) {
      expect(point.flow / full.flow / point.ratio).toBeGreaterThan(0.94);
      expect(point.flow / full.flow / point.ratio).toBeLessThanOrEqual(1 + 1e-9);
    }
  });

  it('draws the cube of the speed and a fixed draw', () => {
    // By hand: 52 W + 1640 W × (1/2)³ = 257 W.
    expect(pointAt(speeds.rated / 2).power).toBeCloseTo(257, 9);
    expect(full.power).toBeCloseTo(1692, 9);
  });

  it('prices a pool by its volume, the water per kWh and the price', () => {
    // By hand: 16 000 gal × 3.785411784e-3 m3 (NIST SP 811, B.8) at full flow, 1.692 kW, 0.29 a kWh.
    const hours = (16_000 * 3.785411784e-3) / full.flow / 3600;
    expect(full.turnover / 3600).toBeCloseTo(hours, 9);
    expect(full.cost).toBeCloseTo(hours * 1.692 * 0.29, 9);
  });

  it('moves the most water per kWh near the speed that the law names, and less below it', () => {
    // r* = (fixed / 2 cube)^(1/3) = (52 / 3280)^(1/3) = 0.2512, by hand: 867 rpm.
    expect(thriftiestSpeed).toBeCloseTo(866.7, 1);
    const best = pointAt(thriftiestSpeed).mileage;
    expect(pointAt(speeds.slowest).mileage).toBeLessThan(best);
    for (const point of sweep) expect(point.mileage).toBeLessThan(best * 1.002);
  });

  it('turns the whole pool over within a day at every speed it offers', () => {
    for (const point of sweep) expect(point.turnover).toBeLessThan(24 * 3600);
  });
});

describe('the words of it', () => {
  it('say what half speed gives for what share of the power', () => {
    const model = new CubeLawModel();
    expect(sentence(model)).toMatch(
      /^At 1730\u00a0rpm, 50\u00a0% of full speed, the pump moves (49|50)\u00a0% of the water for 15\u00a0% of the power\./,
    );
  });

  it('warn that slower than thrifty costs more again', () => {
    const model = new CubeLawModel();
    model.speed.apply(700);
    expect(sentence(model)).toContain('makes every gallon more expensive again');
    model.units.value = metric;
    expect(sentence(model)).toContain('makes every litre more expensive again');
    model.speed.apply(1000);
    expect(sentence(model)).not.toContain('expensive again');
  });

  it('speak the speed with what follows from it', () => {
    const model = new CubeLawModel();
    expect(spoken(model)).toMatch(
      /^1730 revolutions per minute, \d+ gallons per minute, 259 watts$/,
    );
  });

  it('change with the units while the answer stays', () => {
    const model = new CubeLawModel();
    const before = model.here.value;
    model.units.value = metric;
    expect(model.here.value).toBe(before);
    expect(table(metric).rows[0]?.[1]).toMatch(/m³\/h$/);
  });
});

describe('the page before any script has run', () => {
  const html = renderToString(<CubeLaw id="law" />);

  it('shows the opening numbers, the sentence and the table', () => {
    expect(html).toContain('<b>50\u00a0%</b> of the water');
    expect(html).toContain('<b>15\u00a0%</b> of the power');
    expect(html).toContain('259\u00a0W');
    expect(html).toContain(sentence(new CubeLawModel()));
    expect(html).toContain('<th scope="row">3450\u00a0rpm</th>');
  });

  it('draws both lines and the handle where the opening speed is', () => {
    expect(html.match(/class="curve" data-quantity="(flow|power)" d="M173\.9,/g)).toHaveLength(2);
    // 1730 / 3450 = 0.5014 of the way.
    expect(html).toMatch(/role="slider"[^>]*aria-valuenow="1730"/);
    expect(html).toContain('--x:0.5014;--y:1.0000');
  });

  it('speaks nothing yet', () => {
    expect(html).toContain('role="status"></p>');
  });
});
