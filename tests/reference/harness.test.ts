import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { awaiting } from './awaiting.ts';
import type { JsonObject, ReferenceCase } from './caseFile.ts';
import { checkCase, checkText, type Outcome } from './check.ts';
import { compare } from './compare.ts';
import { parseKey } from './keys.ts';
import { parsePolynomial } from './polynomial.ts';
import { report } from './report.ts';

const root = new URL('../..', import.meta.url).pathname;
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'cases-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Starts the command itself on a folder of its own that holds just this text. */
function command(text: string) {
  const own = mkdtempSync(join(folder, 'run-'));
  writeFileSync(join(own, 'cases.json'), text);
  const { stdout, status } = spawnSync(process.execPath, ['tests/reference/run.ts', own], {
    cwd: root,
    encoding: 'utf8',
  });
  return { status, last: stdout.trimEnd().split('\n').at(-1) };
}

/** What the command would print for a file with this text. */
function printed(text: string) {
  const { lines } = report(checkText('cases.json', text));
  return { output: lines.join('\n'), last: lines.at(-1) };
}

const fileOf = (quantity: string, ...cases: readonly object[]) =>
  JSON.stringify({ quantity, cases });

function oneCase(inputs: JsonObject, expected: JsonObject, tolerance = { relative: 1e-9 }) {
  return { what: 'invented', inputs, expected, tolerance, source: 'invented' };
}

function check(
  quantity: string,
  inputs: JsonObject,
  expected: JsonObject,
  relative = 1e-9,
): string {
  const each: ReferenceCase = oneCase(inputs, expected, { relative });
  const outcome: Outcome = checkCase(quantity, each);
  if (outcome.kind === 'passed') return 'passed';
  if (outcome.kind === 'skipped') return `skipped: ${outcome.reason}`;
  if (outcome.kind === 'broke') return `broke: ${outcome.message}`;
  return `got ${JSON.stringify(outcome.verdicts.map(({ got }) => got))}`;
}

const right = oneCase({ turnovers: 1 }, { share: 1 - Math.exp(-1) });
const wrong = oneCase({ turnovers: 1 }, { share: 0.7 }, { relative: 1e-3 });
const strange = oneCase({ moon_phase: 1 }, { share: 0.7 });

describe('the command', () => {
  it('ends well only when nothing misses and nothing is skipped', { timeout: 60_000 }, () => {
    expect(command(fileOf('mixing', right))).toEqual({
      status: 0,
      last: '1 passed, 0 failed, 0 skipped',
    });
    expect(command(fileOf('mixing', right, wrong))).toEqual({
      status: 1,
      last: '1 passed, 1 failed, 0 skipped',
    });
    expect(command(fileOf('mixing', right, strange))).toEqual({
      status: 1,
      last: '1 passed, 0 failed, 1 skipped',
    });
    expect(command(fileOf('mixing')).status).toBe(1);
  });
});

describe('the report', () => {
  it('prints a miss with inputs, expected, got, tolerance and source', () => {
    const { output, last } = printed(fileOf('mixing', wrong));
    expect(last).toBe('0 passed, 1 failed, 0 skipped');
    expect(output).toContain('"turnovers":1');
    expect(output).toContain('"share":0.7');
    expect(output).toContain('share 0.632120558');
    expect(output).toContain('"relative":0.001');
    expect(output).toContain('invented');
  });

  it('names a shape it does not know', () => {
    const { output, last } = printed(fileOf('mixing', strange));
    expect(last).toBe('0 passed, 0 failed, 1 skipped');
    expect(output).toContain('the input moon_phase is not known');
  });

  it('skips what is no file of cases, and a case with nothing to judge it by', () => {
    const bare = { what: 'x', inputs: { turnovers: 1 }, expected: { share: 0.6 } };
    for (const text of ['{ not json', '{"quantity":"mixing"}', fileOf('mixing', bare)]) {
      expect(printed(text).last).toBe('0 passed, 0 failed, 1 skipped');
    }
  });

  it('waits for a family only where it is told to', () => {
    const tides = checkText('cases.json', fileOf('tides', oneCase({ moon_phase: 1 }, { cost: 1 })));
    expect(report(tides).skipped).toBe(1);
    expect(report(tides, [{ quantity: 'tides', reason: 'the moon' }])).toMatchObject({
      skipped: 0,
      lines: [
        '1 cases of "tides" wait for the moon; not counted.',
        '0 passed, 0 failed, 0 skipped',
      ],
    });
  });

  it('the own set waits for nothing', () => expect(awaiting).toEqual([]));
});

describe('keys', () => {
  it.each([
    ['flow_2_gpm', 'flow#2', 'flow'],
    ['flow_m3_h', 'flow', 'flow'],
    ['speed_percent', 'speedRatio', 'ratio'],
    ['speed_ratio', 'speedRatio', 'ratio'],
    ['share_of_third_branch', 'branchShare#3', 'ratio'],
    ['hazen_williams_c', 'hazenC', 'ratio'],
    ['equipment_k', 'equipmentK', 'ratio'],
    ['temperature_k', 'temperature', 'temperature'],
    ['temperature_rise_f', 'temperatureRise', 'temperatureDifference'],
    ['hours', 'time', 'time'],
    ['minutes', 'time', 'time'],
    ['energy_kwh_per_1000_gal', 'energyPerVolume', 'energyPerVolume'],
    ['head_loss_per_100', 'headGradient', 'ratio'],
    ['head_loss_ft', 'headLoss', 'length'],
  ])('%s is %s', (raw, id, dimension) => {
    const key = parseKey(raw);
    expect([key?.id, key?.unit.dimension]).toEqual([id, dimension]);
  });

  it.each(['moon_phase', 'flow_furlongs', 'speed', 'flow_psi', 'head_loss'])(
    '%s is unknown',
    (raw) => expect(parseKey(raw)).toBeUndefined(),
  );

  it('a condition at the end is read', () => {
    expect(parseKey('head_ft_at_4_c')).toMatchObject({ id: 'head', at: 4 });
    expect(parseKey('head_ft_at_50_f')?.at).toBeCloseTo(10, 12);
  });
});

describe('written curves', () => {
  it.each([
    ['380 - 0.06 Q - 0.0018 Q^2', [380, -0.06, -0.0018], false],
    ['80 - 0.004 Q^2 at top speed', [80, 0, -0.004], false],
    ['z + 0.000775 Q^2', [0, 0, 0.000775], true],
    ['-1e-3*Q**2 + 20', [20, 0, -1e-3], false],
  ])('%s', (text, coefficients, hasStaticHead) => {
    const parsed = parsePolynomial(text);
    expect(parsed.hasStaticHead).toBe(hasStaticHead);
    expect(parsed.coefficients.map((each) => each + 0)).toEqual(coefficients);
  });

  it('anything else is not understood', () => {
    expect(() => parsePolynomial('80 - sin(Q)')).toThrow('is not a curve');
    expect(() => parsePolynomial('80 - 0.004 Q^2 at half speed')).toThrow('is not a curve');
    expect(() => parsePolynomial('2 z + Q^2')).toThrow('multiplies z');
  });
});

describe('comparing', () => {
  const key = (raw: string) => parseKey(raw) ?? expect.fail(`${raw} is unknown`);

  it('counts an absolute tolerance in the unit of the expected value', () => {
    const feet = key('head_ft');
    expect(compare(173, 172.5 * 0.3048, feet, { absolute: 0.6 }).agrees).toBe(true);
    expect(compare(173, 172.3 * 0.3048, feet, { absolute: 0.6 }).agrees).toBe(false);
  });

  it('matches flags, words and null exactly', () => {
    expect(compare(null, null, key('flow_gpm'), { relative: 1 }).agrees).toBe(true);
    expect(compare(null, 0, key('flow_gpm'), { relative: 1 }).agrees).toBe(false);
    expect(compare(0, null, key('flow_gpm'), { absolute: 9 }).agrees).toBe(false);
    expect(compare(true, false, key('passes'), { relative: 1 }).agrees).toBe(false);
    expect(compare('2021-07-19', '2021-07-20', key('date'), { relative: 1 }).agrees).toBe(false);
  });

  it('never agrees with a number that is none', () => {
    expect(compare(1, Number.NaN, key('share'), { absolute: 9 }).agrees).toBe(false);
  });
});

describe('the same families in other units', () => {
  // Expected values worked by hand from the law named, with factors of NIST SP 811.
  const points = [
    [0, 300],
    [200, 250],
    [400, 120],
  ];

  it('affinity with percentages, three speeds and kilowatts', () => {
    const at = { speed_1_rpm: 3000, speed_2_rpm: 1500, speed_3_rpm: 750 };
    expect(
      check('affinity', { ...at, flow_1_m3_h: 20, head_1_kpa: 1 }, { flow_3_m3_h: 5 }),
    ).toContain('skipped');
    expect(
      check(
        'affinity',
        { ...at, flow_1_m3_h: 20, head_1_m: 16, power_1_kw: 1.6 },
        { flow_3_l_min: 5000 / 60, head_2_m: 4, power_2_w: 200, power_3_kw: 0.025 },
      ),
    ).toBe('passed');
    expect(check('affinity', { speed_percent: 50, flow_1_gpm: 60 }, { flow_2_gpm: 30 })).toBe(
      'passed',
    );
  });

  it('affinity from one speed to another, both in percent', () => {
    const inputs = { speed_1_percent: 80, speed_2_percent: 40, head_1_kpa: 8 };
    expect(check('affinity', inputs, { head_2_kpa: 2 })).toContain('skipped');
    const metres = { speed_1_percent: 80, speed_2_percent: 40, head_1_m: 8, flow_1_l_s: 3 };
    expect(check('affinity', metres, { head_2_m: 2, flow_2_l_min: 90 })).toBe('passed');
    expect(check('affinity', { speed_2_percent: 50, power_1_kw: 1 }, { power_2_w: 125 })).toBe(
      'passed',
    );
  });

  it('mixing with percentages and minutes', () => {
    expect(
      check(
        'mixing',
        { turnovers: 2, filter_efficiency_percent: 50 },
        { share_percent: 100 - 100 / Math.E },
      ),
    ).toBe('passed');
    expect(check('mixing', { volume_l: 60000, flow_l_min: 250 }, { minutes: 240 })).toBe('passed');
  });

  it('gauges in kilopascal, bar and millimetres of bore', () => {
    const density = { density_kg_m3: 1000 };
    expect(check('gauges', { pressure_bar: 1, ...density }, { head_m: 1e5 / 9806.65 })).toBe(
      'passed',
    );
    expect(
      check(
        'gauges',
        { discharge_kpa: 100, vacuum_kpa: 20, gauge_height_difference_m: 0.5, ...density },
        { total_dynamic_head_m: 120e3 / 9806.65 + 0.5 },
      ),
    ).toBe('passed');
  });

  it('water from kelvin and fahrenheit', () => {
    // IAPWS SR6-08(2011) table 8: 997.047013 kg/m3 at 298.15 K.
    expect(check('density', { temperature_k: 298.15 }, { density_kg_m3: 997.047013 })).toBe(
      'passed',
    );
    expect(check('density', { temperature_f: 77 }, { density_g_cm3: 0.997047013 })).toBe('passed');
  });

  it('velocity in a bore in millimetres, and per cent of slope', () => {
    expect(
      check(
        'velocity',
        { flow_l_min: 60, inside_diameter_mm: 50 },
        { velocity_m_s: 1.6 / Math.PI },
      ),
    ).toBe('passed');
  });

  it('a third branch and a second one of two groups', () => {
    const branch = { inside_diameter_mm: 45.2, length_m: 12, k_fittings: 3.5 };
    const inputs = {
      pump_law: 'three-point',
      points,
      speed_percent: 60,
      z: 0,
      units: 'L/min, kPa',
      roughness_m: 1.5e-6,
      temperature_c: 20,
      series: [{ inside_diameter_mm: 57, length_m: 30 }],
      parallel: [branch, branch, branch],
    };
    expect(check('operating point', inputs, { share_of_third_branch: 1 / 3 })).toContain('skipped');
    const metres = {
      ...inputs,
      units: 'L/min, m',
      points: points.map(([q, h = 0]) => [q ?? 0, h / 10]),
    };
    expect(check('operating point', metres, { share_of_third_branch: 1 / 3 })).toBe('passed');
    expect(check('operating point', metres, { share_of_branch_2_percent: 100 / 3 })).toBe('passed');
    expect(check('operating point', metres, { share_of_fourth_branch: 0 })).toContain('skipped');
  });

  it('a closed loop k found again in litres a minute', () => {
    // On the curve's own second point: 25 m at 200 L/min, so k = 25/200^2 meets it there.
    const inputs = {
      pump_law: 'three-point',
      points: points.map(([q = 0, h = 0]) => [q, h / 10]),
      k: 25 / 200 ** 2,
      units: 'L/min, m',
    };
    expect(
      check(
        'operating point',
        inputs,
        { flow_m3_h: 12, head_ft: 25 / 0.3048, beyond_last_point: false },
        1e-8,
      ),
    ).toBe('passed');
    expect(
      check(
        'operating point',
        { ...inputs, speed_ratio: 0.5 },
        { flow_l_min: 100, head_m: 6.25 },
        1e-8,
      ),
    ).toBe('passed');
  });

  it('pressure of the air in kilopascal and a loss in feet', () => {
    expect(check('atmosphere', { altitude_ft: 0 }, { pressure_kpa: 101.325 })).toBe('passed');
  });

  it('prices hour by hour and a flat one', () => {
    const blocks = [{ start: '22:00', end: '02:00', power_kw: 0.5 }];
    expect(check('electricity', { blocks, price_per_kwh: 0.2 }, { energy_kwh: 2, cost: 0.4 })).toBe(
      'passed',
    );
    const price_per_kwh = Array.from({ length: 24 }, (_, hour) => (hour < 2 ? 0.1 : 0.3));
    expect(check('electricity', { blocks, price_per_kwh }, { energy_mj: 7.2, cost: 0.4 })).toBe(
      'passed',
    );
  });
});

describe('nothing is overlooked', () => {
  it('an input no rule uses skips the case', () => {
    expect(check('mixing', { turnovers: 1, temperature_c: 20 }, { share: 0.6 })).toContain(
      'skipped',
    );
    expect(
      check('velocity', { flow_gpm: 50, inside_diameter_in: 2, k: 1 }, { velocity_m_s: 1 }),
    ).toContain('skipped');
  });

  it('an expected value no rule gives skips the case', () => {
    expect(check('mixing', { turnovers: 1 }, { share: 0.632, cost: 1 })).toContain('skipped');
  });

  it('inputs that contradict each other skip the case', () => {
    expect(
      check(
        'velocity',
        { flow_gpm: 50, nominal_in: 2, schedule: 40, inside_diameter_in: 1.9 },
        { velocity_ft_s: 5 },
      ),
    ).toContain('two ways that differ');
    expect(
      check('gauges', { pressure_kpa: 1, temperature_c: 20, density_kg_m3: 900 }, { head_m: 0.1 }),
    ).toContain('two ways that differ');
  });

  it('the same quantity given twice skips the case', () => {
    expect(check('mixing', { turnovers: 1, hours: 2, minutes: 120 }, { share: 0.6 })).toContain(
      'mean the same',
    );
  });

  it('a value outside what the core allows is a miss, not a skip', () => {
    expect(check('mixing', { turnovers: -1 }, { share: 0 })).toMatch(/^broke: turnovers/);
  });
});
