/**
 * Plastic pressure pipe by nominal size, and the plain arithmetic of flow through a round bore.
 */
import { CoreError, requireBetween } from '#core/base/errors.ts';

/** One inch [m], exact by definition (NIST SP 811, B.8). */
export const inch = 0.0254;

const millimetre = 0.001;

/** The four families of pipe in the table. */
export type PipeSeries = 'sch40' | 'sch80' | 'pn10' | 'pn16';

/** One size of pipe, with the least wall its standard allows. */
export interface PipeSize {
  /** Key [-], such as sch40-2 or pn10-63. */
  readonly id: string;
  /** The standard the dimensions come from [-]. */
  readonly standard: string;
  /** Size and series in words [-]. */
  readonly label: string;
  /** Nominal size in words [-]. */
  readonly nominal: string;
  /** Outside diameter [m], 0.02 to 0.17. */
  readonly outsideDiameter: number;
  /** Least wall [m], 0.002 to 0.011. */
  readonly wall: number;
  /** Inside diameter, outside diameter less two least walls [m], 0.018 to 0.16. */
  readonly bore: number;
  /** Family [-]. */
  readonly series: PipeSeries;
  /** Nominal pipe size [in], 0.75 to 6; only on Schedule pipe. */
  readonly nominalInches?: number;
  /** Nominal outside diameter [mm], 50 to 110; only on metric pipe. */
  readonly nominalMillimetres?: number;
}

// ASTM D1785 tables 1 and 2: nominal size, outside diameter, least wall Schedule 40 and 80 [in].
const scheduleRows: readonly (readonly [number, string, number, number, number])[] = [
  [0.75, '3/4 in', 1.05, 0.113, 0.154],
  [1, '1 in', 1.315, 0.133, 0.179],
  [1.25, '1-1/4 in', 1.66, 0.14, 0.191],
  [1.5, '1-1/2 in', 1.9, 0.145, 0.2],
  [2, '2 in', 2.375, 0.154, 0.218],
  [2.5, '2-1/2 in', 2.875, 0.203, 0.276],
  [3, '3 in', 3.5, 0.216, 0.3],
  [4, '4 in', 4.5, 0.237, 0.337],
  [5, '5 in', 5.563, 0.258, 0.375],
  [6, '6 in', 6.625, 0.28, 0.432],
];

// EN ISO 1452-2 table 2: outside diameter, least wall PN10 and PN16 [mm]. Up to 90 mm the walls
// were read in DIN 8062; that EN ISO 1452-2 repeats them, and the row of 110 mm, are from memory.
const metricRows: readonly (readonly [number, number, number])[] = [
  [50, 2.4, 3.7],
  [63, 3, 4.7],
  [75, 3.6, 5.6],
  [90, 4.3, 6.7],
  [110, 4.2, 6.6],
];

function scheduleSizes(series: 'sch40' | 'sch80'): PipeSize[] {
  const schedule = series === 'sch40' ? 40 : 80;
  return scheduleRows.map(([nominalInches, nominal, outside, wall40, wall80]) => {
    const wall = series === 'sch40' ? wall40 : wall80;
    return {
      id: `${series}-${nominalInches}`,
      standard: 'ASTM D1785',
      label: `${nominal} Schedule ${schedule}`,
      nominal,
      outsideDiameter: outside * inch,
      wall: wall * inch,
      bore: (outside - 2 * wall) * inch,
      series,
      nominalInches,
    };
  });
}

function metricSizes(series: 'pn10' | 'pn16'): PipeSize[] {
  return metricRows.map(([outside, wall10, wall16]) => {
    const wall = series === 'pn10' ? wall10 : wall16;
    return {
      id: `${series}-${outside}`,
      standard: 'EN ISO 1452-2',
      label: `${outside} mm ${series.toUpperCase()}`,
      nominal: `${outside} mm`,
      outsideDiameter: outside * millimetre,
      wall: wall * millimetre,
      bore: (outside - 2 * wall) * millimetre,
      series,
      nominalMillimetres: outside,
    };
  });
}

/** Every size in the table [see PipeSize], smallest first within its series. */
export const pipeSizes: readonly PipeSize[] = [
  ...scheduleSizes('sch40'),
  ...scheduleSizes('sch80'),
  ...metricSizes('pn10'),
  ...metricSizes('pn16'),
];

const sizesById = new Map(pipeSizes.map((size) => [size.id, size]));

/**
 * One pipe size by its key.
 *
 * Law: bore = outside diameter - 2 x least wall.
 * @param id Key [-], one of the ids in pipeSizes, such as sch40-2 or pn10-63.
 * @returns The size with its outside diameter, wall and bore [m].
 * @throws CoreError when no size has that key.
 * Accuracy: the standards print to 0.001 in and 0.1 mm; real bores are a little smaller, because walls are made thicker than the least.
 * Source: ASTM D1785 tables 1 and 2; EN ISO 1452-2 table 2 (to 90 mm read in DIN 8062; 110 mm from memory).
 * @example pipeSize('sch40-2').bore // 0.0525018
 */
export function pipeSize(id: string): PipeSize {
  const size = sizesById.get(id);
  if (size === undefined) throw new CoreError('pipe size', id, 'the id of a size in pipeSizes');
  return size;
}

function requireBore(bore: number): number {
  return requireBetween('bore', bore, 1e-4, 10, 'm');
}

/**
 * Cross-section of a round bore.
 *
 * Law: A = pi/4 D^2.
 * @param bore Inside diameter [m], 0.0001 to 10.
 * @returns Area [m2].
 * @throws CoreError when the bore lies outside its range or is not a number.
 * Accuracy: exact geometry.
 * Source: geometry; reference case 2 in Schedule 40.
 * @example flowArea(0.0525018) // 0.00216490213
 */
export function flowArea(bore: number): number {
  requireBore(bore);
  return (Math.PI / 4) * bore * bore;
}

/**
 * Mean velocity of a flow in a round bore.
 *
 * Law: V = Q / A.
 * @param flow Flow [m3/s], 0 to 1e6.
 * @param bore Inside diameter [m], 0.0001 to 10.
 * @returns Velocity [m/s]; 0 at no flow.
 * @throws CoreError when either lies outside its range or is not a number.
 * Accuracy: exact arithmetic.
 * Source: continuity; Hydraulic Institute Engineering Data Book prints it as V = 0.4085 Q/d^2 (gpm, in, ft/s).
 * @example meanVelocity(0.003785411784, 0.0525018) // 1.7485371
 */
export function meanVelocity(flow: number, bore: number): number {
  return requireBetween('flow', flow, 0, 1e6, 'm3/s') / flowArea(bore);
}

/**
 * Flow at which a round bore carries a given mean velocity.
 *
 * Law: Q = V A.
 * @param velocity Mean velocity [m/s], 0 to 1e6.
 * @param bore Inside diameter [m], 0.0001 to 10.
 * @returns Flow [m3/s]; 0 at no velocity.
 * @throws CoreError when either lies outside its range or is not a number.
 * Accuracy: exact arithmetic.
 * Source: continuity.
 * @example flowAtVelocity(1.8288, 0.0525018) // 0.00395917302
 */
export function flowAtVelocity(velocity: number, bore: number): number {
  return requireBetween('velocity', velocity, 0, 1e6, 'm/s') * flowArea(bore);
}

function requireViscosity(kinematicViscosity: number): number {
  return requireBetween('kinematic viscosity', kinematicViscosity, 1e-8, 1, 'm2/s');
}

/**
 * Reynolds number of a flow in a round bore.
 *
 * Law: Re = V D / nu.
 * @param velocity Mean velocity [m/s], 0 to 1e6.
 * @param bore Inside diameter [m], 0.0001 to 10.
 * @param kinematicViscosity Kinematic viscosity [m2/s], 1e-8 to 1.
 * @returns Reynolds number [-]; 0 at no velocity.
 * @throws CoreError when any of them lies outside its range or is not a number.
 * Accuracy: exact arithmetic.
 * Source: Reynolds, Phil. Trans. R. Soc. 174, 935 (1883).
 * @example reynoldsNumber(1.7485371418812534, 0.0525018, 1.0033667563000113e-6) // 91493.3116
 */
export function reynoldsNumber(velocity: number, bore: number, kinematicViscosity: number): number {
  requireBetween('velocity', velocity, 0, 1e6, 'm/s');
  return (velocity * requireBore(bore)) / requireViscosity(kinematicViscosity);
}

/**
 * Flow at which a round bore reaches a given Reynolds number.
 *
 * Law: Q = pi/4 D nu Re.
 * @param reynolds Reynolds number [-], 0 to 1e12.
 * @param bore Inside diameter [m], 0.0001 to 10.
 * @param kinematicViscosity Kinematic viscosity [m2/s], 1e-8 to 1.
 * @returns Flow [m3/s]; 0 at Reynolds number 0.
 * @throws CoreError when any of them lies outside its range or is not a number.
 * Accuracy: exact arithmetic.
 * Source: the definition of the Reynolds number and continuity.
 * @example flowAtReynolds(4000, 0.0525018, 1.0033667563000113e-6) // 0.000165494580
 */
export function flowAtReynolds(reynolds: number, bore: number, kinematicViscosity: number): number {
  requireBetween('Reynolds number', reynolds, 0, 1e12, '');
  return (Math.PI / 4) * requireBore(bore) * requireViscosity(kinematicViscosity) * reynolds;
}
