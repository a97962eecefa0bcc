import { describe, expect, test } from 'vitest';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { carryFit, padModel } from '#pad/model/assemble.ts';

// Our own behaviour: what is carried is held against what is sought.

/** To six figures: where a point is sought from shows in the last ones. */
const figures = (value: unknown) =>
  JSON.stringify(value, (_, each) =>
    typeof each === 'number' ? Number(each.toPrecision(6)) : each,
  );

describe('a fit carried with the page', () => {
  test.each([ownerPad, lodgePad, rigPad])('is the one that would be found: $name', (demo) => {
    const sought = padModel(demo).fit;
    if (sought === null) throw new Error('the demo has no fit');
    const { parameters, covariance } = sought.spread;
    const pad = structuredClone(demo);
    carryFit(pad, JSON.parse(JSON.stringify({ parameters, covariance })));
    const carried = padModel(pad).fit;
    const told = (fit: typeof sought, of: typeof pad) => [
      fit.residuals.map(({ predicted }) => predicted),
      fit.contradictions,
      fit.narrowing,
      ...[0.3, 0.6, 1].map((ratio) => [fit.bandAt(ratio), padModel(of).running?.pointAt(ratio)]),
    ];
    if (carried === null) throw new Error('the carried fit was refused');
    expect(figures(told(carried, pad))).toBe(figures(told(sought, demo)));
  });

  test('serves while nothing that is fitted changes, and no longer', () => {
    const pad = structuredClone(ownerPad);
    const parameters = Array.from({ length: 7 }, () => 0.01);
    const covariance = parameters.map((_, at) =>
      parameters.map((_, other) => (at === other ? 1 : 0)),
    );
    carryFit(pad, { parameters, covariance });
    const found = (change: Partial<typeof pad>) => padModel({ ...pad, ...change }).fit?.spread;
    expect(found({ day: { ...pad.day, blocks: [] }, name: 'Mine' })?.parameters).toBe(parameters);
    expect(found({ site: { ...pad.site, altitude: 10 } })?.parameters).toBe(parameters);
    for (const change of [
      { readings: pad.readings.slice(1) },
      { pump: { ...pad.pump, topSpeed: 3000 } },
      { plumbing: { ...pad.plumbing, staticHead: 1 } },
      { instruments: { ...pad.instruments } },
      { site: { ...pad.site, waterTemperature: 12 } },
    ]) {
      expect(found(change)?.parameters).not.toBe(parameters);
    }
  });
});
