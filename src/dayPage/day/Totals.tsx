import type { JSX } from 'preact';
import { useComputed } from '#ui/controls/failure.ts';
import { Readings } from '#ui/figure/Readings.tsx';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import type { WorkedDay } from './figures.ts';
import type { DayModel } from './model.ts';
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
