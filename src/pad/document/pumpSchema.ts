import * as z from 'zod/mini';
import { choice, identifier, list, minutes, part, quantity, words } from './fields.ts';

const flow = (what: string) => quantity('flow', `${what} [m3/s].`, 0, 1);
const head = (what: string) => quantity('head', `${what} [m].`, 0, 150);
const watts = (what: string) => quantity('power', `${what} [W].`, 0, 100_000);
const speed = (what: string) => quantity('speed', `${what} [rpm].`, 0, 10_000);

const curvePoint = z.strictObject({
  flow: flow('Flow at the reference speed'),
  head: head('Head at that flow'),
  power: watts('Wire power at that flow, when the sheet gives it'),
});

/** What the reader knows about the pump, from most to least. */
export const knowledgeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('curve'),
    points: list('Points of the head curve, all at the reference speed.', curvePoint, 60),
  }),
  z.strictObject({
    kind: z.literal('powerLaw'),
    points: list('Three points of a smooth curve, all at the reference speed.', curvePoint, 3),
  }),
  z.strictObject({
    kind: z.literal('nameplate'),
    power: watts('Rated power'),
    powerMeans: choice('What the rated power means: at the shaft, or drawn from the wire.', [
      'shaft',
      'wire',
    ]),
    flow: flow('Flow at the best point, when stated'),
    head: head('Head at the best point, when stated'),
  }),
]);

/** The pump and its drive. */
export const pumpSchema = z.strictObject({
  name: words('What the reader calls the pump.'),
  referenceSpeed: speed('Speed at which the curve and the nameplate are stated'),
  leastSpeed: speed('Slowest speed that can be set'),
  topSpeed: speed('Fastest speed that can be set'),
  speedStep: speed('Smallest change of speed that can be set'),
  primingSpeed: speed('Speed the pump primes at each time it starts'),
  primingMinutes: minutes('Minutes it primes at each start; none when null [min].'),
  overrideSpeed: speed('Fastest speed that an override, a quick clean or a control may call for'),
  voltage: quantity('voltage', 'Supply voltage [V].', 0, 1000),
  fixedPower: watts('Draw that does not fall with speed: electronics and fan'),
  standbyPower: watts('Draw while the pump is stopped; 0 when null'),
  efficiency: quantity('share', 'Best efficiency, water power over shaft power [-].', 0, 1),
  driveEfficiency: quantity('share', 'Shaft power over wire power above the fixed draw [-].', 0, 1),
  knowledge: part('What is known about the pump.', knowledgeSchema, { kind: 'nameplate' }),
});

/** What the instruments on the pad showed at one speed. */
export const readingSchema = z.strictObject({
  id: identifier('Stays with this reading for the life of the document.'),
  speed: speed('Speed of the pump'),
  flow: flow('Flow meter'),
  filterPressure: quantity(
    'pressure',
    'Gauge on the discharge side, at the filter [Pa].',
    -100_000,
    1_000_000,
  ),
  suctionVacuum: quantity(
    'vacuum',
    'Vacuum gauge on the suction side, positive below the atmosphere [Pa].',
    -200_000,
    101_325,
  ),
  gaugeHeight: quantity(
    'length',
    'How far the filter gauge sits above the vacuum gauge or, without one, above the pool surface [m].',
    -20,
    20,
  ),
  power: watts('Wire power that the drive or a meter shows'),
  current: quantity('current', 'Line current [A].', 0, 200),
});

/** Accuracy grades of gauges, in the words of ASME B40.100. */
export const gaugeGrades = ['4A', '3A', '2A', '1A', 'A', 'B', 'C', 'D'] as const;

const gaugeSchema = z.strictObject({
  span: quantity('pressure', 'From one end of the scale to the other [Pa].', 0, 10_000_000),
  grade: choice('Accuracy grade by ASME B40.100.', gaugeGrades),
});

/** How good the instruments are. */
export const instrumentsSchema = z.strictObject({
  filterGauge: part('The pressure gauge at the filter.', gaugeSchema, {}),
  vacuumGauge: part('The vacuum gauge on the suction side.', gaugeSchema, {}),
  meterShare: quantity('share', 'Accuracy of the flow meter, as a share of the reading [-].', 0, 1),
  powerShare: quantity('share', 'Accuracy of the power reading, as a share of it [-].', 0, 1),
});
