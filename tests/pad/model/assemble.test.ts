import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayReport } from '#core/day/dayReport.ts';
import { crossedLimits } from '#core/day/limits.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import { demos, ownerPad, rigPad } from '#pad/demos/demos.ts';
import {
  emptyPad,
  newBlock,
  newCover,
  newEquipment,
  newFitting,
  newNeed,
  newPipe,
  newReading,
} from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { withValueAt } from '#pad/messages/path.ts';
import type { Problem } from '#pad/messages/problems.ts';
import { padModel } from '#pad/model/assemble.ts';
import { toSI } from '#units/convert.ts';
import { alteredDemos, pads } from '../document/arbitraryPads.ts';

// Where a check rests on something outside the project its source stands beside it; the others
// check our own behaviour and have none.

function codes(problems: readonly Problem[]) {
  return problems.map(({ code, path }) => `${code} ${path.join('/')}`);
}

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

describe.each(demos.map(({ id, pad }) => [id, pad] as const))('the %s example', (_, pad) => {
  const model = padModel(pad);

  test('is complete: nothing is missing for any answer and nothing is wrong', () => {
    expect(model.problems).toEqual([]);
    expect(Object.values(model.missing).flat()).toEqual([]);
  });

  test('says in its name and in its notes that it is invented', () => {
    expect(pad.name).toContain('(invented)');
    expect(pad.notes).toContain('invented example');
  });

  test('serves every need at a speed that crosses no limit', () => {
    expect(model.ladder?.map(({ kind }) => kind)).toEqual(pad.needs.map(() => 'served'));
    for (const rung of model.ladder ?? []) {
      if (rung.kind === 'served') expect(rung.crossed).toEqual([]);
    }
  });

  test('its day meets every need and crosses no limit and no quiet hour', () => {
    const plan = model.planOf(model.blocks);
    if (plan === null) throw new Error('the example cannot be planned');
    const report = dayReport(plan);
    expect(report.needs.map(({ met }) => met)).toEqual(pad.needs.map(() => true));
    expect(report.crossings).toEqual([]);
    expect(report.quietCrossings).toEqual([]);
    expect(report.turnovers).toBeGreaterThanOrEqual(pad.turnoverTarget ?? 0);
  });

  test('its day is cheaper than the day before it, which crosses no hard limit either', () => {
    const { tariff, blocks, oldBlocks } = model;
    const { date } = pad.day;
    if (!tariff || !date) throw new Error('the example has no price');
    const costs = [blocks, oldBlocks].map((day) => {
      const plan = model.planOf(day);
      if (plan === null) throw new Error('the example cannot be planned');
      const report = dayReport(plan);
      expect(report.crossings.filter(({ limit }) => limit.hard)).toEqual([]);
      return priceDay(tariff, date, report.segments).cost;
    });
    expect(costs[0]).toBeLessThan(costs[1] as number);
  });

  test('its readings fit each other', () => {
    // A reading further off than two standard deviations is rare (normal law).
    for (const { deviations } of model.fit?.residuals ?? []) {
      expect(Math.abs(deviations)).toBeLessThan(2);
    }
    expect(model.fit?.contradictions).toEqual([]);
  });

  test('draws water through pipe at velocities a pool pump really makes at full speed', () => {
    // Common practice, no source: between 1 and 3 m/s.
    const point = model.running?.runningAt(1);
    if (point?.kind !== 'flowing') throw new Error('the example does not flow');
    expect(point.dischargeVelocity).toBeGreaterThan(1);
    expect(point.dischargeVelocity).toBeLessThan(3);
  });
});

describe('a half-filled pad', () => {
  test('an empty one has no answer, and names what each still lacks', () => {
    const model = padModel(emptyPad());
    expect(model.running).toBeNull();
    expect(model.ladder).toBeNull();
    expect(codes(model.missing.volume)).toEqual(['volumeMissing pool/volume']);
    expect(codes(model.missing.running)).toEqual([
      'referenceSpeed pump/referenceSpeed',
      'pumpUnknown pump/knowledge',
    ]);
    expect(codes(model.missing.ladder)).toContain('noNeeds needs');
    expect(codes(model.missing.price)).toContain('noSeason tariff/seasons');
    expect(codes(model.missing.day)).toContain('noBlocks day/blocks');
  });

  test('parts that lack something are left out and named', () => {
    const plumbing = {
      suction: [
        newPipe('a', { sizeId: 'sch40-2' }),
        newFitting('b', 'other', { sizeId: 'sch40-2' }),
      ],
      discharge: [
        newPipe('c', { length: 5 }),
        newPipe('d', { length: 5, sizeId: 'sch40-99' }),
        newEquipment('e', 'heater', { head: 2 }),
        newPipe('f', { length: 5, bore: 0.05 }),
      ],
      staticHead: null,
    };
    const model = padModel({ ...emptyPad(), plumbing });
    expect(codes(model.problems).slice(1, 6)).toEqual([
      'partLength plumbing/suction/0/length',
      'fittingK plumbing/suction/1/k',
      'partSize plumbing/discharge/0/sizeId',
      'unknownSize plumbing/discharge/1/sizeId',
      'equipmentPoint plumbing/discharge/2/flow',
    ]);
    expect(model.described?.discharge.map(({ id }) => id)).toEqual(['f']);
  });

  test('a curve that rises is named at the point that is too high', () => {
    const points = [18, 12, 14].map((head, place) => ({ flow: place * 0.002, head, power: null }));
    const pad = withValueAt(ownerPad, ['pump', 'knowledge'], { kind: 'curve', points });
    expect(codes(padModel(pad).missing.running)).toEqual([
      'curveRises pump/knowledge/points/2/head',
    ]);
  });

  test('readings that contradict each other are named where they were typed', () => {
    const pad = {
      ...ownerPad,
      readings: [
        newReading('slow', { speed: 2000, power: 900 }),
        newReading('fast', { speed: 3000, power: 500 }),
      ],
    };
    expect(codes(padModel(pad).problems)).toContain('powerFalls readings/1/power');
  });

  test('blocks that claim the same minutes are named, and the first keeps them', () => {
    const pad = withValueAt(
      ownerPad,
      ['day', 'blocks'],
      [newBlock('a', 0, 600, 1500), newBlock('b', 540, 700, 1500)],
    );
    const model = padModel(pad);
    expect(model.blocks.map(({ start, end }) => [start, end])).toEqual([
      [0, 600],
      [600, 700],
    ]);
    expect(model.missing.day).toEqual([]);
    expect(codes(model.problems)).toEqual(['blockOverlap day/blocks/1']);
  });

  test('a block the pump cannot run is named with the pump’s own limit', () => {
    const blocks = [
      newBlock('a', 0, 60, 5000),
      newBlock('b', 60, 120, 100),
      newBlock('c', 120, 180, null),
    ];
    const model = padModel(withValueAt(ownerPad, ['day', 'blocks'], blocks));
    expect(codes(model.problems)).toEqual([
      'speedTooFast day/blocks/0/speed',
      'speedTooSlow day/blocks/1/speed',
      'blockSpeed day/blocks/2/speed',
    ]);
  });
});

/** What a tired person can read off at the pad: one filter gauge, the drive's speed and watts. */
const common: Pad = {
  ...emptyPad('us'),
  pool: { kind: 'known', volume: 60 },
  plumbing: {
    ...emptyPad().plumbing,
    suction: [newPipe('s', { sizeId: 'sch40-2', length: 12 })],
    discharge: [
      newPipe('d', { sizeId: 'sch40-2', length: 20 }),
      newFitting('e', 'elbow90', { sizeId: 'sch40-2', count: 8 }),
      newEquipment('f', 'filter', { head: 2, flow: 0.004 }),
    ],
  },
  pump: {
    ...emptyPad().pump,
    referenceSpeed: 3450,
    knowledge: { kind: 'nameplate', power: 1200, powerMeans: 'shaft', flow: null, head: null },
  },
  readings: [
    newReading('a', { speed: 3000, filterPressure: 110_000, power: 1150 }),
    newReading('b', { speed: 1800, filterPressure: 40_000, power: 290 }),
  ],
  needs: [newNeed('skim', 'skimming', { leastFlow: 0.003, minutes: 180 })],
};

describe('the common case: one filter gauge, the speed and the watts of the drive', () => {
  const model = padModel(common);

  test('is enough for flow, power and the ladder', () => {
    expect(codes(model.missing.running)).toEqual([]);
    expect(model.ladder?.[0]?.kind).toBe('served');
    const point = model.running?.runningAt(3000 / 3450);
    // Common practice, no source: 40 to 90 gpm through 2 in pipe with a pump of this size.
    expect(point?.kind === 'flowing' && point.flow).toBeGreaterThan(0.0025);
    expect(point?.kind === 'flowing' && point.flow).toBeLessThan(0.0057);
  });

  test('says what was assumed', () => {
    expect(model.assumptions.map(({ code }) => code)).toEqual(
      expect.arrayContaining([
        'waterTemperature',
        'typicalPump',
        'pumpFromPower',
        'leastSpeed',
        'gaugesTypical',
        'wattsTypical',
        'curveEstimated',
        'flowReadFromCurve',
        'suctionLossFromPipes',
      ]),
    );
  });

  test('has a wide band on the flow, and names a reading that would narrow it', () => {
    const band = model.fit?.bandAt(1).flow;
    if (band === undefined || model.fit === null) throw new Error('there is no fit');
    expect(band.high / band.low).toBeGreaterThan(1.2);
    expect(model.fit.narrowingOf.flow.instrument).toBe('flowMeter');
    expect(model.fit.narrowing.widthAfter).toBeLessThan(model.fit.narrowing.widthBefore);
  });

  test('gives back the watts that were read', () => {
    const readings = [[3000, 1150] as const, [1800, 290] as const];
    for (const [speed, watts] of readings) {
      const power = model.running?.powerAt(speed / 3450) ?? 0;
      expect(Math.abs(power / watts - 1)).toBeLessThan(0.1);
    }
  });

  test('works with no pipes at all, and says that a circuit was assumed', () => {
    const bare = padModel({ ...common, plumbing: emptyPad().plumbing });
    expect(bare.assumptions.map(({ code }) => code)).toContain('circuitTypical');
    expect(bare.ladder?.[0]?.kind).toBe('served');
    expect(bare.described).toBeNull();
  });

  test('works with nothing about the pump but its rated speed and one reading of the watts', () => {
    const pad = {
      ...common,
      pump: { ...emptyPad().pump, referenceSpeed: 3450 },
      readings: [newReading('a', { speed: 3450, power: 1700 })],
    };
    const model = padModel(pad);
    expect(model.assumptions.map(({ code }) => code)).toContain('powerFromReading');
    expect(model.running?.runningAt(1).kind).toBe('flowing');
  });
});

describe('needs and limits', () => {
  test('the salt cell runs as long as the chlorine takes', () => {
    // Mass = volume x mg/L: 60 m3 at 2 mg/L is 120 g; at 20 g/h that is 6 h (arithmetic).
    const basis = { kind: 'chlorine', dailyUse: 2e-3, output: 20e-3 / 3600 } as const;
    const needs = [newNeed('salt', 'saltCell', { leastFlow: 0.002, basis })];
    expect(padModel({ ...common, needs }).needs[0]?.minutes).toBe(360);
  });

  test('a need without what its minutes follow from is named', () => {
    const basis = { kind: 'heat', dailyRise: 1, heaterPower: null } as const;
    const needs = [newNeed('heat', 'heating', { leastFlow: 0.002, basis }), newNeed('x', 'solar')];
    expect(codes(padModel({ ...common, needs }).problems)).toEqual([
      'needBasis needs/0/basis',
      'needFlow needs/1/leastFlow',
      'needMinutes needs/1/minutes',
      'noSeason tariff/seasons',
    ]);
  });

  test('the flow marked on a cover is a hard stop', () => {
    const limits = {
      ...emptyPad().limits,
      suctionCovers: [newCover('c', { markedFlow: 0.003 })],
    };
    const model = padModel({ ...common, limits });
    const [crossed] = crossedLimits(model.limits, 0.0031);
    expect(crossed).toMatchObject({ kind: 'suctionCover', hard: true, partId: 'c' });
  });

  test('the filter’s area and the rate allowed give its greatest flow', () => {
    // 300 ft2 at 0.375 gpm/ft2 is 112.5 gpm (arithmetic).
    const limit = padModel(ownerPad).limits.find(({ kind }) => kind === 'filterRate');
    expect(limit?.greatestFlow).toBeCloseTo(toSI('flow', 112.5, 'gpm'), 12);
  });

  test('a cover in a branch that is not there is named, and still holds for the whole flow', () => {
    const limits = {
      ...emptyPad().limits,
      filterRate: 0.01,
      suctionCovers: [newCover('c', { markedFlow: 0.003, branchId: 'gone' })],
    };
    const model = padModel({ ...common, limits });
    expect(codes(model.problems)).toContain('coverBranch limits/suctionCovers/0/branchId');
    expect(codes(model.problems)).toContain('filterArea limits/filterRate');
    expect(model.limits.map(({ greatestFlow }) => greatestFlow)).toEqual([0.003]);
  });
});

describe('what is worked out once', () => {
  test('the same pad gives the same model', () => {
    expect(padModel(rigPad)).toBe(padModel(rigPad));
  });

  test('an edit of the day leaves the fit and the ladder as they are', () => {
    // A pad of its own: only the last few answers are kept, and other tests ask for the example.
    const own = structuredClone(ownerPad);
    const before = padModel(own);
    const after = padModel(withValueAt(own, ['day', 'blocks', 0, 'speed'], 1300));
    expect(after).not.toBe(before);
    expect(after.fit).toBe(before.fit);
    expect(after.ladder).toBe(before.ladder);
    expect(after.limits).toBe(before.limits);
  });

  test('a change of units changes no answer', () => {
    const own = structuredClone(ownerPad);
    const metricOwn = withValueAt(own, ['units', 'preset'], 'metric');
    expect(padModel(metricOwn).fit).toBe(padModel(own).fit);
    expect(padModel(metricOwn).volume).toBe(padModel(own).volume);
  });
});

function expectSound(pad: Pad): void {
  const model = padModel(pad);
  const point = model.running?.runningAt(0.5);
  const shares = model.running?.sharesAt(1);
  const seen = [model.volume, model.problems, model.limits, model.ladder, point, shares];
  expect(numbersIn([seen, model.missing]).every((value) => !Number.isNaN(value))).toBe(true);
  const plan = model.planOf(model.blocks);
  if (plan !== null) expect(dayReport(plan).energy).toBeGreaterThanOrEqual(0);
}

describe('no pad that the definition allows makes it throw or give a number that is none', () => {
  test('whatever it holds', () => {
    fc.assert(fc.property(pads, expectSound), { numRuns: 60 });
  });

  test('nor an example with some of its numbers changed', () => {
    fc.assert(fc.property(alteredDemos, expectSound), { numRuns: 40 });
  });
});
