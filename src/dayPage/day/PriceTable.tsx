import type { JSX } from 'preact';
import { formatMoney } from '#units/money.ts';
import { monthNames } from '#units/monthNames.ts';
import type { DayModel } from './model.ts';
import { ScrollBox } from './ScrollBox.tsx';
import { kilowattHours } from './text.ts';

/** What the same day costs through the month, the season and the year. */
export function PriceTable({ model }: { model: DayModel }): JSX.Element | null {
  const prices = model.here.value?.prices;
  if (prices == null) return null;
  const currency = model.currency.value;
  const { month, year } = model.date.value;
  const money = (amount: number) => formatMoney(amount, currency);
  const season = prices.day.season.name || 'the season';
  const rows = [
    { id: 'day', name: 'This day', days: 1, ...prices.day },
    { id: 'month', name: `${monthNames[month - 1]} ${year}`, ...prices.month },
    { id: 'season', name: season, ...prices.season },
    { id: 'year', name: `The year ${year}`, ...prices.year },
  ];
  return (
    <ScrollBox label="Prices">
      <table class="day-table" data-quantity="money">
        <caption>The same blocks every day, priced on the real calendar</caption>
        <thead>
          <tr>
            <th scope="col">Period</th>
            <th scope="col">Days</th>
            <th scope="col">Energy</th>
            <th scope="col" class="day-desk-only">
              For the energy
            </th>
            <th scope="col" class="day-desk-only">
              Fixed charge
            </th>
            <th scope="col">In all</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <th scope="row">{row.name}</th>
              <td>{row.days}</td>
              <td>{kilowattHours(row.energy, model.units.value)}</td>
              <td class="day-desk-only">{money(row.energyCost)}</td>
              <td class="day-desk-only">{money(row.dailyCharge)}</td>
              <td class="day-total">{money(row.cost)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
