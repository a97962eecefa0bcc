import type { JSX } from 'preact';
import type { Live } from '#ui/charts/live.ts';
import type { Quantity } from '#ui/charts/marks.tsx';

/** One figure that follows from what is set. */
export interface Reading {
  readonly id: string;
  readonly label: string;
  readonly value: Live<string>;
  /** Small print under the number. */
  readonly note?: Live<string>;
  readonly of?: Quantity;
}

/** A row of figures, each with the stroke of its quantity beside its name. */
export function Readings({ items }: { items: readonly Reading[] }): JSX.Element {
  return (
    <dl class="readouts">
      {items.map(({ id, label, value, note, of = 'plain' }) => (
        <div key={id} class="readout" data-quantity={of}>
          <dt>
            {of !== 'plain' && <Stroke />}
            {label}
          </dt>
          <dd>
            <span class="readout-value">{value}</span>
            {note !== undefined && <span class="readout-note">{note}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** A short piece of the quantity's line, as it looks in the picture. */
function Stroke(): JSX.Element {
  return (
    <svg class="readout-stroke" viewBox="0 0 28 6" aria-hidden="true" focusable="false">
      <path class="curve" d="M0,3H28" />
    </svg>
  );
}
