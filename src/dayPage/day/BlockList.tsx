import type { JSX } from 'preact';
import type { PadBlock } from '#pad/document/schema.ts';
import { problemSentence } from '#pad/messages/problems.ts';
import { blockMinutes } from '#ui/charts/ring.ts';
import type { Entry } from '#ui/controls/entry.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { QuantityField, TextField, TimeField } from '#ui/controls/TextFields.tsx';
import { format } from '#units/format.ts';
import { inOrder } from './edit.ts';
import { segmentOf } from './figures.ts';
import type { DayModel } from './model.ts';
import { lengthText, rpmText, saidText, spanText } from './text.ts';

/** The blocks as fields to type in: the way for whoever does not drag. */
export function BlockList({ id, model }: { id: string; model: DayModel }): JSX.Element {
  const order = useComputed(() => inOrder(model.blocks.value).map((block) => block.id));
  return (
    <div class="day-blocks needs-script">
      <ol class="day-rows" role="list">
        {order.value.map((blockId, place) => (
          <Row
            key={blockId}
            id={`${id}-${blockId}`}
            blockId={blockId}
            place={place + 1}
            model={model}
          />
        ))}
      </ol>
      <button type="button" class="button button-quiet" onClick={() => model.add()}>
        Add block
      </button>
    </div>
  );
}

interface RowProps {
  readonly id: string;
  readonly blockId: string;
  readonly place: number;
  readonly model: DayModel;
}

function Row({ id, blockId, place, model }: RowProps): JSX.Element {
  const block = useComputed(() => model.blocks.value.find((each) => each.id === blockId));
  const speed = useComputed(() => block.value?.speed ?? undefined);
  const reason = useComputed(() => block.value?.reason ?? '');
  const entry = useComputed(() => speedEntry(model));
  const outcome = useComputed(() => outcomeOf(block.value, model));
  const wrong = useComputed(() => speedProblem(block.value, model));
  const held = useComputed(() => (model.heldId.value === blockId ? 'day-row is-held' : 'day-row'));
  const name = useComputed(() => (block.value === undefined ? '' : spanText(block.value)));
  return (
    <li class={held} onFocusIn={() => (model.heldId.value = blockId)}>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring its own box and legend */}
      <div class="day-fields" role="group" aria-label={`Block ${place}`}>
        <Edge id={`${id}-start`} blockId={blockId} edge="start" model={model} />
        <Edge id={`${id}-end`} blockId={blockId} edge="end" model={model} />
        <QuantityField
          id={`${id}-speed`}
          label="Speed"
          value={speed}
          entry={entry}
          unit="rpm"
          whenEmpty="Give a speed in rpm, or remove the block."
          problem={wrong}
          apply={(next) => next !== undefined && model.describe(blockId, { speed: next })}
        />
        <TextField
          id={`${id}-reason`}
          label="Reason"
          value={reason}
          max={200}
          apply={(next) => model.describe(blockId, { reason: next ?? '' })}
        />
        <p class="day-outcome">{outcome}</p>
        <button
          type="button"
          class="button button-quiet day-remove"
          aria-label={`Remove block ${place}, ${name.value}`}
          onClick={() => model.remove(blockId)}
        >
          Remove
        </button>
      </div>
    </li>
  );
}

interface EdgeProps {
  readonly id: string;
  readonly blockId: string;
  readonly edge: 'start' | 'end';
  readonly model: DayModel;
}

/** One end of a block. What was typed and cannot be stays in the field, with the reason, until it is left. */
function Edge({ id, blockId, edge, model }: EdgeProps): JSX.Element {
  const refused = useComputed(() => {
    const now = model.refused.value;
    return now?.id === blockId && now.edge === edge ? now : null;
  });
  const value = useComputed(
    () =>
      refused.value?.minute ?? model.blocks.value.find((each) => each.id === blockId)?.[edge] ?? 0,
  );
  const problem = useComputed(() =>
    refused.value === null ? undefined : saidText(refused.value.said),
  );
  return (
    <div onFocusOut={model.leaveField}>
      <TimeField
        id={id}
        label={edge === 'start' ? 'Start' : 'End'}
        value={value.value}
        problem={problem}
        apply={(minute) => model.typeEdge(blockId, edge, minute)}
      />
    </div>
  );
}

/** A speed within the pump's range and on its steps. */
function speedEntry(model: DayModel): Entry<number> {
  const speeds = model.speeds.value;
  const range = speeds === null ? { least: 0 } : { least: speeds.least, greatest: speeds.top };
  const plain = quantityEntry('speed', model.units.value, range);
  const step = speeds?.step ?? 0;
  return {
    format: plain.format,
    parse: (text) => {
      const parsed = plain.parse(text);
      if (!parsed.ok || step <= 0 || isOnStep(parsed.value, step)) return parsed;
      const below = Math.floor(parsed.value / step) * step;
      return {
        ok: false,
        problem: `This pump is set in steps of ${step} rpm: ${below} or ${below + step}.`,
      };
    },
  };
}

const isOnStep = (value: number, step: number) =>
  Math.abs(value / step - Math.round(value / step)) < 1e-6;

/** What the assembled pad finds wrong with the speed of a block. */
function speedProblem(block: PadBlock | undefined, model: DayModel): string | undefined {
  const place = model.pad.value.day.blocks.findIndex(({ id }) => id === block?.id);
  const found = model.blockProblems.value.find(
    ({ path }) => path[2] === place && path[3] === 'speed',
  );
  return found === undefined ? undefined : problemSentence(found, model.units.value);
}

/** What the block does: its length, flow and watts. */
function outcomeOf(block: PadBlock | undefined, model: DayModel): string {
  if (block === undefined) return '';
  const length = lengthText(blockMinutes(block.start, block.end));
  const at = model.here.value === null ? undefined : segmentOf(model.here.value.report, block.id);
  if (at === undefined) return length;
  if (at.kind === 'off') return `${length}, off`;
  const units = model.units.value;
  const watts = format('power', at.power, units);
  if (at.kind === 'noFlow') {
    return `${length}, ${watts}, but no flow: ${rpmText(block.speed, units)} is too slow to lift the water`;
  }
  return `${length}, ${format('flow', at.flow, units)}, ${watts}`;
}
