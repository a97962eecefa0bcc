/**
 * Front door to everything read on a pad: gauges as head, and fits of power, circuit and whole pad.
 */
export { type Band, bandDeviations } from '#core/numerics/band.ts';
export * from './fitCircuit.ts';
export { fitPad } from './fitPad.ts';
export * from './fitPower.ts';
export * from './gauges.ts';
export * from './padEvidence.ts';
export { priorSpread, typicalEfficiency } from './padModel.ts';
export { powerFactorSpread, typicalPowerFactor } from './padReadings.ts';
