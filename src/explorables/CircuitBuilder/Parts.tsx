import type { JSX } from 'preact';
import { ToggleField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import type { CircuitBuilderModel, Piece } from './model.ts';

interface PartsProps {
  readonly id: string;
  readonly model: CircuitBuilderModel;
}

/** All that can be put in or taken out, in the order the water meets it. */
export function Parts({ id, model }: PartsProps): JSX.Element {
  const { pieces } = model.scene.value;
  const on = (side: Piece['side']) => pieces.filter((piece) => piece.side === side);
  return (
    <div class="builder-parts needs-script" key={model.source.value}>
      {(['suction', 'discharge'] as const).map((side) => (
        <fieldset key={side} class="builder-side">
          <legend class="field-label">
            {side === 'suction' ? 'Before the pump' : 'After the pump'}
          </legend>
          {on(side).map((piece) =>
            piece.most > 1 ? (
              <Stepper key={piece.id} model={model} piece={piece} />
            ) : (
              <Switch key={piece.id} id={`${id}-${piece.id}`} model={model} piece={piece} />
            ),
          )}
        </fieldset>
      ))}
    </div>
  );
}

interface PieceProps {
  readonly model: CircuitBuilderModel;
  readonly piece: Piece;
}

function Switch({ id, model, piece }: PieceProps & { readonly id: string }): JSX.Element {
  const isIn = useComputed(() => model.countOf(piece) > 0);
  return (
    <ToggleField
      id={id}
      label={piece.label}
      value={isIn}
      apply={(on) => model.setCount(piece.id, on ? 1 : 0)}
    />
  );
}

function Stepper({ model, piece }: PieceProps): JSX.Element {
  const count = useComputed(() => model.countOf(piece));
  const by = (steps: number) => () => model.setCount(piece.id, count.peek() + steps);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring its own box and legend
    <div class="builder-stepper" role="group" aria-label={piece.label}>
      <button
        type="button"
        class="button button-quiet step-button"
        aria-label={`One fewer: ${piece.label}`}
        aria-disabled={count.value <= piece.least}
        onClick={by(-1)}
      >
        <span aria-hidden="true">−</span>
      </button>
      <span class="builder-count" data-piece={piece.id}>
        {count}
      </span>
      <button
        type="button"
        class="button button-quiet step-button"
        aria-label={`One more: ${piece.label}`}
        aria-disabled={count.value >= piece.most}
        onClick={by(1)}
      >
        <span aria-hidden="true">+</span>
      </button>
      <span>{piece.label}</span>
    </div>
  );
}
