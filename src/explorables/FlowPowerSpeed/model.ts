import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import {
  type Machine,
  type OperatingState,
  operatingStateAt,
} from '#explorables/example/machine.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';

export interface FlowPowerSpeedModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own pump, when the pad knows enough of it. */
  readonly own: Signal<Machine | undefined>;
  readonly machine: ReadonlySignal<Machine>;
  readonly speed: NumberControl;
  readonly here: ReadonlySignal<OperatingState>;
  readonly full: ReadonlySignal<OperatingState>;
  readonly shares: ReadonlySignal<Shares>;
  reset(): void;
}

/** What is left of each, against full speed [-]. */
export interface Shares {
  readonly speed: number;
  readonly flow: number;
  readonly head: number;
  readonly power: number;
}

const share = (part: number, whole: number) => (whole > 0 ? part / whole : 0);

/** One pump in its pipes, its speed to be set, against itself at full speed. */
export function createModel(example: Machine, opening: number): FlowPowerSpeedModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<Machine | undefined>(undefined);
  const machine = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const asked = signal(opening);
  const range = (speed: number) =>
    Math.min(Math.max(speed, machine.value.leastSpeed), machine.value.topSpeed);
  const speed = createNumberControl({
    value: asked,
    min: computed(() => machine.value.leastSpeed),
    max: computed(() => machine.value.topSpeed),
    step: 10,
  });
  const here = computed(() => operatingStateAt(machine.value, range(asked.value)));
  const full = computed(() => operatingStateAt(machine.value, machine.value.topSpeed));
  return {
    units,
    source,
    own,
    machine,
    speed,
    here,
    full,
    shares: computed(() => ({
      speed: share(here.value.speed, full.value.speed),
      flow: share(here.value.flow, full.value.flow),
      head: share(here.value.head, full.value.head),
      power: share(here.value.power, full.value.power),
    })),
    reset: () => {
      source.value = 'example';
      speed.apply(opening);
    },
  };
}
