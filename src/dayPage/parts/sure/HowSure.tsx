import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import type { DayAnswer } from '#core/uncertainty/dayBands.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import { Table } from '#ui/charts/Table.tsx';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { useSettled } from '#ui/controls/settle.ts';
import { Announce } from '#ui/figure/Announce.tsx';
import { createSureness, type SurenessModel } from './model.ts';
import { Narrowing } from './Narrowing.tsx';
import { Pads } from './Pads.tsx';
import { rowsFor } from './plot.ts';
import {
  answerNames,
  bandTable,
  boundsText,
  findingText,
  limitText,
  needText,
  noLimitCrossed,
  partsText,
  pictureText,
  yearText,
} from './text.ts';

/** How long the pad keeps still before the trial pads are asked anew [ms]. */
const rest = 300;

/** A need left short in a smaller share of the pads than this is no cause for worry [-]. */
const seldom = 0.005;

/** How sure the day is, and which reading would make it surer. */
export function HowSure({ id, day }: { readonly id: string; readonly day: DayModel }): JSX.Element {
  const pad = useSettled(day.pad, rest);
  const model = useMemo(() => createSureness(day, pad), [day, pad]);
  useEffect(model.follow, [model]);
  const finding = useComputed(() => findingText(model));
  const year = useComputed(() => yearText(model));
  const table = useComputed(() => bandTable(model));
  const pictured = useComputed(() => pictureText(model));
  const parts = useComputed(() => partsText(model));
  const height = useComputed(() => rowsFor(model.shown.value, model.units.value));
  const isWaiting = useComputed(() => (model.isFresh.value ? 'sure-pads' : 'sure-pads is-waiting'));
  if (model.focus.value === null) return <p class="cheapest-finding">{finding}</p>;
  return (
    <div class="sure">
      <Matters id={id} model={model} />
      <p class="cheapest-finding">{finding}</p>
      <div class={isWaiting}>
        {model.shown.value.map((shown) => (
          <Pads key={shown.of} shown={shown} model={model} height={height.value} />
        ))}
      </div>
      <p class="sure-note">
        {pictured} {parts}
      </p>
      <p class="sure-year">{year}</p>
      <Narrowing model={model} />
      <Chances model={model} />
      <Table data={table} summary="The bands as a table" />
      <p class="sure-note">{boundsText}</p>
      <Announce sentence={finding} />
    </div>
  );
}

function Matters({ id, model }: { id: string; model: SurenessModel }): JSX.Element {
  const value = useComputed(() => model.focus.value?.of ?? 'energy');
  const choices = model.shown.value.map(({ of }) => ({ id: of, label: answerNames[of] }));
  return (
    <div class="needs-script">
      <ChoiceField
        id={`${id}-matters`}
        label="What matters to you"
        choices={choices}
        value={value}
        apply={(of) => {
          model.matters.value = of as DayAnswer;
        }}
      />
    </div>
  );
}

/** Needs and limits among the trial pads. */
function Chances({ model }: { model: SurenessModel }): JSX.Element | null {
  const chances = model.chances.value;
  if (chances === null) return null;
  const crossed = chances.limits.filter(({ share }) => share > 0);
  if (chances.needs.length + chances.limits.length === 0) return null;
  return (
    <section class="sure-fares">
      <h3>Needs and limits in such pads</h3>
      <ul class="sure-chances" role="list">
        {crossed.map((chance) => (
          <li
            key={chance.of.id}
            class={chance.of.hard ? 'sure-chance is-stop' : 'sure-chance is-warn'}
          >
            {limitText(model, chance)}
          </li>
        ))}
        {noLimitCrossed(model) && chances.limits.length > 0 && (
          <li class="sure-chance">No trial pad crosses any of your limits.</li>
        )}
        {chances.needs.map((chance) => (
          <li
            key={chance.of.id}
            class={chance.share >= seldom ? 'sure-chance is-warn' : 'sure-chance'}
          >
            {needText(chance)}
          </li>
        ))}
      </ul>
    </section>
  );
}
