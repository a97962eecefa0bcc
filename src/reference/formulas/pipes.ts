import type { LawSymbol, Subject } from './law.ts';

const flow: LawSymbol = ['Q', 'flow', 'm³/s'];
const bore: LawSymbol = ['D', 'bore', 'm'];
const velocity: LawSymbol = ['V', 'mean velocity', 'm/s'];
const gravity: LawSymbol = ['g', 'standard gravity, 9.80665', 'm/s²'];
const density: LawSymbol = ['ρ', 'density of the water', 'kg/m³'];
const viscosity: LawSymbol = ['ν', 'kinematic viscosity', 'm²/s'];
const reynolds: LawSymbol = ['Re', 'Reynolds number', '–'];
const factor: LawSymbol = ['f', 'Darcy friction factor', '–'];
const loss: LawSymbol = ['h', 'head lost', 'm'];

/** Water, pipes, fittings and the whole circuit. */
export const pipeSubjects: readonly Subject[] = [
  {
    id: 'water',
    name: 'Water',
    laws: [
      {
        name: 'Viscosity',
        tex: '\\mu = 10^{-6}\\bigl(280.68\\,\\tau^{-1.9} + 511.45\\,\\tau^{-7.7} + 61.131\\,\\tau^{-19.6} + 0.45903\\,\\tau^{-40}\\bigr), \\quad\\allowbreak \\tau = T / 300',
        symbols: [
          ['µ', 'dynamic viscosity', 'Pa s'],
          ['τ', 'reduced temperature', '–'],
          ['T', 'temperature', 'K'],
        ],
        sources: ['iapws-sr6'],
        note: 'At 0.1 MPa, 0 to 45 °C here. Density comes from the same release, by a longer formula.',
      },
      {
        name: 'Kinematic viscosity',
        tex: '\\nu = \\mu / \\rho',
        symbols: [viscosity, ['µ', 'dynamic viscosity', 'Pa s'], density],
        sources: ['iapws-sr6'],
      },
      {
        name: 'Vapor pressure',
        tex: 'p_v = 10^{6}\\left(\\frac{2C}{-B + \\sqrt{B^{2} - 4AC}}\\right)^{4}',
        symbols: [
          ['p_v', 'vapor pressure', 'Pa'],
          ['A, B, C', 'quadratics in the temperature, with ten printed coefficients', '–'],
        ],
        sources: ['iapws-if97'],
      },
    ],
  },
  {
    id: 'pipe',
    name: 'Pipe',
    laws: [
      {
        name: 'Bore',
        tex: 'D = D_o - 2s',
        symbols: [bore, ['D_o', 'outside diameter', 'm'], ['s', 'least wall', 'm']],
        sources: ['astm-d1785', 'en-iso-1452'],
      },
      {
        name: 'Velocity',
        tex: 'V = \\frac{Q}{\\tfrac{\\pi}{4} D^{2}}',
        symbols: [velocity, flow, bore],
        sources: ['affinity-hi'],
        note: 'In gpm, inches and ft/s: V is about 0.4085 Q/d².',
      },
      {
        name: 'Reynolds number',
        tex: '\\mathit{Re} = \\frac{V D}{\\nu}',
        symbols: [reynolds, velocity, bore, viscosity],
        sources: ['reynolds-1883'],
      },
      {
        name: 'Darcy–Weisbach',
        tex: 'h = f\\,\\frac{L}{D}\\,\\frac{V^{2}}{2g}',
        symbols: [loss, factor, ['L', 'length of pipe', 'm'], bore, velocity, gravity],
        sources: ['weisbach-1845', 'nist-sp811'],
        note: 'For a full pipe, steady flow and a Newtonian liquid such as water.',
      },
      {
        name: 'Laminar friction',
        tex: 'f = \\frac{64}{\\mathit{Re}}, \\quad \\mathit{Re} \\le 2000',
        symbols: [factor, reynolds],
        sources: ['affinity-hi'],
      },
      {
        name: 'Colebrook–White',
        tex: '\\frac{1}{\\sqrt{f}} = -2 \\log_{10}\\!\\Bigl(\\frac{\\varepsilon / D}{3.7} + \\frac{2.51}{\\mathit{Re}\\sqrt{f}}\\Bigr), \\quad\\allowbreak \\mathit{Re} \\ge 4000',
        symbols: [factor, ['ε', 'roughness, 1.5 µm for smooth plastic', 'm'], bore, reynolds],
        sources: ['darcy-colebrook'],
        note: 'Between Re 2000 and 4000 the water may do either, and no formula is sure. There f is blended over Re by a cubic that meets both laws in value and in slope (common practice).',
      },
      {
        name: 'Hazen–Williams',
        tex: 'h = \\frac{10.67\\,L\\,Q^{1.852}}{C^{1.852}\\,D^{4.8704}}',
        symbols: [
          loss,
          ['L', 'length of pipe', 'm'],
          flow,
          ['C', 'coefficient, 150 for new PVC', '–'],
          bore,
        ],
        sources: ['hazen-williams', 'illinois-906'],
        note: 'Shown beside Darcy–Weisbach because handbooks use it; the two are compared and never mixed.',
      },
    ],
  },
  {
    id: 'fittings',
    name: 'Fittings and equipment',
    laws: [
      {
        name: 'Loss of a fitting',
        tex: 'h = K\\,\\frac{V^{2}}{2g}',
        symbols: [loss, ['K', 'loss coefficient', '–'], velocity, gravity],
        sources: ['crane-tp410'],
      },
      {
        name: 'Coefficient after Crane',
        tex: 'K = n f_T, \\quad f_T = \\frac{0.25}{\\left[\\log_{10}\\dfrac{\\varepsilon}{3.7 D}\\right]^{2}}',
        symbols: [
          ['K', 'loss coefficient', '–'],
          ['n', 'multiplier of the kind of fitting', '–'],
          ['f_T', 'fully turbulent friction factor', '–'],
          ['ε', 'roughness of steel, 0.0018 in', 'm'],
          bore,
        ],
        sources: ['crane-tp410'],
      },
      {
        name: 'Sudden widening',
        tex: 'K = \\left(1 - \\frac{D_1^{2}}{D_2^{2}}\\right)^{2}',
        symbols: [
          ['K', 'loss coefficient, on the velocity in the smaller bore', '–'],
          ['D_1', 'bore before', 'm'],
          ['D_2', 'bore after', 'm'],
        ],
        sources: ['crane-tp410'],
        note: 'Borda–Carnot. Where a pipe ends in a pool, all the velocity head is lost: K is 1.',
      },
      {
        name: 'Sudden narrowing',
        tex: 'K = \\tfrac{1}{2}\\left(1 - \\frac{D_2^{2}}{D_1^{2}}\\right)',
        symbols: [
          ['K', 'loss coefficient, on the velocity in the smaller bore', '–'],
          ['D_1', 'bore before', 'm'],
          ['D_2', 'bore after', 'm'],
        ],
        sources: ['crane-tp410'],
      },
      {
        name: 'Equipment from one known point',
        tex: 'h = \\lambda\\,h_0 \\left(\\frac{Q}{Q_0}\\right)^{n}',
        symbols: [
          loss,
          ['h_0', 'head lost at the known flow', 'm'],
          flow,
          ['Q_0', 'known flow', 'm³/s'],
          ['n', 'exponent, 2 unless known', '–'],
          ['λ', 'loading factor, 1 when clean', '–'],
        ],
        sources: ['common-practice'],
      },
      {
        name: 'Loading of a filter',
        tex: '\\lambda = 1 + x\\left(\\frac{h_d}{h_c} - 1\\right)',
        symbols: [
          ['λ', 'loading factor', '–'],
          ['x', 'how far from clean (0) to due for cleaning (1)', '–'],
          ['h_d', 'head lost when due for cleaning', 'm'],
          ['h_c', 'head lost when clean, at the same flow', 'm'],
        ],
        sources: ['common-practice'],
      },
    ],
  },
  {
    id: 'circuit',
    name: 'The circuit',
    laws: [
      {
        name: 'System curve',
        tex: 'H_{\\mathrm{sys}}(Q) = z + \\sum h_{\\mathrm{pipe}} + \\sum h_{\\mathrm{fitting}} + \\sum h_{\\mathrm{equipment}}',
        symbols: [
          ['H_sys', 'head the circuit takes', 'm'],
          ['z', 'static head (lift), 0 in a closed loop', 'm'],
          ['h', 'head lost in each part', 'm'],
        ],
        sources: ['weisbach-1845', 'crane-tp410'],
        note: 'Lift counts over a spillway, between two water levels, and in a solar roof until its line is full.',
      },
      {
        name: 'Branches side by side',
        tex: 'h_1(Q_1) = h_2(Q_2) = \\dots, \\qquad Q = \\sum Q_i',
        symbols: [
          ['h_i', 'head each branch takes', 'm'],
          ['Q_i', 'flow in each branch', 'm³/s'],
          flow,
        ],
        sources: ['cross-1936'],
        note: 'Solved together, never averaged.',
      },
    ],
  },
];
