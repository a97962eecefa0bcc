/**
 * What is known of a pad and what comes back from fitting it.
 */

import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import type { CompiledCircuit } from '#core/hydraulics/compiledCircuit.ts';
import type { Band } from '#core/numerics/band.ts';
import type { PumpPower } from '#core/pump/power.ts';
import type { PumpCurve } from '#core/pump/pump.ts';
import type { StatedPower } from '#core/pump/statedPower.ts';
import type { Gauge } from './gauges.ts';

/** A pad with its uncertain numbers settled. */
export interface SettledPad {
  readonly circuit: Circuit;
  readonly compiled: CompiledCircuit;
  /** The suction side alone. */
  readonly compiledSuction: CompiledCircuit;
  readonly curve: PumpCurve;
  readonly power: PumpPower;
  /** Fitted over described resistance before the pump [-], above 0. */
  readonly suctionFactor: number;
  /** The same after the pump [-], above 0. */
  readonly dischargeFactor: number;
  /** Height of the vacuum gauge above the pool surface [m], any finite number. */
  readonly gaugeLevel: number;
}

/** What was read on the pad at one speed; anything not read is left out. */
export interface Reading {
  /** Name of the reading, any text. */
  readonly id: string;
  /** Speed over reference speed [-], 0.05 to 2. */
  readonly ratio: number;
  /** Flow on the meter [m3/s], 0 to 1. */
  readonly flow?: number | undefined;
  /** Filter gauge [Pa above atmosphere], -110000 to 2000000. */
  readonly dischargePressure?: number | undefined;
  /** Vacuum gauge before the pump [Pa below atmosphere], -1000000 to 110000. */
  readonly suctionVacuum?: number | undefined;
  /** Height of the filter gauge above the vacuum gauge, or above the pool surface when there is no vacuum gauge [m], -50 to 50. */
  readonly gaugeHeight?: number | undefined;
  /** Wire power [W], above 0. */
  readonly power?: number | undefined;
  /** Line current [A], above 0. */
  readonly current?: number | undefined;
  /** Line voltage [V], above 0. */
  readonly voltage?: number | undefined;
}

/** How good the instruments are; every share is a 95 % limit. */
export interface InstrumentAccuracy {
  /** The filter gauge [see Gauge]. */
  readonly filterGauge: Gauge;
  /** The vacuum gauge [see Gauge]. */
  readonly vacuumGauge: Gauge;
  /** Flow meter, as a share of its reading [-], 0.001 to 1. */
  readonly meterShare: number;
  /** Watts, as a share of the reading [-], 0.001 to 1. */
  readonly powerShare: number;
}

/** Instruments as found on a pad: grade B gauges of 60 psi and 30 inHg, a small meter, a drive's display; common practice, no source. */
export const typicalInstruments: InstrumentAccuracy = {
  filterGauge: { grade: 'B', span: 413_685 },
  vacuumGauge: { grade: 'B', span: 101_592 },
  meterShare: 0.1,
  powerShare: 0.05,
};

/** Everything known of a pad. */
export interface PadEvidence {
  /** The circuit as described [see Circuit]. */
  readonly circuit: Circuit;
  /** The pump curve as known [see PumpCurve]. */
  readonly curve: PumpCurve;
  /** Whether the curve is the maker's or a typical one scaled to the nameplate. */
  readonly curveKnown: 'dataSheet' | 'estimated';
  /** Wire power known apart from the readings, whole as a data sheet states it or told apart; a typical efficiency is assumed when left out. Never one fitted to the same readings. */
  readonly power?: PumpPower | StatedPower | undefined;
  /** Draw that does not fall with speed [W], 0 or more, where somebody said and the power does not tell it apart; a typical share when left out. */
  readonly fixedDraw?: number | undefined;
  /** What was read [see Reading], any number. */
  readonly readings: readonly Reading[];
  /** How good the instruments are [see InstrumentAccuracy]. */
  readonly instruments: InstrumentAccuracy;
  /** Slowest speed of interest over reference speed [-], 0.05 to 1; 0.3 when left out. */
  readonly leastRatio?: number | undefined;
  /** Fastest speed of interest over reference speed [-], the slowest to 2; 1 when left out. */
  readonly greatestRatio?: number | undefined;
}

/** A quantity that is read; apparentPower is volts times amperes where watts are not known. */
export type ReadQuantity =
  | 'flow'
  | 'dischargePressure'
  | 'suctionVacuum'
  | 'power'
  | 'apparentPower';

/** One reading beside what the fit makes of it, in its own unit [m3/s, Pa, W or V A]. */
export interface PadResidual {
  readonly id: string;
  readonly quantity: ReadQuantity;
  /** What was read [unit of the quantity], any finite number. */
  readonly measured: number;
  /** What the fit gives there [unit of the quantity], any finite number. */
  readonly predicted: number;
  /** Measured less predicted [unit of the quantity], any finite number. */
  readonly residual: number;
  /** The same in standard deviations of the reading [-]; beyond 2 is rare, beyond 3 wrong. */
  readonly deviations: number;
}

/** Readings that cannot be right together. */
export type Contradiction =
  | { readonly kind: 'powerFallsWithSpeed'; readonly slowerId: string; readonly fasterId: string }
  | { readonly kind: 'flowFallsWithSpeed'; readonly slowerId: string; readonly fasterId: string }
  | {
      readonly kind: 'pressureFallsWithSpeed';
      readonly slowerId: string;
      readonly fasterId: string;
    }
  | {
      readonly kind: 'flowRisesFasterThanSpeed';
      readonly slowerId: string;
      readonly fasterId: string;
    }
  | {
      readonly kind: 'gaugesDisagreeWithMeter';
      readonly id: string;
      readonly measured: number;
      /** Flow the gauges allow by the pump curve [m3/s]. */
      readonly byGauges: Band;
    }
  | {
      readonly kind: 'headAboveShutoff';
      readonly id: string;
      readonly head: number;
      readonly shutoffHead: number;
    }
  | {
      readonly kind: 'powerBelowHydraulic';
      readonly id: string;
      readonly power: number;
      readonly hydraulic: number;
    }
  | {
      readonly kind: 'powerAboveApparent';
      readonly id: string;
      readonly power: number;
      readonly apparent: number;
    }
  | {
      readonly kind: 'offTheFit';
      readonly id: string;
      readonly quantity: ReadQuantity;
      readonly deviations: number;
    };

/** What was taken for granted; spreads are standard deviations, as a share unless said otherwise. */
export type PadAssumption =
  | { readonly kind: 'curveEstimated'; readonly spread: number }
  | { readonly kind: 'curveWithinTolerance'; readonly spread: number }
  | { readonly kind: 'circuitAsDescribed'; readonly spread: number }
  | { readonly kind: 'flowReadFromCurve' }
  | { readonly kind: 'suctionLossFromPipes'; readonly spread: number }
  | { readonly kind: 'filterGaugeReadsDischargeSide' }
  /** Spread in metres. */
  | { readonly kind: 'gaugeLevelUnknown'; readonly spread: number }
  | { readonly kind: 'efficiencyTypical'; readonly value: number; readonly spread: number }
  | { readonly kind: 'fixedShareTypical'; readonly value: number; readonly spread: number }
  | { readonly kind: 'powerFactorTypical'; readonly value: number; readonly spread: number };

/** An instrument one more reading could be taken with. */
export type Instrument = 'flowMeter' | 'filterGauge' | 'vacuumGauge' | 'wattMeter';

/** The extra reading that would narrow a band most. */
export interface Narrowing {
  readonly instrument: Instrument;
  /** Speed to take it at, over reference speed [-]. */
  readonly ratio: number;
  /** Width of the 95 % band over the answer, averaged over the speeds [-]. */
  readonly widthBefore: number;
  /** The same once that reading is taken [-]. */
  readonly widthAfter: number;
}

/** 95 % bands of the three answers at one speed [m3/s, m, W]. */
export interface PadBand {
  readonly flow: Band;
  readonly head: Band;
  readonly power: Band;
}

/** Where a fit came to rest and how far the truth may lie from there: a normal law about the best. */
export interface PadSpread {
  /** What was known [see PadEvidence]. */
  readonly evidence: PadEvidence;
  /** Most likely value of each uncertain number, in the order of parameterNames [-; m for the gauge level], any finite number. */
  readonly parameters: readonly number[];
  /** Their covariance, symmetric. */
  readonly covariance: readonly (readonly number[])[];
}

/** The most likely pad, and how sure it is. */
export interface PadFit {
  /** The described circuit with its resistances scaled to the readings; for calculation, not to show as the reader's pipes. */
  readonly circuit: Circuit;
  readonly curve: PumpCurve;
  readonly power: PumpPower;
  /** Fitted over described resistance before the pump [-]; 1 when nothing says otherwise. */
  readonly suctionFactor: number;
  /** The same after the pump [-]. */
  readonly dischargeFactor: number;
  readonly residuals: readonly PadResidual[];
  readonly contradictions: readonly Contradiction[];
  readonly assumptions: readonly PadAssumption[];
  /** Power over volts times amperes, for readings with all three [-]. */
  readonly powerFactors: readonly { readonly id: string; readonly powerFactor: number }[];
  bandAt(ratio: number): PadBand;
  /** 95 % band of one answer that cannot be negative, asked of the pads about the fit [unit of the answer]. */
  bandOf(answer: (pad: SettledPad) => number): Band;
  /** What carries its doubt on to anything else that is asked of the pad. */
  readonly spread: PadSpread;
  /** The single extra reading that would narrow flow, head and power together most. */
  readonly narrowing: Narrowing;
  /** The same for each answer alone. */
  readonly narrowingOf: Readonly<Record<'flow' | 'head' | 'power', Narrowing>>;
}
