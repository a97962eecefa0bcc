import { describe, expect, it } from 'vitest';
import { checkInvented as check } from './inventedCase.ts';

/*
 * Pipes together and groups of fittings. Expected values are worked by hand from the law named:
 * Hagen and Poiseuille below Re 2000, f = 64 / Re; Hazen and Williams in SI, 10.67 L Q^1.852 /
 * (C^1.852 D^4.8704); multipliers of Crane TP-410, page.
 */

const gravity = 9.80665;

const friction = 'pipe friction loss';

describe('pipes one behind the other and side by side', () => {
  // Thick liquid, so that the flow is laminar: h = 128 nu L Q / (pi g D^4).
  const liquid = { kinematic_viscosity_m2_s: 1e-3, flow_m3_h: 3.6 };
  const laminar = (length: number, bore: number, flow = 1e-3): number =>
    (128 * 1e-3 * length * flow) / (Math.PI * gravity * bore ** 4);
  const both = laminar(10, 0.05) + laminar(5, 0.04);

  it.each([
    {
      series: [
        { inside_diameter_m: 0.05, length_m: 10 },
        { inside_diameter_mm: 40, length_m: 5 },
      ],
    },
    { inside_diameter_1_m: 0.05, length_1_m: 10, inside_diameter_2_mm: 40, length_2_m: 5 },
  ])('losses add: %o', (pipes) => {
    const expected = { head_loss_m: both, head_loss_2_m: laminar(5, 0.04) };
    expect(check(friction, { ...liquid, ...pipes }, expected)).toBe('passed');
    const wanted = { pressure_loss_pa: both * 1000 * gravity };
    const heavy = { ...liquid, ...pipes, density_kg_m3: 1000 };
    expect(check(friction, heavy, wanted)).toBe('passed');
  });

  it('one loss splits the flow', () => {
    // Equal bores, lengths 10 and 30 m: three parts to one.
    const branch = { inside_diameter_m: 0.05 };
    const parallel = [
      { ...branch, length_m: 10 },
      { ...branch, length_m: 30 },
    ];
    const expected = {
      flow_1_m3_h: 2.7,
      flow_2_m3_h: 0.9,
      share_1_percent: 75,
      branch_flows_m3_h: [2.7, 0.9],
      head_loss_m: laminar(10, 0.05, 0.75e-3),
      velocity_2_m_s: 0.25e-3 / (Math.PI * 0.025 ** 2),
    };
    const loose = { relative: 1e-8 };
    expect(check(friction, { ...liquid, parallel }, expected, loose)).toBe('passed');
    const pipes = { arrangement: 'parallel', pipes: parallel };
    expect(check(friction, { ...liquid, ...pipes }, expected, loose)).toBe('passed');
    const flat = {
      inside_diameter_1_m: 0.05,
      inside_diameter_2_m: 0.05,
      length_1_m: 10,
      length_2_m: 30,
    };
    const what = 'two pipes in parallel';
    expect(check(friction, { ...liquid, ...flat }, expected, { ...loose, what })).toBe('passed');
  });

  it('by Hazen and Williams', () => {
    const loss = (length: number, bore: number, flow: number): number =>
      (10.67 * length * flow ** 1.852) / (150 ** 1.852 * bore ** 4.8704);
    const two = { hazen_williams_c: 150, flow_m3_s: 2e-3 };
    const series = [
      { inside_diameter_m: 0.05, length_m: 10 },
      { inside_diameter_m: 0.04, length_m: 5 },
    ];
    const head_loss_m = loss(10, 0.05, 2e-3) + loss(5, 0.04, 2e-3);
    // Forms of the law differ in the fourth figure.
    const near = { relative: 2e-3 };
    expect(check(friction, { ...two, series }, { head_loss_m }, near)).toBe('passed');
    const parallel = [
      { inside_diameter_m: 0.05, length_m: 10 },
      { inside_diameter_m: 0.05, length_m: 10 * 2 ** 1.852 },
    ];
    const halves = { branch_flow_1_l_s: 4 / 3, branch_flow_2_l_s: 2 / 3 };
    expect(check(friction, { ...two, parallel }, halves, { relative: 1e-6 })).toBe('passed');
  });

  it('neither without viscosity nor with a pipe that is not there', () => {
    const series = [{ inside_diameter_m: 0.05, length_m: 10 }];
    expect(check(friction, { series, flow_m3_h: 3.6 }, { head_loss_m: 1 })).toContain('skipped');
    expect(check(friction, { ...liquid, series }, { head_loss_2_m: 1 })).toContain('skipped');
  });
});

describe('loss by the length', () => {
  const weight = 998 * gravity;

  it.each([
    [{ head_loss_ft_per_100_ft: 3, length_ft: 250 }, { head_loss_ft: 7.5 }],
    [{ head_loss_m_per_100_m: 3, length_m: 20 }, { head_loss_m: 0.6 }],
    [{ head_loss_m_per_m: 0.03, length_m: 20 }, { head_loss_m: 0.6 }],
    [{ head_loss_per_100_ft: 3, length_m: 20 }, { head_loss_m: 0.6 }],
    [{ pressure_loss_psi_per_100_ft: 2, length_ft: 50 }, { pressure_loss_psi: 1 }],
    [{ head_loss_m_per_100_m: 3, density_kg_m3: 998 }, { pressure_loss_pa_per_m: 0.03 * weight }],
    [{ pressure_loss_pa_per_m: 0.03 * weight, density_kg_m3: 998 }, { head_loss_m_per_100_m: 3 }],
  ])('%o', (inputs, expected) => {
    expect(check(friction, inputs, expected)).toBe('passed');
  });
});

describe('groups of fittings', () => {
  const turbulent = { friction_factor_turbulent: 0.02 };
  // 4 x 30 + 2 x 60 + 3 multiples of f_T.
  const k = 243 * 0.02;

  it.each([
    { fittings: { 'standard 90 deg elbow': 4, 'tee, branch': 2, 'ball valve': 1 } },
    { fittings: { elbow_90: 4, tee_branch: 2, ball_valve: 1 } },
    {
      fittings: [
        { fitting: '90 elbow', count: 4 },
        { name: 'branch tee', quantity: 2 },
        { type: 'ball valve' },
      ],
    },
    { fittings: [['90° elbow', 4], ['tee through branch', 2], 'ball valve'] },
  ])('%o', (group) => {
    const inputs = { ...group, ...turbulent };
    expect(check('fittings', inputs, { k })).toBe('passed');
    const at = { ...inputs, velocity_m_s: 2 };
    expect(check('fittings', at, { head_loss_m: (k * 4) / (2 * gravity) })).toBe('passed');
    const long = { ...inputs, inside_diameter_m: 0.05 };
    expect(check('fittings', long, { equivalent_length_m: 243 * 0.05 })).toBe('passed');
  });

  it('coefficients in the list count as they are', () => {
    const fittings = [{ k: 0.5 }, { k: 1.5, count: 2 }];
    expect(check('fittings', { fittings }, { k: 3.5 })).toBe('passed');
  });

  it('length of one fitting', () => {
    const elbow = { fitting: 'standard 90 deg elbow' };
    expect(check('fittings', elbow, { equivalent_length_diameters: 30 })).toBe('passed');
    const sized = { ...elbow, inside_diameter_mm: 52.5 };
    expect(check('fittings', sized, { equivalent_length_m: 1.575 })).toBe('passed');
    const bores = { l_over_d: 30, inside_diameter_mm: 52.5, count: 2 };
    expect(check('fittings', bores, { equivalent_length_m: 3.15 })).toBe('passed');
  });

  it('one that is not known leaves the group unknown', () => {
    const fittings = { elbow_90: 1, 'strange valve': 1 };
    expect(check('fittings', { fittings, ...turbulent }, { k: 1 })).toContain('skipped');
  });
});

describe('the same in other keys', () => {
  const head = (101_325 - 2300) / (998 * gravity);
  const water = { atmosphere_pa: 101_325, density_kg_m3: 998, vapour_pressure_pa: 2300 };

  it.each([
    ['affinity', { full_speed_rpm: 3000, power_w: 1600 }, { power_w_at_1500_rpm: 200 }],
    ['affinity', { full_speed_rpm: 3000, speed_rpm: 1500, head_ft: 60 }, { head_ft: 15 }],
    ['affinity', { flow_gpm_at_3450: 80 }, { flow_gpm_at_1725: 40 }],
    ['affinity', { power_at_3000_rpm_w: 1600 }, { power_at_1500_rpm_w: 200 }],
    // Standard gravity; 998 kg/m3.
    ['gauges', { pressure_kpa: 98, specific_gravity: 0.998 }, { head_m: 98_000 / (998 * gravity) }],
    ['electricity', { power_w: 500, hours_per_day: 8, weeks: 2 }, { energy_kwh: 56 }],
    ['electricity', { energy_kwh_per_day: 10, price_per_kwh: 0.25 }, { cost_per_week: 17.5 }],
    ['electricity', { flow_l_s: 2, pressure_difference_kpa: 120 }, { power_w: 240 }],
    [
      friction,
      { head_loss_per_100_ft: 4, length_ft: 60, equivalent_length_ft: 40 },
      { head_loss_ft: 4 },
    ],
    ['mixing', { turnover_time_h: 8, run_time_h: 24 }, { turnovers_per_day: 3 }],
    ['mixing', { volume_m3: 60, flow_m3_h: 10, turnovers_per_day: 1.5 }, { run_hours_per_day: 9 }],
    ['mixing', { turnovers_per_day: 2 }, { turnover_hours: 12 }],
    [
      'npsh',
      { ...water, npsh_required_m: 3, static_lift_m: 1, friction_loss_m: 0.5 },
      { npsh_available_m: head - 1.5, npsh_margin_m: head - 4.5 },
    ],
    [
      'pool volume',
      {
        points_m: [
          [0, 0],
          [4, 0],
          [4, 3],
          [0, 3],
        ],
        depth_m: 1.5,
      },
      { volume_m3: 18 },
    ],
    [
      'pool volume',
      {
        depth_m: 1.5,
        parts: [
          { shape: 'square', side_m: 4 },
          { shape: 'square', side_m: 2 },
        ],
      },
      { volume_m3: 30 },
    ],
    [
      'pool volume',
      { shape: 'regular hexagon', side_m: 2, depth_m: 1 },
      { volume_m3: 6 * 3 ** 0.5 },
    ],
  ])('%s: %o', (quantity, inputs, expected) => {
    expect(check(quantity, inputs, expected)).toBe('passed');
  });

  it('a size alone is one of Schedule 40', () => {
    // f_T of 2 in is 0.019, printed to two figures.
    const group = { fittings: { '90 deg elbow': 3, 'gate valve': 1 }, nominal_in: 2 };
    expect(check('fittings', group, { k: 98 * 0.019 }, { relative: 0.03 })).toBe('passed');
  });

  it('an energy of no stated time has no price a week', () => {
    const inputs = { energy_kwh: 10, price_per_kwh: 0.25 };
    expect(check('electricity', inputs, { cost_per_week: 17.5 })).toContain('skipped');
  });
});
