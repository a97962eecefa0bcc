import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import type { DayModel } from '#dayPage/day/model.ts';
import { shareFrost } from '#dayPage/day/openFrost.ts';
import { ScrollBox } from '#dayPage/day/ScrollBox.tsx';
import { problemSentence } from '#pad/messages/problems.ts';
import { Table, type TableData } from '#ui/charts/Table.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { useSettled } from '#ui/controls/settle.ts';
import { Announce } from '#ui/figure/Announce.tsx';
import { MonthChoices, Months } from './Months.tsx';
import { createYear, type YearModel } from './model.ts';
import { Said } from './Said.tsx';
import { seasonLines } from './seasonText.ts';
import { besideTable, monthTable } from './tables.ts';
import { findingText } from './text.ts';

/** How long the pad keeps still before the year is worked out anew [ms]. */
const rest = 300;

/** The whole year: twelve months beside another, and what it all comes to. */
export function YearSheet({
  id,
  day,
}: {
  readonly id: string;
  readonly day: DayModel;
}): JSX.Element {
  const pad = useSettled(day.pad, rest);
  const model = useMemo(() => createYear(day, pad), [day, pad]);
  useEffect(() => shareFrost(day.store, model.frost.frostOn), [day, model]);
  const finding = useComputed(() => findingText(model));
  const table = useComputed(() => monthTable(model));
  const beside = useComputed(() => besideTable(model));
  return (
    <div class="year-sheet">
      <PaperHead model={model} />
      <p
        class={model.crossed.value[0]?.limit.hard ? 'cheapest-finding is-stop' : 'cheapest-finding'}
      >
        {finding}
      </p>
      {model.held.value.map((found) => (
        <p key={found.path.join()}>{problemSentence(found, model.units.value)}</p>
      ))}
      {model.runs.value && (
        <>
          <MonthChoices id={id} model={model} />
          <Months model={model} />
          <Beside data={beside.value} />
          <Table data={table} summary="The months as a table" />
          <p class="needs-script">
            <button type="button" class="button" onClick={printYear}>
              Print the year
            </button>
          </p>
        </>
      )}
      <Said id={id} model={model} />
      <Announce sentence={finding} />
    </div>
  );
}

/** On paper alone: whose year it is, and which plan holds when. */
function PaperHead({ model }: { model: YearModel }): JSX.Element {
  const { day, number } = model;
  return (
    <header class="year-paper">
      <h2>The year {number}</h2>
      <p>
        {day.name.value || 'A pad without a name'}.
        {day.invented.value && <b> Example data, invented.</b>}
      </p>
      <ul>
        {seasonLines(model).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </header>
  );
}

/** All years in one short table, in sight. */
function Beside({ data }: { data: TableData }): JSX.Element | null {
  if (data.rows.length === 0) return null;
  return (
    <ScrollBox label={data.caption}>
      <table class="day-table year-beside">
        <caption>{data.caption}</caption>
        <thead>
          <tr>
            {data.columns.map((column, at) =>
              at === 0 ? (
                <td key={column} />
              ) : (
                <th key={column} scope="col">
                  {column}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {data.rows.map(([heading, ...cells]) => (
            <tr key={heading}>
              <th scope="row">{heading}</th>
              {cells.map((cell, at) => (
                <td key={data.columns[at + 1] ?? at}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}

/** Prints the year alone; the sheet by the pump is printed by its own button, and by the browser's. */
function printYear(): void {
  const root = document.documentElement;
  const done = () => {
    delete root.dataset['print'];
    window.removeEventListener('afterprint', done);
  };
  root.dataset['print'] = 'year';
  window.addEventListener('afterprint', done);
  window.print();
}
