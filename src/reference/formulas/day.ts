import type { LawSymbol, Subject } from './law.ts';

const flow: LawSymbol = ['Q', 'flow', 'm³/s'];
const volume: LawSymbol = ['V', 'volume of the pool', 'm³'];
const time: LawSymbol = ['t', 'time', 's'];
const density: LawSymbol = ['ρ', 'density of the water', 'kg/m³'];
const gravity: LawSymbol = ['g', 'standard gravity, 9.80665', 'm/s²'];

/** Needs, limits, the pool, the day, its price, and the rule behind the label. */
export const daySubjects: readonly Subject[] = [
  {
    id: 'needs',
    name: 'Needs and limits',
    laws: [
      {
        name: 'Chlorine for a rise',
        tex: 'm = V\\,\\Delta c',
        symbols: [
          ['m', 'mass of chlorine', 'kg'],
          volume,
          ['Δc', 'rise; 1 mg/L is 0.001', 'kg/m³'],
        ],
        sources: ['nist-sp811'],
      },
      {
        name: 'Time of a salt cell',
        tex: 't = \\frac{m}{\\dot m\\,a}',
        symbols: [
          time,
          ['m', 'mass of chlorine', 'kg'],
          ['ṁ', 'what the cell makes at full output', 'kg/s'],
          ['a', 'output it is set to', '–'],
        ],
        sources: ['common-practice'],
      },
      {
        name: 'Time of a heater',
        tex: 't = \\frac{\\rho V c_p\\,\\Delta T}{\\dot Q}',
        symbols: [
          time,
          density,
          volume,
          ['c_p', 'specific heat of the water', 'J/(kg K)'],
          ['ΔT', 'rise in temperature', 'K'],
          ['Q̇', 'heat that reaches the water', 'W'],
        ],
        sources: ['iapws-sr6', 'nist-sp811'],
        note: 'Without losses to air and ground, so a real pool takes longer.',
      },
      {
        name: 'Greatest flow of a filter',
        tex: 'Q = A\\,u',
        symbols: [flow, ['A', 'filter area', 'm²'], ['u', 'greatest rate on the label', 'm/s']],
        sources: ['common-practice'],
        note: 'Each filter binds by the flow through itself: two in series don’t add up. The same law gives the backwash of a sand bed, by its own rate.',
      },
      {
        name: 'Flow that the suction outlets may bear',
        tex: 'Q = \\min_{b}\\,\\min_{i \\neq b} \\frac{m_i}{s_{i,b}}',
        symbols: [
          flow,
          ['m_i', 'flow marked on cover i', 'm³/s'],
          ['s_i,b', 'share that cover i takes while cover b is blocked', '–'],
        ],
        sources: ['apsp-7', 'cfr-1450'],
        note: 'With every line shut that a valve can shut. Shares are solved from the pipes; on a balanced tee of n equal covers this is n − 1 marks; with pipes unknown, the least mark. One cover alone: its mark, and it needs a second protection.',
      },
      {
        name: 'Air pressure at a height',
        tex: 'p = 101\\,325\\left(1 - \\frac{0.0065\\,z}{288.15}\\right)^{g / (0.0065 R)}',
        symbols: [
          ['p', 'pressure of the air', 'Pa'],
          ['z', 'geopotential height above the sea', 'm'],
          gravity,
          ['R', 'gas constant of air, 287.05287', 'J/(kg K)'],
        ],
        sources: ['iso-2533'],
      },
      {
        name: 'NPSH available',
        tex: '\\mathrm{NPSH_A} = \\frac{p - p_v}{\\rho g} + z_s - h_s',
        symbols: [
          ['NPSH_A', 'total head at the pump’s inlet above that of vapor', 'm'],
          ['p', 'pressure of the air', 'Pa'],
          ['p_v', 'vapor pressure', 'Pa'],
          ['z_s', 'height of the pool surface above the pump', 'm'],
          ['h_s', 'head lost on the suction side', 'm'],
          density,
          gravity,
        ],
        sources: ['affinity-hi', 'hi-9-6-1'],
        note: 'It must exceed what the pump requires, with a margin: at the required NPSH the pump has already lost 3 % of its head.',
      },
    ],
  },
  {
    id: 'pool',
    name: 'The pool',
    laws: [
      {
        name: 'Area of a freeform outline',
        tex: 'A = \\tfrac{1}{2}\\left|\\sum_i \\left(x_i y_{i+1} - x_{i+1} y_i\\right)\\right|',
        symbols: [
          ['A', 'area', 'm²'],
          ['x_i, y_i', 'corners, in order around the outline', 'm'],
        ],
        sources: ['common-practice'],
        note: 'Plane geometry; exact.',
      },
      {
        name: 'Volume',
        tex: 'V = \\iint d(x, y)\\,\\mathrm{d}x\\,\\mathrm{d}y',
        symbols: [volume, ['d', 'depth at each place', 'm']],
        sources: ['common-practice'],
        note: 'Plane geometry. With one depth it is area times depth.',
      },
      {
        name: 'Turnover time',
        tex: 't = \\frac{V}{Q}',
        symbols: [time, volume, flow],
        sources: ['common-practice'],
        note: 'A definition.',
      },
      {
        name: 'Share of the water filtered',
        tex: 's = 1 - e^{-\\eta n}, \\quad n = \\frac{Q t}{V}',
        symbols: [
          ['s', 'share that has passed the filter', '–'],
          ['n', 'turnovers', '–'],
          ['η', 'share that the filter holds back, 1 for water itself', '–'],
        ],
        sources: ['gage-bidwell', 'simmonds-2021'],
        note: 'In a perfectly mixed pool. That is not the best there could be: water moving as a plug would all have passed after one turnover. Real pools have dead corners.',
      },
    ],
  },
  {
    id: 'day',
    name: 'The day and its price',
    laws: [
      {
        name: 'Water and energy of a day',
        tex: 'V_{\\mathrm{day}} = \\sum_k Q_k t_k, \\qquad E = \\sum_k P_k t_k',
        symbols: [
          ['V_day', 'water moved', 'm³'],
          ['E', 'energy; 3.6 million joules are a kilowatt-hour', 'J'],
          ['Q_k, P_k', 'flow and wire power in each block', 'm³/s, W'],
          ['t_k', 'length of each block', 's'],
        ],
        sources: ['nist-sp811'],
      },
      {
        name: 'Price of a day',
        tex: 'C = F + \\sum_b p_b E_b',
        symbols: [
          ['C', 'price of the day', 'money'],
          ['F', 'fixed charge a day', 'money'],
          ['p_b', 'price in each band of the tariff', 'money/kWh'],
          ['E_b', 'energy used in it', 'kWh'],
        ],
        sources: ['common-practice'],
      },
    ],
  },
  {
    id: 'cheapest-day',
    name: 'The cheapest day',
    laws: [
      {
        name: 'What is looked for',
        tex: '\\min \\sum_{c,k} p_c P_k t_{ck} \\quad\\allowbreak\\text{with}\\quad\\allowbreak \\sum_{c,k} Q_k t_{ck} \\ge V, \\quad\\allowbreak \\sum_{c,\\;Q_k \\ge q_j} t_{ck} \\ge T_j',
        symbols: [
          ['t_ck', 'time at speed k within hours of kind c', 'h'],
          ['p_c', 'price in those hours', 'money/kWh'],
          ['P_k, Q_k', 'wire power and flow at speed k', 'kW, m³/h'],
          ['V', 'water to be moved', 'm³'],
          ['q_j, T_j', 'least flow and time of each need', 'm³/h, h'],
        ],
        sources: ['dantzig-1963'],
        note: 'Hours are of one kind when price, window and speed ceiling are the same. A lower bound is worked out beside it and proves the answer, over the speeds that were tried.',
      },
    ],
  },
  {
    id: 'label',
    name: 'The rule behind the label',
    laws: [
      {
        name: 'Weighted energy factor',
        tex: '\\mathrm{WEF} = \\frac{\\sum_i w_i \\cdot Q_i \\cdot 60 / 1000}{\\sum_i w_i \\cdot P_i / 1000}',
        symbols: [
          ['WEF', 'weighted energy factor', 'kgal/kWh'],
          ['w_i', 'weight: 0.8 at low flow, 0.2 at high', '–'],
          ['Q_i', 'flow at each point', 'gpm'],
          ['P_i', 'wire power there', 'W'],
        ],
        sources: ['cfr-431-test'],
      },
      {
        name: 'Curve C, on which it is tested',
        tex: 'H = 0.0082\\,Q^{2}',
        symbols: [
          ['H', 'head', 'ft'],
          ['Q', 'flow', 'gpm'],
        ],
        sources: ['cfr-431-test'],
      },
      {
        name: 'Least value the rule allows',
        tex: '\\small \\begin{aligned} & \\text{self-priming: WEF at least} \\\\ & 5.55, \\; P_h \\le 0.13 \\\\ & 2.90 - 1.30 \\ln P_h, \\; 0.13 < P_h < 0.711 \\\\ & 6.59 - 2.30 \\ln P_h, \\; 0.711 \\le P_h < 2.5 \\\\ & \\text{not self-priming: WEF at least} \\\\ & 4.60, \\; P_h \\le 0.13 \\\\ & 2.87 - 0.85 \\ln P_h, \\; 0.13 < P_h < 2.5 \\\\ & \\text{pressure cleaner booster:} \\\\ & 0.42 \\end{aligned}',
        symbols: [
          ['WEF', 'weighted energy factor', 'kgal/kWh'],
          ['P_h', 'hydraulic power at top speed on curve C', 'hp'],
        ],
        sources: ['cfr-431-465'],
        note: 'For pumps made from July 19, 2021, by class; self-priming filter pumps on single-phase supply only. From 2.5 hp there is no least value, and none for waterfall pumps and pumps built into a filter. A cleaner’s booster is rated at one point of its own, not on curve C.',
      },
    ],
  },
];
