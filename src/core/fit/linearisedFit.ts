/** The best fit of a pad with all that a small change of its uncertain numbers would do. */
import { slopesAround } from '#core/numerics/band.ts';
import type { Instrument, PadSpread, ReadQuantity, SettledPad } from './padEvidence.ts';
import { gaugesIn, type PadState, padState, settle } from './padModel.ts';

/** What can be asked of a pad, some numbers at a time, as many each time. */
export type PadAnswers = (pad: SettledPad) => readonly number[];

/** What is read directly, and by which instrument. */
export const quantityOf: Readonly<Record<Instrument, Exclude<ReadQuantity, 'apparentPower'>>> = {
  flowMeter: 'flow',
  filterGauge: 'dischargePressure',
  vacuumGauge: 'suctionVacuum',
  wattMeter: 'power',
};

/** One value for each thing that can be shown or asked at one speed. */
export type Row<Value> = Readonly<
  Record<'flow' | 'head' | 'power' | 'dischargePressure' | 'suctionVacuum', Value>
>;

export interface LinearisedFit {
  readonly best: SettledPad;
  stateAt(ratio: number): PadState;
  valuesAt(ratio: number): Row<number>;
  slopesAt(ratio: number): Row<number[]>;
  /** One row per answer, one column per uncertain number. */
  slopesOf(answers: PadAnswers): number[][];
}

/**
 * The pads close about a fit, settled once and asked many times.
 *
 * @internal
 */
export function linearisedFit({
  evidence,
  parameters,
}: Pick<PadSpread, 'evidence' | 'parameters'>): LinearisedFit {
  const best = settle(evidence, parameters);
  const slopesOf = slopesAround((trial) => settle(evidence, trial), parameters);
  return {
    best,
    stateAt: (ratio) => padState(best, ratio),
    valuesAt: (ratio) => rowOf(allShown(best, ratio)),
    slopesAt: (ratio) => rowOf(slopesOf((pad) => allShown(pad, ratio))),
    slopesOf,
  };
}

function allShown(pad: SettledPad, ratio: number): number[] {
  const state = padState(pad, ratio);
  const { dischargePressure, suctionVacuum } = gaugesIn(pad, state, 0);
  return [state.flow, state.head, state.power, dischargePressure, suctionVacuum];
}

function rowOf<Value>(values: readonly Value[]): Row<Value> {
  const [flow, head, power, dischargePressure, suctionVacuum] = values as [
    Value,
    Value,
    Value,
    Value,
    Value,
  ];
  return { flow, head, power, dischargePressure, suctionVacuum };
}
