import type { TableData } from '#ui/charts/Table.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import { type GaugeHeadModel, type GaugeName, headsOf, measured } from './model.ts';

/** A head with its unit; one that is next to nothing is 0. */
export function headText(model: GaugeHeadModel, head: number): string {
  return format('head', Math.abs(head) < 1e-9 ? 0 : head, model.units.value);
}

/** What a gauge shows, in the reader's unit. */
export function gaugeText(model: GaugeHeadModel, name: GaugeName): string {
  return format(measured[name], model.dials[name].value.value, model.units.value);
}

/** The finding: the sum, and what it says of the flow. */
export function sentence(model: GaugeHeadModel): string {
  const { vacuum, height, pressure, total } = model.heads.value;
  const sum =
    `The pump adds ${headText(model, total)} of head: ${headText(model, pressure)} for the filter gauge at ${gaugeText(model, 'filterPressure')}, ` +
    `${headText(model, vacuum)} for the suction gauge at ${gaugeText(model, 'suctionVacuum')} of vacuum, ` +
    `and ${headText(model, height)} for the height between the two.`;
  return `${sum} ${flowSentence(model)}`;
}

function flowSentence(model: GaugeHeadModel): string {
  const state = model.picked.value;
  if (state === undefined) return 'The gauges alone do not say how much water moves.';
  return state.flow === null
    ? 'No flow was read with it, and the gauges alone do not say it.'
    : `The flow is then ${format('flow', state.flow, model.units.value)}.`;
}

/** The flow of the state that stands there, or that nobody knows it. */
export function flowText(model: GaugeHeadModel): string {
  const flow = model.picked.value?.flow ?? null;
  return flow === null ? 'not known' : format('flow', flow, model.units.value);
}

/** How far the trade's rounded factors are off. */
export function roundedNote(model: GaugeHeadModel): string {
  const { total, rounded } = model.heads.value;
  if (!(total > 0)) return '';
  const share = ((rounded - total) / total) * 100;
  const near = Math.abs(share) < 0.05;
  return near ? 'the same' : `${Math.abs(share).toFixed(1)}\u00a0% ${share < 0 ? 'less' : 'more'}`;
}

/** Spoken with a slider. */
export function spoken(model: GaugeHeadModel, name: GaugeName): string {
  const units = model.units.value;
  const own = speak(measured[name], model.dials[name].value.value, units);
  return `${own}, in all ${speak('head', model.heads.value.total, units)} of head`;
}

/** Every state side by side: pressure may rise where flow falls. */
export function table(model: GaugeHeadModel): TableData {
  const units = model.units.value;
  const { states, density } = model.scene.value;
  const bare = { withUnit: false };
  return {
    caption: 'What the gauges show in each state, and the head they add up to',
    columns: [
      'State',
      `Filter gauge, ${symbolFor(units, 'pressure')}`,
      `Suction gauge, ${symbolFor(units, 'vacuum')}`,
      `Height between, ${symbolFor(units, 'length')}`,
      `Total head, ${symbolFor(units, 'head')}`,
      `Flow, ${symbolFor(units, 'flow')}`,
    ],
    rows: states.map((state) => [
      state.label,
      format('pressure', state.filterPressure, units, bare),
      format('vacuum', state.suctionVacuum, units, bare),
      format('length', state.gaugeHeight, units, bare),
      format('head', headsOf(state, density).total, units, bare),
      state.flow === null ? '–' : format('flow', state.flow, units, bare),
    ]),
  };
}
