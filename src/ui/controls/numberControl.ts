import { batch, type ReadonlySignal, type Signal, signal, untracked } from '@preact/signals';
import { asSignal, type Live } from '#ui/charts/live.ts';

/** One number the reader sets, by dragging, by keys, by buttons or by typing: all end in `apply`. */
export interface NumberControl {
  readonly value: ReadonlySignal<number>;
  readonly min: ReadonlySignal<number>;
  readonly max: ReadonlySignal<number>;
  readonly step: ReadonlySignal<number>;
  /** Counts every setting, also to the same value, so that a field can drop half-typed text. */
  readonly changes: ReadonlySignal<number>;
  /** Takes a wish, brings it into range and onto the grid, and sets it. The only way in. */
  apply(wish: number): void;
  /** Moves by whole steps; fewer than none moves down. */
  stepBy(steps: number): void;
  /** Does what a slider key asks and says whether the key meant anything. */
  press(key: string): boolean;
}

interface DialRange {
  readonly min: Live<number>;
  readonly max: Live<number>;
  readonly step: Live<number>;
  /** Steps that Page Up and Page Down move by; 10 unless set. */
  readonly page?: number;
}

/** Sets the value itself, or leaves that to `set`, for a change that has to pass through elsewhere. */
type DialWish = DialRange &
  (
    | { readonly value: Signal<number>; readonly set?: undefined }
    | { readonly value: ReadonlySignal<number>; readonly set: (value: number) => void }
  );

/** The nearest multiple of the step within the range; either end counts, on the grid or not. */
export function snap(wish: number, min: number, max: number, step: number): number {
  if (wish >= max) return max;
  if (!(wish > min)) return min;
  const onGrid = Math.round(wish / step) * step;
  // Dividing by a whole number of steps per unit keeps 0.1 + 0.2 from showing as 0.30000000000000004.
  const perUnit = 1 / step;
  const clean = Number.isInteger(perUnit) ? Math.round(wish * perUnit) / perUnit : onGrid;
  return Math.min(max, Math.max(min, clean));
}

/** Builds a dial on a signal. */
export function createNumberControl(wish: DialWish): NumberControl {
  const min = asSignal(wish.min);
  const max = asSignal(wish.max);
  const step = asSignal(wish.step);
  const { value, page = 10 } = wish;
  const changes = signal(0);

  const apply = (target: number) => {
    if (Number.isNaN(target)) return;
    const next = untracked(() => snap(target, min.value, max.value, step.value));
    batch(() => {
      if (wish.set === undefined) wish.value.value = next;
      else wish.set(next);
      changes.value = changes.peek() + 1;
    });
  };
  const stepBy = (steps: number) => apply(value.peek() + steps * step.peek());
  const moves: Record<string, () => void> = {
    ArrowRight: () => stepBy(1),
    ArrowUp: () => stepBy(1),
    ArrowLeft: () => stepBy(-1),
    ArrowDown: () => stepBy(-1),
    PageUp: () => stepBy(page),
    PageDown: () => stepBy(-page),
    Home: () => apply(min.peek()),
    End: () => apply(max.peek()),
  };
  const press = (key: string) => {
    const move = moves[key];
    move?.();
    return move !== undefined;
  };
  return { value, min, max, step, changes, apply, stepBy, press };
}

/** Key handler for any element that acts as this dial's slider. */
export function onDialKey(dial: NumberControl): (event: KeyboardEvent) => void {
  return (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (dial.press(event.key)) event.preventDefault();
  };
}
