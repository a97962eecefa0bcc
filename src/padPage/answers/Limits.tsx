import type { JSX } from 'preact';
import { useComputed } from '#ui/controls/failure.ts';
import type { LimitRow } from './figures.ts';
import type { AnswersModel } from './model.ts';
import { limitText, limitTitle } from './text.ts';

/** Every limit as a flow and as a speed, hard stops first. */
export function Limits({ model }: { readonly model: AnswersModel }): JSX.Element {
  const rows = model.limits.value;
  if (rows.length === 0) {
    return (
      <p class="answers-lack">
        No limits are given yet. Read the flow marked on each suction cover first: it is a hard
        stop.
      </p>
    );
  }
  return (
    <ul class="answers-limits" role="list">
      {rows.map((row) => (
        <LimitLine key={row.limit.id} model={model} row={row} />
      ))}
    </ul>
  );
}

interface LineProps {
  readonly model: AnswersModel;
  readonly row: LimitRow;
}

function LimitLine({ model, row }: LineProps): JSX.Element | null {
  const { limit } = row;
  const isCrossed = useComputed(
    () => model.here.value?.crossed.some(({ id }) => id === limit.id) ?? false,
  );
  const state = useComputed(() => {
    if (isCrossed.value)
      return limit.hard ? 'Stop: crossed at this speed' : 'Crossed at this speed';
    return limit.hard ? 'Hard stop; kept at this speed' : 'Kept at this speed';
  });
  const className = useComputed(
    () =>
      `answers-limit ${limit.hard ? 'is-hard' : ''} ${isCrossed.value ? 'is-crossed' : 'is-kept'}`,
  );
  const scene = model.scene.value;
  if (scene === null) return null;
  return (
    <li class={className}>
      <strong class="answers-limit-title">{limitTitle(limit, scene.pad)}</strong>
      <span class="answers-limit-state">{state}</span>
      <span class="answers-limit-text">{limitText(row, scene, model.units.value)}</span>
    </li>
  );
}
