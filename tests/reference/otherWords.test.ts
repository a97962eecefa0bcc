import { describe, expect, it } from 'vitest';
import { checkInvented as check } from './inventedCase.ts';
import { parseKey } from './keys.ts';
import { clashes } from './names.ts';
import { rootOf } from './root.ts';

/*
 * Cases worded otherwise than those of the set. Expected values are worked by hand from the law or
 * the definition named, with factors of NIST SP 811; the cheapest days by the sum written beside.
 */

describe('names and units in other words', () => {
  it('no spelling stands for two things', () => expect(clashes).toEqual([]));

  it.each([
    ['low_flow_gpm', 'flowLow', 'flow'],
    ['maximum_flow_gal_per_min', 'greatestFlow', 'flow'],
    ['least_volume_us_gal', 'leastVolume', 'volume'],
    ['velocity_ft_per_s', 'velocity', 'velocity'],
    ['length_feet', 'length', 'length'],
    ['hours_needed', 'leastTime', 'time'],
    ['shortest_run_minutes', 'shortestRun', 'time'],
    ['prices_per_kwh', 'price', 'price'],
    ['pressure_loss_psi_per_100_ft', 'pressureGradient', 'pressureGradient'],
  ])('%s is %s', (raw, id, dimension) => {
    const key = parseKey(raw);
    expect([key?.id, key?.unit.dimension, key?.raw]).toEqual([id, dimension, raw]);
  });

  it.each(['per_hour', 'flow_per_moon', 'max', 'us'])('%s stays unknown', (raw) =>
    expect(parseKey(raw)).toBeUndefined(),
  );

  it('an input of null is none at all', () => {
    const inputs = { turnovers: 2, filter_efficiency: null };
    expect(check('mixing', inputs, { share: 1 - Math.exp(-2) })).toBe('passed');
  });

  it('kelvin is not a degree Celsius', () => {
    expect(check('conversions', { temperature_c: 25 }, { temperature_k: 298.15 })).toBe('passed');
  });
});

describe('hours and days', () => {
  it('hours a day on so many days', () => {
    const price = { power_w: 500, price_per_kwh: 0.2 };
    const expected = { energy_kwh: 120, cost: 24 };
    for (const time of [{ hours: 8 }, { hours_per_day: 8 }])
      expect(check('electricity', { ...price, ...time, days: 30 }, expected)).toBe('passed');
  });

  it('days alone are a time', () => {
    expect(check('electricity', { power_w: 500, days: 2 }, { energy_kwh: 24 })).toBe('passed');
  });
});

describe('rules asked the other way round', () => {
  it('finds the one root there is', () => {
    expect(rootOf((x) => x ** 3 - 8)).toBeCloseTo(2, 12);
    expect(rootOf((x) => 1 / x - 1e6)).toBeCloseTo(1e-6, 15);
  });

  it('finds none where there is none, or two', () => {
    expect(rootOf((x) => x + 1)).toBeUndefined();
    expect(rootOf((x) => (x - 1) * (x - 100))).toBeUndefined();
  });

  it.each([
    ['affinity', { speed_1_rpm: 3000, flow_1_gpm: 60, flow_2_gpm: 20 }, { speed_2_rpm: 1000 }],
    ['mixing', { volume_m3: 60, hours: 8 }, { flow_m3_h: 7.5 }],
    ['chlorine', { volume_m3: 50, mass_g: 100 }, { rise_mg_l: 2 }],
    ['electricity', { power_w: 1000, shaft_power_w: 780 }, { efficiency_percent: 78 }],
    [
      'velocity',
      { flow_m3_s: Math.PI / 1000, velocity_m_s: 1 },
      { inside_diameter_mm: Math.sqrt(0.004) * 1000 },
    ],
  ])('%s: %o', (quantity, inputs, expected) => {
    expect(check(quantity, inputs, expected)).toBe('passed');
  });

  it('a wrong value is still a miss', () => {
    expect(check('mixing', { volume_m3: 60, hours: 8 }, { flow_m3_h: 8 })).toBe('got [7.5]');
  });
});

describe('rules that share the inputs', () => {
  const pipe = { flow_m3_s: Math.PI / 4000, inside_diameter_m: Math.sqrt(0.001) };

  it('each value from its own rule', () => {
    // 1 m/s; K V²/2g with g 9.80665.
    const expected = { velocity_m_s: 1, head_loss_m: 2.5 / (2 * 9.80665) };
    expect(check('fittings', { ...pipe, k: 2.5 }, expected)).toBe('passed');
  });

  it('but none may be left unused', () => {
    expect(
      check('fittings', { ...pipe, turnovers: 3 }, { velocity_m_s: 1, velocity_head_m: 0.05 }),
    ).toContain('skipped');
  });
});

describe('what looks alike', () => {
  const turbulent = { friction_factor_turbulent: 0.02 };

  it.each([
    // Crane TP-410 page A-29, from memory but for r/D = 3.
    ['90 deg bend r/D = 3', 0.24],
    ['90 deg bend r/D = 6', 0.34],
    ['45 deg mitre bend', 0.3],
    ['45 deg elbow', 0.32],
    ['foot valve with strainer, hinged disc', 1.5],
    ['plug valve, straightway', 0.36],
    ['three-way plug valve, straight', 0.6],
    ['rounded inlet r/d = 0.06', 0.15],
    ['rounded inlet', 0.04],
    ['bell-mouth inlet', 0.05],
  ])('%s', (fitting, k) => {
    expect(check('fittings', { fitting, ...turbulent }, { k })).toBe('passed');
  });

  it.each(['slightly rounded inlet', 'angle valve, 55 f_T pattern', '50 deg mitre bend'])(
    '%s is not taken for another one',
    (fitting) => {
      expect(check('fittings', { fitting, ...turbulent }, { k: 1 })).not.toMatch(/^got|^passed/);
    },
  );

  it('K of a change of bore on the velocity the case names', () => {
    // Borda and Carnot: (1 - 1/4)² on the smaller bore of 1 in 2, times 2⁴ on the larger.
    const inputs = { diameter_1_mm: 20, diameter_2_mm: 40 };
    const on = (what: string, k: number) => check('fittings', inputs, { k }, { what });
    expect(on('sudden enlargement, K on the smaller bore', 0.5625)).toBe('passed');
    expect(on('sudden enlargement, K on the larger bore', 9)).toBe('passed');
  });

  it('three phases are not one', () => {
    const inputs = { voltage_v: 400, current_a: 3, power_factor: 0.8 };
    expect(check('electricity', inputs, { power_w: 960 })).toBe('passed');
    // sqrt(3) x 400 x 3 x 0.8
    const three = { power_w: 960 * Math.sqrt(3) };
    expect(check('electricity', inputs, three, { what: 'three-phase power' })).toBe('passed');
    expect(check('electricity', { ...inputs, phases: 3 }, three)).toBe('passed');
  });
});

describe('cheapest days in other words', () => {
  // Two speeds: 20 gal/min at 100 W and 40 at 400 W; a day of 12 cheap hours and 12 dear ones.
  const speeds = [
    { name: 'low', flow_gpm: 20, power_w: 100 },
    { name: 'high', flow_gpm: 40, power_w: 400 },
  ];
  const price_per_kwh = Array.from({ length: 24 }, (_, hour) => (hour < 12 ? 0.1 : 0.4));
  const cheapest = 'cheapest day on an hourly grid';
  const base = { speeds, price_per_kwh };

  it('turnovers, bands, and a pump that may not stop', () => {
    // 12 000 gal are 10 of the cheap hours at low.
    const volume = { volume_gal: 8000, min_turnovers: 1.5 };
    expect(check(cheapest, { ...base, ...volume }, { cost: 0.1, energy_kwh: 1 })).toBe('passed');
    const tariff = [
      { start: '12:00', end: '24:00', price_per_kwh: 0.4 },
      { start: '00:00', end: '12:00', price_per_kwh: 0.1 },
    ];
    expect(check(cheapest, { speeds, tariff, ...volume }, { cost: 0.1 })).toBe('passed');
    // Never off: 24 hours at low, 1.2 x 0.1 + 1.2 x 0.4.
    expect(check(cheapest, { ...base, ...volume, may_stop: false }, { cost: 0.6 })).toBe('passed');
  });

  it.each([
    { windows: [{ start: '13:00', end: '15:00' }] },
    { windows: [[13, 15]] },
    { windows: ['13:00', '15:00'] },
    { start: '13:00', end: '15:00' },
    { from_hour: 13, to_hour: 15 },
    { allowed_hours: [13, 14] },
  ])('a need within %o', (window) => {
    const needs = { name: 'spa', min_flow_gpm: 30, hours_needed: 2, ...window };
    // Two dear hours at high, 0.8 kWh at 0.4.
    expect(check(cheapest, { ...base, needs }, { cost: 0.32, hours_off: 22 })).toBe('passed');
  });

  it('a shortest run takes a dear hour where only one cheap hour is open', () => {
    const need = { min_flow_gpm: 30, min_hours: 2, hours: [5, 11, 12] };
    // Apart both hours are cheap, 0.8 kWh at 0.1; together one is dear, 0.4 at 0.1 and 0.4 at 0.4.
    expect(check(cheapest, { ...base, needs: [need] }, { cost: 0.08 })).toBe('passed');
    for (const run of [{ min_run_hours: 2 }, { shortest_run_minutes: 120 }, { in_one_run: true }])
      expect(check(cheapest, { ...base, needs: [{ ...need, ...run }] }, { cost: 0.2 })).toBe(
        'passed',
      );
  });

  it('quiet hours by speed, by flow, or with the pump off', () => {
    const need = { min_flow_gpm: 30, min_hours: 1, hours: [3, 20] };
    const hours = [1, 2, 3];
    for (const limit of [{ max_speed: 'low' }, { max_flow_gpm: 25 }, { off: true }])
      expect(
        check(cheapest, { ...base, needs: [need], quiet: { hours, ...limit } }, { cost: 0.16 }),
      ).toBe('passed');
  });

  it('what is missing, what more would cost and what binds', () => {
    const capped = { ...base, max_flow_gpm: 20, min_volume_gal: 30_000 };
    // 24 hours at low move 28 800 gal.
    expect(
      check(cheapest, capped, {
        feasible: false,
        cost: null,
        shortfall_gal: 1200,
        greatest_volume_gal: 28_800,
      }),
    ).toBe('passed');
    const need = { name: 'spa', min_flow_gpm: 30, min_hours: 1, hours: [13, 14] };
    const served = { ...base, min_volume_gal: 6000, needs: [need] };
    // The hour of the spa moves 2400 gal for 0.16, three cheap hours at low the rest; another hour
    // of it takes 0.16 and saves two of those; without the spa five cheap hours do.
    const expected = {
      cost: 0.19,
      cost_of_one_more_hour: 0.14,
      cost_of_need: 0.14,
      binding: ['volume', 'spa'],
      hours_per_speed: { low: 3, high: 1, off: 20 },
    };
    expect(check(cheapest, served, expected)).toBe('passed');
    expect(check(cheapest, served, { hours_per_speed: { low: 3 } })).toContain('got');
  });

  it('a finer grid where the case states one', () => {
    // 1800 gal are an hour and a half at low: two hours, or three halves.
    const asked = { ...base, min_volume_gal: 1800 };
    expect(check(cheapest, asked, { cost: 0.02 })).toBe('passed');
    expect(check(cheapest, { ...asked, slot_minutes: 30 }, { cost: 0.015 })).toBe('passed');
  });
});
