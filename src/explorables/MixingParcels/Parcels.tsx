import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useComputed } from '#ui/controls/failure.ts';
import type { MixingModel } from './model.ts';
import { parcelText } from './text.ts';

/**
 * Where the parcel of each rank stands: powers of 11 modulo 101 run through 1 to 100 once and look
 * stirred. The same on server and screen, and a parcel that has passed never goes back.
 */
const placesByRank = (() => {
  const places: number[] = [];
  for (let power = 1; places.length < 100; power = (power * 11) % 101) places.push(power - 1);
  return places;
})();

const square = (x: number, y: number) => `M${x + 1.5},${y + 1.5}h7v7h-7z`;
const ring = (x: number, y: number) => `M${x + 2},${y + 5}a3,3 0 1 0 6,0a3,3 0 1 0 -6,0z`;
const dot = (x: number, y: number) =>
  `M${x + 3.8},${y + 5}a1.2,1.2 0 1 0 2.4,0a1.2,1.2 0 1 0 -2.4,0z`;

function marks(from: number, to: number, mark: (x: number, y: number) => string): string {
  return placesByRank
    .slice(from, to)
    .map((place) => mark(10 * (place % 10), 10 * Math.floor(place / 10)))
    .join('');
}

/** A hundred parcels of water, stirred: those that wait, those that went once, those that went again. */
export function Parcels({ model }: { readonly model: MixingModel }): JSX.Element {
  const { parcels } = model;
  const often = useComputed(() => marks(0, parcels.value.often, dot));
  const once = useComputed(() => marks(parcels.value.often, 100 - parcels.value.never, ring));
  const never = useComputed(() => marks(100 - parcels.value.never, 100, square));
  const words = useComputed(() => parcelText(model));
  return (
    <div class="mixing-parcels" data-quantity="flow">
      <svg class="mixing-water" viewBox="0 0 100 100" role="img" aria-label={words}>
        <path class="mixing-often" d={often} />
        <path class="mixing-once" d={once} />
        <path class="mixing-never" d={never} />
      </svg>
      <dl class="mixing-key">
        <Entry mark={square(0, 0)} of="never" label="never passed" count={parcels} />
        <Entry mark={ring(0, 0)} of="once" label="passed once" count={parcels} />
        <Entry mark={dot(0, 0)} of="often" label="passed again" count={parcels} />
      </dl>
    </div>
  );
}

interface EntryProps {
  readonly mark: string;
  readonly of: 'never' | 'once' | 'often';
  readonly label: string;
  readonly count: ReadonlySignal<Readonly<Record<'never' | 'once' | 'often', number>>>;
}

function Entry({ mark, of, label, count }: EntryProps): JSX.Element {
  const number = useComputed(() => count.value[of]);
  return (
    <div>
      <dt>
        <svg viewBox="0 0 10 10" aria-hidden="true" focusable="false">
          <path class={`mixing-${of}`} d={mark} />
        </svg>
        {label}
      </dt>
      <dd>{number}</dd>
    </div>
  );
}
