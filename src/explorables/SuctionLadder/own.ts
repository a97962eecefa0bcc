import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { SuctionLadderModel, SuctionLine } from './model.ts';

/** The suction side of a pad, or nothing while the pad does not say enough of it. */
export function lineOf(pad: Pad): SuctionLine | undefined {
  const { running, water, speeds } = padModel(pad);
  const needed = pad.limits.npshRequired;
  if (running === null || speeds === null || !needed) return undefined;
  if (running.circuit.suction.length === 0) return undefined;
  const top = running.pointAt(speeds.top / speeds.reference);
  if (top.kind === 'noFlow') return undefined;
  const basket = pad.plumbing.suction.find(
    (section) => section.kind === 'equipment' && section.equipment === 'strainer',
  );
  return {
    parts: running.circuit.suction,
    basketId: basket?.id,
    required: () => needed,
    opening: {
      altitude: pad.site.altitude ?? 0,
      temperature: water.temperature,
      lift: -(pad.site.surfaceAbovePump ?? 0),
      flow: top.flow,
    },
    greatestFlow: 1.2 * top.flow,
  };
}

/** Puts the reader's own suction line and units beside the example. */
export function takePad(model: SuctionLadderModel, pad: Pad): void {
  model.own.value = lineOf(pad);
  model.units.value = pad.units;
}
