import { describe, expect, test } from 'vitest';
import { roundedDynamicHead } from '#core/fit/gauges.ts';
import { water } from '#core/water/water.ts';
import { columnsOf } from '#explorables/GaugeHead/Columns.tsx';
import { tipOf, turnOf, valueAtTurn } from '#explorables/GaugeHead/drawing.ts';
import { exampleStates, exampleTemperature } from '#explorables/GaugeHead/example.ts';
import { createModel, headsOf } from '#explorables/GaugeHead/model.ts';
import { gaugesOf, takePad } from '#explorables/GaugeHead/own.ts';
import { flowText, roundedNote, sentence, table } from '#explorables/GaugeHead/text.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { rigPad } from '#pad/demos/demoRig.ts';
import { referenceCases } from '../core/referenceCases.ts';

// NIST SP 811, B.8.
const foot = 0.3048;
const psi = 4.4482216152605 / 0.0254 ** 2;
const inHg = 3386.389;

const model = () =>
  createModel({ states: exampleStates, density: water(exampleTemperature).density });

/** The reference cases of two gauges on pipe of one bore. */
const pairs = referenceCases('hydraulics-conversions').filter(
  ({ what, inputs }) => what === 'TDH from gauges' && inputs['flow_gpm'] === undefined,
);

describe('head from two gauges', () => {
  test.each(pairs)('$inputs.discharge_psi psi and $inputs.vacuum_inhg inHg', (pair) => {
    // Reference hydraulics-conversions.json: NIST SP 811 units, IAPWS density; trade factors beside.
    const { inputs, expected } = pair;
    const values = {
      filterPressure: Number(inputs['discharge_psi']) * psi,
      suctionVacuum: Number(inputs['vacuum_inhg']) * inHg,
      gaugeHeight: Number(inputs['gauge_height_difference_ft']) * foot,
    };
    const heads = headsOf(values, Number(inputs['density_kg_m3']));
    expect(heads.total / foot).toBeCloseTo(expected['total_dynamic_head_ft'] as number, 4);
    expect(heads.rounded / foot).toBeCloseTo(expected['with_trade_factors_ft'] as number, 6);
    expect(heads.vacuum + heads.height + heads.pressure).toBeCloseTo(heads.total, 12);
  });

  test('the rounded factors take no notice of the weight of the water', () => {
    // Common practice: 10 psi is 23.1 ft, 10 inHg is 11.3 ft.
    const pair = { dischargePressure: 10 * psi, suctionVacuum: 10 * inHg, gaugeHeight: 0 };
    for (const density of [958, 998.2]) {
      expect(roundedDynamicHead({ ...pair, density }) / foot).toBeCloseTo(34.4, 9);
    }
    expect(() => roundedDynamicHead({ ...pair, density: 998, gaugeHeight: 60 })).toThrow(
      'gaugeHeight',
    );
  });
});

describe('the gauges of the example', () => {
  const by = (id: string) => {
    const state = exampleStates.find((one) => one.id === id);
    if (state === undefined) throw new Error(`no state ${id}`);
    return { ...state, flow: state.flow ?? 0 };
  };

  test('every trouble moves less water, and the gauges move as a pad’s do', () => {
    // Facts of the trade; common practice, no source.
    const clean = by('clean');
    for (const id of ['loaded', 'valve', 'basket']) expect(by(id).flow).toBeLessThan(clean.flow);
    for (const id of ['loaded', 'valve']) {
      expect(by(id).filterPressure).toBeGreaterThan(clean.filterPressure);
      expect(by(id).suctionVacuum).toBeLessThan(clean.suctionVacuum);
    }
    expect(by('basket').suctionVacuum).toBeGreaterThan(clean.suctionVacuum);
    expect(by('basket').filterPressure).toBeLessThan(clean.filterPressure);
    // No vacuum is deeper than the air is heavy: 101.325 kPa at the sea, ISO 2533.
    for (const state of exampleStates) expect(state.suctionVacuum).toBeLessThan(60_000);
  });

  test('a needle moved by hand leaves the state and the flow open; Reset brings both back', () => {
    const one = model();
    expect(sentence(one)).toMatch(/The flow is then \d+\sgpm\.$/);
    one.pick('loaded');
    // Read to a tenth of a psi.
    const pounds = one.dials.filterPressure.value.value / psi;
    expect(pounds).toBeCloseTo(Math.round(pounds * 10) / 10, 9);
    expect(pounds).toBeCloseTo(by('loaded').filterPressure / psi, 0);
    const vacuum = one.dials.suctionVacuum.value.value;
    one.dials.filterPressure.apply(20 * psi);
    expect(one.dials.filterPressure.value.value / psi).toBeCloseTo(20, 9);
    expect(one.dials.suctionVacuum.value.value).toBe(vacuum);
    expect(one.picked.value).toBeUndefined();
    expect(flowText(one)).toBe('not known');
    expect(sentence(one)).toMatch(/The gauges alone do not say how much water moves\.$/);
    one.reset();
    expect(one.picked.value?.id).toBe('clean');
  });

  test('a gauge set lower takes its height off, and the column steps down', () => {
    const one = model();
    one.dials.gaugeHeight.apply(-1 * foot);
    const [, height, filter] = columnsOf(one.heads.value);
    expect(height?.head).toBeCloseTo(-foot, 9);
    expect((height?.to ?? 0) - (height?.from ?? 0)).toBeCloseTo(-foot, 9);
    expect(filter?.to).toBeCloseTo(one.heads.value.total, 9);
  });

  test('both gauges at zero and level: no head, and nothing divided by it', () => {
    const one = model();
    for (const dial of Object.values(one.dials)) dial.apply(0);
    expect(one.heads.value.total).toBe(0);
    expect(roundedNote(one)).toBe('');
    expect(sentence(one)).not.toMatch(/NaN|Infinity/);
  });

  test('the table holds every state', () => {
    expect(table(model()).rows.map(([name]) => name)).toEqual([
      'All clean',
      'Filter loaded',
      'Return valve nearly shut',
      'Basket full',
    ]);
  });
});

describe('the reader’s own gauges', () => {
  test('readings with both gauges stand to choose from; 10.7 psi, 5.5 inHg and 2 ft are 32.9 ft', () => {
    // By the trade's factors: 2.31 x 10.7 + 1.13 x 5.5 + 2 = 32.93 ft; at 20 degC within 0.2 %.
    const one = model();
    takePad(one, rigPad);
    one.source.value = 'mine';
    expect(one.scene.value.states.map(({ label }) => label)).toEqual(['3450 rpm', '1725 rpm']);
    expect(one.heads.value.total / foot).toBeCloseTo(32.9, 0);
    expect(one.heads.value.rounded / foot).toBeCloseTo(32.932, 3);
    expect(flowText(one)).toMatch(/^88\sgpm$/);
  });

  test('what was set by hand stays with the pad it was set on', () => {
    const one = model();
    takePad(one, rigPad);
    one.dials.filterPressure.apply(30 * psi);
    one.source.value = 'mine';
    expect(one.dials.filterPressure.value.value / psi).toBeCloseTo(10.7, 9);
    one.source.value = 'example';
    expect(one.dials.filterPressure.value.value / psi).toBeCloseTo(30, 9);
  });

  test('without a vacuum gauge the switch stays away', () => {
    expect(gaugesOf(ownerPad)).toBeUndefined();
  });
});

describe('the drawn needle', () => {
  test('points where it is dragged to, and stops at the ends of its scale', () => {
    for (const value of [0, 13, 30, 47, 60]) {
      const { x, y } = tipOf(0, 0, turnOf(value, 0, 60));
      expect(valueAtTurn(x, y, 0, 60)).toBeCloseTo(value, 9);
    }
    // Straight down is nearer to neither end; a little to the left of it is the lowest mark.
    expect(valueAtTurn(-1, 20, 0, 60)).toBe(0);
    expect(valueAtTurn(1, 20, 0, 60)).toBe(60);
  });
});
