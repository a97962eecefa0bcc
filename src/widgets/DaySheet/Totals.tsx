import { useComputed } from '@preact/signals';
import type { JSX } from 'preact';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { monthNames } from '#units/monthNames.ts';
import { Readings } from '#widgets/kit/Readings.tsx';
import type { WorkedDay } from './figures.ts';
import type { DayModel } from './model.ts';
import { ScrollBox } from './ScrollBox.tsx';
import { kilowattHours, lengthText, percentText, turnoversText } from './text.ts';

const missing = '–';

/** The five figures of the day that follow the hand. */
export function Totals({ model }: { model: DayModel }): JSX.Element {
  const units = model.units;
  const say = (words: (day: WorkedDay) => string) =>
    useComputed(() => (model.here.value === null ? missing : words(model.here.value)));
  const currency = model.currency;
  const water = say(({ report }) => format('volume', report.volumeMoved, units.value));
  const turnovers = say((day) => (day.turnovers === null ? missing : turnoversText(day.turnovers)));
  const target = useComputed(() => {
    const wanted = model.pad.value.turnoverTarget;
    return wanted === null ? 'times the whole pool' : `you want ${turnoversText(wanted)}`;
  });
  const filtered = say((day) => (day.filtered === null ? missing : percentText(day.filtered)));
  const energy = say(({ report }) => kilowattHours(report.energy, units.value));
  const runs = say(({ report }) => `runs ${lengthText(report.runMinutes)}`);
  const price = say(({ prices }) =>
    prices === null ? missing : formatMoney(prices.day.cost, currency.value),
  );
  const charge = say(({ prices }) =>
    prices === null || prices.day.dailyCharge === 0
      ? ''
      : `with ${formatMoney(prices.day.dailyCharge, currency.value)} fixed charge`,
  );
  return (
    <Readings
      items={[
        { id: 'water', label: 'Water moved', value: water, of: 'flow' },
        { id: 'turnovers', label: 'Turnovers', value: turnovers, note: target, of: 'flow' },
        {
          id: 'filtered',
          label: 'Water filtered',
          value: filtered,
          note: 'in a well mixed pool',
          of: 'flow',
        },
        { id: 'energy', label: 'Energy', value: energy, note: runs, of: 'power' },
        { id: 'price', label: 'Price of the day', value: price, note: charge, of: 'money' },
      ]}
    />
  );
}

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
