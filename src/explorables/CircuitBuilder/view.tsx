import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { ShareBar } from '#ui/charts/Bars.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { QuantityRange } from '#ui/controls/QuantityRange.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink, type LinkField } from '#ui/figure/linkState.ts';
import { guarded } from '#ui/loading/Guard.tsx';
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
function CircuitBuilder({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(exampleScene, openingFlow), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['circuit', linkFields],
    own: () => import('./own.ts'),
  });
  const said = useComputed(() => spoken(model));
  const saidLift = useComputed(() => spokenLift(model));
  const bar = useComputed(() => shares(model));
  return (
    <Figure
      id={id}
      title="A circuit from its parts"
      {...figure}
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

export default guarded(CircuitBuilder);

interface SettingProps {
  readonly id: string;
  readonly model: CircuitBuilderModel;
  readonly name: 'flow' | 'lift';
  readonly label: string;
  readonly said: ReturnType<typeof useComputed<string>>;
}

function Setting({ id, model, name, label, said }: SettingProps): JSX.Element {
  return (
    <QuantityRange
      id={`${id}-${name}`}
      label={label}
      dial={model[name]}
      of={name === 'flow' ? 'flow' : 'length'}
      units={model.units}
      spoken={said}
    />
  );
}
