import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { partText } from '#words/parts.ts';
import type { CircuitBuilderModel, CircuitScene, Piece } from './model.ts';

/** How far past the pump's greatest flow the picture reaches. */
const beyond = 1.2;

/** The circuit of the pad, each part to be left out or in; nothing while none is described. */
export function circuitOfPad(pad: Pad): CircuitScene | undefined {
  const { running, described, speeds, ratioOf } = padModel(pad);
  if (running === null || described === null || speeds === null) return undefined;
  const top = running.pointAt(ratioOf(speeds.top));
  if (top.kind !== 'flowing') return undefined;
  const { suction, discharge, staticHead, water } = running.circuit;
  const sections = [...pad.plumbing.suction, ...pad.plumbing.discharge];
  const labels = new Map(sections.map((section) => [section.id, partText(section, pad.units)]));
  const pieces = ([side, parts]: readonly [Piece['side'], typeof suction]): Piece[] =>
    parts.map((part) => ({
      id: part.id,
      label: labels.get(part.id) ?? 'More than described',
      side,
      least: 0,
      most: 1,
      opening: 1,
      make: () => [part],
    }));
  return {
    pieces: [...pieces(['suction', suction]), ...pieces(['discharge', discharge])],
    water,
    lift: staticHead,
    greatestFlow: beyond * top.flow,
  };
}

/** Puts the reader's own circuit and units beside the example. */
export function takePad(model: CircuitBuilderModel, pad: Pad): void {
  model.own.value = circuitOfPad(pad);
  model.units.value = pad.units;
}
