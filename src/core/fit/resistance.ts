/**
 * How a circuit resists more or less than it was described to.
 *
 * Less is less of every part. More is a loss that the description lacks: a valve half shut, dirt, a
 * bend under the ground. It need not go with the flow as the described parts do, so it is a part of
 * its own, one for either side.
 */

import { requireBetween } from '#core/base/errors.ts';
import type { Branch, Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';

type Side = 'suction' | 'discharge';

/** Names of the parts that stand for what the description of a side lacks. */
export const lackingIds: Readonly<Record<Side, string>> = {
  suction: 'lacking-suction',
  discharge: 'lacking-discharge',
};

/**
 * Power of the flow with which a loss goes that the description lacks [-], and its standard deviation.
 * Between grains of sand loss goes with 1, in valves and rough pipe with 2 (Darcy; Darcy-Weisbach), and
 * nobody knows where it is lost: a middle with room for both. Common practice, no source; the bands of
 * invented pads hold with it whether the loss goes with 2 or with anything from 1 to 2.
 */
export const typicalLackingExponent = 1.6;
export const lackingExponentSpread = 0.5;

/** Where more than described has become all something that the description lacks [-]; common practice, no source. */
const ownDoubt = 0.1;

/** How much a circuit resists over its description. */
export interface Resistance {
  /** Multiplier before the pump [-], above 0. */
  readonly suction: number;
  /** Multiplier after the pump [-], above 0. */
  readonly discharge: number;
  /** Power of the flow with which all goes that is more than described [-], any finite number; held to 1 to 2.5. */
  readonly exponent: number;
}

/**
 * A circuit with every resistance multiplied, one factor for either side.
 *
 * Law: loss is proportional to pipe length, to K and to the head of equipment; lifts stay as they are.
 * @param circuit The circuit [see Circuit], fields as there.
 * @param suctionFactor Multiplier before the pump [-], above 0.
 * @param dischargeFactor Multiplier after the pump [-], above 0.
 * @returns The scaled circuit; what it gives is its loss [m].
 * @throws nothing; parts keep their names, bores and roughness.
 * Accuracy: exact.
 * Source: Darcy-Weisbach; fittings as K V^2/2g.
 * @example scaleCircuit({ suction: [{ kind: 'fitting', id: 'a', k: 2, bore: 0.05 }], discharge: [], staticHead: 0 }, 1.5, 1).suction[0].k // 3.000
 */
export function scaleCircuit(
  circuit: Circuit,
  suctionFactor: number,
  dischargeFactor: number,
): Circuit {
  return {
    ...circuit,
    suction: circuit.suction.map((part) => scalePart(part, suctionFactor)),
    discharge: circuit.discharge.map((part) => scalePart(part, dischargeFactor)),
  };
}

/**
 * A circuit that resists so many times what was described, at one flow.
 *
 * Law: a factor f multiplies every part of its side, but for the share s that goes into one part more of loss s h (Q/Q0)^n, h the described loss at Q0; s = 0 up to f = 1, (f - 1)^2/0.2 up to 1.1, f - 1.05 beyond.
 * @param described The circuit as described [see Circuit], fields as there.
 * @param flow Flow Q0 at which the factors hold [m3/s], above 0 to 10.
 * @param resistance Factors and power n [see Resistance], fields as there.
 * @returns The circuit; what is added is the last part of its side, named in lackingIds, and its loss is in metres [m].
 * @throws CoreError when a part's field or the flow is out of range.
 * Accuracy: one power of the flow stands for all that is missing.
 * Source: h = h0 (Q/Q0)^n as for equipment; that a model's own fault needs a term is Kennedy and O'Hagan 2001 (from memory); the form of the term is our own.
 * @example resistingCircuit({ suction: [], discharge: [{ kind: 'equipment', id: 'a', referenceHead: 4, referenceFlow: 0.004, exponent: 2, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, 0.004, { suction: 1, discharge: 1.55, exponent: 1 }).discharge[1].referenceHead // 2.000
 */
export function resistingCircuit(
  described: Circuit,
  flow: number,
  { suction, discharge, exponent }: Resistance,
): Circuit {
  const circuit = scaleCircuit(
    described,
    suction - lackingShare(suction),
    discharge - lackingShare(discharge),
  );
  const lacking = (side: Side, factor: number): CircuitPart[] => {
    if (factor <= 1) return [];
    const referenceHead = lackingShare(factor) * lossesOf(described, flow)[side];
    return [
      {
        kind: 'equipment',
        id: lackingIds[side],
        referenceHead,
        referenceFlow: flow,
        exponent: Math.min(2.5, Math.max(1, exponent)),
        factor: 1,
      },
    ];
  };
  return {
    ...circuit,
    suction: [...circuit.suction, ...lacking('suction', suction)],
    discharge: [...circuit.discharge, ...lacking('discharge', discharge)],
  };
}

/**
 * A circuit with its parts changed on either side, and what its description lacks changed with them.
 *
 * Law: nobody knows in which part the lacking loss sits, so it keeps its ratio to the loss of the others, at its own reference flow.
 * @param circuit The circuit [see Circuit], with or without what resistingCircuit adds.
 * @param change Gives the parts of a side anew [-]; the lacking part is not among them.
 * @returns The changed circuit; its loss is in metres [m].
 * @throws CoreError when a part's field is out of range.
 * Accuracy: as good as that guess.
 * Source: common practice, no source.
 * @example changedParts({ suction: [], discharge: [{ kind: 'equipment', id: 'a', referenceHead: 4, referenceFlow: 0.004, exponent: 2, factor: 1 }, { kind: 'equipment', id: 'lacking-discharge', referenceHead: 2, referenceFlow: 0.004, exponent: 1, factor: 1 }], staticHead: 0, water: { temperature: 20, density: 998.2, dynamicViscosity: 0.001, kinematicViscosity: 1e-6, vapourPressure: 2339, specificHeat: 4184 } }, (parts) => parts.map((part) => ({ ...part, factor: 3 }))).discharge[1].factor // 3.000
 */
export function changedParts(
  circuit: Circuit,
  change: (parts: readonly CircuitPart[], side: Side) => readonly CircuitPart[],
): Circuit {
  const changed = (side: Side): readonly CircuitPart[] => {
    const parts = circuit[side];
    const lacking = parts.find(({ id }) => id === lackingIds[side]);
    if (lacking?.kind !== 'equipment') return change(parts, side);
    const known = parts.filter((part) => part !== lacking);
    const after = change(known, side);
    const lossOf = (of: readonly CircuitPart[]) =>
      sideLoss({ ...circuit, [side]: of }, side, lacking.referenceFlow);
    const moved = lossOf(after) / lossOf(known);
    return [...after, { ...lacking, factor: lacking.factor * (moved >= 0 ? moved : 1) }];
  };
  return { ...circuit, suction: changed('suction'), discharge: changed('discharge') };
}

/**
 * How much of a factor is something that the description lacks, over the described loss [-]. Little
 * more than described is the described parts' own doubt, so the share sets in by and by.
 */
function lackingShare(factor: number): number {
  const more = Math.max(0, factor - 1);
  return more < ownDoubt ? more ** 2 / (2 * ownDoubt) : more - ownDoubt / 2;
}

function sideLoss(circuit: Circuit, side: Side, flow: number): number {
  const alone = { ...circuit, suction: [], discharge: [], staticHead: 0, [side]: circuit[side] };
  return compiledHead(compileCircuit(alone), flow);
}

type Losses = Readonly<Record<Side, number>>;
const lossesKnown = new WeakMap<Circuit, { readonly flow: number; readonly losses: Losses }>();

/** Loss of either side [m]; a fit asks for those of one circuit over and over. */
function lossesOf(circuit: Circuit, flow: number): Losses {
  const known = lossesKnown.get(circuit);
  if (known?.flow === flow) return known.losses;
  requireBetween('flow', flow, 1e-9, 10, 'm3/s');
  const losses = {
    suction: sideLoss(circuit, 'suction', flow),
    discharge: sideLoss(circuit, 'discharge', flow),
  };
  lossesKnown.set(circuit, { flow, losses });
  return losses;
}

function scalePart(part: CircuitPart, factor: number): CircuitPart {
  switch (part.kind) {
    case 'pipe':
      return { ...part, length: part.length * factor };
    case 'fitting':
      return { ...part, k: part.k * factor };
    case 'equipment':
      return { ...part, referenceHead: part.referenceHead * factor };
    case 'parallel':
      return { ...part, branches: part.branches.map((branch) => scaleBranch(branch, factor)) };
  }
}

function scaleBranch(branch: Branch, factor: number): Branch {
  return { ...branch, parts: branch.parts.map((part) => scalePart(part, factor)) };
}
