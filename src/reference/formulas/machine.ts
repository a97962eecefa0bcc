import type { LawSymbol, Subject } from './law.ts';

const flow: LawSymbol = ['Q', 'flow', 'm³/s'];
const head: LawSymbol = ['H', 'head', 'm'];
const ratio: LawSymbol = ['r', 'speed ratio, speed over reference speed', '–'];
const gravity: LawSymbol = ['g', 'standard gravity, 9.80665', 'm/s²'];
const density: LawSymbol = ['ρ', 'density of the water', 'kg/m³'];

/** The pump, its power, where it meets the pipes, and readings of it. */
export const machineSubjects: readonly Subject[] = [
  {
    id: 'pump',
    name: 'The pump',
    laws: [
      {
        name: 'Affinity laws',
        tex: '\\frac{Q_2}{Q_1} = \\frac{N_2}{N_1} \\qquad \\frac{H_2}{H_1} = \\left(\\frac{N_2}{N_1}\\right)^{2} \\qquad \\frac{P_2}{P_1} = \\left(\\frac{N_2}{N_1}\\right)^{3}',
        symbols: [
          ['N', 'speed, before (1) and after (2)', 'rpm'],
          flow,
          head,
          ['P', 'shaft power', 'W'],
        ],
        sources: ['affinity-hi'],
        note: 'Exact for matching points of one pump. For the flow of a real pad they hold only without lift and with the pipes as they were.',
      },
      {
        name: 'Pump curve at any speed',
        tex: 'H(Q, r) = r^{2}\\,H\\!\\left(\\frac{Q}{r}\\right)',
        symbols: [head, flow, ratio],
        sources: ['affinity-hi'],
      },
      {
        name: 'Curve through three points',
        tex: 'H = A - B\\,Q^{C}, \\quad C = \\frac{\\ln\\dfrac{A - H_2}{A - H_1}}{\\ln\\dfrac{Q_2}{Q_1}}, \\quad B = \\frac{A - H_1}{Q_1^{C}}',
        symbols: [
          head,
          flow,
          ['A', 'shut-off head', 'm'],
          ['B', 'fall of the curve', 'm/(m³/s)^C'],
          ['C', 'exponent', '–'],
          ['Q_1, H_1', 'middle point', 'm³/s, m'],
          ['Q_2, H_2', 'far point', 'm³/s, m'],
        ],
        sources: ['common-practice'],
      },
      {
        name: 'Typical curve through one point',
        tex: '\\frac{H}{H_b} = 1.3 - 0.3\\left(\\frac{Q}{Q_b}\\right)^{2}',
        symbols: [
          ['H_b', 'head at the best point', 'm'],
          ['Q_b', 'flow at the best point', 'm³/s'],
        ],
        sources: ['common-practice'],
        note: 'An estimate, and marked as one wherever it is used.',
      },
    ],
  },
  {
    id: 'power',
    name: 'Power',
    laws: [
      {
        name: 'Hydraulic power',
        tex: 'P_h = \\rho g Q H',
        symbols: [['P_h', 'hydraulic power', 'W'], density, gravity, flow, head],
        sources: ['affinity-hi'],
        note: 'In gpm, feet and horsepower: flow times head over about 3956.',
      },
      {
        name: 'From water to wire',
        tex: 'P = P_0 + \\frac{P_h}{\\eta\\,\\eta_d}',
        symbols: [
          ['P', 'wire power', 'W'],
          ['P_0', 'fixed draw', 'W'],
          ['P_h', 'hydraulic power', 'W'],
          ['η', 'pump efficiency', '–'],
          ['η_d', 'drive efficiency, of motor and drive together', '–'],
        ],
        sources: ['affinity-hi', 'common-practice'],
      },
      {
        name: 'Wire power along a closed loop',
        tex: 'P = P_0 + c\\,r^{3}',
        symbols: [
          ['P', 'wire power', 'W'],
          ['P_0', 'fixed draw', 'W'],
          ['c', 'the part that follows the cube, at reference speed', 'W'],
          ratio,
        ],
        sources: ['affinity-hi', 'common-practice'],
        note: 'Without lift, and with the pipes as they are. A pump that holds a flow raises its speed and its watts as the filter loads.',
      },
      {
        name: 'Speed with the most water for the energy',
        tex: 'r^{*} = \\left(\\frac{P_0}{2c}\\right)^{1/3}',
        symbols: [
          ['r*', 'speed ratio; below it each gallon costs more', '–'],
          ['P_0', 'fixed draw', 'W'],
          ['c', 'the part that follows the cube', 'W'],
        ],
        sources: ['common-practice'],
        note: 'By calculus, the least of P/r. It holds for P₀ + c r³ and flow in proportion to speed, and only inside the pump’s speed range.',
      },
      {
        name: 'Current',
        tex: 'I = \\frac{P}{U\\,\\mathit{pf}}',
        symbols: [
          ['I', 'current', 'A'],
          ['P', 'power', 'W'],
          ['U', 'voltage', 'V'],
          ['pf', 'power factor, watts over volt-amperes; it falls at light load', '–'],
        ],
        sources: ['iec-60050-131'],
        note: 'On one phase. A drive’s current is no sine wave, so the power factor is more than an angle between volts and amperes.',
      },
    ],
  },
  {
    id: 'operating-point',
    name: 'Operating point',
    laws: [
      {
        name: 'Where pump meets pipes',
        tex: 'r^{2}\\,H\\!\\left(\\frac{Q}{r}\\right) = H_{\\mathrm{sys}}(Q)',
        symbols: [head, ['H_sys', 'head the circuit takes', 'm'], flow, ratio],
        sources: ['affinity-hi'],
        note: 'No flow where the shut-off head, r²H(0), does not exceed the lift.',
      },
    ],
  },
  {
    id: 'readings',
    name: 'Readings',
    laws: [
      {
        name: 'Pressure as head',
        tex: 'h = \\frac{p}{\\rho g}',
        symbols: [['h', 'height of water', 'm'], ['p', 'pressure', 'Pa'], density, gravity],
        sources: ['nist-sp811', 'iapws-sr6'],
        note: 'The trade’s 2.31 ft per psi and 1.13 ft per inHg are this, rounded.',
      },
      {
        name: 'Total dynamic head from two gauges',
        tex: 'H = \\frac{p_d + p_s}{\\rho g} + \\Delta z + \\frac{V_d^{2} - V_s^{2}}{2g}',
        symbols: [
          ['H', 'total dynamic head', 'm'],
          ['p_d', 'gauge after the pump', 'Pa'],
          ['p_s', 'vacuum before it', 'Pa'],
          ['Δz', 'height of the first gauge above the second', 'm'],
          ['V_d, V_s', 'velocity at each tap', 'm/s'],
          density,
          gravity,
        ],
        sources: ['affinity-hi'],
      },
      {
        name: 'Fitting what was read',
        tex: '\\min \\sum_i \\left(\\frac{y_i - \\hat{y}_i}{\\sigma_i}\\right)^{2}',
        symbols: [
          ['y_i', 'a reading', 'as read'],
          ['ŷ_i', 'what the fitted pad gives for it', 'as read'],
          ['σ_i', 'how far the instrument may be off', 'as read'],
        ],
        sources: ['gum'],
        note: 'What is assumed beforehand counts as a reading too, with a wide margin.',
      },
    ],
  },
];
