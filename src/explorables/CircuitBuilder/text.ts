import type { Share } from '#ui/charts/Bars.tsx';
import type { TableData } from '#ui/charts/Table.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import type { CircuitBuilderModel, PieceHead } from './model.ts';

const percent = (part: number) => `${Math.round(part * 100)}\u00a0%`;

/** A head; next to nothing is 0. */
export function headText(model: CircuitBuilderModel, head: number): string {
  return format('head', Math.abs(head) < 1e-9 ? 0 : head, model.units.value);
}

function nameOf({ piece, count }: PieceHead): string {
  return piece.most > 1 ? `${piece.label} (${count})` : piece.label;
}

/** The finding: what the circuit takes, and what takes the most of it. */
export function sentence(model: CircuitBuilderModel): string {
  const { flow, head, suction, lift } = model.here.value;
  const at = format('flow', flow, model.units.value);
  const lifted =
    lift > 0 ? ` ${headText(model, lift)} is lift, and stays however slowly the water runs.` : '';
  if (flow === 0) return `At no flow the circuit takes ${headText(model, head)}.${lifted}`;
  const most = model.heads.value.reduce<PieceHead | undefined>(
    (one, other) => (one === undefined || other.head > one.head ? other : one),
    undefined,
  );
  if (most === undefined || head <= 0)
    return `Nothing is left in the circuit: ${at} takes no head.`;
  return (
    `At ${at} the circuit takes ${headText(model, head)}, of it ${headText(model, suction)} before the pump.${lifted} ` +
    `The most goes into “${nameOf(most)}”: ${headText(model, most.head)}, ${percent(most.head / head)}. ` +
    `${comparison(model)}Twice the flow would take ${Number((model.here.value.atTwice / head).toPrecision(2))} times as much.`
  );
}

function comparison(model: CircuitBuilderModel): string {
  const { head, before } = model.here.value;
  const change = head - before;
  if (model.isKept.value || Math.abs(change) < 1e-6) return '';
  return `That is ${headText(model, Math.abs(change))} ${change < 0 ? 'less' : 'more'} than in the circuit you compare with. `;
}

export function spoken(model: CircuitBuilderModel): string {
  const units = model.units.value;
  const { flow, head } = model.here.value;
  return `${speak('flow', flow, units)}, ${speak('head', head, units)} of head`;
}

export function spokenLift(model: CircuitBuilderModel): string {
  const units = model.units.value;
  const { lift, head } = model.here.value;
  return `${speak('length', lift, units)} of lift, ${speak('head', head, units)} of head in all`;
}

/** Where the head goes, for the bar. */
export function shares(model: CircuitBuilderModel): readonly Share[] {
  const pieces = model.heads.value.map((one) => ({
    id: one.piece.id,
    label: nameOf(one),
    amount: one.head,
    shown: headText(model, one.head),
  }));
  const { lift } = model.here.value;
  if (lift === 0) return pieces;
  return [...pieces, { id: '-lift', label: 'Lift', amount: lift, shown: headText(model, lift) }];
}

const every = 6;

export function table(model: CircuitBuilderModel): TableData {
  const units = model.units.value;
  const bare = { withUnit: false };
  const kept = model.keptLine.value;
  return {
    caption: 'Head that the circuit takes, against flow',
    columns: [
      `Flow, ${symbolFor(units, 'flow')}`,
      `Head, ${symbolFor(units, 'head')}`,
      `To compare with, ${symbolFor(units, 'head')}`,
    ],
    rows: model.line.value
      .map(({ flow, head }, index) => [
        format('flow', flow, units, bare),
        format('head', head, units, bare),
        format('head', kept[index]?.head ?? 0, units, bare),
      ])
      .filter((_, index) => index % every === 0),
  };
}
