import type { Term } from './term.ts';

/** The pump, its power, and the readings taken of it. */
export const machineTerms: readonly Term[] = [
  {
    term: 'Affinity laws',
    says: 'The laws of speed, for one pump in the same pipes without lift: flow follows speed, head its square, shaft power its cube.',
    forms: ['affinity laws', 'affinity law', 'speed laws'],
  },
  {
    term: 'Alternating current',
    says: 'Current that flips its direction 50 or 60 times a second (AC); when it is out of step with the voltage, part of it does no work.',
    forms: ['alternating current'],
  },
  {
    term: 'Ampere',
    says: 'The unit of electric current (A); volts times amperes gives the watts only where the power factor is 1.',
    forms: ['amperes', 'ampere', 'amps'],
  },
  {
    term: 'Band',
    says: 'The range an answer may lie in, given how good the gauges, the meter and the assumptions are.',
    forms: [],
  },
  {
    term: 'Best efficiency point',
    says: 'The flow and head at which a pump turns the most of its shaft power into moving water.',
    forms: ['best efficiency point', 'best point'],
  },
  {
    term: 'Bonding',
    says: 'Copper wire that ties all the metal around a pool together, so that no two parts you can touch differ in voltage.',
    forms: ['bonding'],
  },
  {
    term: 'Cavitation',
    says: 'Bubbles of vapor that form where the pressure is too low and collapse in the pump, with a rattle and with wear.',
    forms: ['cavitation', 'cavitates'],
  },
  {
    term: 'Cube law',
    says: 'Shaft power follows the cube of speed: half the speed, an eighth of the power.',
    forms: ['cube law', 'cube laws'],
  },
  {
    term: 'Drive',
    says: 'The electronics that feed a motor so that it runs at the speed you set.',
    forms: ['drive'],
  },
  {
    term: 'Drive efficiency',
    says: 'The part of the power from the wire, past the fixed draw, that motor and drive together turn into shaft power.',
    forms: ['drive efficiency'],
  },
  {
    term: 'Efficiency',
    says: 'What a machine gives out divided by what it takes in, as a percentage.',
    forms: ['efficiency'],
  },
  {
    term: 'Extrapolated',
    says: 'Beyond the last known point of a curve, and so a guess.',
    forms: ['extrapolated'],
  },
  {
    term: 'Fixed draw',
    says: 'Watts that the electronics and the motor’s own fan take at any speed, which is why wire power leaves the cube law when the pump is slow.',
    forms: ['fixed draw', 'fixed draws'],
  },
  {
    term: 'Gauge grade',
    says: 'A letter or number on a gauge that says how far off it may be, as a percentage of its whole scale.',
    forms: ['gauge grade', 'grade B', 'accuracy grade', 'accuracy grades'],
  },
  {
    term: 'Ground-fault protection',
    says: 'A breaker or outlet (GFCI, or RCD outside North America) that cuts the power when current leaks, fast enough to save a life.',
    forms: ['ground-fault protection', 'GFCI', 'RCD'],
  },
  {
    term: 'Horsepower',
    says: 'A unit of power (hp), 745.7 W; on a nameplate it may mean shaft power or something larger.',
    forms: ['horsepower'],
  },
  {
    term: 'Hydraulic power',
    says: 'The power the water itself gets: its weight times the head, each second.',
    forms: ['hydraulic power', 'hydraulic horsepower'],
  },
  {
    term: 'Impeller',
    says: 'The wheel in a pump that throws the water outward.',
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
    says: 'Switching off the power and locking the switch, so that no person, timer or automation can start a machine while someone works on it.',
    forms: ['lock-out', 'lockout', 'lock out', 'locked out'],
  },
  {
    term: 'Nameplate',
    says: 'The plate on a motor or unit that states its rated power, speed, volts and amperes.',
    forms: ['nameplate', 'nameplates'],
  },
  {
    term: 'NPSH',
    says: 'Net positive suction head: total head at the pump’s inlet above that of vapor; at the NPSH a pump requires, it has already lost 3 % of its head.',
    forms: ['NPSH', 'net positive suction head'],
  },
  {
    term: 'Operating point',
    says: 'The one flow and head at which the pump makes just what the pipes take.',
    forms: ['operating point', 'operating points'],
  },
  {
    term: 'Pad',
    says: 'The slab the pump, filter and heater stand on, and here also the description of them that you type in.',
    forms: ['pad', 'pads'],
  },
  {
    term: 'Power',
    says: 'Energy each second, in watts or horsepower.',
    forms: [],
  },
  {
    term: 'Power factor',
    says: 'Watts divided by volts times amperes, from 0 to 1; it drops when a motor is lightly loaded.',
    forms: ['power factor'],
  },
  {
    term: 'Priming',
    says: 'Filling the pump and its suction line with water so that it can pull; many pumps do it fast for a few minutes at each start.',
    forms: ['priming', 'prime'],
  },
  {
    term: 'Pump curve',
    says: 'The head a pump makes at each flow at one speed, drawn as a line that falls to the right.',
    forms: ['pump curve', 'pump curves', 'pump’s curve'],
  },
  {
    term: 'Residual',
    says: 'The difference between a reading and what the fitted pad predicts for it.',
    forms: ['residual', 'residuals'],
  },
  {
    term: 'Rpm',
    says: 'Revolutions per minute: turns of the pump shaft each minute.',
    forms: [],
  },
  {
    term: 'Self-priming pump',
    says: 'A pump that can clear the air from its suction line by itself, once its own pot has been filled with water.',
    forms: ['self-priming', 'self-priming pump'],
  },
  {
    term: 'Service factor',
    says: 'A number on a motor’s nameplate: rated horsepower times this is the most it may be loaded with, and on pool motors that is the total horsepower.',
    forms: ['service factor'],
  },
  {
    term: 'Shaft power',
    says: 'The power the motor gives the impeller: hydraulic power divided by the pump’s efficiency.',
    forms: ['shaft power', 'power at the shaft', 'power at its shaft'],
  },
  {
    term: 'Shut-off head',
    says: 'The head a pump makes at a speed when no water moves.',
    forms: ['shut-off head', 'shutoff head'],
  },
  {
    term: 'Speed ratio',
    says: 'The pump’s speed divided by the speed its curve was measured at.',
    forms: ['speed ratio', 'speed ratios'],
  },
  {
    term: 'Speed step',
    says: 'The smallest change of speed the pump’s control can make.',
    forms: ['speed step', 'speed steps'],
  },
  {
    term: 'Strainer basket',
    says: 'The basket in the pump’s pot that catches leaves; as it fills, the flow falls, and a vacuum gauge tapped behind it rises.',
    forms: ['strainer basket', 'strainer', 'pump basket'],
  },
  {
    term: 'Variable-speed pump',
    says: 'A pump whose speed you can set, usually from a few hundred to about 3450 rpm.',
    forms: ['variable-speed pump', 'variable-speed pumps', 'variable-speed'],
  },
  {
    term: 'Volute',
    says: 'The snail-shaped housing that collects the water from the impeller.',
    forms: ['volute'],
  },
  {
    term: 'Watt',
    says: 'The unit of power (W); 1000 of them for an hour are one kilowatt-hour.',
    forms: ['watt', 'watts'],
  },
  {
    term: 'Weighted energy factor',
    says: 'A figure on most US pump labels (WEF): thousands of gallons moved for each kilowatt-hour, measured mostly at low speed.',
    forms: ['weighted energy factor', 'WEF'],
  },
  {
    term: 'Wire power',
    says: 'The power the pump draws from the wire, as the meter sees it: shaft power over drive efficiency, plus the fixed draw.',
    forms: ['wire power', 'power at the wire', 'power from the wire'],
  },
];
