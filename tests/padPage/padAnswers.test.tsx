import * as fc from 'fast-check';
import renderToString from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { crossedLimits } from '#core/day/limits.ts';
import { demos, lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import {
  emptyPad,
  newBranch,
  newFitting,
  newParallel,
  newPipe,
  newReading,
} from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { headPieces, hereAt, limitRows, pricesOn, rungsOf } from '#padPage/answers/figures.ts';
import { type AnswersModel, createAnswers } from '#padPage/answers/model.ts';
import { plotOf, speedFor, spotOf } from '#padPage/answers/plot.ts';
import { bandNear, type Scene, sceneOf } from '#padPage/answers/scene.ts';
import { finding } from '#padPage/answers/text.ts';
import PadAnswers from '#padPage/answers/view.tsx';
import { metric, us } from '#units/choice.ts';
import { alteredDemos, pads } from '../pad/document/arbitraryPads.ts';
import { commonPad, gpm, nameplatePad } from './padAnswersFixtures.ts';

// Checks of our own behaviour have no outside source; where one has, it stands beside it.

function sceneIn(pad: Pad): Scene {
  const scene = sceneOf(pad);
  if (scene === null) throw new Error('this pad gives no answers');
  return scene;
}

function hereIn(model: AnswersModel) {
  const here = model.here.value;
  if (here === null) throw new Error('this pad gives no answers');
  return here;
}

/** A loop whose water breaks free above the pool, as from a raised spillway. */
const liftedPad: Pad = { ...rigPad, plumbing: { ...rigPad.plumbing, staticHead: 3 } };

describe('the speed', () => {
  test('opens at the fastest rung of the ladder', () => {
    const model = createAnswers(ownerPad);
    const speeds = model.rungs.value.flatMap((rung) =>
      rung.kind === 'served' ? [rung.here.speed] : [],
    );
    expect(model.speed.value.value).toBe(Math.max(...speeds));
    // The example's own need: 48 gpm to skim.
    expect(hereIn(model).flow).toBeGreaterThanOrEqual(gpm(48));
  });

  test('stays within the pump and on its step', () => {
    const model = createAnswers(ownerPad);
    model.speed.apply(9999);
    expect(model.speed.value.value).toBe(3450);
    model.speed.apply(1);
    expect(model.speed.value.value).toBe(600);
    model.speed.apply(1234);
    expect(model.speed.value.value).toBe(1230);
  });

  test('follows the knob back to where the knob stands', () => {
    for (const pad of [ownerPad, lodgePad, rigPad, liftedPad]) {
      const scene = sceneIn(pad);
      const plot = plotOf(scene, rungsOf(scene), pad.units);
      for (const speed of [scene.speeds.least, 1250, 1900, scene.speeds.top]) {
        const back = speedFor(plot, spotOf(hereAt(scene, speed), plot));
        expect(Math.abs(back / speed - 1)).toBeLessThan(0.01);
      }
    }
  });
});

describe('what a speed gives', () => {
  test('is what pump and pipes give, with the band of the fit about it', () => {
    const scene = sceneIn(lodgePad);
    for (const speed of [925, 1400, 2333, 2900]) {
      const ratio = speed / 2900;
      const here = hereAt(scene, speed);
      const band = scene.fit.bandAt(ratio);
      for (const of of ['flow', 'head', 'power'] as const) {
        expect(here.band[of].low / band[of].low).toBeCloseTo(1, 2);
        expect(here.band[of].high / band[of].high).toBeCloseTo(1, 2);
        expect(here.band[of].low).toBeLessThanOrEqual(here[of]);
        expect(here.band[of].high).toBeGreaterThanOrEqual(here[of]);
      }
    }
  });

  test('turns the pool over in volume by flow, and filters 1 − e⁻ⁿ of it in a day', () => {
    // Gage and Bidwell 1926: after n turnovers of a mixed pool 1 − e⁻ⁿ has passed the filter.
    const scene = sceneIn(lodgePad);
    const here = hereAt(scene, 1850);
    const volume = scene.known.volume ?? 0;
    expect(here.turnover).toBeCloseTo(volume / here.flow, 6);
    expect(here.filtered).toBeCloseTo(1 - Math.exp((-86_400 * here.flow) / volume), 9);
  });

  test('has a current at a speed at which it was read, and at no other', () => {
    // The example's reading at 2900 rpm: 5 A. Amperes do not follow from watts: a drive has laws of its own.
    const scene = sceneIn(lodgePad);
    expect(hereAt(scene, 2900).current).toBe(5);
    expect(hereAt(scene, 2600).current).toBeNull();
    expect(hereAt(sceneIn(ownerPad), 2900).current).toBeNull();
  });

  test('owns up where the data sheet gives no watts for its flow', () => {
    const knowledge = {
      kind: 'curve',
      points: [
        { flow: 0, head: 22, power: 700 },
        { flow: 0.001, head: 21.5, power: 800 },
        { flow: 0.012, head: 5, power: null },
      ],
    } as const;
    const pad = { ...ownerPad, pump: { ...ownerPad.pump, knowledge }, readings: [] };
    const scene = sceneIn({
      ...pad,
      pump: { ...pad.pump, knowledge: { ...knowledge, points: [...knowledge.points] } },
    });
    const here = hereAt(scene, 3450);
    expect(here.isPowerCarried).toBe(true);
    expect(finding(here, scene, us)).toContain(
      'The data sheet gives no watts for this flow: those of its nearest point are taken.',
    );
    expect(hereAt(sceneIn(ownerPad), 2900).isPowerCarried).toBe(false);
  });

  test('costs between the cheapest and the dearest price of the day', () => {
    const { tariff } = sceneIn(ownerPad).known;
    if (tariff === null) throw new Error('the example has a tariff');
    // A Wednesday in July and a Sunday in July, by the example's own prices.
    const wednesday = pricesOn(tariff, { year: 2027, month: 7, day: 14 });
    expect(wednesday).toEqual({ low: 0.18, high: 0.49, currency: '$' });
    const sunday = pricesOn(tariff, { year: 2027, month: 7, day: 18 });
    expect(sunday).toEqual({ low: 0.2, high: 0.34, currency: '$' });
  });

  test('is none, with the reason, where the pump does not reach the lift', () => {
    const scene = sceneIn(liftedPad);
    const here = hereAt(scene, 700);
    expect(here.flow).toBe(0);
    expect(here.turnover).toBeNull();
    expect(headPieces(scene, here)).toEqual([]);
  });
});

describe('the ladder', () => {
  test('has the fastest rung on top and serves every need at the speed it names', () => {
    for (const { pad } of demos) {
      const rungs = rungsOf(sceneIn(pad));
      const speeds = rungs.flatMap((rung) => (rung.kind === 'served' ? [rung.here.speed] : []));
      expect(speeds).toEqual(speeds.toSorted((a, b) => b - a));
      for (const rung of rungs) {
        if (rung.kind !== 'served') throw new Error('every example serves every need');
        expect(rung.here.flow).toBeGreaterThanOrEqual(rung.need.leastFlow * (1 - 1e-9));
      }
    }
  });

  test('rounds up to a speed that can be set where the step is not known', () => {
    for (const rung of rungsOf(sceneIn(commonPad))) {
      if (rung.kind !== 'served') throw new Error('both needs are within reach');
      expect(rung.here.speed % 10).toBe(0);
      expect(rung.here.flow).toBeGreaterThanOrEqual(rung.need.leastFlow);
    }
  });
});

describe('a limit', () => {
  test('is kept at the speed named and crossed one step above it', () => {
    for (const { pad } of demos) {
      const scene = sceneIn(pad);
      for (const { limit, crossed, keeps } of limitRows(scene)) {
        if (crossed !== 'above' || keeps === null) continue;
        const flowAt = (speed: number) => hereAt(scene, speed).flow;
        expect(crossedLimits([limit], flowAt(keeps))).toEqual([]);
        expect(crossedLimits([limit], flowAt(keeps + scene.step))).toEqual([limit]);
      }
    }
  });

  test('is surely kept where even the upper end of the band keeps it', () => {
    const scene = sceneIn(ownerPad);
    for (const { limit, surelyKeeps, keeps } of limitRows(scene)) {
      if (surelyKeeps === null || surelyKeeps === 0) continue;
      if (keeps !== null) expect(surelyKeeps).toBeLessThanOrEqual(keeps);
      const { high } = hereAt(scene, surelyKeeps).band.flow;
      expect(high).toBeLessThanOrEqual(limit.greatestFlow * 1.001);
    }
  });

  test('comes first where it is a hard stop', () => {
    for (const { pad } of demos) expect(limitRows(sceneIn(pad))[0]?.limit.hard).toBe(true);
  });
});

describe('where the head goes', () => {
  test('adds up to the head of the pump, through branches and with a lift', () => {
    // Energy balance of the loop: what the pump gives, the parts and the lift take.
    const nested: Pad = {
      ...rigPad,
      plumbing: {
        ...rigPad.plumbing,
        staticHead: 1,
        discharge: [
          ...rigPad.plumbing.discharge,
          newParallel('outer', {
            branches: [
              newBranch('raised', {
                lift: 0.4,
                sections: [newPipe('up', { sizeId: 'sch40-1.5', length: 4 })],
              }),
              newBranch('level', {
                sections: [
                  newPipe('along', { sizeId: 'sch40-1.5', length: 3 }),
                  newParallel('inner', {
                    branches: [
                      newBranch('one', {
                        sections: [newPipe('i1', { sizeId: 'sch40-1', length: 5 })],
                      }),
                      newBranch('two', {
                        sections: [newFitting('i2', 'elbow90', { sizeId: 'sch40-1' })],
                      }),
                    ],
                  }),
                ],
              }),
            ],
          }),
        ],
      },
    };
    for (const pad of [ownerPad, lodgePad, rigPad, liftedPad, nested]) {
      const scene = sceneIn(pad);
      const here = hereAt(scene, 2400);
      const pieces = headPieces(scene, here);
      const sum = pieces.reduce((total, { head }) => total + head, 0);
      expect(sum / here.head).toBeCloseTo(1, 6);
      expect(pieces.length).toBeLessThanOrEqual(10);
    }
  });

  test('what readings show beyond the description is a piece of its own', () => {
    const shut = (times: number): Pad => ({
      ...ownerPad,
      readings: ownerPad.readings.map((reading) => ({
        ...reading,
        filterPressure: (reading.filterPressure ?? 0) * times,
      })),
    });
    const whats = (pad: Pad) =>
      headPieces(sceneIn(pad), hereAt(sceneIn(pad), 2400)).map(({ what }) => what);
    expect(whats(shut(1.2))).toContain('dischargeLacking');
  });
});

describe('a pad that is only begun', () => {
  test('gives no answers while it is empty, and says the least it needs', () => {
    const html = renderToString(<PadAnswers first={emptyPad()} />);
    expect(createAnswers(emptyPad()).here.value).toBeNull();
    expect(html).toContain('its rated power and its rated speed');
    expect(html).not.toContain('class="plot');
    expect(html).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('gives a first answer from the nameplate alone', () => {
    const model = createAnswers(nameplatePad);
    const { flow, power, band } = hereIn(model);
    expect(flow).toBeGreaterThan(0);
    expect(power).toBeGreaterThan(0);
    expect(band.flow.high / band.flow.low).toBeGreaterThan(1.3);
  });

  test('gives a sensible ladder from nameplate, one gauge and the watts', () => {
    const model = createAnswers(commonPad);
    const [skim, filter] = model.rungs.value;
    if (skim?.kind !== 'served' || filter?.kind !== 'served') throw new Error('both are in reach');
    // Affinity laws: half the flow along a closed loop takes half the speed, give or take the step
    // and what turbulent friction bends (fitted losses here go as the square).
    expect(filter.here.speed / skim.here.speed).toBeCloseTo(0.5, 1);
    // Between the readings the watts lie between those read: 250 W at 1725 rpm, 1650 W at 3450.
    const middle = hereAt(sceneIn(commonPad), 2400);
    expect(middle.power).toBeGreaterThan(250);
    expect(middle.power).toBeLessThan(1650);
    // The drive's watts bind the band on power far closer than a nameplate does.
    const width = (pad: Pad) => {
      const { low, high } = hereAt(sceneIn(pad), 3450).band.power;
      return high / low;
    };
    expect(width(commonPad)).toBeLessThan(width(nameplatePad));
  });
});

describe('any pad at all', () => {
  const shown = (pad: Pad) => renderToString(<PadAnswers first={pad} />);

  test('is answered or said to be too little, and never with a number that is none', () => {
    fc.assert(
      fc.property(fc.oneof(alteredDemos, pads), (pad) => {
        expect(shown(pad)).not.toMatch(/NaN|undefined|Infinity/);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the page before any script has run', () => {
  test('shows the default pad: numbers, ladder, limits, shares and how they are known', () => {
    const html = renderToString(<PadAnswers />);
    const model = createAnswers(ownerPad);
    expect(html).toContain(`aria-valuenow="${model.speed.value.value}"`);
    for (const words of [
      'Skim the surface',
      'Gas heater',
      'Floor cover, left',
      'Cartridge filter',
    ]) {
      expect(html).toContain(words);
    }
    expect(model.rungs.value).toHaveLength(4);
    expect(html.match(/aria-pressed="true"/g)).toHaveLength(1);
    expect(html).toContain('What to read next');
    expect(html).not.toContain('What is still missing');
  });

  test('has one polite live region, and it speaks nothing yet', () => {
    const html = renderToString(<PadAnswers />);
    expect(html.match(/role="status"/g)).toHaveLength(1);
    expect(html).toContain('role="status"></p>');
  });

  test('changes its units and not its answers', () => {
    const inMetric = createAnswers({ ...ownerPad, units: metric });
    expect(hereIn(inMetric)).toEqual(hereIn(createAnswers(ownerPad)));
  });
});

describe('the band between two speeds worked out', () => {
  test('reaches from none to what a stronger pump would move, where none moves', () => {
    const scene = sceneIn({
      ...liftedPad,
      readings: [newReading('only', { speed: 3450, power: 1190 })],
    });
    const ratio = 800 / 3450;
    const at = { flow: 0, head: 1, power: 40 };
    expect(bandNear(scene, ratio, at).flow.low).toBe(0);
    expect(bandNear(scene, ratio, at).flow.high).toBeGreaterThanOrEqual(0);
  });
});
