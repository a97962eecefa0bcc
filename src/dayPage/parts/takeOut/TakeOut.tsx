import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import type { DayModel } from '#dayPage/day/model.ts';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { createTakeOut, type OutFile } from './model.ts';
import { blockWords, lacks } from './text.ts';

/** Hands a text to the browser as a file. */
function save({ name, type, text }: OutFile): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}

/** Day and year as tables, the day as a calendar. */
export function TakeOut({ id, day }: { readonly id: string; readonly day: DayModel }): JSX.Element {
  const model = useMemo(() => createTakeOut(day), [day]);
  const by = useSignal<'day' | 'month'>('month');
  const said = useSignal('');
  const hand = (file: OutFile | null, lack: string) => {
    if (file !== null) save(file);
    said.value = file === null ? lack : `Saved as ${file.name}.`;
  };
  return (
    <div class="take-out needs-script">
      <div class="take-out-kinds">
        <section class="take-out-kind" aria-labelledby={`${id}-day-title`}>
          <h3 id={`${id}-day-title`}>The day as a table</h3>
          <p>
            One row for each stretch: times, speed, flow, power, water, energy, price and reason, in
            your units. Any spreadsheet opens it (CSV).
          </p>
          <button type="button" class="button" onClick={() => hand(model.dayFile(), lacks.day)}>
            Save the day as a table
          </button>
        </section>
        <section class="take-out-kind" aria-labelledby={`${id}-calendar-title`}>
          <h3 id={`${id}-calendar-title`}>The day as a calendar</h3>
          <p>
            One entry a block, every day, at the hours of your own clock; it ends where the next
            plan of your year begins. It only reminds you: it sets nothing at the pump (iCalendar).
          </p>
          <button
            type="button"
            class="button"
            onClick={() => hand(model.calendarFile(blockWords, Date.now()), lacks.calendar)}
          >
            Save the day as a calendar
          </button>
        </section>
        <section class="take-out-kind" aria-labelledby={`${id}-year-title`}>
          <h3 id={`${id}-year-title`}>The year as a table</h3>
          <p>
            Water temperature, filter, frost, water moved, energy, price, and where a need stays
            short or a limit is crossed (CSV).
          </p>
          <ChoiceField
            id={`${id}-by`}
            label="One row for each"
            choices={[
              { id: 'month', label: 'Month' },
              { id: 'day', label: 'Day' },
            ]}
            value={by}
            apply={(choice) => {
              by.value = choice === 'day' ? 'day' : 'month';
            }}
          />
          <button
            type="button"
            class="button"
            onClick={() => hand(model.yearFile(by.peek()), lacks.year)}
          >
            Save the year as a table
          </button>
        </section>
      </div>
      <p class="field-help">
        The pad itself, with everything you entered, is saved and opened on{' '}
        <a href="/pad/">your pad</a>.
      </p>
      <p role="status" class="take-out-said">
        {said}
      </p>
    </div>
  );
}
