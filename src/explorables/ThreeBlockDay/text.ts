import type { TableData } from '#ui/charts/Table.tsx';
import type { Reading } from '#ui/figure/Readings.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import type { BenchNeed, WorkedBlock } from './bench.ts';
import { type BlockName, blockNames, type ThreeBlockModel } from './model.ts';

export const blockLabels: Readonly<Record<BlockName, string>> = {
  high: 'High',
  middle: 'Middle',
  low: 'Low',
};

/** "3 h", "2.5 h". */
export const hoursText = (minutes: number) => `${Number((minutes / 60).toFixed(2))}\u00a0h`;

const percent = (part: number, whole: number) =>
  `${whole > 0 ? Math.round((100 * part) / whole) : 0}\u00a0%`;

const money = (model: ThreeBlockModel, amount: number) =>
  formatMoney(amount, model.setting.value.currency);

function speedText({ speed, flow }: WorkedBlock, model: ThreeBlockModel): string {
  if (speed === 0) return 'off';
  const turns = format('speed', speed, model.units.value);
  return flow > 0 ? turns : `${turns}, which moves no water`;
}

/** What the day does and costs. */
function totals(model: ThreeBlockModel): string {
  const { report, cost } = model.here.value;
  const units = model.units.value;
  return `The day moves ${format('volume', report.volumeMoved, units)}, ${report.turnovers.toFixed(1)} turnovers, with ${format('energy', report.energy, units)} for ${money(model, cost)}.`;
}

/** Which block the water comes from, and which the bill. */
function shares(model: ThreeBlockModel): string {
  const { parts, report, cost } = model.here.value;
  const each = parts
    .filter(({ speed }) => speed > 0)
    .map(
      (part) =>
        `${part.block.id} (${hoursText(part.minutes)} at ${speedText(part, model)}) ${percent(part.water, report.volumeMoved)} of the water and ${percent(part.cost, cost)} of the price`,
    );
  const { standby } = model.here.value;
  if (standby.energy > 0) each.push(`the stopped pump ${percent(standby.cost, cost)} of the price`);
  return `Of that, ${each.join('; ')}.`;
}

/** "met", or how much is missing. */
export function needText(served: { shortMinutes: number; met: boolean }): string {
  return served.met ? 'met' : `${hoursText(served.shortMinutes)} short`;
}

function needs(model: ThreeBlockModel): string {
  const all = model.here.value.report.needs;
  if (all.length === 0) return '';
  const short = all.filter(({ met }) => !met);
  if (short.length === 0) return all.length === 1 ? ' The need is met.' : ' Every need is met.';
  const list = short.map((served) => `${served.need.name} is ${needText(served)}`);
  return ` Not every need is met: ${list.join(', ')}.`;
}

/** What must not be, named by block; the day sheet names the limit. */
function crossings(model: ThreeBlockModel): string {
  const { crossings: crossed, quietCrossings } = model.here.value.report;
  const hard = crossed.some(({ limit }) => limit.hard);
  const says = [
    ...(hard ? ['Stop: the flow passes what is marked on a suction cover.'] : []),
    ...(crossed.some(({ limit }) => !limit.hard) ? ['The flow passes a limit of your pad.'] : []),
    ...(quietCrossings.length > 0 ? ['It is too fast for your quiet hours.'] : []),
  ];
  return says.map((each) => ` ${each}`).join('');
}

/** The finding. */
export function sentence(model: ThreeBlockModel): string {
  return `${totals(model)} ${shares(model)}${needs(model)}${crossings(model)}`;
}

/** The whole day in four figures. */
export function readings(model: ThreeBlockModel): readonly Reading[] {
  const { report, cost, dearCost } = model.here.value;
  const units = model.units.value;
  return [
    {
      id: 'water',
      label: 'Water',
      of: 'flow',
      value: format('volume', report.volumeMoved, units),
      note: `${report.turnovers.toFixed(2)} turnovers`,
    },
    {
      id: 'energy',
      label: 'Energy',
      of: 'power',
      value: format('energy', report.energy, units),
      note: `pump turns ${hoursText(report.runMinutes)}`,
    },
    {
      id: 'price',
      label: 'Price of the day',
      of: 'money',
      value: money(model, cost),
      note: `${money(model, dearCost)} of it in the peak hours`,
    },
  ];
}

/** One need in words: what it asks for. */
export function wishText(need: BenchNeed, model: ThreeBlockModel): string {
  const windows = need.windows.map(({ start, end }) => `${clock(start)} and ${clock(end)}`);
  const when = windows.length === 0 ? 'at any time' : `between ${windows.join(' or between ')}`;
  return `${need.name}: ${format('flow', need.leastFlow, model.units.value)} or more for ${hoursText(need.minutes)}, ${when}`;
}

/** Spoken with the slider that moves where a block begins. */
export function spokenBegin(model: ThreeBlockModel, name: BlockName): string {
  return `${blockLabels[name]} block begins at ${clock(model.begins[name].value.value)}, the day costs ${money(model, model.here.value.cost)}`;
}

/** Spoken with the slider of a block's speed. */
export function spokenSpeed(model: ThreeBlockModel, name: BlockName): string {
  const units = model.units.value;
  const part = model.here.value.parts[blockNames.indexOf(name)];
  const flow = part === undefined ? '' : `, ${speak('flow', part.flow, units)}`;
  return `${speak('speed', model.speeds[name].value.value, units)}${flow}, the day costs ${money(model, model.here.value.cost)}`;
}

export function table(model: ThreeBlockModel): TableData {
  const units = model.units.value;
  const { parts, standby, report, cost } = model.here.value;
  const bare = { withUnit: false };
  return {
    caption: 'The three blocks and what each takes',
    columns: [
      'Block',
      'From',
      'To',
      `Speed, ${symbolFor(units, 'speed')}`,
      `Flow, ${symbolFor(units, 'flow')}`,
      `Power, ${symbolFor(units, 'power')}`,
      `Water, ${symbolFor(units, 'volume')}`,
      `Energy, ${symbolFor(units, 'energy')}`,
      'Price',
    ],
    rows: [
      ...parts.map((part) => [
        blockLabels[part.block.id as BlockName],
        clock(part.block.start),
        clock(part.block.end),
        format('speed', part.speed, units, bare),
        format('flow', part.flow, units, bare),
        format('power', part.power, units, bare),
        format('volume', part.water, units, bare),
        format('energy', part.energy, units, bare),
        money(model, part.cost),
      ]),
      ...(standby.energy > 0
        ? [
            [
              'Stopped',
              '',
              '',
              '',
              '',
              '',
              '',
              format('energy', standby.energy, units, bare),
              money(model, standby.cost),
            ],
          ]
        : []),
      [
        'Day',
        '',
        '',
        '',
        '',
        '',
        format('volume', report.volumeMoved, units, bare),
        format('energy', report.energy, units, bare),
        money(model, cost),
      ],
    ],
  };
}

/** Says whether the lengths are those of the usual day. */
export function usualText(model: ThreeBlockModel): string {
  return model.usual.value
    ? 'These lengths are the usual ones of the trade: 2 to 4 h high, 4 to 8 h middle, the rest low.'
    : 'These lengths are not the usual ones of the trade (2 to 4 h high, 4 to 8 h middle, the rest low). Yours may be better.';
}
