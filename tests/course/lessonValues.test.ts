import { describe, expect, test } from 'vitest';
import type { ValueProps } from '#course/lesson/value.ts';
import { lessonValue } from '#course/lesson/values.ts';

/*
 * Figures as the lessons ask for them, against arithmetic written out here. Factors are those of
 * NIST SP 811 (2008), appendix B; densities and viscosities of water are read from the tables of
 * IAPWS releases, rounded as printed.
 */
const [inch, ft] = [0.0254, 0.3048];
const gal = 231 * inch ** 3;
const gpm = gal / 60;
const psi = 6894.757;
const inHg = 3386.389;
const hp = 745.6999;
const gravity = 9.80665;
const hour = 3600;
const kWh = 3.6e6;
/** Density [kg/m3] at 20, 27 and 27.78 °C (82 °F). */
const [at20, at27, at82F] = [998.207, 996.513, 996.29];
const area = (bore: number) => (Math.PI / 4) * bore ** 2;
/** Schedule 40 bores, ASTM D1785: outside diameter less twice the least wall. */
const [bore2, bore25] = [2.067 * inch, 2.469 * inch];

/** Name, what the lesson writes, what must come out, how near [-]. */
type Row = readonly [string, ValueProps, number, number];

function all(rows: readonly Row[]): void {
  test.each(rows)('%s %j', (name, given, expected, near) => {
    expect(Math.abs(lessonValue(name, given).value / expected - 1)).toBeLessThan(near);
  });
}

/** Days of June to September 2027 on weekdays (ISO 8601 calendar, by the platform's own clock). */
const summerWeekdays = Array.from({ length: 122 }, (_, day) =>
  new Date(Date.UTC(2027, 5, 1 + day)).getUTCDay(),
).filter((weekday) => weekday >= 1 && weekday <= 5).length;

describe('head and gauges: hydrostatics, p = ρ g h', () => {
  const pair = { pressure: '18 psi', vacuum: '7 inHg', height: '3 ft', temperature: '27 degC' };
  all([
    ['headOfPressure', { pressure: '1 psi', temperature: '20 degC' }, psi / (at20 * gravity), 2e-5],
    ['headOfVacuum', { vacuum: '1 inHg', temperature: '20 degC' }, inHg / (at20 * gravity), 2e-5],
    ['gaugeHead', pair, (18 * psi + 7 * inHg) / (at27 * gravity) + 3 * ft, 2e-5],
    // The trade's rounded factors: 2.31 ft for a psi and 1.13 ft for an inch of mercury.
    ['gaugeHeadRounded', pair, (18 * 2.31 + 7 * 1.13 + 3) * ft, 1e-9],
    // ASME B40.100 grade B: 2 % of the span in its middle half (from memory).
    ['gaugeTolerance', { grade: 'B', span: '60 psi', pressure: '20 psi' }, 1.2 * psi, 1e-6],
    [
      'gaugeToleranceHead',
      { grade: 'B', span: '60 psi', pressure: '20 psi', temperature: '27 degC' },
      (1.2 * psi) / (at27 * gravity),
      2e-5,
    ],
    [
      'velocityHeadGain',
      { from: 'sch40-2.5', to: 'sch40-2', flow: '60 gpm' },
      ((60 * gpm) / area(bore2)) ** 2 / (2 * gravity) -
        ((60 * gpm) / area(bore25)) ** 2 / (2 * gravity),
      0.02,
    ],
    // Pressure falls with the square of the speed: affinity laws, ANSI/HI 14.3.
    ['gaugeAtSpeed', { pressure: '16 psi', from: '3000 rpm', to: '1500 rpm' }, 4 * psi, 1e-6],
    ['filterLoadedHead', { clean: '4 ft', dirty: '24 ft', loading: '0.5' }, 14 * ft, 1e-9],
  ]);
});

describe('pipes and fittings', () => {
  test('the friction factor solves the equation of Colebrook and White (1939)', () => {
    const given = { pipe: 'sch40-2', flow: '60 gpm', temperature: '26.67 degC' };
    // Viscosity at 26.67 °C: 0.857 mPa s (IAPWS R12-08), density 996.6 kg/m3.
    const reynolds = (((60 * gpm) / area(bore2)) * bore2) / (0.857e-3 / 996.6);
    let root = 8;
    for (let round = 0; round < 60; round += 1)
      root = -2 * Math.log10(1.5e-6 / bore2 / 3.7 + (2.51 / reynolds) * root);
    expect(lessonValue('frictionFactor', given).value * root ** 2).toBeCloseTo(1, 3);
  });

  test('two runs side by side lose the same head, so the shorter takes more, but not twice', () => {
    const given = { pipe: 'sch40-2', first: '40 ft', second: '80 ft', flow: '60 gpm' };
    const first = lessonValue('splitFlow', given).value;
    const loss = (length: string, flow: number) =>
      lessonValue('frictionLoss', {
        pipe: 'sch40-2',
        flow: `${flow / gpm} gpm`,
        length,
        temperature: '27 degC',
      }).value;
    expect(loss('40 ft', first) / loss('80 ft', 60 * gpm - first)).toBeCloseTo(1, 6);
    expect(first / (60 * gpm)).toBeGreaterThan(0.59);
    expect(first / (60 * gpm)).toBeLessThan(0.61);
  });

  all([
    // Hazen-Williams in SI, h = 10.67 L Q^1.852 / (C^1.852 D^4.8704); handbook form.
    [
      'hazenLoss',
      { pipe: 'sch40-2', flow: '60 gpm', length: '100 ft', c: '150' },
      (10.67 * 100 * ft * (60 * gpm) ** 1.852) / (150 ** 1.852 * bore2 ** 4.8704),
      2e-3,
    ],
    // Crane TP-410: K = 30 f_T, f_T 0.019 at 2 in.
    ['fittingK', { kind: 'elbow90', pipe: 'sch40-2' }, 30 * 0.019, 5e-3],
  ]);
});

describe('pump and operating point', () => {
  const loop = { pipesHead: '14.4 ft', pipesFlow: '40 gpm' };
  const sheet = {
    ...loop,
    points: '0 90, 20 88, 40 82, 60 72, 80 57, 100 36',
    flowIn: 'gpm',
    headIn: 'ft',
  };
  const bend = Math.log2(7.5 / 1.8);
  all([
    // Affinity laws, ANSI/HI 14.3: flow as the speed, head as its square.
    ['affinityFlow', { flow: '80 gpm', from: '3450 rpm', to: '1725 rpm' }, 40 * gpm, 1e-9],
    ['affinityHead', { head: '60 ft', from: '3450 rpm', to: '1725 rpm' }, 15 * ft, 1e-9],
    ['pipesHead', { ...loop, flow: '60 gpm' }, 32.4 * ft, 1e-9],
    // 18 - H = B Q^C through (10, 16.2) and (20, 10.5).
    [
      'sheetHead',
      {
        law: 'three',
        points: '0 18, 10 16.2, 20 10.5',
        flowIn: 'm3/h',
        headIn: 'm',
        flow: '18 m3/h',
      },
      18 - 1.8 * 1.8 ** bend,
      1e-9,
    ],
    // At 80 gpm the pump gives 57 ft and the pipes take 57.6: they meet a shade below.
    ['meetingFlow', sheet, 79.7 * gpm, 3e-3],
    ['meetingHead', sheet, 57.2 * ft, 5e-3],
    // Shut-off head falls with the square of the speed: N = top x sqrt(lift / shut-off head).
    [
      'speedForLift',
      { lift: '1.5 m', shutoff: '22 m', top: '3000 rpm' },
      3000 * Math.sqrt(1.5 / 22),
      1e-3,
    ],
    // The same water at a price per volume that falls with the square of the speed.
    ['speedForPrice', { ratio: '2.7' }, 1 / Math.sqrt(2.7), 1e-9],
  ]);
});

describe('power, energy and money: definitions, NIST SP 811', () => {
  const thrifty = { fixed: '40 W', cube: '1400 W' };
  const best = Math.cbrt(40 / 2800);
  const frost = { fixed: '52 W', cube: '1640 W', from: '3450 rpm', time: '180 h' };
  all([
    ['usedEnergy', { power: '1600 W', time: '8 h' }, 12.8 * kWh, 1e-9],
    ['usedCost', { power: '1600 W', time: '8 h', price: '0.20' }, 2.56, 1e-9],
    ['runEnergy', { power: '190 W', from: '14:00', to: '16:00' }, 0.38 * kWh, 1e-9],
    ['blockEnergy', { power: '800 W', from: '10:00', to: '14:00' }, 3.2 * kWh, 1e-9],
    ['blockEnergy', { power: '200 W', from: '22:00', to: '02:00' }, 0.8 * kWh, 1e-9],
    ['currentOf', { power: '1500 W', voltage: '230 V', factor: '0.9' }, 1500 / 207, 1e-9],
    ['powerIs', { power: '1 hp' }, hp, 1e-6],
    // The trade's water horsepower: gpm x ft x specific gravity / 3960.
    ['waterPower', { flow: '65 gpm', head: '55 ft' }, (65 * 55 * 0.9982 * hp) / 3960, 2e-3],
    [
      'powerBefore',
      { flow: '65 gpm', head: '55 ft', through: '60 %' },
      (65 * 55 * 0.9982 * hp) / 3960 / 0.6,
      2e-3,
    ],
    // Most water for a kWh where the cube is half the fixed draw: d/dr (fixed + c r^3)/r = 0.
    ['bestSpeed', { ...thrifty, top: '3450 rpm' }, 3450 * best, 1e-3],
    ['bestPower', thrifty, 60, 1e-9],
    [
      'waterAtSpeed',
      { ...thrifty, flow: '80 gpm', from: '3450 rpm', to: '837 rpm' },
      ((80 * 837) / 3450 / ((40 + 1400 * (837 / 3450) ** 3) / 1000)) * 60 * gal,
      1e-9,
    ],
    ['frostEnergy', { ...frost, to: '3450 rpm' }, 0.18 * 1692 * kWh, 1e-9],
    ['frostEnergy', { ...frost, to: '1725 rpm' }, 0.18 * (52 + 205) * kWh, 1e-9],
    ['frostPrice', { ...frost, to: '1725 rpm', price: '0.20' }, 0.18 * 257 * 0.2, 1e-9],
    ['payback', { outlay: '700', before: '900', after: '300' }, 7 / 6, 1e-9],
    ['seasonDays', { season: 'summer', kind: 'weekday' }, summerWeekdays, 1e-9],
    ['seasonDays', { season: 'summer', kind: 'weekend' }, 122 - summerWeekdays, 1e-9],
    // The winter that begins in 2027 runs to the end of May 2028, a leap year.
    ['seasonDays', { season: 'winter' }, 366 - 122, 1e-9],
  ]);
});

describe('the label: 10 CFR 431 subpart Y', () => {
  const top = { 'top-flow': '81 gpm', horsepower: '1.1' };
  all([
    // Appendix C (from memory): 31.1 gpm above 0.75 hp with a weight of 0.8; 80 % of top flow with 0.2.
    ['ratedLowFlow', top, 31.1 * gpm, 1e-6],
    ['ratedHighFlow', top, 64.8 * gpm, 1e-6],
    ['energyFactor', { flow: '81 gpm', power: '1850 W' }, (81 * 60) / 1850, 1e-6],
    [
      'weightedEnergyFactor',
      { ...top, 'low-power': '180 W', 'high-power': '1000 W' },
      ((0.8 * 31.1 + 0.2 * 64.8) * 60) / (0.8 * 180 + 0.2 * 1000),
      1e-6,
    ],
    // 431.465: standard-size self-priming, 6.59 - 2.30 ln(hp) from 0.711 hp on.
    ['leastEnergyFactor', { horsepower: '1.1' }, 6.59 - 2.3 * Math.log(1.1), 1e-6],
  ]);

  test('frost watch may begin at 40 °F (from memory)', () => {
    expect(lessonValue('frostStart', {}).value).toBeCloseTo(40 / 9, 9);
  });
});

describe('pool, needs and limits', () => {
  all([
    [
      'poolVolume',
      { shape: 'rectangle', length: '32 ft', width: '16 ft', shallow: '3 ft', deep: '8 ft' },
      32 * 16 * 5.5 * ft ** 3,
      1e-9,
    ],
    ['turnoverTime', { volume: '19200 gal', flow: '40 gpm' }, 8 * hour, 1e-9],
    [
      'turnovers',
      { volume: '16831.17 gal', flow: '35 gpm', time: '12 h' },
      (35 * 720) / 16831.17,
      1e-6,
    ],
    // Gage and Bidwell (1926): one turnover leaves 1/e.
    ['filteredShare', { turnovers: '1' }, 1 - Math.exp(-1), 1e-9],
    ['turnoversForShare', { share: '95 %' }, Math.log(20), 1e-9],
    [
      'timeForShare',
      { volume: '70.37 m3', flow: '9 m3/h', share: '95 %' },
      ((Math.log(20) * 70.37) / 9) * hour,
      1e-9,
    ],
    [
      'turningFlow',
      { volume: '16000 gal', turnovers: '2', time: '24 h' },
      (32000 / 1440) * gpm,
      1e-9,
    ],
    // Two covers share the flow; with one blocked the other bears it all: common practice, no source.
    ['coversBear', { covers: '2', marked: '60 gpm' }, 60 * gpm, 1e-9],
    ['coversBear', { covers: '3', marked: '60 gpm' }, 120 * gpm, 1e-9],
    ['filterBears', { area: '2.7 ft2', rate: '20 gpm/ft2' }, 54 * gpm, 1e-9],
    // Mass = volume x mg/L, hours = mass / output.
    [
      'cellTime',
      { volume: '20000 gal', use: '2 mg/L', output: '25 g/h' },
      ((20000 * gal * 2) / 25) * hour,
      1e-9,
    ],
  ]);
});

describe('the suction side', () => {
  // ISO 2533 at 5000 ft (1524 m): 84.31 kPa. Vapour pressure at 82 °F: 3.733 kPa, IAPWS-IF97.
  const there = { altitude: '5000 ft', temperature: '82 degF', lift: '3 ft', loss: '6 ft' };
  const left = (84_310 - 3733) / (at82F * gravity) - 9 * ft;
  all([
    ['airPressure', { altitude: '0 ft' }, 101_325, 1e-9],
    ['airPressure', { altitude: '5000 ft' }, 84_310, 2e-4],
    ['airHead', { altitude: '0 ft', temperature: '82 degF' }, 101_325 / (at82F * gravity), 3e-5],
    ['boilingHead', { temperature: '82 degF' }, 3733 / (at82F * gravity), 1e-3],
    ['npshAvailable', there, left, 1e-3],
    ['suctionMargin', { ...there, required: '9 ft' }, left - 9 * ft, 2e-3],
  ]);
});

describe('figures of the valve and of a year under dirt', () => {
  test('of a shut pump, what reaches the wheel: without 52 W fixed draw, 82 % of the rest', () => {
    const watts = (of: string) => lessonValue(of, { open: '0 %' }).value;
    expect(watts('walkShaft')).toBeCloseTo((watts('walkPower') - 52) * 0.82, 9);
  });

  test('dirt makes other pipes: the power held by speed rises by less than the cube says', () => {
    const share = (of: string) => lessonValue(of, { way: 'speed' }).value;
    expect(share('filterYearCube')).toBeCloseTo((1 + share('filterYearFaster')) ** 3 - 1, 9);
    expect(share('filterYearStronger')).toBeLessThan(share('filterYearCube'));
  });

  test('60 gpm in 2 in Schedule 40 at 80 °F: a Reynolds number of 107 000 by hand', () => {
    // Arithmetic: 1.750 m/s x 0.0525 m / 8.6e-7 m2/s = 106 800; the viscosity is that of IAPWS SR6-08.
    const given = { pipe: 'sch40-2', flow: '60 gpm', temperature: '26.67 degC', figures: '3' };
    expect(lessonValue('reynolds', given).value / 106_800).toBeCloseTo(1, 2);
  });
});
