import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  affinityFlow,
  affinityHead,
  affinityPower,
  leastFlowRatio,
  pumpFromPoints,
  pumpFromPowerLaw,
  pumpFromThreePoints,
  pumpHead,
  typicalPump,
} from '#core/pump/pump.ts';

/** Falling points of a data sheet, of any length and spacing. */
const sheet = fc
  .array(
    fc.record({
      step: fc.double({ min: 1e-4, max: 5e-3, noNaN: true }),
      fall: fc.double({ min: 0, max: 10, noNaN: true }),
    }),
    { minLength: 2, maxLength: 9 },
  )
  .map((steps) => {
    let flow = 0;
    let head = 100;
    return steps.map(({ step, fall }, index) => {
      flow += index === 0 ? 0 : step;
      head -= index === 0 ? 0 : fall + 0.01;
      return { flow, head };
    });
  });

describe('a curve through points', () => {
  // scipy 1.10.1 PchipInterpolator, the operating points of reference operating-point.json, "curve by points".
  test('passes through every point', () => {
    fc.assert(
      fc.property(sheet, (points) => {
        const curve = pumpFromPoints(points);
        for (const { flow, head } of points) expect(curve.head(flow)).toBeCloseTo(head, 9);
      }),
    );
  });

  test('never rises, beyond the data either, and its slope says so', () => {
    fc.assert(
      fc.property(sheet, fc.double({ min: 0, max: 1.5, noNaN: true }), (points, place) => {
        const curve = pumpFromPoints(points);
        const flow = place * curve.lastFlow;
        const step = 1e-7 * curve.lastFlow;
        expect(curve.slope(flow)).toBeLessThanOrEqual(1e-9);
        expect(curve.head(flow + step)).toBeLessThanOrEqual(curve.head(flow) + 1e-9);
      }),
    );
  });

  test('the slope is that of the head', () => {
    fc.assert(
      fc.property(sheet, fc.double({ min: 0.01, max: 1.4, noNaN: true }), (points, place) => {
        const curve = pumpFromPoints(points);
        const flow = place * curve.lastFlow;
        const step = 1e-6 * curve.lastFlow;
        const near = points.some((point) => Math.abs(point.flow - flow) < 2 * step);
        fc.pre(!near);
        const measured = (curve.head(flow + step) - curve.head(flow - step)) / (2 * step);
        expect(Math.abs(curve.slope(flow) - measured)).toBeLessThan(
          1e-3 * (1 + Math.abs(measured)),
        );
      }),
    );
  });

  test('falls below zero in the end, so that it always meets its pipes', () => {
    fc.assert(
      fc.property(sheet, (points) => {
        const curve = pumpFromPoints(points);
        expect(curve.head(1e4 * curve.lastFlow)).toBeLessThan(0);
      }),
    );
  });

  test('two points make a straight line', () => {
    const curve = pumpFromPoints([
      { flow: 0, head: 20 },
      { flow: 0.01, head: 10 },
    ]);
    // Geometry: halfway along, halfway down.
    expect(curve.head(0.005)).toBeCloseTo(15, 12);
    expect(curve.slope(0.005)).toBeCloseTo(-1000, 9);
    expect(curve.provenance).toBe('points');
  });

  test('before a first point that is not at no flow the head stays level', () => {
    const curve = pumpFromPoints([
      { flow: 0.002, head: 20 },
      { flow: 0.01, head: 10 },
    ]);
    expect(curve.head(0)).toBe(20);
    expect(curve.slope(0.001)).toBe(0);
    expect(curve.shutoffHead).toBe(20);
    expect(curve.lastFlow).toBe(0.01);
  });

  test('past the data it goes on without a corner, at least half as steep as all before', () => {
    // Common practice, no source: the last chord bends on as a parabola. From (6, 12) here, with
    // 10 m over 6 in all, no gentler than half of that and 10/36 m more for each square.
    const gentle = pumpFromPoints([
      { flow: 0, head: 22 },
      { flow: 5, head: 12 },
      { flow: 6, head: 12 },
    ]);
    const fall = 10 / 6;
    for (const beyond of [0.5, 1, 3]) {
      const lost = 0.5 * fall * beyond + (fall / 6) * beyond ** 2;
      expect(gentle.head(6 + beyond)).toBeCloseTo(12 - lost, 12);
      expect(gentle.slope(6 + beyond)).toBeCloseTo(-0.5 * fall - (fall / 3) * beyond, 12);
    }
    const straight = pumpFromPoints([
      { flow: 1, head: 22 },
      { flow: 6, head: 12 },
    ]);
    // Here the chord itself is steeper: 2 m for each, and 2/6 m more for each square.
    expect(straight.head(7)).toBeCloseTo(12 - 2 - 2 / 6, 12);
  });

  test('points half a millilitre apart are two points', () => {
    const near = [0, 0.001, 0.0010005].map((flow) => ({ flow, head: 20 - 1000 * flow }));
    expect(pumpFromPoints(near).lastFlow).toBe(0.0010005);
  });

  test.each([
    [[{ flow: 0, head: 20 }], 'points is 1; it must be at least 2 points.'],
    [
      [
        { flow: 0, head: 20 },
        { flow: 0, head: 10 },
      ],
      'flow of point 2 is 0; it must be greater than that of the point before, 0 m3/s.',
    ],
    [
      [
        { flow: 0, head: 20 },
        { flow: 0.002, head: 21 },
      ],
      'head of point 2 is 21; it must be no greater than that of the point before, 20 m.',
    ],
    [
      [
        { flow: 0, head: 20 },
        { flow: 0.002, head: 20 },
      ],
      'points is 20; it must be falling: the last head must be below the first.',
    ],
    [
      [
        { flow: 1, head: 20 },
        { flow: 1 + 5e-10, head: 10 },
      ],
      'flow of point 2 is 1.0000000005; it must be greater than that of the point before, 1 m3/s.',
    ],
    [
      [
        { flow: -1, head: 20 },
        { flow: 0.002, head: 10 },
      ],
      'flow of point 1 is -1; it must be a number from 0 to 10 m3/s.',
    ],
    [
      [
        { flow: 0, head: Number.NaN },
        { flow: 0.002, head: 10 },
      ],
      'head of point 1 is NaN; it must be a number from 0 to 1000 m.',
    ],
  ])('points that make no curve are refused by name: %j', (points, sentence) => {
    expect(() => pumpFromPoints(points)).toThrow(new RegExp(`^${sentence}$`));
  });
});

describe('a curve by its law', () => {
  test('three points give back all three', () => {
    // EPANET 2.2 manual, "Pumps": the power function passes through its three points.
    const points = [
      { flow: 0, head: 26.8 },
      { flow: 0.0025, head: 24.4 },
      { flow: 0.0057, head: 13.7 },
    ];
    const curve = pumpFromThreePoints(points);
    for (const { flow, head } of points) expect(curve.head(flow)).toBeCloseTo(head, 10);
    expect(curve.lastFlow).toBe(0.0057);
    expect(curve.provenance).toBe('threePoints');
  });

  test.each([
    [
      [
        { flow: 0.001, head: 20 },
        { flow: 0.002, head: 15 },
        { flow: 0.003, head: 5 },
      ],
      'flow of point 1 is 0.001; it must be 0: the first point is at no flow.',
    ],
    [
      [
        { flow: 0, head: 20 },
        { flow: 0.002, head: 20 },
        { flow: 0.003, head: 5 },
      ],
      'points is 20; it must be falling from each point to the next.',
    ],
    [
      [
        { flow: 0, head: 20 },
        { flow: 0.002, head: 15 },
        { flow: 0.003, head: 15 },
      ],
      'points is 15; it must be falling from each point to the next.',
    ],
    [
      [
        { flow: 0, head: 20 },
        { flow: 0.002, head: 15 },
      ],
      'points is 2; it must be at least 3 points.',
    ],
  ])('three points that make no curve are refused', (points, sentence) => {
    expect(() => pumpFromThreePoints(points)).toThrow(sentence);
  });

  test('a fourth point is refused', () => {
    const points = [0, 1, 2, 3].map((n) => ({ flow: n / 1000, head: 20 - n * n }));
    expect(() => pumpFromThreePoints(points)).toThrow('points is 4; it must be three points.');
  });

  test('head and slope agree at any power, asked in any order', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.constant(2), fc.double({ min: 0.6, max: 4, noNaN: true })),
        fc.double({ min: 1e-4, max: 0.02, noNaN: true }),
        (c, flow) => {
          const curve = pumpFromPowerLaw({ a: 25, b: 10 / 0.005 ** c, c }, 0.008);
          const step = 1e-4 * flow;
          const measured = (curve.head(flow + step) - curve.head(flow - step)) / (2 * step);
          expect(curve.slope(flow) / measured).toBeCloseTo(1, 3);
        },
      ),
    );
  });

  test('at no flow the slope is level', () => {
    for (const c of [0.6, 1, 1.9, 2, 3]) {
      expect(pumpFromPowerLaw({ a: 25, b: 1e5, c }, 0.008).slope(0)).toBe(0);
    }
  });

  test('the typical curve passes through its best point and says what it is', () => {
    // Common practice, no source: shut-off head 1.3 times the head at the best point.
    const curve = typicalPump({ flow: 0.004, head: 15 });
    expect(curve.head(0.004)).toBeCloseTo(15, 12);
    expect(curve.shutoffHead).toBeCloseTo(19.5, 12);
    expect(curve.provenance).toBe('typical');
    expect(curve.lastFlow).toBeCloseTo(0.0056, 12);
  });
});

describe('the affinity laws', () => {
  test('double the speed: twice the flow, four times the head, eight times the power', () => {
    // Hydraulic Institute data tool, "affinity rules", worked example (reference affinity-laws.json).
    expect(affinityFlow(100, 1750, 3500)).toBe(200);
    expect(affinityHead(100, 1750, 3500)).toBe(400);
    expect(affinityPower(5, 1750, 3500)).toBe(40);
  });

  test('a curve at another speed is the same curve, scaled', () => {
    const curve = pumpFromPowerLaw({ a: 25, b: 2e5, c: 1.9 }, 0.008);
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.008, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        (flow, ratio) => {
          // ANSI/HI 14.3.
          expect(pumpHead(curve, flow * ratio, ratio)).toBeCloseTo(
            ratio ** 2 * curve.head(flow),
            9,
          );
        },
      ),
    );
  });

  test('a stopped pump makes no head', () => {
    expect(pumpHead(typicalPump({ flow: 0.004, head: 15 }), 0, 0)).toBe(0);
  });

  test('whatever makes no curve and no head is refused by name', () => {
    const law = { a: 25, b: 1e5, c: 2 };
    const curve = pumpFromPowerLaw(law, 0.008);
    for (const [call, message] of [
      [() => pumpFromPowerLaw({ ...law, a: 0 }, 1), 'head at no flow is 0'],
      [() => pumpFromPowerLaw({ ...law, b: 0 }, 1), 'coefficient is 0'],
      [() => pumpFromPowerLaw({ ...law, c: 0.4 }, 1), 'power of the flow is 0.4'],
      [() => pumpFromPowerLaw({ ...law, c: 10.1 }, 1), 'power of the flow is 10.1'],
      [() => pumpFromPowerLaw(law, 0), 'last flow is 0'],
      [() => typicalPump({ flow: 0, head: 15 }), 'best flow is 0'],
      [() => typicalPump({ flow: 0.004, head: 0 }), 'best head is 0'],
      [() => pumpHead(curve, -1, 1), 'flow is -1'],
      [() => pumpHead(curve, 11, 1), 'flow is 11'],
      [() => pumpHead(curve, 1, 11), 'speed ratio is 11'],
      [() => affinityPower(1, 1, Number.NaN), 'second speed is NaN'],
    ] as const) {
      expect(call).toThrow(message);
    }
  });

  test('no speed to scale from is refused', () => {
    expect(() => affinityFlow(1, 0, 1)).toThrow(CoreError);
    expect(() => affinityHead(1, 1, -1)).toThrow(CoreError);
  });
});

describe('the speed below which nothing moves', () => {
  // Affinity laws, ANSI/HI 14.3: at that speed the head at no flow is just the head asked for.
  test('makes just the head that is there at no flow', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (shutoff, head) => {
          const curve = pumpFromPowerLaw({ a: shutoff, b: shutoff * 1e4, c: 2 }, 0.009);
          const ratio = leastFlowRatio(curve, head);
          expect(pumpHead(curve, 0, ratio)).toBeCloseTo(ratio < 1e-9 ? 0 : head, 8);
        },
      ),
    );
    const curve = pumpFromPowerLaw({ a: 20, b: 2e5, c: 2 }, 0.008);
    expect(() => leastFlowRatio(curve, -1)).toThrow('head is -1');
  });
});
