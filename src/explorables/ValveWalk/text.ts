import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { type Walk, walkAt } from '#explorables/example/rig.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import type { ValveWalkModel } from './model.ts';

/** Head too small to be worth a word [m]. */
const leastHead = 0.05;

const percent = (share: number) => `${Number((share * 100).toFixed(1))}\u00a0%`;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** How the valve and the filter stand. */
function setting(model: ValveWalkModel): string {
  const open = model.open.value.value;
  const loading = model.loading.value.value;
  const valve = open === 1 ? 'the valve wide open' : `the valve ${percent(open)} open`;
  if (model.rig.value.filter === undefined) return `With ${valve}`;
  if (loading === 0) return `With ${valve} and a clean filter`;
  if (loading === 1) return `With ${valve} and a filter due for cleaning`;
  return `With ${valve} and a filter ${percent(loading)} of the way to dirty`;
}

/** Where the head goes that the bare pipes would not take. */
function spent(model: ValveWalkModel): string {
  const { valveHead, dirtHead } = model.here.value;
  const units = model.units.value;
  const parts = [
    ...(valveHead > leastHead ? [`the valve takes ${format('head', valveHead, units)}`] : []),
    ...(dirtHead > leastHead ? [`the dirt takes ${format('head', dirtHead, units)}`] : []),
  ];
  return parts.length === 0 ? '' : ` Of that head ${parts.join(' and ')}, for nothing.`;
}

/** Water for a kilowatt-hour, with its unit. */
export function perKilowattHour({ mileage }: Walk, model: ValveWalkModel): string {
  return format('volume', mileage * joulesPerKilowattHour, model.units.value);
}

/** The finding, in a few sentences. */
export function sentence(model: ValveWalkModel): string {
  const units = model.units.value;
  const { here, free } = model;
  const pump = model.pump.value;
  const { flow, head, power, extrapolated, still } = here.value;
  if (still === 'shut') {
    return `The valve is shut. No water moves, ${pump.label} holds ${format('head', head, units)} of head and still draws ${format('power', power, units)}, most of which warms the water inside it. Never leave a pump like that.`;
  }
  if (still === 'lift') {
    return `No water moves: ${pump.label} makes ${format('head', head, units)} of head and does not reach the height that the water must.`;
  }
  const changed = Math.abs(here.value.mileage / free.value.mileage - 1) > 0.005;
  const compare = changed
    ? `; with valve open and filter clean it moves ${perKilowattHour(free.value, model)}`
    : '';
  const last = pump.curve.lastFlow * model.rig.value.ratio;
  return (
    `${setting(model)}, ${pump.label} gives ${format('flow', flow, units)} at ${format('head', head, units)} and draws ${format('power', power, units)}.${spent(model)} ` +
    `A kilowatt-hour moves ${perKilowattHour(here.value, model)}${compare}.` +
    (extrapolated
      ? ` The curve ends at ${format('flow', last, units)}: this point lies past it and is a guess.`
      : '')
  );
}

/** Spoken with the slider of the valve. */
export function spokenValve(model: ValveWalkModel): string {
  const units = model.units.value;
  const open = model.open.value.value;
  const { flow, head } = model.here.value;
  const state = open === 0 ? 'shut' : `${Number((open * 100).toFixed(1))} percent open`;
  return `${state}, ${speak('flow', flow, units)}, ${speak('head', head, units)}`;
}

/** Spoken with the slider of the filter. */
export function spokenFilter(model: ValveWalkModel): string {
  const units = model.units.value;
  const loading = Math.round(model.loading.value.value * 100);
  return `${loading} percent of the way to dirty, ${speak('flow', model.here.value.flow, units)}`;
}

/** The figures beside the picture. */
export function readings(model: ValveWalkModel) {
  const units = model.units.value;
  const here = model.here.value;
  const moving = here.still === undefined;
  return {
    flow: format('flow', here.flow, units),
    head: format('head', here.head, units),
    power: format('power', here.power, units),
    efficiency: moving ? percent(Math.round(here.efficiency * 100) / 100) : '0\u00a0%',
    mileage: moving ? perKilowattHour(here, model) : 'none',
  };
}

const openings = [1, 0.6, 0.4, 0.3, 0.2, 0.15, 0.1, 0.05, 0] as const;

export function table(model: ValveWalkModel): TableData {
  const units = model.units.value;
  const bare = { withUnit: false };
  const loading = model.rig.value.filter === undefined ? 0 : model.loading.value.value;
  return {
    caption: `${capital(model.pump.value.label)}, as the valve closes`,
    columns: [
      'Valve open, %',
      `Flow, ${symbolFor(units, 'flow')}`,
      `Head, ${symbolFor(units, 'head')}`,
      `Wire power, ${symbolFor(units, 'power')}`,
      'Efficiency, %',
      `Water for a kWh, ${symbolFor(units, 'volume')}`,
    ],
    rows: openings.map((open) => {
      const at = walkAt(model.rig.value, model.pump.value, loading, open);
      return [
        String(Math.round(open * 100)),
        format('flow', at.flow, units, bare),
        format('head', at.head, units, bare),
        format('power', at.power, units, bare),
        String(Math.round(at.efficiency * 100)),
        format('volume', at.mileage * joulesPerKilowattHour, units, bare),
      ];
    }),
  };
}
