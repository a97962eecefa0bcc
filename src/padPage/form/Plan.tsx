/** The freeform outline: corners to drag, to move by keys, or to type. */
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useComputed } from '#ui/controls/failure.ts';
import { format, speak } from '#units/format.ts';
import { AddButton, focusSoon, More } from './Entry.tsx';
import { NumberField } from './fields.tsx';
import { type Form, useForm } from './form.ts';
import { without } from './lists.ts';
import {
  type Corner,
  cornerAt,
  crossingSentence,
  crossings,
  frameAround,
  gridStep,
  movedByKey,
  type PlanFrame,
  planShape,
  planStep,
  snapped,
  spotOf,
  withCornerOn,
} from './outline.ts';

const verticesAt = ['pool', 'outline', 'vertices'] as const;
const leastCorners = 3;

function cornersIn(form: Form): readonly Corner[] {
  const { pool } = form.pad.value;
  return pool.kind === 'shape' && pool.outline.kind === 'polygon' ? pool.outline.vertices : [];
}

function addOn(form: Form, side: number): void {
  form.change(
    verticesAt,
    (before: readonly Corner[]) => withCornerOn(before, side),
    'a new corner',
  );
  form.said.value = `Corner ${side + 2} added.`;
  focusSoon(`form-corner-${side + 1}`);
}

function take(form: Form, place: number): void {
  const corners = cornersIn(form);
  if (corners.length <= leastCorners) {
    form.said.value = 'An outline needs three corners at least.';
    return;
  }
  form.change(
    verticesAt,
    (before: readonly Corner[]) => without(before, place),
    'taking away a corner',
  );
  form.said.value = `Corner ${place + 1} removed.`;
  focusSoon(`form-corner-${Math.max(place - 1, 0)}`);
}

/** The drawn outline and its list. */
export function Plan(): JSX.Element {
  const form = useForm();
  const corners = useComputed(() => cornersIn(form));
  // While a corner is dragged the plan stands still under it.
  const held = useSignal<PlanFrame | null>(null);
  const frame = useComputed(() => held.value ?? frameAround(corners.value));
  const fault = useComputed(() => crossingSentence(corners.value));
  const many = corners.value.length;
  const square = format('length', gridStep(form.units.value, frame.value), form.units.value);
  return (
    <div class="form-plan-block">
      <p class="field-help" id="form-plan-help">
        Drag a corner, or move it with the arrow keys (Shift goes further, Delete removes it). Tap a
        side to put a corner on it. One square is {square}.
      </p>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring its own box and legend */}
      <div
        class="form-plan"
        role="group"
        aria-label="Plan of the pool"
        aria-describedby="form-plan-help"
        style={`aspect-ratio:${planShape}`}
      >
        <Drawing corners={corners.value} frame={frame.value} />
        {corners.value.map((_, place) => (
          <Handle key={String(place)} place={place} frame={frame.value} held={held} />
        ))}
      </div>
      {fault.value !== undefined && (
        <p class="field-error">
          <span class="visually-hidden">Error: </span>
          {fault}
        </p>
      )}
      <More title={`All ${many} corners as a list`}>
        <CornerList many={many} />
      </More>
    </div>
  );
}

function Drawing({ corners, frame }: { corners: readonly Corner[]; frame: PlanFrame }) {
  const form = useForm();
  const at = (corner: Corner) => {
    const { x, y } = spotOf(corner, frame);
    return { x: 400 * x, y: (400 / planShape) * y };
  };
  const wrong = new Set(
    crossings(corners).flatMap(({ firstEdge, secondEdge }) => [firstEdge, secondEdge]),
  );
  const spots = corners.map(at);
  return (
    <svg
      class="form-plan-picture"
      viewBox={`0 0 400 ${400 / planShape}`}
      aria-hidden="true"
      focusable="false"
    >
      <Grid frame={frame} at={at} />
      <polygon class="form-plan-water" points={spots.map(({ x, y }) => `${x},${y}`).join(' ')} />
      {spots.map((from, place) => {
        const to = spots[(place + 1) % spots.length] ?? from;
        const line = { x1: from.x, y1: from.y, x2: to.x, y2: to.y };
        return (
          <g key={String(place)}>
            <line
              class={wrong.has(place) ? 'form-plan-side is-wrong' : 'form-plan-side'}
              {...line}
            />
            {/* biome-ignore lint/a11y/noStaticElementInteractions: the list holds the same for keys */}
            <line class="form-plan-touch" {...line} onClick={() => addOn(form, place)} />
          </g>
        );
      })}
    </svg>
  );
}

interface GridProps {
  readonly frame: PlanFrame;
  readonly at: (corner: Corner) => Corner;
}

function Grid({ frame, at }: GridProps): JSX.Element {
  const { units } = useForm();
  const step = gridStep(units.value, frame);
  const along = (from: number, size: number) => {
    const first = Math.ceil(from / step);
    return Array.from(
      { length: Math.floor((from + size) / step) - first + 1 },
      (_, place) => (first + place) * step,
    );
  };
  const upright = along(frame.left, frame.width).map((x) => at({ x, y: frame.bottom }).x);
  const level = along(frame.bottom, frame.height).map((y) => at({ x: frame.left, y }).y);
  const path = [
    ...upright.map((x) => `M${x.toFixed(1)},0V300`),
    ...level.map((y) => `M0,${y.toFixed(1)}H400`),
  ].join('');
  return <path class="form-plan-grid" d={path} />;
}

interface HandleProps {
  readonly place: number;
  readonly frame: PlanFrame;
  readonly held: { value: PlanFrame | null };
}

function Handle({ place, frame, held }: HandleProps): JSX.Element | null {
  const form = useForm();
  const grip = useRef<{ box: DOMRect; frame: PlanFrame; dx: number; dy: number } | null>(null);
  const corner = cornersIn(form)[place];
  if (corner === undefined) return null;
  const units = form.units.value;
  const spot = spotOf(corner, frame);
  const step = planStep(units);
  const put = (next: Corner) => form.set([...verticesAt, place], next, 'moving a corner');
  const fraction = (box: DOMRect, event: PointerEvent) => ({
    x: (event.clientX - box.left) / box.width,
    y: (event.clientY - box.top) / box.height,
  });
  const release = () => {
    grip.current = null;
    held.value = null;
  };
  return (
    <button
      type="button"
      id={`form-corner-${place}`}
      class="form-corner"
      style={`--x:${spot.x.toFixed(4)};--y:${spot.y.toFixed(4)}`}
      aria-label={`Corner ${place + 1}: ${speak('length', corner.x, units)} east, ${speak('length', corner.y, units)} north`}
      onKeyDown={(event) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return;
        if (event.key === 'Delete' || event.key === 'Backspace') {
          event.preventDefault();
          return take(form, place);
        }
        const next = movedByKey(corner, event.key, step, event.shiftKey);
        if (next === null) return;
        event.preventDefault();
        put(next);
      }}
      onPointerDown={(event) => {
        const box = event.currentTarget.parentElement?.getBoundingClientRect();
        if (event.button !== 0 || box === undefined) return;
        const from = fraction(box, event);
        grip.current = { box, frame, dx: spot.x - from.x, dy: spot.y - from.y };
        held.value = frame;
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={(event) => {
        const hold = grip.current;
        if (hold === null) return;
        const now = fraction(hold.box, event);
        const wish = cornerAt({ x: now.x + hold.dx, y: now.y + hold.dy }, hold.frame);
        put(snapped(wish, step));
      }}
      onPointerUp={release}
      onPointerCancel={release}
    >
      <span aria-hidden="true">{place + 1}</span>
    </button>
  );
}

/** Every corner as two numbers: the way for whoever does not drag. */
function CornerList({ many }: { many: number }): JSX.Element {
  const form = useForm();
  return (
    <ol class="form-rows">
      {Array.from({ length: many }, (_, place) => (
        <li key={String(place)} class="form-row">
          <span class="form-row-number">{place + 1}</span>
          <NumberField at={[...verticesAt, place, 'x']} label="East" what="moving a corner" />
          <NumberField at={[...verticesAt, place, 'y']} label="North" what="moving a corner" />
          <AddButton
            id={`form-corner-add-${place}`}
            label={`Add a corner after corner ${place + 1}`}
            onAdd={() => addOn(form, place)}
          >
            After
          </AddButton>
          <button
            type="button"
            class="button button-quiet form-small"
            aria-label={`Remove corner ${place + 1}`}
            aria-disabled={many <= leastCorners}
            onClick={() => take(form, place)}
          >
            Remove
          </button>
        </li>
      ))}
    </ol>
  );
}
