import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { twoMemories } from '#ui/figure/twoMemories.ts';
import { type UnitChoice, unitFor, us } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import {
  type Asked,
  asked,
  bestStep,
  type Plain,
  plainLaw,
  type Setup,
  type Step,
  stepAt,
} from './mileage.ts';

export interface WaterModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own pump and pipes, when the pad knows enough of them. */
  readonly own: Signal<Setup | undefined>;
  readonly setup: ReadonlySignal<Setup>;
  readonly speed: NumberControl;
  /** Draw that does not fall with speed [W]. */
  readonly fixed: NumberControl;
  /** Height at which the water breaks free above the pool [m]. */
  readonly lift: NumberControl;
  readonly asked: ReadonlySignal<Asked>;
  readonly here: ReadonlySignal<Step>;
  /** The best speed there is; none where no speed moves water. */
  readonly best: ReadonlySignal<Step | undefined>;
  readonly plain: ReadonlySignal<Plain>;
  reset(): void;
}

export const greatestFixed = 200;
const greatestLift = 4;

/** Water for a kilowatt-hour against speed, with a fixed draw and a lift to set. */
export function createModel(example: Setup, opening: number): WaterModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<Setup | undefined>(undefined);
  const setup = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const openingOf = (pick: (one: Setup) => number) => ({
    example: computed(() => pick(example)),
    mine: computed(() => pick(own.value ?? example)),
  });
  const fixedMemory = twoMemories(
    source,
    openingOf(({ power }) => power.fixed),
  );
  const liftMemory = twoMemories(
    source,
    openingOf(({ circuit }) => circuit.staticHead),
  );
  const speedMemory = signal(opening);
  const speed = createNumberControl({
    value: computed(() =>
      Math.min(Math.max(speedMemory.value, setup.value.leastSpeed), setup.value.topSpeed),
    ),
    set: (value) => {
      speedMemory.value = value;
    },
    min: computed(() => setup.value.leastSpeed),
    max: computed(() => setup.value.topSpeed),
    step: 10,
  });
  const fixed = createNumberControl({
    value: fixedMemory.value,
    set: fixedMemory.set,
    min: 0,
    max: computed(() => Math.max(greatestFixed, setup.value.power.fixed)),
    step: 2,
  });
  const lift = createNumberControl({
    value: liftMemory.value,
    set: liftMemory.set,
    min: 0,
    max: computed(() => Math.max(greatestLift, setup.value.circuit.staticHead)),
    // Half a foot or a tenth of a metre for each key press.
    step: computed(() =>
      unitFor(units.value, 'head') === 'ft' ? toSI('head', 0.5, 'ft') : toSI('head', 0.1, 'm'),
    ),
  });
  const now = computed(() => asked(setup.value, fixed.value.value, lift.value.value));
  return {
    units,
    source,
    own,
    setup,
    speed,
    fixed,
    lift,
    asked: now,
    here: computed(() => stepAt(now.value, speed.value.value)),
    best: computed(() => bestStep(now.value)),
    plain: computed(() => plainLaw(setup.value)),
    reset: () => {
      source.value = 'example';
      fixedMemory.forget();
      liftMemory.forget();
      speed.apply(opening);
    },
  };
}
