import { useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { ShareBar } from '#charts/Bars.tsx';
import { unitFor } from '#units/choice.ts';
import { symbolFor } from '#units/format.ts';
import { Figure } from '#widgets/kit/Figure.tsx';
import { dialInLink, type LinkField, useLinkState } from '#widgets/kit/linkState.ts';
import { useOwnPad } from '#widgets/kit/ownPad.ts';
import { quantityEntry } from '#widgets/kit/quantityEntry.ts';
import { RangeField } from '#widgets/kit/RangeField.tsx';
import { exampleScene, openingFlow } from './example.ts';
import { type CircuitBuilderModel, createModel, type Piece } from './model.ts';
import { Parts } from './Parts.tsx';
import { Picture } from './Picture.tsx';
import { sentence, shares, spoken, spokenLift, table } from './text.ts';

/** Settings in the link; the reader's own pad never travels in it. */
function linkFields(model: CircuitBuilderModel): Readonly<Record<string, LinkField>> {
  const isOwn = () => model.source.value === 'mine';
  const ofDial = (name: 'flow' | 'lift'): LinkField => {
    const field = dialInLink(model[name]);
    return { ...field, read: () => (isOwn() ? '' : field.read()) };
  };
  const ofPiece = (piece: Piece): LinkField => ({
    read: () => {
      const count = isOwn() ? piece.opening : model.countOf(piece);
      return count === piece.opening ? '' : String(count);
    },
    write: (text) => model.setCount(piece.id, Number(text)),
  });
  return {
    flow: ofDial('flow'),
    lift: ofDial('lift'),
    ...Object.fromEntries(exampleScene.pieces.map((piece) => [piece.id, ofPiece(piece)])),
  };
}

/** A circuit to build from parts, and the curve that comes of it. */
export default function CircuitBuilder({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(exampleScene, openingFlow), []);
  useOwnPad(async () => {
    const { takePad } = await import('./own.ts');
    return (pad) => takePad(model, pad);
  });
  useLinkState(
    'circuit',
    useMemo(() => linkFields(model), [model]),
  );
  const words = useComputed(() => sentence(model));
  const numbers = useComputed(() => table(model));
  const said = useComputed(() => spoken(model));
  const saidLift = useComputed(() => spokenLift(model));
  const bar = useComputed(() => shares(model));
  const hasOwn = useComputed(() => model.own.value !== undefined);
  return (
    <Figure
      id={id}
      title="A circuit from its parts"
      sentence={words}
      table={numbers}
      onReset={model.reset}
      source={model.source}
      hasOwn={hasOwn}
      note="The example is an invented pad in 2 in Schedule 40. Suction lines, and returns, lie side by side and are equal, so that each takes the same part of the flow."
    >
      <Picture model={model} said={said} />
      <Setting id={id} model={model} name="flow" label="Flow" said={said} />
      <Parts id={id} model={model} />
      <Setting id={id} model={model} name="lift" label="Lift above the pool" said={saidLift} />
      <p class="needs-script">
        <button type="button" class="button button-quiet" onClick={model.keep}>
          Compare with this circuit from now on
        </button>
      </p>
      <ShareBar shares={bar} of="head" title="Where the head goes, part by part" />
    </Figure>
  );
}

interface SettingProps {
  readonly id: string;
  readonly model: CircuitBuilderModel;
  readonly name: 'flow' | 'lift';
  readonly label: string;
  readonly said: ReturnType<typeof useComputed<string>>;
}

function Setting({ id, model, name, label, said }: SettingProps): JSX.Element {
  const of = name === 'flow' ? 'flow' : 'length';
  const entry = useComputed(() => quantityEntry(of, model.units.value));
  const unit = useComputed(() => symbolFor(model.units.value, of));
  return (
    <RangeField
      key={unitFor(model.units.value, of)}
      id={`${id}-${name}`}
      label={label}
      dial={model[name]}
      spoken={said}
      entry={entry}
      unit={unit}
    />
  );
}
