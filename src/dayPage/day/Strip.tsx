import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { passesLimit } from '#core/day/dayReport.ts';
import type { PadBlock } from '#pad/document/schema.ts';
import { blockMinutes, stripPieces } from '#ui/charts/ring.ts';
import { formatPrice } from '#units/money.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import { type Grip, gapsOf, inOrder, type Stretch } from './edit.ts';
import { keyHold, pointerHold } from './grip.ts';
import type { DayModel } from './model.ts';
import { blockSpoken, rpmText, spanText } from './text.ts';

const day = 1440;
const hours = [0, 3, 6, 9, 12, 15, 18, 21, 24];

/** Where a piece lies on the strip, as fractions that the style sheet lays across or down. */
const piecePlace = ({ from, to }: { from: number; to: number }) =>
  `--from:${from.toFixed(5)};--to:${to.toFixed(5)}`;

/** The day as a strip that is taken hold of: across on a desk, down on a phone. */
export function Strip({ model }: { model: DayModel }): JSX.Element {
  return (
    <div class="day-plan">
      <Hours />
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring its own box and legend */}
      <div class="day-strip" data-drag-field role="group" aria-label="Blocks of the day">
        <Blocks model={model} />
      </div>
      <Prices model={model} />
    </div>
  );
}

function Hours(): JSX.Element {
  return (
    <div class="day-hours" aria-hidden="true">
      {hours.map((hour) => (
        <span key={hour} style={`--at:${hour / 24}`}>
          {hour === 24 ? '24' : String(hour).padStart(2, '0')}
        </span>
      ))}
    </div>
  );
}

function Blocks({ model }: { model: DayModel }): JSX.Element {
  const blocks = model.blocks.value;
  return (
    <>
      {gapsOf(blocks).map((gap) => (
        <Gap key={`off-${gap.start}`} gap={gap} model={model} />
      ))}
      {blocks.length === 0 && <p class="day-empty">No block yet: the pump is off all day.</p>}
      {inOrder(blocks).map((block, place) => (
        <Block key={block.id} block={block} place={place + 1} model={model} />
      ))}
    </>
  );
}

/** A stretch in which the pump is off: a press fills it with a new block. */
function Gap({ gap, model }: { gap: Stretch; model: DayModel }): JSX.Element {
  const minutes = blockMinutes(gap.start, gap.end);
  const pieces = stripPieces(gap.start, gap.end);
  const widest = pieces.reduce((best, each) =>
    each.to - each.from > best.to - best.from ? each : best,
  );
  return (
    <>
      {pieces
        .filter((piece) => piece !== widest)
        .map((piece) => (
          <span key={piece.from} class="day-gap" style={piecePlace(piece)} aria-hidden="true" />
        ))}
      <button
        type="button"
        class="day-gap needs-script"
        style={piecePlace(widest)}
        data-size={sizeOf(minutes)}
        aria-label={`Off ${spanText(gap)}: add a block here`}
        onClick={() => model.add(gap)}
      >
        <span>off</span>
        <span class="day-plus">+ add</span>
      </button>
    </>
  );
}

/** How much there is room to write: less than 1½ h, less than 3 h, more. */
const sizeOf = (minutes: number) => (minutes < 90 ? 'small' : minutes < 180 ? 'middle' : 'large');

interface BlockProps {
  readonly block: PadBlock;
  readonly place: number;
  readonly model: DayModel;
}

/** Worst that happens in a block, for its mark: past a hard limit, past another, too fast for quiet. */
function markOf(id: string, model: DayModel): 'stop' | 'warn' | undefined {
  const report = model.here.value?.report;
  const own = (report?.segments ?? []).filter(({ blockId }) => blockId === id);
  const crossed = (report?.crossings ?? []).filter(({ limit }) =>
    own.some((segment) => passesLimit(limit, segment)),
  );
  if (crossed.some(({ limit }) => limit.hard)) return 'stop';
  return crossed.length > 0 ? 'warn' : undefined;
}

function Block({ block, place, model }: BlockProps): JSX.Element {
  const held = model.heldId.value === block.id;
  // Without a pump the block's own speed is the top; at 0 rpm that leaves nothing to divide by.
  const top = (model.speeds.value?.top ?? block.speed) || 1;
  const pieces = stripPieces(block.start, block.end);
  const widest = pieces.reduce((best, each) =>
    each.to - each.from > best.to - best.from ? each : best,
  );
  const mark = markOf(block.id, model);
  const spoken = blockSpoken(block, model.here.value, model.units.value);
  const name = `Block ${place}${block.reason === '' ? '' : `, ${block.reason}`}`;
  const level = `--level:${Math.min(1, (block.speed ?? 0) / top).toFixed(4)}`;
  const shared = { model, block, held, spoken };
  return (
    <>
      {pieces.map((piece) => {
        const main = piece === widest;
        const joins = pieces.length > 1 ? (piece.from === 0 ? 'early' : 'late') : undefined;
        return (
          <GripArea
            key={joins ?? 'whole'}
            {...shared}
            grip="body"
            class="day-block"
            label={main ? `${name}: move it` : undefined}
            style={`${piecePlace(piece)};${level}`}
            mark={mark}
            joins={joins}
          >
            <span class="day-level" />
            <Label block={block} piece={piece} model={model} mark={mark} main={main} />
            {main && held && <span class="day-move" data-hold aria-hidden="true" />}
          </GripArea>
        );
      })}
      <GripArea
        {...shared}
        grip="start"
        class="day-edge day-edge-start needs-script"
        label={`${name}: start`}
        style={`--at:${(block.start / day).toFixed(5)}`}
      />
      <GripArea
        {...shared}
        grip="end"
        class="day-edge day-edge-end needs-script"
        label={`${name}: end`}
        style={`--at:${((block.end || day) / day).toFixed(5)}`}
      />
    </>
  );
}

function Label(props: {
  block: PadBlock;
  piece: { from: number; to: number };
  model: DayModel;
  mark: 'stop' | 'warn' | undefined;
  /** The larger piece of a block over midnight has the whole label. */
  main: boolean;
}): JSX.Element {
  const { block, piece, model, mark, main } = props;
  return (
    <span class="day-label" data-size={sizeOf((piece.to - piece.from) * day)}>
      <b>{rpmText(block.speed, model.units.value)}</b>
      <span class="day-span">{spanText(block)}</span>
      {mark !== undefined && (
        <span class="day-mark" data-mark={mark}>
          {mark === 'stop' ? 'Stop' : 'Over a limit'}
        </span>
      )}
      {main && <span class="day-reason">{block.reason}</span>}
    </span>
  );
}

interface GripAreaProps {
  readonly model: DayModel;
  readonly block: PadBlock;
  readonly grip: Grip;
  readonly held: boolean;
  readonly spoken: string;
  readonly class: string;
  /** Spoken name; without one the area is only there for the pointer. */
  readonly label: string | undefined;
  readonly style: string;
  readonly mark?: 'stop' | 'warn' | undefined;
  readonly joins?: 'early' | 'late' | undefined;
  readonly children?: JSX.Element | (JSX.Element | false)[];
}

/** A block or one of its ends: a slider in minutes, by drag and by keys. */
function GripArea(props: GripAreaProps): JSX.Element {
  const { model, block, grip, held, spoken, label } = props;
  const { id } = block;
  const hold = useMemo(() => model.hold(id, grip), [model, id, grip]);
  const pointer = useMemo(() => pointerHold(hold), [hold]);
  const keys = useMemo(() => keyHold(hold), [hold]);
  const minute = grip === 'end' ? block.end : block.start;
  const slider =
    label === undefined
      ? { 'aria-hidden': true as const }
      : {
          role: 'slider' as const,
          tabIndex: 0,
          'aria-label': label,
          'aria-valuemin': 0,
          'aria-valuemax': day - 1,
          'aria-valuenow': minute,
          'aria-valuetext': grip === 'body' ? spoken : clock(minute),
          onKeyDown: keys,
          onFocus: () => {
            model.heldId.value = id;
          },
        };
  return (
    <div
      class={`${props.class}${held ? ' is-held' : ''}`}
      style={props.style}
      data-hold={grip === 'body' ? undefined : ''}
      data-mark={props.mark}
      data-joins={props.joins}
      {...slider}
      {...pointer}
    >
      {props.children}
    </div>
  );
}

/** The price bands of the day on the same axis. */
function Prices({ model }: { model: DayModel }): JSX.Element | null {
  const bands = model.bands.value;
  const currency = model.currency.value;
  if (bands.length === 0) return null;
  const top = Math.max(...bands.map(({ price }) => price));
  const words = bands.map(
    (band) => `${spanText(band)} ${band.name ?? ''} ${formatPrice(band.price, currency)}`,
  );
  return (
    <div
      class="day-bands"
      data-quantity="money"
      role="img"
      aria-label={`Prices: ${words.join('; ')}`}
    >
      {bands.map((band) => (
        <span
          key={band.start}
          class="day-band"
          data-size={sizeOf(band.end - band.start)}
          style={`${piecePlace({ from: band.start / day, to: band.end / day })};--dear:${(top > 0 ? Math.max(0, band.price) / top : 0).toFixed(3)}`}
        >
          {/* Number and code may part here, but no code is broken in two. */}
          <b>
            {formatPrice(band.price, currency).replace(' per\u00a0kWh', '').replace('\u00a0', ' ')}
          </b>
          <span>{band.name}</span>
        </span>
      ))}
    </div>
  );
}
