import type { TableData } from '#ui/charts/Table.tsx';
import { format, speak } from '#units/format.ts';
import { minusSign } from '#units/numerals.ts';
import { type Settings, type State, type SuctionLadderModel, usualMargin } from './model.ts';

type Model = SuctionLadderModel;

/** A head as it stands in the picture. */
export function headText(model: Model, head: number): string {
  return format('head', head, model.units.value, { places: 1 });
}

/** What a step takes or adds, with its sign. */
export function changeText(model: Model, change: number): string {
  const size = headText(model, Math.abs(change));
  if (/^0\.0/.test(size)) return size;
  return change < 0 ? `${minusSign}${size}` : `+${size}`;
}

function place(model: Model): string {
  const { altitude, lift, temperature } = model.settings.value;
  const units = model.units.value;
  const where =
    altitude < 1 ? 'At sea level' : `At ${format('length', altitude, units)} above the sea`;
  const stands =
    Math.abs(lift) < 0.01
      ? 'the pump level with the water'
      : `the pump ${format('length', Math.abs(lift), units)} ${lift > 0 ? 'above' : 'below'} it`;
  return `${where}, with water of ${format('temperature', temperature, units)} and ${stands}`;
}

/** What the margin means, in a few words. */
export function stateText(state: State): string {
  return {
    safe: 'The pump has what it needs',
    narrow: 'Little to spare',
    cavitates: 'It boils in the pump',
    broken: 'It boils before the pump',
  }[state];
}

/** What the picture shows now. */
export function sentence(model: Model): string {
  const units = model.units.value;
  const { flow } = model.settings.value;
  const { air, boils, loss, available, required, margin } = model.rungs.value;
  const head = (value: number) => headText(model, value);
  const full = model.basketFull.value && model.line.value.basketId !== undefined;
  const start =
    `${place(model)}, the air pushes with ${head(air)} of head, and the water boils at ${head(boils)}. ` +
    `At ${format('flow', flow, units)} the suction line${full ? ', its basket full,' : ''} takes ${head(loss)}. `;
  const state = model.state.value;
  if (state === 'broken') {
    return `${start}Nothing is left: the water would boil before it reaches the pump. So much flow cannot come through this line, and the pump loses its prime.`;
  }
  const left = `${start}${head(available)} of NPSH is available; the pump needs ${head(required)}. `;
  if (state === 'cavitates') {
    return `${left}It lacks ${head(-margin)}: the water boils in the eye of the pump, and it cavitates.`;
  }
  const spare = `The margin is ${head(margin)}`;
  return state === 'narrow'
    ? `${left}${spare}, less than the ${head(usualMargin)} that is commonly wanted.`
    : `${left}${spare}.`;
}

/** Spoken with each control: its value, and the margin that follows. */
export function spoken(model: Model, name: keyof Settings): string {
  const units = model.units.value;
  const { altitude, temperature, lift, flow } = model.settings.value;
  const value = {
    altitude: () => speak('length', altitude, units),
    temperature: () => speak('temperature', temperature, units),
    lift: () => speak('length', lift, units),
    flow: () => speak('flow', flow, units),
  }[name]();
  const { margin } = model.rungs.value;
  const size = speak('head', Math.abs(margin), units, { places: 1 });
  return `${value}; ${margin < 0 ? `${size} short` : `margin ${size}`}`;
}

/** The ladder step by step. */
export function table(model: Model): TableData {
  const { air, height, line, eye, boils, lift, loss, required, margin } = model.rungs.value;
  const head = (value: number) => headText(model, value);
  return {
    caption: 'The ladder step by step, in head above absolute vacuum',
    columns: ['Step', 'Change', 'Head left'],
    rows: [
      ['Air on the pool', '', head(air)],
      ['Height of the pump', changeText(model, -lift), head(height)],
      ['Suction line and basket', changeText(model, -loss), head(line)],
      ['What the pump needs (NPSH required)', changeText(model, -required), head(eye)],
      ['The water boils at', '', head(boils)],
      ['Margin', '', changeText(model, margin)],
    ],
  };
}
