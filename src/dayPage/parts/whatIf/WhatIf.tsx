import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import type { DayModel } from '#dayPage/day/model.ts';
import { Frame } from '#ui/charts/Frame.tsx';
import type { Spot } from '#ui/charts/labels.ts';
import { Band, Curve, CurveLabel, Marker } from '#ui/charts/marks.tsx';
import { fraction, valueAt } from '#ui/charts/scale.ts';
import { Table } from '#ui/charts/Table.tsx';
import { SelectField } from '#ui/controls/ChoiceFields.tsx';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { useSettled } from '#ui/controls/settle.ts';
import { Announce } from '#ui/figure/Announce.tsx';
import { inputWords } from './changes.ts';
import { createWhatIf, type WhatIfModel } from './model.ts';
import { PlanStrip } from './PlanStrip.tsx';
import { type Drawn, drawnOf, type Flag, lineNames } from './picture.ts';
import { inSlices } from './slices.ts';
import {
  blocksText,
  findingText,
  gapsText,
  lineNotes,
  planText,
  spokenValue,
  tableOf,
} from './text.ts';
import { wordsOf } from './words.ts';

/** How long the pad keeps still before it is swept anew [ms]. */
const rest = 300;

/** One input of the pad over a whole range: what the cheapest day then costs, and what it is. */
export function WhatIf({ id, day }: { readonly id: string; readonly day: DayModel }): JSX.Element {
  const pad = useSettled(day.pad, rest);
  const model = useMemo(() => createWhatIf(day, pad, inSlices), [day, pad]);
  useEffect(model.follow, [model]);
  const finding = useComputed(() => findingText(model));
  const drawn = useComputed(() => drawnOf(model));
  const spoken = useComputed(() =>
    model.isElsewhere.value && !model.isBarren.value ? planText(model) : findingText(model),
  );
  return (
    <div class="what-if">
      <Inputs id={id} model={model} />
      <p class="cheapest-finding what-if-finding">{finding}</p>
      {!model.isBarren.value && (
        <>
          <Picture model={model} drawn={drawn} />
          <Value id={id} model={model} />
          <Plan model={model} />
          <Notes model={model} />
          <Numbers model={model} />
        </>
      )}
      <Announce sentence={spoken} />
    </div>
  );
}

interface PartProps {
  readonly model: WhatIfModel;
}

interface DrawnProps extends PartProps {
  readonly drawn: ReadonlySignal<Drawn | null>;
}

function Inputs({ id, model }: PartProps & { readonly id: string }): JSX.Element | null {
  const manner = { units: model.units.value, currency: model.currency.value };
  const chosen = useComputed(() => model.chosen.value?.id ?? '');
  const offers = model.offers.value;
  if (offers.length === 0) return null;
  return (
    <div class="what-if-input needs-script">
      <SelectField
        id={`${id}-input`}
        label="What to change"
        choices={offers.map((input) => ({ id: input.id, label: wordsOf(input, manner).name }))}
        value={chosen}
        apply={model.choose}
      />
    </div>
  );
}

function Picture({ model, drawn: live }: DrawnProps): JSX.Element | null {
  const drawn = live.value;
  const input = model.chosen.value;
  const words = inputWords(model);
  const spoken = useComputed(() => spokenValue(model));
  const at = useComputed<Spot>(() => handleSpot(model, live.value));
  // The same function all along: with another one a drag under way would lose its hold.
  const valueFor = useMemo(
    () => (spot: Spot) => valueAt(live.peek()?.x.axis ?? { min: 0, max: 1 }, spot.x),
    [live],
  );
  if (drawn === null || input === null || words === null) return null;
  const { x, y } = drawn;
  const away = model.isElsewhere.value;
  return (
    <Frame
      x={x}
      y={y}
      title={`Price of the cheapest day against: ${words.name}. ${findingText(model)}`}
      handlesTitle={`${words.name}, on the picture`}
      drawing={
        <>
          <Band d={drawn.gaps} of="plain" hatched />
          <path class="curve curve-faint what-if-short" data-quantity="money" d={drawn.ownShort} />
          <path class="curve curve-faint what-if-own" data-quantity="money" d={drawn.ownKept} />
          <Curve d={drawn.cheapest} of="money" />
        </>
      }
      labels={
        <>
          {drawn.flags.map((flag) => (
            <FlagMark key={`${flag.row}-${flag.label}`} flag={flag} />
          ))}
          {drawn.ownLabel && <CurveLabel at={drawn.ownLabel} of="money" text={lineNames.own} />}
          {drawn.cheapestLabel && (
            <CurveLabel at={drawn.cheapestLabel} of="money" text={drawn.cheapestName} strong />
          )}
          {drawn.dots.map((spot) => (
            <Marker key={spot.x} at={spot} of="money" />
          ))}
          {drawn.present !== null && away && <Marker at={drawn.present} of="money" />}
          {drawn.presentLabel !== undefined && away && (
            <CurveLabel at={drawn.presentLabel} of="plain" text={lineNames.present} />
          )}
        </>
      }
    >
      <DragHandle
        dial={model.dial}
        label={words.name}
        spoken={spoken}
        at={at}
        valueAt={valueFor}
        of="money"
      />
    </Frame>
  );
}

/** Where the handle stands: on the line, or on the ground where there is no day. */
function handleSpot(model: WhatIfModel, drawn: Drawn | null): Spot {
  const here = model.here.value;
  if (drawn === null || here === null) return { x: 0, y: 1 };
  const x = fraction(drawn.x.axis, here.value);
  if (here.day?.kind !== 'found') return { x, y: 0.94 };
  return { x, y: 1 - fraction(drawn.y.axis, here.day.cost) };
}

function FlagMark({ flag: { x, row, label, ends } }: { readonly flag: Flag }): JSX.Element {
  const place = `--x:${x.toFixed(4)};--row:${row};--chars:${label.length}`;
  return (
    <>
      <span class="what-if-flag" style={place} />
      <span class={ends ? 'what-if-flag-words is-end' : 'what-if-flag-words'} style={place}>
        {label}
      </span>
    </>
  );
}

/** Why there is no day in the hatched stretches, and what has to be said of the input. */
function Notes({ model }: PartProps): JSX.Element | null {
  if (!model.isDone.value) return null;
  const own = inputWords(model)?.note;
  const notes = [...lineNotes(model), ...(own === undefined ? [] : [own])];
  const gaps = gapsText(model);
  if (notes.length + gaps.length === 0) return null;
  return (
    <div class="what-if-notes">
      {gaps.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {notes.map((sentence) => (
        <p key={sentence} class="day-note">
          {sentence}
        </p>
      ))}
    </div>
  );
}

function Value({ id, model }: PartProps & { readonly id: string }): JSX.Element | null {
  const spoken = useComputed(() => spokenValue(model));
  const words = inputWords(model);
  const input = model.chosen.value;
  if (words === null || input === null) return null;
  return (
    <div class="what-if-value needs-script">
      <RangeField
        // Another input is another field.
        key={`${input.id}-${words.unit ?? ''}`}
        id={`${id}-value`}
        label={words.name}
        dial={model.dial}
        spoken={spoken}
        {...(words.entry !== undefined && { entry: words.entry })}
        {...(words.unit !== undefined && { unit: words.unit })}
      />
      {model.isElsewhere.value && (
        <button type="button" class="button button-quiet" onClick={model.back}>
          Back to what the pad has
        </button>
      )}
    </div>
  );
}

function Plan({ model }: PartProps): JSX.Element | null {
  const here = model.here.value;
  if (here === null) return null;
  return (
    <div class="what-if-plan">
      <p>{planText(model)}</p>
      <PlanStrip looked={here} model={model} />
      <p class="day-note">{blocksText(model)}</p>
    </div>
  );
}

function Numbers({ model }: PartProps): JSX.Element | null {
  const data = useComputed(() => tableOf(model));
  if (model.sweep.value === null) return null;
  return <Table data={data} summary="The range as a table" />;
}
