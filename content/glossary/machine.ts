import type { Term } from './term.ts';

/** The pump, its power, and the readings taken of it. */
export const machineTerms: readonly Term[] = [
  {
    term: 'Affinity laws',
    says: 'Three rules for one pump in the same pipes without lift: flow goes with speed, head with its square, shaft power with its cube.',
    forms: ['affinity laws', 'affinity law'],
  },
  {
    term: 'Ampere',
    says: 'The unit of electric current (A); amperes times volts are not the watts unless the power factor is 1.',
    forms: ['amperes', 'ampere', 'amps'],
  },
  {
    term: 'Band',
    says: 'The range within which an answer lies, given how good the gauges, the meter and the assumptions are.',
    forms: [],
  },
  {
    term: 'Best efficiency point',
    says: 'The flow and head at which a pump turns the largest part of its shaft power into moving water.',
    forms: ['best efficiency point', 'best point'],
  },
  {
    term: 'Bonding',
    says: 'Wires that tie all metal around a pool together, so that no two parts can differ in voltage.',
    forms: ['bonding'],
  },
  {
    term: 'Cavitation',
    says: 'Bubbles of vapour that form where pressure is too low and burst in the pump, with a rattle and with wear.',
    forms: ['cavitation', 'cavitates'],
  },
  {
    term: 'Cube law',
    says: 'Shaft power goes with the cube of speed: half the speed, an eighth of the power.',
    forms: ['cube law', 'cube laws'],
  },
  {
    term: 'Drive',
    says: 'The electronics and motor that turn current from the wire into rotation at a set speed.',
    forms: ['drive efficiency'],
  },
  {
    term: 'Efficiency',
    says: 'What comes out of a machine over what goes in, as a share.',
    forms: ['efficiency'],
  },
  {
    term: 'Extrapolated',
    says: 'Said of an answer that lies beyond the last point known of a curve, and so is a guess.',
    forms: ['extrapolated'],
  },
  {
    term: 'Fixed draw',
    says: 'Watts that electronics and fan take at any speed, which is why wire power leaves the cube law when slow.',
    forms: ['fixed draw', 'fixed draws'],
  },
  {
    term: 'Gauge grade',
    says: 'A letter or number on a gauge that says how far it may be off, as a share of its whole scale.',
    forms: ['gauge grade', 'grade B', 'accuracy grade', 'accuracy grades'],
  },
  {
    term: 'Ground-fault protection',
    says: 'A breaker (GFCI or RCD) that cuts the power when current strays, fast enough to save a life.',
    forms: ['ground-fault protection', 'GFCI', 'RCD'],
  },
  {
    term: 'Horsepower',
    says: 'A unit of power (hp), 745.7 W; on a nameplate it may mean shaft power or something larger.',
    forms: ['horsepower'],
  },
  {
    term: 'Hydraulic power',
    says: 'The power the water itself receives: its weight lifted through the head in each second.',
    forms: ['hydraulic power', 'hydraulic horsepower'],
  },
  {
    term: 'Impeller',
    says: 'The wheel in a pump that throws the water outwards.',
    forms: ['impeller', 'impellers'],
  },
  {
    term: 'Kilowatt',
    says: 'A thousand watts: a rate of using energy, not an amount.',
    forms: ['kilowatt', 'kilowatts', 'kW'],
  },
  {
    term: 'Kilowatt-hour',
    says: 'The energy of one kilowatt for one hour (kWh); this is what the bill counts.',
    forms: ['kilowatt-hour', 'kilowatt-hours', 'kilowatt hour', 'kilowatt hours', 'kWh'],
  },
  {
    term: 'Lock-out',
    says: 'Switching off and locking the switch, so that nobody can start a machine while someone works on it.',
    forms: ['lock-out', 'lock out'],
  },
  {
    term: 'Nameplate',
    says: 'The plate on a motor or unit that states its rated power, speed, volts and amperes.',
    forms: ['nameplate', 'nameplates'],
  },
  {
    term: 'NPSH',
    says: 'Net positive suction head: the total head at the pump’s inlet above the pressure at which water boils; what is available must exceed what the pump requires.',
    forms: ['NPSH', 'net positive suction head'],
  },
  {
    term: 'Operating point',
    says: 'The one flow and head at which what the pump makes equals what the pipes take.',
    forms: ['operating point', 'operating points'],
  },
  {
    term: 'Pad',
    says: 'The slab with pump, filter and heater on it; here also the description of it that you type in.',
    forms: ['pad', 'pads'],
  },
  {
    term: 'Power',
    says: 'Energy used or given in each second, in watts or horsepower.',
    forms: [],
  },
  {
    term: 'Power factor',
    says: 'Watts over volts times amperes, from 0 to 1; it drops when a motor is lightly loaded.',
    forms: ['power factor'],
  },
  {
    term: 'Priming',
    says: 'Filling pump and suction line with water so that it can pull; many pumps do it fast for a few minutes at each start.',
    forms: ['priming', 'prime'],
  },
  {
    term: 'Pump curve',
    says: 'The head a pump makes at each flow at one speed, drawn as a line that falls to the right.',
    forms: ['pump curve', 'pump curves', 'pump’s curve'],
  },
  {
    term: 'Residual',
    says: 'What is left between a reading and what the fitted pad predicts for it.',
    forms: ['residual', 'residuals'],
  },
  {
    term: 'Rpm',
    says: 'Turns of the pump shaft in a minute.',
    forms: [],
  },
  {
    term: 'Service factor',
    says: 'How far above its rated power a motor may run for good, as a number on its nameplate; total horsepower is the rated one times it.',
    forms: [],
  },
  {
    term: 'Shaft power',
    says: 'The power the motor hands to the pump wheel, hydraulic power over the pump’s efficiency.',
    forms: ['shaft power', 'power at the shaft', 'power at its shaft'],
  },
  {
    term: 'Shut-off head',
    says: 'The head a pump makes at a speed when no water moves.',
    forms: ['shut-off head', 'shutoff head'],
  },
  {
    term: 'Speed ratio',
    says: 'The speed of a pump over the speed its curve was stated at.',
    forms: ['speed ratio', 'speed ratios'],
  },
  {
    term: 'Speed step',
    says: 'The smallest change of speed a pump’s control can be set by.',
    forms: ['speed step', 'speed steps'],
  },
  {
    term: 'Strainer basket',
    says: 'The basket before the pump that catches leaves; as it fills, the vacuum rises and the flow falls.',
    forms: ['strainer basket', 'strainer', 'pump basket'],
  },
  {
    term: 'Variable-speed pump',
    says: 'A pump whose speed can be set, usually from a few hundred to about 3450 rpm.',
    forms: ['variable-speed pump', 'variable-speed pumps', 'variable-speed'],
  },
  {
    term: 'Volute',
    says: 'The snail-shaped housing that gathers the water from the impeller.',
    forms: ['volute'],
  },
  {
    term: 'Watt',
    says: 'The unit of power (W); 1000 of them for an hour are one kilowatt-hour.',
    forms: ['watt', 'watts'],
  },
  {
    term: 'Weighted energy factor',
    says: 'The figure on a US pump label (WEF): thousands of gallons moved per kilowatt-hour, mostly at low speed.',
    forms: ['weighted energy factor', 'WEF'],
  },
  {
    term: 'Wire power',
    says: 'The power drawn from the wire, the one the meter sees: shaft power over drive efficiency, plus the fixed draw.',
    forms: ['wire power', 'power at the wire', 'power from the wire'],
  },
];
