import type { TableData } from '#ui/charts/Table.tsx';
import { unitFor } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { format, speak, symbolFor } from '#units/format.ts';
import type { BoreVelocityModel } from './model.ts';

/** The usual length that friction is quoted for in the reader's system: 100 of their own unit. */
export function quotedLength(model: BoreVelocityModel): number {
  return toSI('length', 100, unitFor(model.units.value, 'length'));
}

/** What the picture shows now, in a few sentences. */
export function sentence(model: BoreVelocityModel): string {
  const units = model.units.value;
  const { flow, velocity, gradient } = model.here.value;
  const { limit, label } = model.chosen.value;
  const length = quotedLength(model);
  const against = velocity > limit ? 'above' : 'within';
  const state = flow >= model.turbulentFlow.value ? 'turbulent' : 'not yet surely turbulent';
  return (
    `${opening(model, flow, label)} moves at ${format('velocity', velocity, units)}, ` +
    `${against} the limit of ${format('velocity', limit, units)}, which this bore reaches at ${format('flow', model.flowAtLimit.value, units)}. ` +
    `Over ${format('length', length, units)} it loses ${format('head', gradient * length, units)} of head. ` +
    `The water is ${state}: turbulence is sure from ${format('flow', model.turbulentFlow.value, units, { digits: 2 })}.${pumpRange(model)}`
  );
}

function opening(model: BoreVelocityModel, flow: number, label: string): string {
  const shown = format('flow', flow, model.units.value);
  return isOwn(model)
    ? `With ${shown} through your pump, the water in “${label}”`
    : `${shown} in ${label}`;
}

function pumpRange(model: BoreVelocityModel): string {
  const units = model.units.value;
  const { leastFlow, greatestFlow } = model.scene.value;
  if (leastFlow === undefined) return '';
  const most = format('flow', greatestFlow, units);
  return leastFlow > 0
    ? ` Your pump gives from ${format('flow', leastFlow, units)} to ${most}.`
    : ` Your pump gives up to ${most}, and no flow at its slowest.`;
}

/** Whether the picture shows the reader's own pipes. */
export function isOwn(model: BoreVelocityModel): boolean {
  return model.source.value === 'mine' && model.own.value !== undefined;
}

/** What is taken for granted in the picture. */
export function note(model: BoreVelocityModel): string {
  const always =
    'Smooth plastic pipe, full of water. Between a Reynolds number of 2000 and 4000 the water may do either, and the line is only a bridge.';
  if (!isOwn(model)) return always;
  return `${always} Each bore of your pad stands for its fastest run; a share in brackets is the part of the flow that goes through it at full speed. Where your pad names no limit, the usual one is drawn.`;
}

/** Spoken with the slider. */
export function spokenFlow(model: BoreVelocityModel): string {
  const units = model.units.value;
  const { flow, velocity } = model.here.value;
  return `${speak('flow', flow, units)}, ${speak('velocity', velocity, units)}`;
}

export function table(model: BoreVelocityModel): TableData {
  const units = model.units.value;
  const length = quotedLength(model);
  const bare = { withUnit: false };
  const lines = model.roundLines.value;
  const first = lines[0]?.runs ?? [];
  return {
    caption: `Velocity, and head lost over ${format('length', length, units)}`,
    columns: [
      `Flow, ${symbolFor(units, 'flow')}`,
      ...lines.flatMap(({ pipe }) => [
        `${pipe.label}: velocity, ${symbolFor(units, 'velocity')}`,
        `${pipe.label}: loss, ${symbolFor(units, 'head')}`,
      ]),
    ],
    rows: first.map(({ flow }, index) => [
      format('flow', flow, units, bare),
      ...lines.flatMap(({ runs }) => [
        format('velocity', runs[index]?.velocity ?? 0, units, bare),
        format('head', (runs[index]?.gradient ?? 0) * length, units, bare),
      ]),
    ]),
  };
}
