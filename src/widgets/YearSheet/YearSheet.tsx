import { useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { MonthBars, type MonthSeries, MonthSwatch } from '#charts/MonthBars.tsx';
import { Table } from '#charts/Table.tsx';
import type { DayModel } from '#widgets/DaySheet/model.ts';
import { Announce } from '#widgets/kit/Announce.tsx';
import { useSettled } from '#widgets/kit/settle.ts';
import { createYear, type YearModel } from './model.ts';
import { Said } from './Said.tsx';
import { findingText, monthTable, otherYearNames, shortMonths } from './text.ts';

/** How long the pad keeps still before the year is worked out anew [ms]. */
const rest = 300;

/** The whole year: twelve months beside another plan, and what it all comes to. */
export function YearSheet({
  id,
  day,
}: {
  readonly id: string;
  readonly day: DayModel;
}): JSX.Element {
  const pad = useSettled(day.pad, rest);
  const model = useMemo(() => createYear(day, pad), [day, pad]);
  const finding = useComputed(() => findingText(model));
  const table = useComputed(() => monthTable(model));
  return (
    <div class="year-sheet">
      <p class="cheapest-finding">{finding}</p>
      <Months model={model} />
      <Table data={table} summary="The months as a table" />
      <Said id={id} model={model} />
      <Announce sentence={finding} />
    </div>
  );
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function Months({ model }: { model: YearModel }): JSX.Element | null {
  const [mine, other] = [model.mine.value, model.other.value];
  if (mine === null) return null;
  const first: MonthSeries = {
    id: 'mine',
    name: 'Your year',
    amounts: mine.byMonth.map(({ cost }) => cost),
  };
  const second: MonthSeries | undefined =
    other === null
      ? undefined
      : {
          id: 'other',
          name: capital(otherYearNames[other.kind]),
          amounts: other.months.map(({ cost }) => cost),
        };
  return (
    <>
      <MonthBars
        first={first}
        second={second}
        of="money"
        title="Price of the month"
        unit={model.currency.value}
        months={shortMonths}
      />
      <ul class="month-key" data-quantity="money" role="list">
        {second !== undefined && (
          <li>
            <MonthSwatch isSolid={false} /> {second.name}
          </li>
        )}
        <li>
          <MonthSwatch isSolid /> {first.name}
        </li>
      </ul>
    </>
  );
}
