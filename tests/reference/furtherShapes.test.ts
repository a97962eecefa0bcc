import { describe, expect, it } from 'vitest';
import { checkInvented as check } from './inventedCase.ts';

/*
 * Further shapes of cases. Expected values are worked by hand beside each from the law or definition
 * named, with factors of NIST SP 811 (gallon 3.785411784 L, foot 0.3048 m).
 */

const gallon = 3.785411784e-3;
const foot = 0.3048;
const gravity = 9.80665;

describe('shapes of pools', () => {
  // Plane geometry.
  it.each([
    [{ shape: 'L', length_m: 8, width_m: 6, cut_length_m: 3, cut_width_m: 2, depth_m: 1.5 }, 63],
    [
      { shape: 'L-shape', length_1_m: 8, width_1_m: 4, length_2_m: 3, width_2_m: 2, depth_m: 1 },
      38,
    ],
    [{ shape: 'triangle', base_m: 6, height_m: 4, depth_m: 1 }, 12],
    [{ shape: 'triangle', side_1_m: 3, side_2_m: 4, side_3_m: 5, depth_m: 2 }, 12],
    [{ shape: 'trapezoid', side_1_m: 4, side_2_m: 6, height_m: 3, depth_m: 1 }, 15],
    [{ shape: 'half circle', diameter_m: 6, depth_m: 1 }, (Math.PI * 9) / 2],
    [{ shape: 'semicircle', radius_m: 3, depth_m: 1 }, (Math.PI * 9) / 2],
    [{ shape: 'quarter circle', radius_m: 3, depth_m: 1 }, (Math.PI * 9) / 4],
    [{ shape: 'hexagon', side_m: 2, depth_m: 1 }, 6 * Math.sqrt(3)],
    [{ shape: 'regular polygon', sides: 6, radius_m: 2, depth_m: 1 }, 6 * Math.sqrt(3)],
    [{ shape: 'octagon', across_flats_m: 2, depth_m: 1 }, 8 * (Math.SQRT2 - 1)],
    [
      {
        shape: 'polygon',
        corners_m: [
          [0, 0],
          [4, 0],
          [0, 3],
        ],
        depth_m: 2,
      },
      12,
    ],
    [
      {
        vertices: [
          [0, 0],
          [4, 0],
          [0, 3],
        ],
        depth_m: 2,
      },
      12,
    ],
    [
      {
        shape: 'polygon',
        points: [
          [0, 0],
          [400, 0],
          [0, 300],
        ],
        units: 'cm',
        depth_m: 2,
      },
      12,
    ],
    [
      {
        corner_points: [
          { x_m: 0, y_m: 0 },
          { x_m: 4, y_m: 0 },
          { x_m: 0, y_m: 3 },
        ],
        depth_m: 2,
      },
      12,
    ],
    [{ shape: 'polygon', x_m: [0, 4, 0], y_m: [0, 0, 3], depth_m: 2 }, 12],
    [{ shape: 'rectangle', length_m: 8, width_m: 4, depths_m: [1, 2] }, 48],
    [{ shape: 'rectangle', length_m: 8, width_m: 4, min_depth_m: 1, max_depth_m: 2 }, 48],
    [{ area_m2: 32, shallow_end_m: 1, deep_end_m: 2 }, 48],
    // Where the way the floor falls is not said, area times the mean depth.
    [{ shape: 'triangle', base_m: 6, height_m: 4, shallowest_m: 1, deepest_m: 2 }, 18],
  ])('%o', (inputs, volume_m3) => {
    expect(check('pool volume', inputs, { volume_m3 })).toBe('passed');
  });

  it('corners in feet, gallons out', () => {
    const inputs = {
      shape: 'polygon',
      vertices: [
        [0, 0],
        [30, 0],
        [30, 10],
        [0, 10],
      ],
      depth_ft: 4,
    };
    const volume_gal = (1200 * foot ** 3) / gallon;
    expect(check('pool volume', inputs, { volume_gal })).toBe('passed');
  });

  it('mean of two depths', () =>
    expect(
      check('pool volume', { shallow_depth_ft: 3, deep_depth_ft: 8 }, { average_depth_ft: 5.5 }),
    ).toBe('passed'));

  it('what does not fix a shape stays unknown', () => {
    const inputs = { shape: 'octagon', diameter_m: 2, depth_m: 1 };
    expect(check('pool volume', inputs, { volume_m3: 3 })).toContain('skipped');
  });
});

describe('days, blocks and money', () => {
  const speeds = [
    { rpm: 1200, flow_gpm: 20, power_w: 100 },
    { rpm: 2400, flow_gpm: 40, power_w: 800 },
  ];

  it.each([
    {
      blocks: [
        ['22:00', '06:00', 1200],
        ['13:00', '15:00', 2400],
      ],
    },
    {
      blocks: [
        [22, 6, 1200],
        [13, 15, 2400],
      ],
    },
    {
      blocks: [
        ['22:00-06:00', 1200],
        ['13:00-15:00', 2400],
      ],
    },
    {
      blocks: [
        [8, 1200],
        [2, 2400],
      ],
    },
    {
      blocks: [
        { hours: 8, rpm: 1200 },
        { hours: 2, rpm: 2400 },
      ],
    },
    { hours_by_speed: { 1200: 8, 2400: 2 } },
  ])('%o', (day) => {
    // 8 x 0.1 + 2 x 0.8 kWh; 480 x 20 + 120 x 40 gal.
    const expected = { energy_kwh: 2.4, volume_gal: 14_400 };
    expect(check('electricity', { ...day, speeds }, expected)).toBe('passed');
    const money = { cost_cents: 48, cost_per_week: 3.36, weekly_cost_usd: 3.36 };
    expect(check('electricity', { ...day, speeds, price_per_kwh: 0.2 }, money)).toBe('passed');
    const season = { season_days: 150, price_cents_per_kwh: 20 };
    expect(check('electricity', { ...day, speeds, ...season }, { season_cost: 72 })).toBe('passed');
    const pool = { ...day, speeds, volume_gal: 14_400 };
    expect(check('mixing', pool, { turnovers: 1, share: 1 - Math.exp(-1) })).toBe('passed');
  });

  it('bands of the clock want blocks of the clock', () => {
    const tariff = [
      { start: '00:00', end: '12:00', price_per_kwh: 0.1 },
      { start: '12:00', end: '24:00', price_per_kwh: 0.5 },
    ];
    const placed = {
      blocks: [
        [22, 6, 1200],
        [13, 15, 2400],
      ],
      speeds,
      tariff,
    };
    // 0.2 kWh before midnight and 1.6 after noon at 0.5, 0.6 at 0.1.
    expect(check('electricity', placed, { cost: 0.96 })).toBe('passed');
    const loose = {
      blocks: [
        [8, 1200],
        [2, 2400],
      ],
      speeds,
      tariff,
    };
    expect(check('electricity', loose, { cost: 0.96 })).toContain('skipped');
  });

  it('blocks by the cube law', () => {
    const law = { reference_speed_rpm: 3000, fixed_power_w: 50, cube_power_w: 1000 };
    // 10 h at half speed: 50 + 1000 / 8 W.
    const inputs = { ...law, blocks: [['20:00', '06:00', 1500]] };
    expect(check('electricity', inputs, { energy_kwh: 1.75 })).toBe('passed');
  });

  it('a steady power by the week, season, year and hour', () => {
    const inputs = { power_w: 500, hours_per_day: 8, price_per_kwh: 0.25 };
    const expected = { cost_per_week: 7, cost_usd_per_year: 365, energy_kwh_per_week: 28 };
    expect(check('electricity', inputs, expected)).toBe('passed');
    const season = { season_cost_pence: 12_000 };
    expect(check('electricity', { ...inputs, season_days: 120 }, season)).toBe('passed');
    const hour = { power_w: 1500, price_per_kwh: 0.2 };
    expect(check('electricity', hour, { cost_per_hour: 0.3 })).toBe('passed');
  });

  it('hours and energy at one speed of the cheapest day', () => {
    const named = [
      { name: 'low', flow_gpm: 20, power_w: 100 },
      { name: '2400', flow_gpm: 40, power_w: 400 },
    ];
    const price_per_kwh = Array.from({ length: 24 }, () => 0.1);
    const needs = [{ min_flow_gpm: 30, min_hours: 2, hours: [13, 14] }];
    // Two hours at 2400 move 4800 gal; six at low move the other 7200.
    const inputs = { speeds: named, price_per_kwh, needs, min_volume_gal: 12_000 };
    const expected = { hours_at_2400: 2, minutes_at_low: 360, energy_kwh_at_2400_rpm: 0.8 };
    const cheapest = 'cheapest day on an hourly grid';
    expect(check(cheapest, inputs, expected)).toBe('passed');
    expect(check(cheapest, inputs, { hours_at_900: 2 })).toContain('skipped');
    expect(check(cheapest, inputs, { cost_cents: 14 })).toBe('passed');
  });
});

describe('conditions that keys spell', () => {
  it.each([
    ['affinity', { speed_rpm: 3450, flow_gpm: 80 }, { flow_gpm_at_1725_rpm: 40 }],
    ['affinity', { power_w_at_3000_rpm: 1600 }, { power_w_at_1500_rpm: 200 }],
    ['mixing', { volume_m3: 60, flow_m3_h: 10 }, { share_after_6_h: 1 - Math.exp(-1) }],
    [
      'velocity',
      { inside_diameter_m: Math.sqrt(0.004 / Math.PI) },
      { velocity_m_s_at_1_l_s: 1, velocity_m_s_at_2_l_s: 2 },
    ],
  ])('%s: %o', (quantity, inputs, expected) => {
    expect(check(quantity, inputs, expected)).toBe('passed');
  });

  it('one that no rule knows is not passed over', () => {
    const inputs = { volume_m3: 60, flow_m3_h: 10 };
    expect(check('mixing', inputs, { turnover_hours_at_noon: 6 })).toContain('skipped');
  });
});

describe('turnovers and hours', () => {
  it.each([
    [
      { hours: 8, turnover_hours: 6 },
      { turnovers: 4 / 3, share: 1 - Math.exp(-4 / 3) },
    ],
    [{ run_hours: 9, turnover_time_hours: 6 }, { turnovers: 1.5 }],
    [{ hours_per_day: 8, days: 3, turnover_hours: 6 }, { turnovers: 4 }],
    [{ turnover_hours: 6, turnovers: 1.5 }, { hours: 9 }],
    [{ volume_m3: 60, turnovers: 1.5, hours: 9 }, { flow_m3_h: 10 }],
    [{ volume_m3: 60, turnover_hours: 6 }, { flow_m3_h: 10 }],
    [{ turnover_hours: 6 }, { percent_filtered_after_6_hours: 100 * (1 - Math.exp(-1)) }],
    [{ turnover_hours: 6 }, { filtered_percent_after_12_hours: 100 * (1 - Math.exp(-2)) }],
  ])('%o', (inputs, expected) => {
    expect(check('mixing', inputs, expected)).toBe('passed');
  });
});

describe('power of water', () => {
  it.each([
    [{ flow_l_s: 4, pressure_kpa: 150 }, { power_w: 600 }],
    [{ flow_m3_h: 36, pressure_bar: 1.5 }, { hydraulic_power_kw: 1.5 }],
    [{ flow_l_s: 4, pressure_kpa: 150, power_w: 1500 }, { wire_to_water_efficiency_percent: 40 }],
    [{ flow_l_s: 4, pressure_kpa: 150, efficiency: 0.5 }, { power_w: 1200 }],
    [{ hydraulic_power_w: 600, power_w: 1500 }, { wire_to_water_efficiency: 0.4 }],
    [{ hydraulic_power_w: 600, shaft_power_w: 1000 }, { pump_efficiency_percent: 60 }],
    [{ pump_efficiency: 0.6, motor_efficiency_percent: 80 }, { overall_efficiency: 0.48 }],
    [{ shaft_power_w: 920, efficiency: 0.8, voltage_v: 230, power_factor: 0.5 }, { current_a: 10 }],
    [
      { voltage_v: 400, power_w: 960 * Math.sqrt(3), power_factor: 0.8, phases: 3 },
      { current_a: 3 },
    ],
  ])('%o', (inputs, expected) => {
    expect(check('electricity', inputs, expected)).toBe('passed');
  });

  it('a head does not tell without the water', () =>
    expect(check('electricity', { flow_l_s: 4, head_m: 15 }, { power_w: 588 })).toContain(
      'skipped',
    ));
});

describe('water as a conversion', () => {
  // Definitions; relative density on 1000 kg/m3.
  it.each([
    [{ density_kg_m3: 998 }, { specific_gravity: 0.998, specific_weight_n_m3: 998 * gravity }],
    [{ specific_gravity: 0.998 }, { density_kg_m3: 998 }],
    [{ dynamic_viscosity_mpa_s: 1, density_kg_m3: 1000 }, { kinematic_viscosity_cst: 1 }],
    [{ density_kg_m3: 1000 }, { head_m_per_kpa: 1 / gravity }],
  ])('%o', (inputs, expected) => {
    expect(check('conversion', inputs, expected)).toBe('passed');
  });
});

describe('what is left for suction', () => {
  // 101325 Pa over 998 kg/m3 less 2300 Pa, a loss and what is required.
  const water = { atmosphere_pa: 101_325, density_kg_m3: 998, vapour_pressure_pa: 2300 };
  const head = (101_325 - 2300) / (998 * gravity);

  it.each([
    [{ friction_m: 1.2, npsh_required_m: 3 }, { greatest_lift_m: head - 4.2 }],
    [{ friction_m: 1.2, npsh_required_m: 3, margin_m: 0.6 }, { max_suction_lift_m: head - 4.8 }],
    [{ suction_head_m: 0.5, npsh_required_m: 3 }, { friction_m: head - 2.5 }],
    [{ suction_lift_m: 0.5, npsh_required_m: 3, margin_m: 1 }, { greatest_friction_m: head - 4.5 }],
  ])('%o', (inputs, expected) => {
    expect(check('npsh', { ...water, ...inputs }, expected)).toBe('passed');
  });
});
