import type { Term } from './term.ts';

/** Water, pipes and what stands in their way. */
export const waterTerms: readonly Term[] = [
  {
    term: 'Bore',
    says: 'The inside diameter of a pipe, the width the water really has; it isn’t the size printed on the pipe.',
    forms: ['bore', 'bores'],
  },
  {
    term: 'Check valve',
    says: 'A valve that lets water through one way only; one before a heater or feeder keeps strong chemicals and hot water from running back.',
    forms: ['check valve', 'check valves'],
  },
  {
    term: 'Closed loop',
    says: 'Piping that returns the water to the surface it came from, so that the pump has no height to gain.',
    forms: ['closed loop', 'closed loops'],
  },
  {
    term: 'Colebrook–White equation',
    says: 'The rule that gives the friction factor of turbulent flow from the Reynolds number and the roughness.',
    forms: ['Colebrook–White', 'Colebrook'],
  },
  {
    term: 'Darcy–Weisbach equation',
    says: 'The law of friction for steady flow in a full pipe: loss follows length over bore and velocity squared, times a friction factor.',
    forms: ['Darcy–Weisbach'],
  },
  {
    term: 'Density',
    says: 'The mass of a cubic meter or cubic foot of water, which falls slightly as it warms.',
    forms: ['density'],
  },
  {
    term: 'Discharge side',
    says: 'Everything the water passes after the pump: filter, heater, valves, return lines.',
    forms: ['discharge side', 'discharge line', 'discharge pipe'],
  },
  {
    term: 'Elbow',
    says: 'A fitting that turns the pipe around a corner; a tight one takes more head than a long sweep.',
    forms: ['elbow', 'elbows'],
  },
  {
    term: 'Equivalent length',
    says: 'The length of straight pipe that would lose as much as a fitting does.',
    forms: ['equivalent length', 'equivalent lengths'],
  },
  {
    term: 'Fitting',
    says: 'Any part that joins, turns, divides or shuts a pipe.',
    forms: ['fitting', 'fittings'],
  },
  {
    term: 'Flow',
    says: 'How much water passes in a given time, in gallons per minute (gpm) or cubic meters per hour (m³/h).',
    forms: ['flow', 'flows'],
  },
  {
    term: 'Flow meter',
    says: 'An instrument in the pipe that shows the flow; it needs straight pipe before it and is often no better than 10 %.',
    forms: ['flow meter', 'flow meters'],
  },
  {
    term: 'Friction factor',
    says: 'A bare number that says how hard a pipe wall slows the water; it falls slowly as the flow rises.',
    forms: ['friction factor', 'friction factors'],
  },
  {
    term: 'Friction loss',
    says: 'Head that is used up by the water rubbing along straight pipe.',
    forms: ['friction loss', 'friction losses', 'friction'],
  },
  {
    term: 'Gallon',
    says: 'Here always the US gallon of 231 cubic inches, about 3.785 liters.',
    forms: [],
  },
  {
    term: 'Gauge pressure',
    says: 'Pressure counted from that of the air around you, so that an open pipe reads zero.',
    forms: ['gauge pressure'],
  },
  {
    term: 'Hazen–Williams formula',
    says: 'An older rule for friction loss behind many handbook tables; it leaves out temperature and fits best near ordinary velocities.',
    forms: ['Hazen–Williams'],
  },
  {
    term: 'Head',
    says: 'Energy for each pound or newton of water, given as the height of a water column, in feet or meters.',
    forms: ['head', 'heads'],
  },
  {
    term: 'Inch of mercury',
    says: 'The unit of many vacuum gauges (inHg): the pressure of an inch of mercury, a little over 1.1 ft of water.',
    forms: ['inHg', 'inches of mercury', 'inch of mercury'],
  },
  {
    term: 'Isolation valve',
    says: 'A valve on either side of a pump, filter or heater that you shut to open the unit without draining the pool.',
    forms: ['isolation valve', 'isolation valves'],
  },
  {
    term: 'Laminar flow',
    says: 'Slow flow in which the water slides along in layers; in pool pipe it happens only at a trickle.',
    forms: ['laminar flow', 'laminar'],
  },
  {
    term: 'Loss coefficient',
    says: 'The number K: times the velocity head, it gives the head that a fitting takes.',
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
    says: 'Pipes side by side between the same two points: all lose the same head, and they split the flow.',
    forms: ['parallel branches', 'parallel branch'],
  },
  {
    term: 'Pascal',
    says: 'The SI unit of pressure (Pa); gauges read thousands of it (kPa), bar or psi.',
    forms: [],
  },
  {
    term: 'PN class',
    says: 'The pressure in bar that metric pipe is made for, PN10 or PN16; a higher class has a thicker wall.',
    forms: ['PN10', 'PN16'],
  },
  {
    term: 'Pressure',
    says: 'Force on each square inch or square meter, in psi, kPa or bar; divided by the weight of the water it becomes head.',
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
    says: 'Velocity times bore over viscosity, a bare number: below about 2000 the water slides in layers, above about 4000 it tumbles.',
    forms: ['Reynolds number', 'Reynolds numbers'],
  },
  {
    term: 'Roughness',
    says: 'The height of the bumps on a pipe’s inside wall, a few hundred-thousandths of an inch in plastic pipe.',
    forms: ['roughness'],
  },
  {
    term: 'Schedule',
    says: 'On US pipe its wall class: 40 and 80 have the same outside, so 80 has the thicker wall and smaller bore; of a pump, its starts, stops and speeds over the day.',
    forms: ['Schedule 40', 'Schedule 80'],
  },
  {
    term: 'Static head',
    says: 'The trade’s word for lift: height the water must gain at any flow, over a spillway, between two water levels, or to a solar roof until its line is full.',
    forms: ['static head', 'lift'],
  },
  {
    term: 'Suction side',
    says: 'Everything the water passes on its way to the pump: outlets, skimmers, pipe, strainer basket.',
    forms: ['suction side', 'suction line', 'suction lines', 'suction pipe'],
  },
  {
    term: 'Surge',
    says: 'The knock of pressure when moving water is stopped suddenly, also called water hammer.',
    forms: ['surge', 'water hammer'],
  },
  {
    term: 'System curve',
    says: 'The head a set of pipes and equipment takes at each flow, drawn as a line.',
    forms: ['system curve', 'system curves'],
  },
  {
    term: 'Tee',
    says: 'A fitting where a pipe divides or joins; turning into its branch takes far more head than going straight on.',
    forms: ['tee', 'tees'],
  },
  {
    term: 'Total dynamic head',
    says: 'All the head a pump makes at a flow (TDH): pressure after it, vacuum before it, and the height between the two gauges.',
    forms: ['total dynamic head', 'TDH'],
  },
  {
    term: 'Turbulent flow',
    says: 'Flow that tumbles and mixes, as water in pool pipe nearly always does.',
    forms: ['turbulent flow', 'turbulent', 'turbulence'],
  },
  {
    term: 'Union',
    says: 'A fitting with a screwed collar that lets you take a unit out of the pipe; let the pressure go before you loosen it.',
    forms: ['union', 'unions'],
  },
  {
    term: 'Vacuum',
    says: 'How far the pressure before the pump is below that of the air, read in inches of mercury or kPa.',
    forms: ['vacuum', 'vacuum gauge'],
  },
  {
    term: 'Vapor pressure',
    says: 'The pressure at which water of a given temperature begins to boil.',
    forms: ['vapor pressure', 'vapour pressure'],
  },
  {
    term: 'Velocity',
    says: 'How fast the water moves along the pipe, in feet or meters per second: flow divided by the area of the bore.',
    forms: ['velocity', 'velocities'],
  },
  {
    term: 'Velocity head',
    says: 'The height water would climb from its own motion, velocity squared over twice gravity.',
    forms: ['velocity head', 'velocity heads'],
  },
  {
    term: 'Velocity limit',
    says: 'The highest velocity a code or a designer allows in a pipe, lower before the pump than after it.',
    forms: ['velocity limit', 'velocity limits'],
  },
  {
    term: 'Viscosity',
    says: 'How thick a liquid is to stir; water at 104 °F has less than half the viscosity of water at 41 °F.',
    forms: ['viscosity'],
  },
];
