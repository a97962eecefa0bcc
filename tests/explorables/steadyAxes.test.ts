import { describe, expect, test } from 'vitest';
import { openingFlow, exampleScene as plumbing } from '#explorables/CircuitBuilder/example.ts';
import { createModel as createCircuit } from '#explorables/CircuitBuilder/model.ts';
import { exampleBench, openingSpeed } from '#explorables/example/filter.ts';
import { createModel as createWeeks } from '#explorables/FilterWeeks/model.ts';
import { columnsOf } from '#explorables/GaugeHead/Columns.tsx';
import { exampleStates } from '#explorables/GaugeHead/example.ts';
import { createModel as createGauges } from '#explorables/GaugeHead/model.ts';
import { examplePad, openingChoice } from '#explorables/ReadingBand/example.ts';
import { exampleFitter } from '#explorables/ReadingBand/exampleFit.ts';
import { reachOf } from '#explorables/ReadingBand/pad.ts';

/* What an axis reaches to holds whatever the reader sets, and stays the same while it is set. */
describe('axes that stand still', () => {
  test('no speed and no week takes the filter’s flow or gauge out of the picture', () => {
    const model = createWeeks(exampleBench, openingSpeed);
    const { flow, pressure } = model.reach.value;
    for (let speed = model.speed.min.value; speed <= model.speed.max.value; speed += 150) {
      model.speed.apply(speed);
      expect(model.reach.value).toEqual({ flow, pressure });
      for (const { left, held } of model.moments.value) {
        expect(left.flow).toBeLessThanOrEqual(flow);
        expect(Math.max(left.pressure, held?.pressure ?? 0)).toBeLessThanOrEqual(pressure);
      }
    }
  });

  test('no gauge reading takes a column of head out of the picture', () => {
    const model = createGauges({ states: exampleStates, density: 997 });
    const { least } = model.reach.value;
    for (const ends of [0, 1, 2, 3, 4, 5, 6, 7]) {
      Object.values(model.dials).forEach((dial, at) => {
        dial.apply((ends >> at) & 1 ? dial.max.value : dial.min.value);
      });
      const { most } = model.reach.value;
      for (const { from, to } of columnsOf(model.heads.value)) {
        expect(Math.min(from, to)).toBeGreaterThanOrEqual(least - 1e-9);
        expect(Math.max(from, to)).toBeLessThanOrEqual(most + 1e-9);
      }
      expect(model.reach.value.least).toBe(least);
    }
  });

  test('no circuit that can be built takes its curve out of the picture', () => {
    const model = createCircuit(plumbing, openingFlow);
    const most = model.greatestHead.value;
    model.lift.apply(model.lift.max.value);
    for (let build = 0; build < 2 ** plumbing.pieces.length; build += 1) {
      plumbing.pieces.forEach(({ id, least, most: all }, at) => {
        model.setCount(id, (build >> at) & 1 ? all : least);
      });
      expect(model.line.value.at(-1)?.head).toBeLessThanOrEqual(most + 1e-9);
    }
    expect(model.greatestHead.value).toBe(most);
  });

  test('no choice of notes takes a band more than a mark out of the picture', () => {
    const { reach } = exampleFitter(openingChoice);
    const ids = examplePad.lines.map(({ id }) => id);
    for (let choice = 0; choice < 4 * 2 ** ids.length; choice += 1) {
      const fitted = exampleFitter({
        ids: ids.filter((_, at) => (choice >> at) & 1),
        gauges: ((choice >> ids.length) & 1) === 1,
        slip: choice >> (ids.length + 1) === 1,
      });
      const here = reachOf(fitted.known);
      for (const answer of ['power', 'flow'] as const) {
        expect(here[answer].high).toBeLessThanOrEqual(1.01 * reach[answer].high);
        expect(here[answer].share).toBeLessThanOrEqual(1.01 * reach[answer].share);
      }
      expect(fitted.reach).toEqual(reach);
    }
  });
});
