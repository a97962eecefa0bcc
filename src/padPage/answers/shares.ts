/** Where the head goes, in the reader's names and units. */

import { lackingIds } from '#core/fit/resistance.ts';
import { headShares } from '#core/hydraulics/circuit.ts';
import type { Section } from '#pad/document/schema.ts';
import type { Share } from '#ui/charts/Bars.tsx';
import type { TableData } from '#ui/charts/Table.tsx';
import type { UnitChoice } from '#units/choice.ts';
import { format, symbolFor } from '#units/format.ts';
import { equipmentNames, partText } from '#words/parts.ts';
import { type HeadPiece, type Here, isSliver } from './figures.ts';
import type { Scene } from './scene.ts';

const groupNames: Readonly<Record<Extract<HeadPiece['what'], string>, string>> = {
  suctionPipes: 'Pipe and fittings before the pump',
  dischargePipes: 'Pipe and fittings after the pump',
  suction: 'All before the pump (assumed)',
  discharge: 'All after the pump (assumed)',
  suctionLacking: 'More than described, before the pump',
  dischargeLacking: 'More than described, after the pump',
  lift: 'Lift',
};

function pieceLabel(what: HeadPiece['what'], units: UnitChoice): string {
  if (typeof what === 'string') return groupNames[what];
  if (what.kind === 'equipment') return what.name || equipmentNames[what.equipment];
  if (what.kind === 'parallel') return what.name || 'Where the water divides';
  return partText(what, units);
}

/** The pieces of the head for the bar. */
export function headBar(pieces: readonly HeadPiece[], units: UnitChoice): readonly Share[] {
  return pieces.map(({ id, what, head }) => ({
    id,
    label: pieceLabel(what, units),
    amount: head,
    shown: format('head', head, units),
  }));
}

interface Named {
  readonly name: string;
  readonly within: string;
}

function namesOf(
  sections: readonly Section[],
  within: string,
  units: UnitChoice,
): readonly (readonly [string, Named])[] {
  return sections.flatMap((section): readonly (readonly [string, Named])[] => {
    if (section.kind !== 'parallel')
      return [[section.id, { name: partText(section, units), within }]];
    return section.branches.flatMap((branch, place) =>
      namesOf(branch.sections, branch.name || `way ${place + 1}`, units),
    );
  });
}

/** Every part with the flow, the velocity and the head of its own. */
export function partsTable(scene: Scene, here: Here, units: UnitChoice): TableData {
  const { plumbing } = scene.pad;
  const names = new Map(namesOf([...plumbing.suction, ...plumbing.discharge], '', units));
  const bare = { withUnit: false };
  const all = here.flow > 0 ? headShares(scene.running.circuit, here.flow) : [];
  const shares = all.filter((share) => !isSliver(share, here.head));
  return {
    caption: `Every part at ${format('speed', here.speed, units, { places: 0 })}, in the order the water meets it`,
    columns: [
      'Part',
      `Flow, ${symbolFor(units, 'flow')}`,
      `Velocity, ${symbolFor(units, 'velocity')}`,
      `Head, ${symbolFor(units, 'head')}`,
    ],
    rows: shares.map(({ id, side, flow, velocity, head }) => {
      const named = names.get(id);
      const group = id === lackingIds[side] ? (`${side}Lacking` as const) : side;
      const name = id === 'static' ? groupNames.lift : (named?.name ?? groupNames[group]);
      const within = named === undefined || named.within === '' ? '' : ` (${named.within})`;
      return [
        `${name}${within}`,
        format('flow', flow, units, bare),
        velocity === undefined ? '–' : format('velocity', velocity, units, bare),
        format('head', head, units, { ...bare, places: 2 }),
      ];
    }),
  };
}
