import { describe, expect, it } from 'vitest';
import type { JsonObject } from '#reference/checks/caseFile.ts';
import { checkCase, checkText } from '#reference/checks/check.ts';
import { compare } from '#reference/checks/compare.ts';
import { coefficientsOf } from '#reference/checks/table/curves.ts';
import { spelledKey } from '#reference/checks/units.ts';
import { report } from './report.ts';

/** What the check says of a case that a test makes up: `passed`, or why not. */
function check(
  file: string,
  inputs: JsonObject,
  expected: JsonObject,
  { relative = 1e-9, what = 'invented' } = {},
): string {
  const each = { what, inputs, expected, tolerance: { relative }, source: 'invented' };
  const outcome = checkCase(file, each);
  if (outcome.kind === 'skipped') return `skipped: ${outcome.reason}`;
  if (outcome.kind === 'broke') return `broke: ${outcome.message}`;
  return outcome.kind === 'passed'
    ? 'passed'
    : `got ${JSON.stringify(outcome.verdicts.map(({ got }) => got))}`;
}

/*
 * Cases of another folder: keys of the files in other combinations. Expected values are worked by hand
 * from the law named, with factors of NIST SP 811 (gallon 3.785411784 L, foot 0.3048 m).
 */
describe('optional inputs in other combinations', () => {
  const gravity = 9.80665;
  const water = { density_kg_m3: 998 };
  const gauges = { discharge_psi: 0, vacuum_inhg: 0, ...water };

  it.each<[file: string, inputs: JsonObject, expected: JsonObject]>([
    // Perfect mixing: 1 - exp(-e n).
    [
      'mixing',
      { volume_m3: 60, flow_m3_h: 10, hours: 6, filter_efficiency: 0.5 },
      { share: 1 - Math.exp(-0.5) },
    ],
    [
      'mixing',
      { volume_m3: 60, flow_m3_h: 10, share: 0.5, filter_efficiency: 0.5 },
      { hours: 12 * Math.LN2 },
    ],
    // N, N², N³.
    [
      'affinity-laws',
      { speed_1_rpm: 3000, speed_2_rpm: 1500, power_1_w: 1600 },
      { power_2_w: 200 },
    ],
    ['affinity-laws', { speed_1_rpm: 3000, speed_2_rpm: 1000, head_1_ft: 90 }, { head_2_ft: 10 }],
    // p/(rho g) with nothing but a height, and with a bore on each side: V = 4 Q/(pi D²).
    [
      'hydraulics-conversions',
      { ...gauges, gauge_height_difference_ft: 1.5 },
      { total_dynamic_head_ft: 1.5 },
    ],
    [
      'hydraulics-conversions',
      { ...gauges, flow_gpm: 60, discharge_bore_in: 1, suction_bore_in: 2 },
      {
        total_dynamic_head_ft:
          (((3.785411784e-3 * 4) / (Math.PI * 0.0254 ** 2)) ** 2 * (15 / 16)) /
          (2 * gravity) /
          0.3048,
      },
    ],
    // No daily charge: 8 h of 1.5 kW at 0.2.
    [
      'electricity',
      {
        blocks: [{ start: '22:00', end: '06:00', power_w: 1500 }],
        tariff: [{ start: '00:00', end: '24:00', price_per_kwh: 0.2 }],
      },
      { cost: 2.4 },
    ],
    // Sea level; 2 in Schedule 40 of ASTM D1785.
    ['npsh', { altitude_ft: 0 }, { pressure_pa: 101_325 }],
    ['pipe-dimensions', { nominal_in: 2, schedule: 40 }, { inside_diameter_m: 2.067 * 0.0254 }],
    // Plane geometry.
    [
      'pool-volume',
      { shape: 'ellipse', length_m: 8, width_m: 4, depth_1_m: 1, depth_2_m: 2 },
      { volume_m3: 12 * Math.PI },
    ],
    ['pool-volume', { flow_m3_h: 3.6 }, { flow_m3_s: 1e-3, flow_l_min: 60 }],
    ['chlorine-and-heat', { volume_m3: 50, rise_mg_l: 2, cell_g_per_h: 25 }, { hours: 4 }],
    // Hagen and Poiseuille.
    ['friction-factor', { law: 'laminar', reynolds: 640 }, { friction_factor: 0.1 }],
  ])('%s: %o', (file, inputs, expected) => {
    expect(check(file, inputs, expected)).toBe('passed');
  });

  it('flows and heads follow the units of the case', () => {
    // The circuit goes through the curve's second point: 25 m at 12 m³/h; at half speed a quarter.
    const points = [
      [0, 30],
      [12, 25],
      [24, 12],
    ];
    const inputs = { pump_law: 'three-point', points, k: 25 / 144, units: 'm3/h, m' };
    const full = { flow_m3_h: 12, head_ft: 25 / 0.3048, beyond_last_point: false };
    expect(check('operating-point', inputs, full, { relative: 1e-8 })).toBe('passed');
    const half = { flow_gpm: 0.1 / 3.785411784e-3, head_m: 6.25 };
    const slow = { ...inputs, speed_ratio: 0.5 };
    expect(check('operating-point', slow, half, { relative: 1e-8 })).toBe('passed');
    const split = { flow_m3_h: 12, head_m: 25 };
    const equipment = { h0: 5, q0: 12, n: 1.2 };
    const parts = { ...inputs, k: 10 / 144, equipment_k: 5 / 144, equipment, z: 5 };
    expect(check('operating-point', parts, split, { relative: 1e-8 })).toBe('passed');
    expect(check('operating-point', { ...inputs, units: 'L/s, m' }, split)).toContain('skipped');
  });

  it('equal branches share equally', () => {
    const branch = { inside_diameter_m: 0.045, length_m: 10 };
    const inputs = {
      pump_law: 'pchip',
      points: [
        [0, 20],
        [10, 18],
        [20, 11],
      ],
      parallel: [branch, branch],
      roughness_m: 1.5e-6,
      units: 'm3/h, m',
    };
    const half = { share_of_first_branch: 0.5 };
    expect(check('operating-point', { ...inputs, temperature_c: 20 }, half)).toBe('passed');
    expect(check('operating-point', inputs, half)).toContain('kinematic_viscosity is missing');
  });

  it('wishes for a day together', () => {
    // 20 gpm at 100 W, 40 at 400 W; twelve cheap hours, then twelve dear ones.
    const day = {
      speeds: [
        { name: 'low', flow_gpm: 20, power_w: 100 },
        { name: 'high', flow_gpm: 40, power_w: 400 },
      ],
      price_per_kwh: Array.from({ length: 24 }, (_, hour) => (hour < 12 ? 0.1 : 0.4)),
    };
    const needs = [{ min_flow_gpm: 30, min_hours: 1, hours: [3, 20] }];
    const quiet = [{ hours: [1, 2, 3], max_flow_gpm: 25 }];
    const plan = (inputs: JsonObject, expected: JsonObject) =>
      check('schedule-optimum', { ...day, ...inputs }, expected);
    expect(plan({ needs }, { cost: 0.04 })).toBe('passed');
    // Hour 3 is quiet, so the need takes the dear hour 20.
    expect(plan({ needs, quiet }, { cost: 0.16, hours_per_speed: { high: 1 } })).toBe('passed');
    expect(plan({ needs, max_flow_gpm: 20 }, { feasible: false, cost: null })).toBe('passed');
    // Never off: 23 hours at low, one at high; two changes.
    const never = { needs, quiet, always_on: true, max_changes: 2 };
    expect(plan(never, { cost: 0.12 + 0.44 + 0.16 })).toBe('passed');
  });
});

describe('nothing is overlooked', () => {
  const pipe = { flow_gpm: 50, nominal_in: 2, schedule: 40 };

  it.each<[file: string, inputs: JsonObject, expected: JsonObject, named: string]>([
    ['mixing', { turnovers: 1, temperature_c: 20 }, { share: 0.6 }, 'temperature_c'],
    ['mixing', { turnovers: 1 }, { share: 0.6, cost: 1 }, 'cost'],
    ['mixing', { turnovers: 1 }, { hours: 1 }, 'gives no hours'],
    ['mixing', { volume_m3: 60, share: 0.5 }, { hours: 1 }, 'needs flow'],
    ['mixing', { turnovers: 1, hours: 2 }, { share: 0.6 }, 'takes no hours'],
    ['mixing', { turnovers: '1' }, { share: 0.6 }, 'turnovers is not a number'],
    [
      'chlorine-and-heat',
      { volume_gal: 1, volume_m3: 1, rise_mg_l: 1 },
      { mass_g: 1 },
      'takes no volume_m3',
    ],
    ['pipe-velocity', { ...pipe, inside_diameter_in: 1.9 }, { velocity_ft_s: 5 }, 'two ways'],
    ['pipe-velocity', { ...pipe, schedule: 41 }, { velocity_ft_s: 5 }, 'not in the table'],
    ['minor-losses', { fitting: 'slightly rounded inlet' }, { k: 1 }, 'slightly rounded inlet'],
    [
      'electricity',
      { blocks: [{ start: '8', end: '09:00', power_w: 1 }], tariff: [] },
      { cost: 1 },
      'is no time of day',
    ],
    [
      'hydraulics-conversions',
      { discharge_psi: 1, vacuum_inhg: 1, suction_bore_in: 1, density_kg_m3: 998 },
      { total_dynamic_head_ft: 1 },
      'discharge_bore is missing',
    ],
    ['toString', { turnovers: 1 }, { share: 0.6 }, 'no file toString'],
  ])('%s: %o', (file, inputs, expected, named) => {
    const said = check(file, inputs, expected);
    expect(said).toMatch(/^skipped/);
    expect(said).toContain(named);
  });

  it('a value outside what the core allows is a miss, not a skip', () => {
    expect(check('mixing', { turnovers: -1 }, { share: 0 })).toMatch(/^broke: turnovers/);
  });

  it('what the case says it is chooses nowhere but between two standards for one pipe', () => {
    // DIN 8062: 5.3 mm; EN ISO 1452-2: 4.2 mm, from memory.
    const wall = (what: string, wall_mm: number) =>
      check('pipe-dimensions', { outside_diameter_mm: 110, pn: 10 }, { wall_mm }, { what });
    expect(wall('110 mm pipe to the older standard, not EN ISO 1452-2', 5.3)).toBe('passed');
    expect(wall('PVC-U pressure pipe', 4.2)).toBe('passed');
  });
});

describe('a file that breaks the schema', () => {
  const right = {
    what: 'a turnover',
    inputs: { turnovers: 1 },
    expected: { share: 1 - Math.exp(-1) },
    tolerance: { relative: 1e-9 },
  };
  const said = (text: string) =>
    checkText('folder/mixing.json', text).map(({ outcome }) =>
      outcome.kind === 'skipped' ? outcome.reason : outcome.kind,
    );

  it.each<[text: string, reason: RegExp]>([
    ['{ not json', /^not JSON/],
    ['[]', /^no file of cases/],
    ['{"quantity":"mixing"}', /^no file of cases: cases/],
  ])('%s', (text, reason) => expect(said(text)).toEqual([expect.stringMatching(reason)]));

  it('one case that breaks it leaves the others', () => {
    const { tolerance, ...bare } = right;
    const cases = [right, bare, { ...right, expected: {} }, { ...right, inputs: [] }, 7];
    expect(said(JSON.stringify({ cases }))).toEqual([
      'passed',
      expect.stringMatching(/^case 2: tolerance/),
      expect.stringMatching(/^case 3: expected is empty/),
      expect.stringMatching(/^case 4: inputs/),
      expect.stringMatching(/^case 5: /),
    ]);
    expect(tolerance).toEqual({ relative: 1e-9 });
  });

  it('the report prints inputs, expected, got, tolerance and source of a miss', () => {
    const wrong = { ...right, expected: { share: 0.7 }, source: 'invented' };
    const text = JSON.stringify({ cases: [right, wrong] });
    const { lines } = report(checkText('mixing.json', text));
    expect(lines).toEqual([
      'MISS  mixing.json · a turnover',
      '  inputs     {"turnovers":1}',
      '  expected   {"share":0.7}',
      '  tolerance  {"relative":1e-9}',
      '  source     invented',
      expect.stringMatching(/^ {2}got {8}share 0\.632120558\d* {3}<- misses$/),
      '',
      '1 passed, 1 failed, 0 skipped',
    ]);
  });
});

describe('keys', () => {
  it.each<[key: string, words: string, spelling: string]>([
    ['flow_2_gpm', 'flow 2', 'gpm'],
    ['flow_m3_h', 'flow', 'm3_h'],
    ['energy_kwh_per_1000_gal', 'energy', 'kwh_per_1000_gal'],
    ['hazen_williams_c', 'hazen williams c', ''],
    ['head_ft_at_4_c', 'head', 'ft'],
    ['hours', '', 'hours'],
    ['share_of_first_branch', 'share of first branch', ''],
  ])('%s', (key, words, spelling) => {
    const read = spelledKey(key);
    expect([read.words.join(' '), read.spelling]).toEqual([words, spelling]);
  });

  it('a rise of temperature shifts no zero', () => {
    expect(spelledKey('temperature_f').unit.zero).toBe(32);
    expect(spelledKey('temperature_rise_f').unit.zero).toBe(0);
  });
});

describe('comparing', () => {
  it('counts an absolute tolerance in the unit of the expected value', () => {
    expect(compare('head_ft', 173, 172.5 * 0.3048, { absolute: 0.6 }).agrees).toBe(true);
    expect(compare('head_ft', 173, 172.3 * 0.3048, { absolute: 0.6 }).agrees).toBe(false);
  });

  it('matches flags, words and null exactly', () => {
    const wide = { relative: 1, absolute: 9 };
    expect(compare('flow_gpm', null, null, wide).agrees).toBe(true);
    expect(compare('flow_gpm', null, 0, wide).agrees).toBe(false);
    expect(compare('flow_gpm', 0, null, wide).agrees).toBe(false);
    expect(compare('passes', true, false, wide).agrees).toBe(false);
    expect(compare('date', '2021-07-19', '2021-07-20', wide).agrees).toBe(false);
  });

  it('a map may leave out what is 0, and nothing else', () => {
    const map = (expected: JsonObject) =>
      compare('hours_per_speed', expected, { low: 3, high: 0 }, { absolute: 1e-6 }).agrees;
    expect([map({ low: 3, high: 0 }), map({ low: 3 }), map({ high: 0 })]).toEqual([
      true,
      true,
      false,
    ]);
    expect(map({ low: 3, top: 1 })).toBe(false);
  });

  it('never agrees with a number that is none', () => {
    expect(compare('share', 1, Number.NaN, { absolute: 9 }).agrees).toBe(false);
  });
});

describe('written curves', () => {
  const plain = { flow: 1, head: 1 };

  it.each<[text: string, coefficients: readonly number[]]>([
    ['380 - 0.06 Q - 0.0018 Q^2 at ratio 1, Q in gpm', [380, -0.06, -0.0018]],
    ['80 - 0.004 Q^2 at top speed', [80, 0, -0.004]],
    ['20 - 1e-3 Q^2', [20, 0, -1e-3]],
  ])('%s', (text, coefficients) => expect(coefficientsOf(text, plain)).toEqual(coefficients));

  it('a static head stands where z stands', () => {
    expect(coefficientsOf('z + 0.000775 Q^2', plain, 5)).toEqual([5, 0, 0.000775]);
    expect(() => coefficientsOf('z + Q^2', plain)).toThrow('no curve');
    expect(() => coefficientsOf('3 + Q^2', plain, 5)).toThrow('no static head');
  });

  it.each(['80 - sin(Q)', '80 - 0.004 Q^2 at half speed', '2 z + Q^2', '80 - Q in m3/h'])(
    '%s cannot be read',
    (text) => expect(() => coefficientsOf(text, plain, 1)).toThrow(/no curve|no static/),
  );
});
