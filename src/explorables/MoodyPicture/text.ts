import { evenly } from '#ui/charts/path.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import { grouped } from '#units/numerals.ts';
import type { Friction, MoodyModel, Regime } from './model.ts';

/** A Reynolds number to three figures. */
export function reynoldsText(reynolds: number): string {
  return grouped(String(Number(reynolds.toPrecision(3))));
}

/** How many times as much, as a person would say it. */
export function timesText(times: number): string {
  if (times >= 0.95) return `${Number(times.toPrecision(times < 10 ? 2 : 3))} ×`;
  return `1/${Math.round(1 / times)}`;
}

const regimes: Readonly<Record<Regime, string>> = {
  layered: 'the water slides in layers, and the wall’s roughness counts for nothing',
  either: 'the water may slide in layers or tumble, and no law is sure: the line is only a bridge',
  turbulent: 'the water tumbles: it is turbulent',
};

/** The finding. */
export function sentence(model: MoodyModel): string {
  const units = model.units.value;
  const here = model.here.value;
  const flow = format('flow', here.flow, units);
  const { label } = model.chosen.value;
  const mine = model.source.value === 'mine' && model.own.value !== undefined;
  const opening = mine ? `With ${flow} through your pump, “${label}”` : `${flow} in ${label}`;
  const { twice } = here;
  return (
    `${opening} has a Reynolds number of ${reynoldsText(here.reynolds)}: ${regimes[here.regime]}. ` +
    `The friction factor is ${here.factor.toFixed(4)}, and ${format('length', here.length, units)} lose ${format('head', here.loss, units)} of head. ` +
    `Twice the flow would lose ${timesText(twice.flow)} that, twice the length ${timesText(twice.length)}, twice the bore ${timesText(twice.bore)}.`
  );
}

/** Hazen–Williams beside it, or why it has nothing to say. */
export function hazenNote({ hazen, loss, regime }: Friction): string {
  if (hazen === undefined) return 'C 150 is for new plastic';
  const off = Math.round((hazen / loss - 1) * 100);
  const against = off === 0 ? 'the same' : `${Math.abs(off)}\u00a0% ${off < 0 ? 'less' : 'more'}`;
  return regime === 'turbulent' ? `C 150: ${against}` : `C 150: ${against}, and not made for this`;
}

export function spoken(model: MoodyModel): string {
  const units = model.units.value;
  const { flow, reynolds, loss } = model.here.value;
  return `${speak('flow', flow, units)}, Reynolds number ${Number(reynolds.toPrecision(3))}, ${speak('head', loss, units)} lost`;
}

export function note(model: MoodyModel): string {
  const always =
    'Between Reynolds numbers of 2000 and 4000 the line is only a bridge. The faint lines are walls of other roughness, given as a part of the bore.';
  return model.source.value === 'mine'
    ? `${always} Each bore of your pad stands for its fastest run; a share in brackets is the part of the flow that goes through it at full speed.`
    : `${always} Smooth plastic is taken as 1.5 millionths of a metre rough, old galvanised steel as 0.15 mm.`;
}

const rowsInTable = 9;

export function table(model: MoodyModel): TableData {
  const units = model.units.value;
  const { min, max } = model.flow;
  const bare = { withUnit: false };
  const { length } = model.here.value;
  const flows = evenly(Math.log10(min.value), Math.log10(max.value), rowsInTable);
  return {
    caption: `${model.chosen.value.label}: friction over ${format('length', length, units)}`,
    columns: [
      `Flow, ${symbolFor(units, 'flow')}`,
      'Reynolds number',
      'Friction factor',
      `Darcy–Weisbach, ${symbolFor(units, 'head')}`,
      `Hazen–Williams, ${symbolFor(units, 'head')}`,
    ],
    rows: flows.map((log) => {
      const { flow, reynolds, factor, loss, hazen } = model.at(10 ** log);
      return [
        format('flow', flow, units, bare),
        reynoldsText(reynolds),
        factor.toFixed(4),
        format('head', loss, units, { ...bare, digits: 3 }),
        hazen === undefined ? '–' : format('head', hazen, units, { ...bare, digits: 3 }),
      ];
    }),
  };
}
