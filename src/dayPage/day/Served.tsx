import type { JSX } from 'preact';
import type { DayModel } from './model.ts';
import { Limits, Needs } from './Needs.tsx';
import { PriceTable } from './PriceTable.tsx';

/** What the day serves, what it crosses, and what it costs through the year. */
export function Served({ model }: { model: DayModel }): JSX.Element {
  return (
    <div class="day-halves">
      <section class="day-section">
        <h2>Needs</h2>
        <Needs model={model} />
      </section>
      <section class="day-section">
        <h2>Limits and quiet hours</h2>
        <Limits model={model} />
        <h2>Price</h2>
        <PriceTable model={model} />
      </section>
    </div>
  );
}
