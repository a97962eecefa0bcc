/**
 * Four states of one invented pad, worked out when the site is built: the pump of the home picture at
 * one speed, its filter clean or loaded, a valve nearly shut, its basket full.
 */

import { gaugesIn } from '#core/fit/padModel.ts';
import { suctionHead } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { demoCircuit, demoCurve, speeds } from '#explorables/example/demo.ts';
import type { GaugeState } from './model.ts';

/** Speed of the invented pump in every state [rpm]. */
export const exampleSpeed = 2850;
/** Height of the suction gauge above the pool surface [m]: one foot. */
const gaugeLevel = 0.3048;
/** Height of the filter gauge above the suction gauge [m]: three feet. */
const gaugeHeight = 3 * gaugeLevel;

/** The pipes with every loss of one part multiplied. */
function withPart(id: string, times: number): Circuit {
  const worse = (part: CircuitPart): CircuitPart => {
    if (part.id !== id) return part;
    if (part.kind === 'equipment') return { ...part, factor: part.factor * times };
    return part.kind === 'fitting' ? { ...part, k: part.k * times } : part;
  };
  return {
    ...demoCircuit,
    suction: demoCircuit.suction.map(worse),
    discharge: demoCircuit.discharge.map(worse),
  };
}

function stateOf(id: string, label: string, circuit: Circuit): GaugeState {
  const point = operatingPoint(demoCurve, compileCircuit(circuit), exampleSpeed / speeds.rated);
  if (point.kind !== 'flowing') throw new RangeError(`The example "${id}" moves no water.`);
  const { flow, head } = point;
  const gauges = gaugesIn(
    { circuit, gaugeLevel },
    { head, suctionLoss: suctionHead(circuit, flow) },
    gaugeHeight,
  );
  return {
    id,
    label,
    filterPressure: gauges.dischargePressure,
    suctionVacuum: gauges.suctionVacuum,
    gaugeHeight,
    flow,
  };
}

/** The states in the order to try them. */
export const exampleStates: readonly GaugeState[] = [
  stateOf('clean', 'All clean', demoCircuit),
  stateOf('loaded', 'Filter loaded', withPart('filter', 4)),
  stateOf('valve', 'Return valve nearly shut', withPart('return-bends', 6)),
  stateOf('basket', 'Basket full', withPart('suction-bends', 9)),
];

/** Temperature of its water [degC]. */
export const exampleTemperature = demoCircuit.water.temperature;
