import type { JSX } from 'preact';
import type { Band } from '#core/numerics/band.ts';
import type { DayAnswer } from '#core/uncertainty/dayBands.ts';
import { fraction } from '#ui/charts/scale.ts';
import type { SurenessModel } from './model.ts';
import { markOf, percent } from './Pads.tsx';
import { axisOf } from './plot.ts';
import { nextName, plusMinus, rangeText } from './text.ts';

/** What one more reading would leave of the band, instrument by instrument. */
export function Narrowing({ model }: { model: SurenessModel }): JSX.Element | null {
  const focus = model.focus.value;
  const next = model.next.value;
  if (focus === null || next.length === 0) return null;
  const axis = axisOf(focus, model.units.value);
  const bars = [
    { name: 'As it is', band: focus.band, isNow: true },
    ...next.map((each) => ({ name: nextName(each, model), band: each.band, isNow: false })),
  ];
  const texts = bars.map(
    ({ name, band }) => `${name}: ${rangeText(model, focus.of, band)}, ${plusMinus(band)}`,
  );
  return (
    <section class="sure-next" data-quantity={markOf[focus.of]}>
      <h3>{headings[focus.of]}</h3>
      <div class="sure-bars" role="img" aria-label={texts.join('. ')}>
        {bars.map(({ name, band, isNow }) => (
          <div key={name} class={isNow ? 'sure-row is-now' : 'sure-row'}>
            <p class="sure-row-name">{name}</p>
            <p class="sure-row-band">
              {rangeText(model, focus.of, band)} <span>{plusMinus(band)}</span>
            </p>
            <div class="sure-track">
              <span class="sure-row-bar" style={placeOf(band)} />
            </div>
          </div>
        ))}
      </div>
      <p class="sure-note">
        Of the speeds of your day, each instrument at the one where it tells most. The promise is
        for a reading that comes out as expected, by straight lines.
      </p>
    </section>
  );

  function placeOf({ low, high }: Band): string {
    const [from, to] = [fraction(axis, low), fraction(axis, high)];
    return `inset-inline-start:${percent(from)};inline-size:${percent(to - from)}`;
  }
}

const headings: Readonly<Record<DayAnswer, string>> = {
  water: 'What would narrow the water',
  energy: 'What would narrow the energy',
  cost: 'What would narrow the money',
};
