import type { TableData } from '#charts/Table.tsx';
import { unitFor } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { format, speak, symbolFor } from '#units/format.ts';
import type { BoreVelocityModel } from './model.ts';

/** The usual length that friction is quoted for in the reader's system: 100 of their own unit. */
export function quotedLength(model: BoreVelocityModel): number {
  return toSI('length', 100, unitFor(model.units.value, 'length'));
}

/** What the picture shows now, in one sentence or two. */
export function sentence(model: BoreVelocityModel): string {
  const units = model.units.value;
  const { here, chosen, limit, flowAtLimit, turbulentFlow } = model;
  const { flow, velocity, gradient } = here.value;
  const length = quotedLength(model);
  const against = velocity > limit ? 'above' : 'within';
  const state = flow >= turbulentFlow.value ? 'turbulent' : 'not yet surely turbulent';
  return (
    `${format('flow', flow, units)} in ${chosen.value.label} moves at ${format('velocity', velocity, units)}, ` +
    `${against} the limit of ${format('velocity', limit, units)}, which this bore reaches at ${format('flow', flowAtLimit.value, units)}. ` +
    `Over ${format('length', length, units)} it loses ${format('head', gradient * length, units)} of head. ` +
    `The water is ${state}: turbulence is sure from ${format('flow', turbulentFlow.value, units, { digits: 2 })}.`
  );
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
  const every = 6;
  const first = model.lines[0]?.runs ?? [];
  return {
    caption: `Velocity, and head lost over ${format('length', length, units)}`,
    columns: [
      `Flow, ${symbolFor(units, 'flow')}`,
      ...model.lines.flatMap(({ pipe }) => [
        `${pipe.label}: velocity, ${symbolFor(units, 'velocity')}`,
        `${pipe.label}: loss, ${symbolFor(units, 'head')}`,
      ]),
    ],
    rows: first
      .map((_, index) => index)
      .filter((index) => index % every === 0)
      .map((index) => [
        format('flow', first[index]?.flow ?? 0, units, bare),
        ...model.lines.flatMap(({ runs }) => [
          format('velocity', runs[index]?.velocity ?? 0, units, bare),
          format('head', (runs[index]?.gradient ?? 0) * length, units, bare),
        ]),
      ]),
  };
}
