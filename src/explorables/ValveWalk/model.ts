import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { CompiledCircuit } from '#core/hydraulics/compiledCircuit.ts';
import {
  openingFor,
  pipesAt,
  type Rig,
  type RigPump,
  throttled,
  type Walk,
  walkAt,
} from '#explorables/example/rig.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';

export interface ValveWalkModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own pump and pipes, when the pad knows enough of them. */
  readonly own: Signal<Rig | undefined>;
  readonly rig: ReadonlySignal<Rig>;
  readonly pumpId: ReadonlySignal<string>;
  readonly pump: ReadonlySignal<RigPump>;
  /** Share of the passage that the valve leaves open [-]. */
  readonly open: NumberControl;
  /** How far the filter is from clean to due for cleaning [-]. */
  readonly loading: NumberControl;
  readonly here: ReadonlySignal<Walk>;
  /** The same pump with the valve open and the filter clean. */
  readonly free: ReadonlySignal<Walk>;
  /** The pipes with the valve open and the filter clean, and as they are now; none when shut. */
  readonly freePipes: ReadonlySignal<CompiledCircuit>;
  readonly pipes: ReadonlySignal<CompiledCircuit | undefined>;
  choosePump(id: string): void;
  /** Sets the valve so that this flow runs [m3/s]. */
  throttleTo(flow: number): number;
  reset(): void;
}

/** A pump, its pipes and a valve between: where the two meet, and what each setting costs. */
export function createModel(example: Rig): ValveWalkModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<Rig | undefined>(undefined);
  const rig = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const pumpId = signal(example.pumps[0].id);
  const pump = computed(() => {
    const { pumps } = rig.value;
    return pumps.find(({ id }) => id === pumpId.value) ?? pumps[0];
  });
  const open = createNumberControl({ value: signal(1), min: 0, max: 1, step: 0.005 });
  const loading = createNumberControl({ value: signal(0), min: 0, max: 1, step: 0.05 });
  const dirt = computed(() => (rig.value.filter === undefined ? 0 : loading.value.value));
  return {
    units,
    source,
    own,
    rig,
    pumpId,
    pump,
    open,
    loading,
    here: computed(() => walkAt(rig.value, pump.value, dirt.value, open.value.value)),
    free: computed(() => walkAt(rig.value, pump.value, 0, 1)),
    freePipes: computed(() => pipesAt(rig.value, 0)),
    pipes: computed(() =>
      open.value.value > 0 ? throttled(rig.value, dirt.value, open.value.value) : undefined,
    ),
    choosePump: (id) => {
      if (rig.value.pumps.some((one) => one.id === id)) pumpId.value = id;
    },
    throttleTo: (flow) => openingFor(rig.value, pump.value, dirt.value, flow),
    reset: () => {
      source.value = 'example';
      pumpId.value = example.pumps[0].id;
      open.apply(1);
      loading.apply(0);
    },
  };
}
