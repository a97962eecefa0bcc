/** Taking hold of the strip: one way from pointer and keys to minutes, whichever way the strip lies. */
import type { JSX } from 'preact';
import { snapMinute, wrapMinute } from '#ui/charts/ring.ts';

/** A drag lands on these minutes [min]; typing reaches every minute. */
export const dragGrid = 15;
/** One press of an arrow key [min]. */
export const keyStep = 5;
const keyPage = 60;
const day = 1440;

/** What a press or a drag on one grip does. */
export interface Hold {
  /** Takes hold; ways that follow count from where things stand now. */
  take(): void;
  /** Goes so many minutes from where it was taken hold of. */
  drag(by: number): void;
  /** Goes some minutes on from where it stands. */
  nudge(by: number): void;
  /** Goes as far as it can: back with −1, on with 1. */
  toEnd(way: -1 | 1): void;
}

/** The nearest way that lands a minute on the drag grid. */
export function onGrid(minute: number, by: number): number {
  const landed = snapMinute(wrapMinute(minute + by), dragGrid);
  const off = wrapMinute(landed - minute - by);
  return by + (off > day / 2 ? off - day : off);
}

interface Field {
  readonly box: DOMRect;
  /** Time runs down instead of across. */
  readonly upright: boolean;
}

function fieldOf(element: Element): Field {
  const box = (element.closest('[data-drag-field]') ?? element).getBoundingClientRect();
  return { box, upright: box.height > box.width };
}

const alongOf = ({ box, upright }: Field, event: PointerEvent): number =>
  upright ? (event.clientY - box.top) / box.height : (event.clientX - box.left) / box.width;

/** A finger on a block that stands upright scrolls the page, unless it is on the block's own grip. */
function scrolls(field: Field, event: PointerEvent): boolean {
  if (!field.upright || event.pointerType === 'mouse') return false;
  return (event.target as Element).closest('[data-hold]') === null;
}

type Press = JSX.TargetedPointerEvent<HTMLElement>;

/** Pointer handlers of a grip. */
export function pointerHold(hold: Hold) {
  let held: { field: Field; from: number } | undefined;
  const release = () => {
    held = undefined;
  };
  return {
    onPointerDown(event: Press) {
      if (event.button !== 0) return;
      const field = fieldOf(event.currentTarget);
      event.currentTarget.focus({ preventScroll: true });
      if (scrolls(field, event)) return;
      held = { field, from: alongOf(field, event) };
      event.currentTarget.setPointerCapture(event.pointerId);
      event.preventDefault();
      hold.take();
    },
    onPointerMove(event: Press) {
      if (held !== undefined) hold.drag((alongOf(held.field, event) - held.from) * day);
    },
    onPointerUp: release,
    onPointerCancel: release,
  };
}

/** Minutes that a key asks for; whether up is later depends on how the strip lies. */
const keyMinutes: Readonly<Record<string, number>> = {
  ArrowRight: keyStep,
  ArrowLeft: -keyStep,
  ArrowUp: keyStep,
  ArrowDown: -keyStep,
  PageUp: keyPage,
  PageDown: -keyPage,
};

const upAndDown: readonly string[] = ['ArrowUp', 'ArrowDown', 'PageUp', 'PageDown'];

/** Down is later on an upright strip, as it is drawn, by a step and by a page alike. */
function isTurned({ key, currentTarget }: JSX.TargetedKeyboardEvent<HTMLElement>): boolean {
  return upAndDown.includes(key) && fieldOf(currentTarget).upright;
}

/** Key handler of a grip. */
export function keyHold(hold: Hold) {
  return (event: JSX.TargetedKeyboardEvent<HTMLElement>) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const by = keyMinutes[event.key];
    if (by !== undefined) hold.nudge(isTurned(event) ? -by : by);
    else if (event.key === 'Home') hold.toEnd(-1);
    else if (event.key === 'End') hold.toEnd(1);
    else return;
    event.preventDefault();
  };
}
