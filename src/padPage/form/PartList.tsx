/** A list of parts with its branches, as deep as they go. */

import type { JSX } from 'preact';
import { newBranch, newEquipment, newFitting, newParallel, newPipe } from '#pad/document/parts.ts';
import type { BranchSection, ParallelSection, Section } from '#pad/document/schema.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { partText } from '#words/parts.ts';
import { AddButton, Entry, EntryTools, focusSoon, RemoveButton, useIds } from './Entry.tsx';
import { Findings, NumberField, WordsField } from './fields.tsx';
import { type Form, useForm } from './form.ts';
import { inserted, moved, without } from './lists.ts';
import { EquipmentFields, FittingFields, PipeFields } from './PartFields.tsx';
import { branchText, freshPartIds, lastSize } from './parts.ts';
import { elementId, type Spot, valueAtSpot } from './spot.ts';
import { usualEquipment } from './usual.ts';

type Side = 'suction' | 'discharge';

interface ListProps {
  readonly at: Spot;
  readonly side: Side;
  /** Where the list is, as it stands after "Add a pipe to". */
  readonly name: string;
  /** How many places where the flow divides stand around this list. */
  readonly depth?: number;
}

type Kind = Section['kind'];

const kinds: readonly { readonly kind: Kind; readonly label: string; readonly what: string }[] = [
  { kind: 'pipe', label: 'Pipe', what: 'a new pipe' },
  { kind: 'fitting', label: 'Fitting', what: 'a new fitting' },
  { kind: 'equipment', label: 'Equipment', what: 'new equipment' },
  { kind: 'parallel', label: 'Side by side', what: 'new side-by-side pipes' },
];

/** Deeper than this nobody plumbs, and a phone has no room left. */
const deepest = 2;

function sectionsAt(form: Form, at: Spot): readonly Section[] {
  return (valueAtSpot(form.pad.value, at) as readonly Section[] | undefined) ?? [];
}

function newSection(kind: Kind, ids: readonly string[], side: Side, form: Form, at: Spot): Section {
  const [id = '', first = '', second = ''] = ids;
  const size = lastSize(sectionsAt(form, at));
  const { preset } = form.units.peek();
  switch (kind) {
    case 'pipe':
      return newPipe(id, size);
    case 'fitting':
      return newFitting(id, 'elbow90', size);
    case 'equipment': {
      const equipment = side === 'suction' ? 'strainer' : 'filter';
      return newEquipment(id, equipment, usualEquipment(equipment, preset) ?? {});
    }
    case 'parallel':
      return newParallel(id, { branches: [newBranch(first), newBranch(second)] });
  }
}

/** Parts in the order the water meets them. */
export function PartList({ at, side, name, depth = 0 }: ListProps): JSX.Element {
  const form = useForm();
  const ids = useIds(() => sectionsAt(form, at));
  const id = elementId(at);
  const add = (kind: Kind, what: string) => {
    const fresh = freshPartIds(form.pad.peek().plumbing, 3);
    const section = newSection(kind, fresh, side, form, at);
    form.fresh.value = section.id;
    form.change(at, (list: readonly Section[]) => inserted(list, list.length, section), what);
  };
  return (
    <div class="form-parts">
      {ids.length > 0 && (
        <ol class="form-entries">
          {ids.map((partId, place) => (
            <Part
              key={partId}
              list={at}
              id={partId}
              side={side}
              depth={depth}
              isFirst={place === 0}
              isLast={place === ids.length - 1}
            />
          ))}
        </ol>
      )}
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring its own box and legend */}
      <div class="form-adders" role="group" aria-label={`Add to ${name}`}>
        {kinds
          .filter(({ kind }) => kind !== 'parallel' || depth < deepest)
          .map(({ kind, label, what }) => (
            <AddButton
              key={kind}
              id={`${id}-add-${kind}`}
              label={`Add ${what.replace('new ', '')} to ${name}`}
              onAdd={() => add(kind, what)}
            >
              {label}
            </AddButton>
          ))}
      </div>
    </div>
  );
}

interface PartProps {
  readonly list: Spot;
  readonly id: string;
  readonly side: Side;
  readonly depth: number;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

function Part({ list, id, side, depth, isFirst, isLast }: PartProps): JSX.Element | null {
  const form = useForm();
  const at = [...list, `@${id}`];
  const element = elementId(at);
  const section = useComputed(() => valueAtSpot(form.pad.value, at) as Section | undefined);
  const title = useComputed(() =>
    section.value === undefined ? '' : partText(section.value, form.units.value),
  );
  const kind = useComputed(() => section.value?.kind);
  if (kind.value === undefined) return null;
  const placeIn = (parts: readonly Section[]) => parts.findIndex((part) => part.id === id);
  const move = (by: -1 | 1) =>
    form.change(
      list,
      (parts: readonly Section[]) => moved(parts, placeIn(parts), by),
      'moving a part',
    );
  const remove = () => {
    form.change(
      list,
      (parts: readonly Section[]) => without(parts, placeIn(parts)),
      'taking away a part',
    );
    focusSoon(`${elementId(list)}-add-pipe`);
  };
  return (
    <li>
      <Entry id={id} elementId={element} title={title}>
        <div class="form-fields">
          {kind.value === 'pipe' && <PipeFields at={at} />}
          {kind.value === 'fitting' && <FittingFields at={at} />}
          {kind.value === 'equipment' && <EquipmentFields at={at} />}
          {kind.value === 'parallel' && <Branches at={at} side={side} depth={depth} />}
          {kind.value !== 'parallel' && <Findings at={at} />}
        </div>
        <EntryTools
          name={title.value}
          elementId={element}
          onMove={move}
          onRemove={remove}
          isFirst={isFirst}
          isLast={isLast}
        />
      </Entry>
    </li>
  );
}

interface BranchesProps {
  readonly at: Spot;
  readonly side: Side;
  readonly depth: number;
}

/** The ways the water can take, each with its own parts and its own lift. */
function Branches({ at, side, depth }: BranchesProps): JSX.Element {
  const form = useForm();
  const list = [...at, 'branches'];
  const ids = useIds(
    () => (valueAtSpot(form.pad.value, list) as ParallelSection['branches'] | undefined) ?? [],
  );
  const addId = `${elementId(list)}-add`;
  const add = () => {
    const [id = ''] = freshPartIds(form.pad.peek().plumbing, 1);
    form.fresh.value = id;
    form.change(
      list,
      (branches: readonly BranchSection[]) => inserted(branches, branches.length, newBranch(id)),
      'a new way for the water',
    );
  };
  return (
    <>
      <WordsField at={[...at, 'name']} label="Name" what="the name of a part" />
      <p class="field-help">
        The ways share one head and divide the flow between them; the answers work out how.
      </p>
      <ol class="form-entries">
        {ids.map((id, place) => (
          <Branch
            key={id}
            list={list}
            id={id}
            place={place}
            side={side}
            depth={depth}
            onRemoved={() => focusSoon(addId)}
          />
        ))}
      </ol>
      <AddButton id={addId} onAdd={add}>
        Add a way
      </AddButton>
    </>
  );
}

interface BranchProps {
  readonly list: Spot;
  readonly id: string;
  readonly place: number;
  readonly side: Side;
  readonly depth: number;
  readonly onRemoved: () => void;
}

function Branch(props: BranchProps): JSX.Element {
  const { list, id, place, side, depth, onRemoved } = props;
  const form = useForm();
  const at = [...list, `@${id}`];
  const title = useComputed(() => {
    const branch = valueAtSpot(form.pad.value, at) as BranchSection | undefined;
    return branch === undefined ? '' : branchText(branch, place);
  });
  const remove = () => {
    form.change(
      list,
      (branches: readonly BranchSection[]) => branches.filter((branch) => branch.id !== id),
      'taking away a way for the water',
    );
    onRemoved();
  };
  return (
    <li>
      <Entry id={id} elementId={elementId(at)} title={title}>
        <div class="form-fields">
          <WordsField at={[...at, 'name']} label="Name" what="the name of a way" />
          <PartList
            at={[...at, 'sections']}
            side={side}
            name={title.value.replace(/:.*$/, '')}
            depth={depth + 1}
          />
          <NumberField
            at={[...at, 'lift']}
            label="Lift of this way"
            what="the lift of a way"
            hint="Only where its water breaks free above the pool, as at a spillway or a raised spa."
          />
        </div>
        <div class="form-tools">
          <RemoveButton name={title.value} onRemove={remove} />
        </div>
      </Entry>
    </li>
  );
}
