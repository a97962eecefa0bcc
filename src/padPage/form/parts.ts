/** What the form offers for a part, and the sizes and ids of new ones. */
import { pipeSizes } from '#core/hydraulics/pipe.ts';
import { plumbingIds } from '#pad/document/ids.ts';
import type { Pad, Section } from '#pad/document/schema.ts';
import type { Choice } from '#ui/controls/ChoiceFields.tsx';
import type { Preset } from '#units/choice.ts';
import { equipmentNames, fittingNames, isSized, type Sized } from '#words/parts.ts';
import { countParts } from './text.ts';

export const fittingChoices: readonly Choice[] = Object.entries(fittingNames).map(
  ([id, label]) => ({ id, label }),
);

export const equipmentChoices: readonly Choice[] = Object.entries(equipmentNames).map(
  ([id, label]) => ({ id, label }),
);

export const mediaChoices: readonly Choice[] = [
  { id: 'sand', label: 'Sand' },
  { id: 'cartridge', label: 'Cartridge' },
  { id: 'diatomaceousEarth', label: 'Diatomaceous earth' },
  { id: 'glass', label: 'Glass' },
  { id: 'other', label: 'Other' },
];

/** Stands for a bore that is typed instead of a size from the table. */
export const ownBore = 'own';

const isUs = (id: string): boolean => id.startsWith('sch');

/** Every size in the table, those of the reader's own system first. */
export function sizeChoices(preset: Preset): readonly Choice[] {
  const all = pipeSizes.map(({ id, label }) => ({ id, label }));
  const near = all.filter(({ id }) => isUs(id) === (preset === 'us'));
  const far = all.filter(({ id }) => isUs(id) !== (preset === 'us'));
  return [
    { id: '', label: 'Choose a size' },
    ...near,
    ...far,
    { id: ownBore, label: 'Type the bore' },
  ];
}

/** What the list of sizes shows for a part. */
export function chosenSize({ sizeId, bore }: Sized): string {
  return sizeId ?? (bore === null ? '' : ownBore);
}

const boreOfSize = new Map(pipeSizes.map(({ id, bore }) => [id, bore]));

/** A part in another size; to type a bore, one starts from that of the size before. */
export function withSize<Part extends Sized>(part: Part, choice: string): Part {
  if (choice === ownBore) {
    const bore = part.bore ?? boreOfSize.get(part.sizeId ?? '') ?? 0.05;
    return { ...part, sizeId: null, bore };
  }
  return { ...part, sizeId: choice === '' ? null : choice, bore: null };
}

/** The name of one way of a place where the flow divides. */
export function branchText(
  { name, sections }: { readonly name: string; readonly sections: readonly Section[] },
  place: number,
): string {
  const parts = countParts(sections);
  return `${name || `Way ${place + 1}`}: ${parts === 1 ? '1 part' : `${parts} parts`}`;
}

/** An id that no part or branch of the plumbing has. */
export function freshPartIds(plumbing: Pad['plumbing'], many: number): readonly string[] {
  const taken = new Set(plumbingIds(plumbing).map(({ id }) => id));
  const ids: string[] = [];
  for (let number = taken.size + 1; ids.length < many; number += 1) {
    const id = `part${number}`;
    if (!taken.has(id)) ids.push(id);
  }
  return ids;
}

/** The size a new part starts with: that of the last part before it that has one. */
export function lastSize(sections: readonly Section[]): Sized {
  for (const section of sections.toReversed()) {
    if (section.kind === 'pipe' || section.kind === 'fitting') {
      const { sizeId, bore } = section;
      if (isSized(section)) return { sizeId, bore };
    }
  }
  return { sizeId: null, bore: null };
}
