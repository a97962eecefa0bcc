import { stepsPerWeek } from '#explorables/example/filterBench.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import type { Reading } from '#ui/figure/Readings.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { type FilterWeeksModel, hoursPerDay, usualRise } from './model.ts';

const weeksText = (weeks: number) => `${weeks} week${weeks === 1 ? '' : 's'}`;

const percentLess = (now: number, before: number) =>
  `${Math.round(100 * (1 - now / before))}\u00a0% less`;

/** What became of the flow while the speed was left alone. */
function drift(model: FilterWeeksModel): string {
  const units = model.units.value;
  const { left, weeks } = model.here.value;
  const clean = model.clean.value.left;
  const flow = (value: number) => format('flow', value, units);
  const speed = format('speed', left.speed, units);
  if (weeks === 0) {
    return `Just cleaned, at ${speed}: ${flow(clean.flow)}, and the filter gauge shows ${format('pressure', clean.pressure, units)}. Write both down.`;
  }
  const rise = format('pressure', left.pressure - clean.pressure, units);
  return `After ${weeksText(weeks)} at ${speed} the flow is ${flow(left.flow)} instead of ${flow(clean.flow)}, ${percentLess(left.flow, clean.flow)}. The filter gauge has risen by ${rise}, to ${format('pressure', left.pressure, units)}.`;
}

/** What it takes to hold the flow. */
function holding(model: FilterWeeksModel): string {
  const units = model.units.value;
  const { held, weeks } = model.here.value;
  const clean = model.clean.value.left;
  if (weeks === 0) return '';
  if (held === undefined) {
    return ` Even ${format('speed', model.bench.value.speeds.top, units)}, the top speed, no longer gives ${format('flow', clean.flow, units)}: clean the filter.`;
  }
  return ` To hold ${format('flow', clean.flow, units)} the pump must turn ${format('speed', held.speed, units)} and draw ${format('power', held.power, units)} instead of ${format('power', clean.power, units)}.`;
}

/** Whether the usual sign ever shows at this speed. */
function sign(model: FilterWeeksModel): string {
  const units = model.units.value;
  const clean = model.clean.value.left.pressure;
  const rise = format('pressure', usualRise, units, { digits: 2 });
  const first = model.moments.value.find(({ left }) => left.pressure - clean >= usualRise);
  if (first === undefined) {
    const most = format('pressure', model.due.value.left.pressure - clean, units);
    return ` The usual sign, ${rise} above clean, never comes at this speed: a full filter raises the gauge by ${most}.`;
  }
  return ` The usual sign, ${rise} above clean, comes after ${weeksText(first.weeks)} at this speed.`;
}

/** The finding. */
export function sentence(model: FilterWeeksModel): string {
  if (model.clean.value.left.flow === 0) {
    return `At ${format('speed', model.speed.value.value, model.units.value)} no water moves, so the filter does not matter. Turn the pump up.`;
  }
  return `${drift(model)}${holding(model)}${sign(model)}`;
}

/** What holding the flow costs. */
export function readings(model: FilterWeeksModel): readonly Reading[] {
  const units = model.units.value;
  const { left, held } = model.here.value;
  const clean = model.clean.value.left;
  const energy = model.extraEnergy.value;
  const cost = model.extraCost.value;
  const currency = model.bench.value.price?.currency ?? '';
  const none = 'out of reach';
  return [
    {
      id: 'flow',
      label: 'Flow, speed left alone',
      of: 'flow',
      value: format('flow', left.flow, units),
      note: `clean: ${format('flow', clean.flow, units)}`,
    },
    {
      id: 'gauge',
      label: 'Filter gauge, speed left alone',
      of: 'head',
      value: format('pressure', left.pressure, units),
      note: `clean: ${format('pressure', clean.pressure, units)}`,
    },
    {
      id: 'speed',
      label: 'Speed that holds the flow',
      value: held === undefined ? none : format('speed', held.speed, units),
      note:
        held === undefined
          ? 'clean the filter'
          : `${format('power', held.power, units)}, gauge ${format('pressure', held.pressure, units)}`,
    },
    {
      id: 'extra',
      label: 'Holding it has cost so far',
      of: 'money',
      value:
        energy === undefined
          ? none
          : cost === undefined
            ? format('energy', energy, units)
            : formatMoney(cost, currency),
      note:
        energy === undefined
          ? ''
          : `${format('energy', energy, units)} more than a clean filter, at ${hoursPerDay}\u00a0h a day`,
    },
  ];
}

/** Spoken with the sliders. */
export function spokenWeeks(model: FilterWeeksModel): string {
  const units = model.units.value;
  const { weeks, left } = model.here.value;
  return `${weeksText(weeks)}, ${speak('flow', left.flow, units)}, ${speak('pressure', left.pressure, units)}`;
}

export function spokenSpeed(model: FilterWeeksModel): string {
  const units = model.units.value;
  const { left } = model.here.value;
  return `${speak('speed', left.speed, units)}, ${speak('flow', left.flow, units)}`;
}

export function table(model: FilterWeeksModel): TableData {
  const units = model.units.value;
  const bare = { withUnit: false };
  return {
    caption: 'Week by week, the speed left alone and the speed that holds the flow',
    columns: [
      'Weeks since cleaning',
      `Flow, ${symbolFor(units, 'flow')}`,
      `Filter gauge, ${symbolFor(units, 'pressure')}`,
      `Power, ${symbolFor(units, 'power')}`,
      `Speed that holds the flow, ${symbolFor(units, 'speed')}`,
      `Its power, ${symbolFor(units, 'power')}`,
      `Its gauge, ${symbolFor(units, 'pressure')}`,
    ],
    rows: model.moments.value
      .filter((_, at) => at % stepsPerWeek === 0)
      .map(({ weeks, left, held }) => [
        String(weeks),
        format('flow', left.flow, units, bare),
        format('pressure', left.pressure, units, bare),
        format('power', left.power, units, bare),
        ...(held === undefined
          ? ['out of reach', '', '']
          : [
              format('speed', held.speed, units, bare),
              format('power', held.power, units, bare),
              format('pressure', held.pressure, units, bare),
            ]),
      ]),
  };
}
