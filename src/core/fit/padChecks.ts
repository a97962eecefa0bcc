/**
 * Readings that cannot be right together: found before the fit where physics alone says so, and
 * after it where a reading stays far off.
 */
import { suctionHead } from '#core/hydraulics/circuit.ts';
import { hydraulicPower } from '#core/pump/power.ts';
import { flowFromHead } from './fitCircuit.ts';
import { powerContradictions } from './fitPower.ts';
import { gaugeTolerance, pressureHead, totalDynamicHead } from './gauges.ts';
import type { Contradiction, PadEvidence, PadResidual, Reading } from './padEvidence.ts';
import { gaugeLevelStated, priorDeviations, priorSpread } from './padModel.ts';

/** Deviations beyond which a reading no longer belongs to the fit [-]; common practice, no source. */
const offTheFitBeyond = 3;

/** Share by which a real circuit may leave Q ~ r even without lift [-]; smooth pipe goes with Q^1.8. */
const proportionSlack = 0.03;

interface HeadRead {
  readonly head: number;
  /** 95 % [m]. */
  readonly tolerance: number;
}

/**
 * Everything about the readings that cannot be right together.
 *
 * Law: power, flow and pressure rise with speed; flow no faster than the fitted pad allows; gauges and meter meet on the pump curve; head below shut-off; rho g Q H < P < V I; every reading within 3 deviations of the fit.
 * @param evidence The pad [see PadEvidence], fields as there.
 * @param residuals The readings beside the fit [see PadResidual].
 * @param fittedFlow Flow [m3/s] the fitted pad moves at a speed ratio [-].
 * @returns The contradictions, each with the readings at fault; empty when none.
 * @throws CoreError when a reading is outside its range.
 * Accuracy: at the 95 % limits of the instruments and of the pump curve.
 * Source: affinity laws, ANSI/HI 14.6; energy balance; thresholds common practice, no source.
 * @example contradictionsIn({ circuit: { suction: [], discharge: [], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, curve: { shutoffHead: 20, lastFlow: 0.01, head: (q) => 20 - 1e5 * q * q, slope: (q) => -2e5 * q, provenance: 'threePoints' }, curveKnown: 'dataSheet', readings: [{ id: 'a', ratio: 0.5, power: 700 }, { id: 'b', ratio: 1, power: 500 }], instruments: { filterGauge: { grade: 'B', span: 4e5 }, vacuumGauge: { grade: 'B', span: 1e5 }, meterShare: 0.1, powerShare: 0.05 } }, [], (r) => r).length // 1.000
 */
export function contradictionsIn(
  evidence: PadEvidence,
  residuals: readonly PadResidual[],
  fittedFlow: (ratio: number) => number,
): Contradiction[] {
  const { readings, instruments } = evidence;
  return [
    ...powerContradictions(powersOf(readings), instruments.powerShare),
    ...fallsWithSpeed(readings, 'flow', 'flowFallsWithSpeed', instruments.meterShare),
    ...fallsWithSpeed(readings, 'dischargePressure', 'pressureFallsWithSpeed', 0.02),
    ...flowRunsAhead(evidence, fittedFlow),
    ...readings.flatMap((reading) => [
      ...headTooHigh(evidence, reading),
      ...meterAgainstGauges(evidence, reading),
      ...powerTooLow(evidence, reading),
      ...powerTooHigh(evidence, reading),
    ]),
    ...offTheFit(residuals),
  ];
}

function powersOf(readings: readonly Reading[]) {
  return readings.flatMap(({ id, ratio, power }) =>
    power === undefined ? [] : [{ id, ratio, power }],
  );
}

/** Each reading of a quantity beside the next one at a clearly faster speed. */
function neighbours(
  readings: readonly Reading[],
  quantity: 'flow' | 'dischargePressure',
  speedSlack: number,
) {
  const bySpeed = readings
    .flatMap((reading) => {
      const value = reading[quantity];
      return value === undefined ? [] : [{ id: reading.id, ratio: reading.ratio, value }];
    })
    .sort((a, b) => a.ratio - b.ratio);
  return bySpeed.flatMap((slower, index) => {
    const faster = bySpeed
      .slice(index + 1)
      .find((one) => one.ratio / slower.ratio - 1 > speedSlack);
    return faster === undefined ? [] : [{ slower, faster }];
  });
}

function fallsWithSpeed(
  readings: readonly Reading[],
  quantity: 'flow' | 'dischargePressure',
  kind: 'flowFallsWithSpeed' | 'pressureFallsWithSpeed',
  speedSlack: number,
): Contradiction[] {
  return neighbours(readings, quantity, speedSlack)
    .filter(({ slower, faster }) => faster.value < slower.value)
    .map(({ slower, faster }) => ({ kind, slowerId: slower.id, fasterId: faster.id }));
}

/** A lift makes flow rise faster than speed honestly, so the fitted pad says how fast is too fast. */
function flowRunsAhead(
  { readings, instruments: { meterShare } }: PadEvidence,
  fittedFlow: (ratio: number) => number,
): Contradiction[] {
  return neighbours(readings, 'flow', 0)
    .filter(({ slower, faster }) => {
      const slowerFitted = fittedFlow(slower.ratio);
      if (slower.value === 0 || slowerFitted === 0) return false;
      const bySpeed = faster.ratio / slower.ratio;
      const byFit = fittedFlow(faster.ratio) / slowerFitted;
      const meterSlack = (1 + meterShare) / Math.max(1 - meterShare, 0.1);
      const allowed = Math.max(bySpeed, byFit) * (1 + proportionSlack) * meterSlack;
      return faster.value / slower.value > allowed;
    })
    .map(({ slower, faster }) => ({
      kind: 'flowRisesFasterThanSpeed',
      slowerId: slower.id,
      fasterId: faster.id,
    }));
}

/** Head from both gauges, or from the filter gauge and the described suction side. */
function headRead(evidence: PadEvidence, reading: Reading, flow: number): HeadRead | undefined {
  const { dischargePressure, suctionVacuum, gaugeHeight = 0 } = reading;
  if (dischargePressure === undefined) return undefined;
  const { circuit, instruments } = evidence;
  const { density } = circuit.water;
  const inHead = (pressure: number) => pressureHead(pressure, density);
  const filter = inHead(gaugeTolerance(instruments.filterGauge, dischargePressure));
  if (suctionVacuum !== undefined) {
    const vacuum = inHead(gaugeTolerance(instruments.vacuumGauge, Math.abs(suctionVacuum)));
    const head = totalDynamicHead({ dischargePressure, suctionVacuum, gaugeHeight, density });
    return { head, tolerance: Math.hypot(filter, vacuum) };
  }
  const loss = suctionHead(circuit, flow);
  const level = gaugeLevelStated(evidence) ? priorSpread.gaugeLevelStated : priorSpread.gaugeLevel;
  return {
    head: inHead(dischargePressure) + gaugeHeight + loss,
    tolerance: Math.hypot(filter, 2 * level, 2 * priorSpread.suction * loss),
  };
}

function headTooHigh(evidence: PadEvidence, reading: Reading): Contradiction[] {
  const read = headRead(evidence, reading, 0);
  if (read === undefined) return [];
  const [, , headSpread] = priorDeviations(evidence) as [number, number, number];
  const shutoffHead = evidence.curve.shutoffHead * reading.ratio ** 2;
  const highest = shutoffHead * (1 + 2 * headSpread) + read.tolerance;
  if (read.head <= highest) return [];
  return [{ kind: 'headAboveShutoff', id: reading.id, head: read.head, shutoffHead }];
}

/** The meter must lie within what the gauges allow, read off the pump curve with both at their limits. */
function meterAgainstGauges(evidence: PadEvidence, reading: Reading): Contradiction[] {
  const { id, flow, ratio } = reading;
  const read = flow === undefined ? undefined : headRead(evidence, reading, flow);
  if (flow === undefined || read === undefined) return [];
  const [, , headSpread, flowSpread] = priorDeviations(evidence) as [
    number,
    number,
    number,
    number,
  ];
  const byCurve = 2 * headSpread * Math.max(read.head, 0);
  const slack = Math.hypot(read.tolerance, byCurve);
  const flowAt = (head: number) => {
    const found = flowFromHead(evidence.curve, Math.min(Math.max(head, 0), 1000), ratio);
    return found.kind === 'found' ? found.flow : 0;
  };
  const byGauges = {
    low: flowAt(read.head + slack) * Math.exp(-2 * flowSpread),
    high: flowAt(read.head - slack) * Math.exp(2 * flowSpread),
  };
  const meterSlack = evidence.instruments.meterShare * flow;
  if (flow + meterSlack >= byGauges.low && flow - meterSlack <= byGauges.high) return [];
  return [{ kind: 'gaugesDisagreeWithMeter', id, measured: flow, byGauges }];
}

function powerTooLow(evidence: PadEvidence, reading: Reading): Contradiction[] {
  const { id, flow, power } = reading;
  if (flow === undefined || power === undefined) return [];
  const read = headRead(evidence, reading, flow);
  if (read === undefined) return [];
  const { meterShare, powerShare } = evidence.instruments;
  const leastHead = Math.max(0, read.head - read.tolerance);
  const leastFlow = flow * Math.max(0, 1 - meterShare);
  const hydraulic = hydraulicPower(evidence.circuit.water.density, leastFlow, leastHead);
  if (power * (1 + powerShare) >= hydraulic) return [];
  return [{ kind: 'powerBelowHydraulic', id, power, hydraulic }];
}

/** Watts above volts times amperes would need a power factor above one. */
function powerTooHigh(
  { instruments: { powerShare } }: PadEvidence,
  { id, power, current, voltage }: Reading,
): Contradiction[] {
  if (power === undefined || current === undefined || voltage === undefined) return [];
  const apparent = current * voltage;
  if (power <= apparent * (1 + 2 * powerShare)) return [];
  return [{ kind: 'powerAboveApparent', id, power, apparent }];
}

function offTheFit(residuals: readonly PadResidual[]): Contradiction[] {
  return residuals
    .filter(({ deviations }) => Math.abs(deviations) > offTheFitBeyond)
    .map(({ id, quantity, deviations }) => ({ kind: 'offTheFit', id, quantity, deviations }));
}
