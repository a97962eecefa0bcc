import { computed } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import type { Spot } from '#ui/charts/labels.ts';
import { type Live, read } from '#ui/charts/live.ts';
import { placed, type Quantity } from '#ui/charts/marks.tsx';
import { type NumberControl, onDialKey } from './numberControl.ts';

/** Gives the dial's value for a place in the picture, by fraction from the top left. */
export type ValueAt = (spot: Spot) => number;

interface DragHandleProps {
  readonly dial: NumberControl;
  readonly label: string;
  readonly spoken: Live<string>;
  /** Where the handle stands, by fraction from the top left. */
  readonly at: Live<Spot>;
  readonly valueAt: ValueAt;
  readonly orientation?: 'horizontal' | 'vertical';
  readonly of?: Quantity;
}

/** The box whose fractions a handle counts in: the nearest picture around it. */
function fieldBox(element: Element): DOMRect {
  const field = element.closest('[data-drag-field], .plot-body') ?? element;
  return field.getBoundingClientRect();
}

function spotIn(box: DOMRect, event: PointerEvent): Spot {
  return {
    x: (event.clientX - box.left) / box.width,
    y: (event.clientY - box.top) / box.height,
  };
}

interface PointerHandlers {
  onPointerDown(event: JSX.TargetedPointerEvent<HTMLElement>): void;
  onPointerMove(event: JSX.TargetedPointerEvent<HTMLElement>): void;
  onPointerUp(event: JSX.TargetedPointerEvent<HTMLElement>): void;
  onPointerCancel(): void;
}

/** What a handle follows a pointer by. */
interface Followed {
  readonly dial: NumberControl;
  readonly at: Live<Spot>;
  readonly valueAt: ValueAt;
}

/** The newest value at any time: a drag outlasts the renders that it causes itself. */
function useNewest<Value>(value: Value): { current: Value } {
  const newest = useRef(value);
  newest.current = value;
  return newest;
}

/** Follows a pointer from where it took hold, so that the handle does not jump to the fingertip. */
function handlePointer(newest: { readonly current: Followed }): PointerHandlers {
  let hold: { box: DOMRect; dx: number; dy: number } | undefined;
  const release = () => {
    hold = undefined;
  };
  return {
    onPointerDown(event) {
      if (event.button !== 0) return;
      const box = fieldBox(event.currentTarget);
      const from = spotIn(box, event);
      const stand = read(newest.current.at);
      hold = { box, dx: stand.x - from.x, dy: stand.y - from.y };
      event.currentTarget.setPointerCapture(event.pointerId);
      event.currentTarget.focus({ preventScroll: true });
      event.preventDefault();
    },
    onPointerMove(event) {
      if (hold === undefined) return;
      const spot = spotIn(hold.box, event);
      const { dial, valueAt } = newest.current;
      dial.apply(valueAt({ x: spot.x + hold.dx, y: spot.y + hold.dy }));
    },
    onPointerUp: release,
    onPointerCancel: release,
  };
}

/** A knob on the picture that is a full slider: it drags, and it answers to the keys. */
export function DragHandle(props: DragHandleProps): JSX.Element {
  const { dial, label, spoken, at, valueAt, orientation = 'horizontal', of = 'plain' } = props;
  const style = useMemo(() => computed(() => placed(read(at))), [at]);
  const keys = useMemo(() => onDialKey(dial), [dial]);
  const newest = useNewest({ dial, at, valueAt });
  const pointer = useMemo(() => handlePointer(newest), [newest]);
  return (
    <div
      class="drag-handle needs-script"
      data-quantity={of}
      data-orientation={orientation}
      style={style}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-orientation={orientation}
      aria-valuemin={dial.min}
      aria-valuemax={dial.max}
      aria-valuenow={dial.value}
      aria-valuetext={spoken}
      onKeyDown={keys}
      {...pointer}
    />
  );
}

/** How far a finger moves before it counts as a drag and not as the start of scrolling [px]. */
const slack = 8;

/** A mouse sets the value where it presses; a finger must first tap, or move sideways. */
function surfacePointer(newest: {
  readonly current: Pick<Followed, 'dial' | 'valueAt'>;
}): PointerHandlers {
  let hold: { box: DOMRect; x: number; y: number; live: boolean } | undefined;
  const follow = (event: PointerEvent) => {
    const { dial, valueAt } = newest.current;
    if (hold !== undefined) dial.apply(valueAt(spotIn(hold.box, event)));
  };
  return {
    onPointerDown(event) {
      if (event.button !== 0) return;
      const live = event.pointerType === 'mouse';
      hold = { box: fieldBox(event.currentTarget), x: event.clientX, y: event.clientY, live };
      event.currentTarget.setPointerCapture(event.pointerId);
      if (live) follow(event);
    },
    onPointerMove(event) {
      if (hold === undefined) return;
      const sideways = Math.abs(event.clientX - hold.x);
      if (sideways > slack && sideways > Math.abs(event.clientY - hold.y)) hold.live = true;
      if (hold.live) follow(event);
    },
    onPointerUp(event) {
      follow(event);
      hold = undefined;
    },
    onPointerCancel() {
      hold = undefined;
    },
  };
}

/** Makes the whole picture a place to press and drag; keys and screen readers use the handle. */
export function DragSurface(props: { dial: NumberControl; valueAt: ValueAt }): JSX.Element {
  const { dial, valueAt } = props;
  const newest = useNewest({ dial, valueAt });
  const pointer = useMemo(() => surfacePointer(newest), [newest]);
  return <div class="drag-surface" aria-hidden="true" {...pointer} />;
}
