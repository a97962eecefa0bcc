/**
 * From the readings of a pad to single measurements with their uncertainty, and to the list of
 * what had to be assumed where nothing was read.
 */
import { requireBetween, requirePositive } from '#core/base/errors.ts';
import { fixedShareSpread, typicalFixedShare } from './fitPower.ts';
import { gaugeTolerance } from './gauges.ts';
import type {
  InstrumentAccuracy,
  PadAssumption,
  PadEvidence,
  Reading,
  ReadQuantity,
} from './padEvidence.ts';
import { gaugeLevelStated, priorDeviations, priorSpread, typicalEfficiency } from './padModel.ts';

/** Power factor taken where only volts and amperes are known [-], and its spread; common practice, no source. */
export const typicalPowerFactor = 0.8;
export const powerFactorSpread = 0.2;

/** What the model itself may be off by where an instrument is better than it [-]; common practice, no source. */
const modelShare = 0.01;

/** Flow below which no pad meter reads [m3/s]; common practice, no source. */
const leastFlowError = 2e-5;

/** One quantity of one reading. */
export interface Observation {
  readonly reading: Reading;
  readonly quantity: ReadQuantity;
  /** What was read [unit of the quantity], any finite number. */
  readonly value: number;
  /** Standard deviation [unit of the quantity], above 0. */
  readonly deviation: number;
}

/**
 * The single measurements that a list of readings holds.
 *
 * Law: instrument accuracy is a 95 % limit, so a standard deviation is half of it, never below 1 % for the model.
 * @param readings What was read [see Reading], any number.
 * @param instruments How good the instruments are [see InstrumentAccuracy], fields as there.
 * @returns One measurement per quantity read [m3/s, Pa, W or V A], in the order of the readings.
 * @throws CoreError when a reading or an accuracy is outside its range.
 * Accuracy: takes the errors of two readings as independent.
 * Source: ASME B40.100 for gauges (from memory); JCGM 100:2008 for the half.
 * @example observationsIn([{ id: 'a', ratio: 1, power: 1000 }], { filterGauge: { grade: 'B', span: 4e5 }, vacuumGauge: { grade: 'B', span: 1e5 }, meterShare: 0.1, powerShare: 0.06 })[0].deviation // 31.62
 */
export function observationsIn(
  readings: readonly Reading[],
  instruments: InstrumentAccuracy,
): Observation[] {
  requireBetween('meterShare', instruments.meterShare, 0.001, 1, '');
  requireBetween('powerShare', instruments.powerShare, 0.001, 1, '');
  return readings.flatMap((reading) => {
    requireReading(reading);
    return valuesOf(reading).map(([quantity, value]) => ({
      reading,
      quantity,
      value,
      deviation: readingDeviation(quantity, value, instruments),
    }));
  });
}

/**
 * Standard deviation of an instrument's reading.
 *
 * Law: half the 95 % limit, joined with 1 % for the model.
 * @param quantity What is read [see ReadQuantity].
 * @param value The reading [m3/s, Pa, W or V A], any finite number.
 * @param instruments How good the instruments are [see InstrumentAccuracy], fields as there.
 * @returns Standard deviation [unit of the reading], above 0.
 * @throws CoreError when a gauge's span is not above 0.
 * Accuracy: as the instrument.
 * Source: ASME B40.100 for gauges (from memory); JCGM 100:2008 for the half.
 * @example readingDeviation('flow', 0.004, { filterGauge: { grade: 'B', span: 4e5 }, vacuumGauge: { grade: 'B', span: 1e5 }, meterShare: 0.1, powerShare: 0.05 }) // 0.0002049
 */
export function readingDeviation(
  quantity: ReadQuantity,
  value: number,
  instruments: InstrumentAccuracy,
): number {
  const size = Math.abs(value);
  const model = modelShare * size;
  switch (quantity) {
    case 'flow':
      return Math.hypot((instruments.meterShare / 2) * size, model, leastFlowError);
    case 'dischargePressure':
      return Math.hypot(gaugeTolerance(instruments.filterGauge, value) / 2, model);
    case 'suctionVacuum':
      return Math.hypot(gaugeTolerance(instruments.vacuumGauge, size) / 2, model);
    case 'power':
      return Math.hypot((instruments.powerShare / 2) * size, model);
    case 'apparentPower':
      return Math.hypot(powerFactorSpread * size, (instruments.powerShare / 2) * size);
  }
}

/**
 * What is taken for granted when a pad is fitted.
 *
 * Law: whatever no reading speaks of is assumed, with the width of its prior.
 * @param evidence The pad [see PadEvidence], fields as there.
 * @returns The assumptions, tagged [see PadAssumption].
 * @throws nothing.
 * Accuracy: judgement, not measurement.
 * Source: common practice, no source.
 * @example typicalPowerFactor // 0.8000
 */
export function assumptionsOf(evidence: PadEvidence): PadAssumption[] {
  const { readings } = evidence;
  const has = (quantity: keyof Reading) => readings.some((one) => one[quantity] !== undefined);
  return [
    curveAssumption(evidence),
    ...(has('flow') || has('dischargePressure')
      ? []
      : [{ kind: 'circuitAsDescribed', spread: priorSpread.discharge } as const]),
    ...(has('flow') ? [] : [{ kind: 'flowReadFromCurve' } as const]),
    ...(has('suctionVacuum')
      ? []
      : [{ kind: 'suctionLossFromPipes', spread: priorSpread.suction } as const]),
    ...(has('dischargePressure') ? gaugeAssumptions(evidence) : []),
    ...powerAssumptions(evidence),
  ];
}

function curveAssumption(evidence: PadEvidence): PadAssumption {
  const [, , spread] = priorDeviations(evidence) as [number, number, number];
  return {
    kind: evidence.curveKnown === 'dataSheet' ? 'curveWithinTolerance' : 'curveEstimated',
    spread,
  };
}

function gaugeAssumptions(evidence: PadEvidence): PadAssumption[] {
  const reads = { kind: 'filterGaugeReadsDischargeSide' } as const;
  if (gaugeLevelStated(evidence)) return [reads];
  return [reads, { kind: 'gaugeLevelUnknown', spread: priorSpread.gaugeLevel }];
}

function powerAssumptions({ readings, power, fixedDraw }: PadEvidence): PadAssumption[] {
  const byWatts = readings.filter((one) => one.power !== undefined);
  const byAmperes = readings.filter(apparentOnly);
  const speeds = new Set([...byWatts, ...byAmperes].map((one) => one.ratio)).size;
  const assumed: PadAssumption[] = [];
  if (power === undefined && speeds === 0) {
    assumed.push({
      kind: 'efficiencyTypical',
      value: typicalEfficiency,
      spread: priorSpread.efficiency,
    });
  }
  const told = fixedDraw !== undefined || (power !== undefined && 'atReference' in power);
  if (!told && speeds < 2) {
    assumed.push({ kind: 'fixedShareTypical', value: typicalFixedShare, spread: fixedShareSpread });
  }
  if (byAmperes.length > 0) {
    assumed.push({
      kind: 'powerFactorTypical',
      value: typicalPowerFactor,
      spread: powerFactorSpread,
    });
  }
  return assumed;
}

/** Whether amperes have to stand in for watts. */
function apparentOnly({ power, current, voltage }: Reading): boolean {
  return power === undefined && current !== undefined && voltage !== undefined;
}

function valuesOf(reading: Reading): (readonly [ReadQuantity, number])[] {
  const { current = 0, voltage = 0 } = reading;
  const plain = (['flow', 'dischargePressure', 'suctionVacuum', 'power'] as const).flatMap(
    (quantity) => {
      const value = reading[quantity];
      return value === undefined ? [] : [[quantity, value] as const];
    },
  );
  return apparentOnly(reading) ? [...plain, ['apparentPower', current * voltage]] : plain;
}

function requireReading(reading: Reading): void {
  requireBetween('ratio', reading.ratio, 0.05, 2, '');
  const within = (field: keyof Reading, min: number, max: number, unit: string) => {
    const value = reading[field];
    if (value !== undefined) requireBetween(field, value as number, min, max, unit);
  };
  within('flow', 0, 1, 'm3/s');
  within('dischargePressure', -110_000, 2e6, 'Pa');
  within('suctionVacuum', -1e6, 110_000, 'Pa');
  within('gaugeHeight', -50, 50, 'm');
  for (const field of ['power', 'current', 'voltage'] as const) {
    const value = reading[field];
    if (value !== undefined) requirePositive(field, value, '');
  }
}
