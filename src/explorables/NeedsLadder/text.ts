import type { LimitKind } from '#core/day/limits.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import { noValue } from '#units/numerals.ts';
import type { Ceiling, NeedsLadderModel, Step } from './model.ts';

type Model = NeedsLadderModel;

/** Short names, as they stand at the ceilings. */
export const ceilingNames: Readonly<Record<LimitKind, string>> = {
  suctionVelocity: 'suction pipe',
  dischargeVelocity: 'return pipe',
  filterRate: 'filter',
  heaterFlow: 'heater',
  suctionCover: 'covers',
  npsh: 'NPSH',
};

const limitNames: Readonly<Record<LimitKind, string>> = {
  suctionVelocity: 'the velocity in the suction pipe',
  dischargeVelocity: 'the velocity in the return pipe',
  filterRate: 'the rate of the filter',
  heaterFlow: 'the greatest flow of the heater',
  suctionCover: 'the flow marked on the suction covers',
  npsh: 'what the pump needs at its inlet',
};

function joined(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

const rpm = (model: Model, speed: number) => format('speed', speed, model.units.value);
const flowText = (model: Model, flow: number) => format('flow', flow, model.units.value);

/** The limits crossed now, each named once. */
function crossedNames(model: Model): string[] {
  return [...new Set(model.crossed.value.map(({ kind }) => limitNames[kind]))];
}

/** What the picture shows now. */
export function sentence(model: Model): string {
  const { scene, steps, stop, fastest } = model.ladder.value;
  if (!model.mayRun.value) {
    return `The covers allow no speed of this pump: even at ${rpm(model, scene.leastSpeed)} it draws more than they may pass. It must not run.`;
  }
  const { speed, flow, power } = model.here.value;
  if (flow === 0) {
    return `At ${rpm(model, speed)} no water moves: the pump does not reach the height that the water must. Nothing is served.`;
  }
  const served = steps
    .filter((step) => model.fateOf(step) === 'served')
    .map(({ need }) => need.name);
  const crossed = crossedNames(model);
  const atStop = stop !== undefined && speed >= fastest;
  return (
    `At ${rpm(model, speed)} the pump moves ${flowText(model, flow)} for ${format('power', power, model.units.value)}. ` +
    `Served: ${served.length === 0 ? 'nothing yet' : joined(served)}. ` +
    (crossed.length === 0 ? 'No limit is crossed.' : `Crossed: ${joined(crossed)}.`) +
    (stop === undefined
      ? ''
      : atStop
        ? ' This is the hard stop of the suction covers: no speed may pass it.'
        : ` The suction covers stop everything above ${rpm(model, stop)}.`)
  );
}

/** Spoken with the slider. */
export function spoken(model: Model): string {
  const units = model.units.value;
  const { steps } = model.ladder.value;
  const count = steps.filter((step) => model.fateOf(step) === 'served').length;
  return `${speak('speed', model.speed.value.value, units)}, ${speak('flow', model.here.value.flow, units)}, ${count} of ${steps.length} served`;
}

/** How one need fares at the speed that is set. */
export function fateText(model: Model, step: Step): string {
  const { need, rung } = step;
  switch (model.fateOf(step)) {
    case 'served':
      return 'served';
    case 'tooSlow':
      return 'needs more';
    case 'tooFast':
      return `takes ${flowText(model, need.greatestFlow ?? 0)} at most`;
    case 'never':
      if (rung.kind === 'served') return 'no speed is allowed';
      return rung.reason.kind === 'beyondLimit'
        ? `never: past ${limitNames[rung.reason.limit.kind]}`
        : 'never: no speed of this pump serves it';
  }
}

/** What a need asks for. */
export function needText(model: Model, { need, speed, rung }: Step): string {
  const from =
    speed === undefined ? '' : `, ${rung.kind === 'served' ? 'from' : 'at'} ${rpm(model, speed)}`;
  return `${flowText(model, need.leastFlow)}${from}`;
}

/** What one cover passes. */
export function coverText(model: Model, place: number): string {
  const load = model.covers.value[place];
  if (load === undefined) return '';
  const marked = `${flowText(model, load.marked)} marked`;
  return load.blocked ? `blocked (${marked})` : `passes ${flowText(model, load.flow)}, ${marked}`;
}

/** Needs from below, then limits. */
export function table(model: Model): TableData {
  const units = model.units.value;
  const { steps, ceilings, scene } = model.ladder.value;
  const bare = { withUnit: false };
  const speedCell = (speed: number | undefined) =>
    speed === undefined ? noValue : format('speed', speed, units, bare);
  const limitRow = ({ limit, speed }: Ceiling) => [
    `Limit: ${limitNames[limit.kind]}${limit.hard ? ' (hard stop)' : ''}`,
    format('flow', limit.greatestFlow, units, bare),
    speed === undefined ? `above ${rpm(model, scene.topSpeed)}` : speedCell(Math.floor(speed)),
    noValue,
  ];
  return {
    caption: 'Slowest speed for each need, and greatest for each limit',
    columns: [
      'Need or limit',
      `Flow, ${symbolFor(units, 'flow')}`,
      `Speed, ${symbolFor(units, 'speed')}`,
      `Wire power, ${symbolFor(units, 'power')}`,
    ],
    rows: [
      ...steps.map(({ need, rung, speed }) => [
        `${need.name}${rung.kind === 'served' ? '' : ' (out of reach)'}`,
        format('flow', need.leastFlow, units, bare),
        speedCell(speed),
        rung.kind === 'served' ? format('power', rung.power, units, bare) : noValue,
      ]),
      ...ceilings.map(limitRow),
    ],
  };
}
