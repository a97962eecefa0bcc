import type { Term } from './term.ts';

/** Water, pipes and what stands in their way. */
export const waterTerms: readonly Term[] = [
  {
    term: 'Bore',
    says: 'The inside diameter of a pipe: the width the water has, which is not the size printed on the pipe.',
    forms: ['bore', 'bores'],
  },
  {
    term: 'Check valve',
    says: 'A valve that lets water through one way only, and takes some head for doing so.',
    forms: ['check valve', 'check valves'],
  },
  {
    term: 'Closed loop',
    says: 'Piping that brings the water back to the surface it came from, so that no height has to be gained.',
    forms: ['closed loop', 'closed loops'],
  },
  {
    term: 'Colebrook–White equation',
    says: 'The rule, checked for most of a century, that gives the friction factor of turbulent flow from Reynolds number and roughness.',
    forms: ['Colebrook–White', 'Colebrook'],
  },
  {
    term: 'Darcy–Weisbach equation',
    says: 'The law of friction in a full pipe: loss goes with length over bore and with velocity squared, times a friction factor.',
    forms: ['Darcy–Weisbach'],
  },
  {
    term: 'Density',
    says: 'The mass of a cubic metre of water, which falls slightly as it warms.',
    forms: ['density'],
  },
  {
    term: 'Discharge side',
    says: 'Everything the water passes after the pump: filter, heater, valves, return lines.',
    forms: ['discharge side', 'discharge line', 'discharge pipe'],
  },
  {
    term: 'Elbow',
    says: 'A fitting that turns the pipe a corner; a tight one costs more head than a long sweep.',
    forms: ['elbow', 'elbows'],
  },
  {
    term: 'Equivalent length',
    says: 'A way of stating the loss of a fitting as so many feet or metres of straight pipe.',
    forms: ['equivalent length', 'equivalent lengths'],
  },
  {
    term: 'Fitting',
    says: 'Any part that joins, turns, divides or shuts a pipe.',
    forms: ['fitting', 'fittings'],
  },
  {
    term: 'Flow',
    says: 'How much water passes in a given time, in gallons per minute (gpm) or cubic metres per hour (m³/h).',
    forms: ['flow', 'flows'],
  },
  {
    term: 'Flow meter',
    says: 'An instrument in the pipe that shows the flow, often good to no better than a tenth.',
    forms: ['flow meter', 'flow meters'],
  },
  {
    term: 'Friction factor',
    says: 'A bare number that says how hard a pipe wall brakes the water; it falls slowly as flow rises.',
    forms: ['friction factor', 'friction factors'],
  },
  {
    term: 'Friction loss',
    says: 'Head that is used up by rubbing along the wall of straight pipe.',
    forms: ['friction loss', 'friction losses', 'friction'],
  },
  {
    term: 'Gallon',
    says: 'Here always the US gallon of 231 cubic inches, about 3.785 litres.',
    forms: [],
  },
  {
    term: 'Gauge pressure',
    says: 'Pressure counted from that of the air around, so that an open pipe reads nothing.',
    forms: ['gauge pressure'],
  },
  {
    term: 'Hazen–Williams formula',
    says: 'An older rule for friction loss, behind many handbook tables, that knows no temperature and holds best near ordinary velocities.',
    forms: ['Hazen–Williams'],
  },
  {
    term: 'Head',
    says: 'Energy per weight of water, told as the height of a water column, in feet or metres.',
    forms: ['head', 'heads'],
  },
  {
    term: 'Inch of mercury',
    says: 'The unit of many vacuum gauges (inHg): the pressure of an inch of mercury, a little over 1.1 ft of water.',
    forms: ['inHg', 'inches of mercury', 'inch of mercury'],
  },
  {
    term: 'Laminar flow',
    says: 'Slow flow in which the water slides along in layers; in pool pipe it only happens at a trickle.',
    forms: ['laminar flow', 'laminar'],
  },
  {
    term: 'Loss coefficient',
    says: 'The number K that, times the velocity head, gives the head a fitting takes.',
    forms: ['loss coefficient', 'loss coefficients'],
  },
  {
    term: 'Nominal size',
    says: 'The size a pipe is sold by, such as 2 in or 63 mm; it names a family, not the bore.',
    forms: ['nominal size', 'nominal sizes'],
  },
  {
    term: 'Outside diameter',
    says: 'The width of a pipe over its walls, the same for every wall thickness of one nominal size.',
    forms: ['outside diameter', 'outside diameters'],
  },
  {
    term: 'Parallel branches',
    says: 'Pipes side by side between the same two points: they share one head and split the flow.',
    forms: ['parallel branches', 'parallel branch'],
  },
  {
    term: 'Pascal',
    says: 'The plain unit of pressure (Pa); gauges read in thousands of it (kPa), in bar, or in psi.',
    forms: [],
  },
  {
    term: 'PN class',
    says: 'The pressure in bar that metric pipe is made to hold, PN10 or PN16; a higher class has a thicker wall.',
    forms: ['PN10', 'PN16'],
  },
  {
    term: 'Pressure',
    says: 'Force on each bit of area, in psi, kPa or bar; divided by the weight of the water it becomes head.',
    forms: ['pressure', 'pressures'],
  },
  {
    term: 'Psi',
    says: 'Pounds per square inch, the US unit of pressure; one is about 2.31 ft of water.',
    forms: [],
  },
  {
    term: 'Return line',
    says: 'Pipe that brings the water from the equipment back to the pool.',
    forms: ['return line', 'return lines', 'return pipe', 'return side'],
  },
  {
    term: 'Reynolds number',
    says: 'Velocity times bore over viscosity: it tells whether water slides (below about 2000) or tumbles (above about 4000).',
    forms: ['Reynolds number', 'Reynolds numbers'],
  },
  {
    term: 'Roughness',
    says: 'The height of the bumps on a pipe’s inside wall, a few thousandths of a millimetre in plastic pipe.',
    forms: ['roughness'],
  },
  {
    term: 'Schedule 40 and 80',
    says: 'Two wall thicknesses of US pipe: the same outside, so Schedule 80 has the thicker wall and the smaller bore.',
    forms: ['Schedule 40', 'Schedule 80'],
  },
  {
    term: 'Static head',
    says: 'The trade’s word for lift, the height water must gain whatever the flow, as over a spillway or up a solar roof until its line is full; a plain pool loop has none.',
    forms: ['static head', 'lift'],
  },
  {
    term: 'Suction side',
    says: 'Everything the water passes on its way to the pump: outlets, skimmers, pipe, strainer basket.',
    forms: ['suction side', 'suction line', 'suction lines', 'suction pipe'],
  },
  {
    term: 'Surge',
    says: 'The knock of pressure when moving water is stopped at once, also called water hammer.',
    forms: ['surge', 'water hammer'],
  },
  {
    term: 'System curve',
    says: 'The head a set of pipes and equipment takes at each flow, drawn as a line.',
    forms: ['system curve', 'system curves'],
  },
  {
    term: 'Tee',
    says: 'A fitting where a pipe divides or joins; turning into its branch costs far more than going straight on.',
    forms: ['tee', 'tees'],
  },
  {
    term: 'Total dynamic head',
    says: 'All the head a pump makes at a flow (TDH): pressure after it, vacuum before it, and the height between the gauges.',
    forms: ['total dynamic head', 'TDH'],
  },
  {
    term: 'Turbulent flow',
    says: 'Flow that tumbles and mixes, the ordinary state of water in pool pipe.',
    forms: ['turbulent flow', 'turbulent', 'turbulence'],
  },
  {
    term: 'Union',
    says: 'A joint of two halves and a nut that lets a pump or filter be taken out without cutting the pipe.',
    forms: [],
  },
  {
    term: 'Vacuum',
    says: 'How far the pressure before the pump lies below that of the air, read in inches of mercury or kPa.',
    forms: ['vacuum', 'vacuum gauge'],
  },
  {
    term: 'Vapour pressure',
    says: 'The pressure at which water of a given warmth begins to boil.',
    forms: ['vapour pressure'],
  },
  {
    term: 'Velocity',
    says: 'How fast the water moves along the pipe, in feet or metres per second: flow over the area of the bore.',
    forms: ['velocity', 'velocities'],
  },
  {
    term: 'Velocity head',
    says: 'The height water would climb from its own motion, velocity squared over twice gravity.',
    forms: ['velocity head', 'velocity heads'],
  },
  {
    term: 'Velocity limit',
    says: 'The greatest velocity a code or a designer allows in a pipe, lower before the pump than after it.',
    forms: ['velocity limit', 'velocity limits'],
  },
  {
    term: 'Viscosity',
    says: 'How thick a liquid is to stir; warm water has about half the viscosity of cold.',
    forms: ['viscosity'],
  },
];
