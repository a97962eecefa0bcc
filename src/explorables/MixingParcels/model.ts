import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import {
  filteredShare,
  sharePassed,
  turnoversForShare,
  turnoversInRun,
  turnoverTime,
} from '#core/water/mixing.ts';
import { evenly } from '#ui/charts/path.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import { roundStep } from '#ui/controls/roundStep.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';

/** What the reader sets. */
export interface Settings {
  /** Water in the pool [m3]. */
  readonly volume: number;
  /** [m3/s] */
  readonly flow: number;
  /** How long the pump has run [s]. */
  readonly time: number;
}

/** How often the water has been through the filter by now, as shares of all of it. */
export interface Passed {
  readonly turnovers: number;
  /** At least once [-]. */
  readonly share: number;
  readonly never: number;
  readonly once: number;
  readonly often: number;
}

/** The same in whole parcels out of a hundred. */
export interface Parcels {
  readonly never: number;
  readonly once: number;
  readonly often: number;
}

export interface MixingModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own pool and flow, when the pad knows them. */
  readonly own: Signal<Settings | undefined>;
  readonly settings: ReadonlySignal<Settings>;
  readonly volume: NumberControl;
  readonly flow: NumberControl;
  readonly time: NumberControl;
  readonly here: ReadonlySignal<Passed>;
  readonly parcels: ReadonlySignal<Parcels>;
  /** Time of one turnover [s]; undefined while no water moves. */
  readonly turnover: ReadonlySignal<number | undefined>;
  /** Time after which 95 % has passed [s]; undefined while no water moves. */
  readonly nearlyAll: ReadonlySignal<number | undefined>;
  /** Share that has passed against time, mixed as it is. */
  readonly line: ReadonlySignal<readonly { readonly time: number; readonly share: number }[]>;
  reset(): void;
}

const hour = 3600;
/** How far the picture reaches: two days on end. */
export const longest = 48 * hour;
/** As good as all: the share that the picture names a time for. */
export const nearly = 0.95;

/** The share of the water by how often it has passed the filter, in a perfectly mixed pool. */
export function passedBy({ volume, flow }: Settings, time: number): Passed {
  const turnovers = turnoversInRun(volume, flow, time);
  const share = filteredShare(turnovers);
  const once = sharePassed(turnovers, 1);
  return {
    turnovers,
    share,
    never: sharePassed(turnovers, 0),
    once,
    often: Math.max(0, share - once),
  };
}

/** A hundred parcels, none lost to rounding. */
export function parcelsOf({ never, once }: Passed): Parcels {
  const whole = Math.round(100 * never);
  const single = Math.min(Math.round(100 * once), 100 - whole);
  return { never: whole, once: single, often: 100 - whole - single };
}

/** A pool whose water comes round again before all of it has been. */
export function createModel(example: Settings): MixingModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<Settings | undefined>(undefined);
  const wished = signal<Partial<Record<Source, Settings>>>({});
  const opening = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const settings = computed(() => wished.value[source.value] ?? opening.value);

  const dialOf = (
    name: keyof Settings,
    range: readonly [number, number],
    step: () => number,
  ): NumberControl => {
    const value = computed(() => settings.value[name]);
    return createNumberControl({
      value,
      set: (next) => {
        // Twelve figures, so that a link does not carry the dust of unit factors.
        const clean = Number(next.toPrecision(12));
        wished.value = { ...wished.value, [source.value]: { ...settings.value, [name]: clean } };
      },
      // A pad's own may lie beyond the usual; it is shown as it is.
      min: computed(() => Math.min(range[0], value.value)),
      max: computed(() => Math.max(range[1], value.value)),
      step: computed(step),
    });
  };
  const turnover = computed(() => {
    const { volume, flow } = settings.value;
    return flow > 0 ? turnoverTime(volume, flow) : undefined;
  });
  const here = computed(() => passedBy(settings.value, settings.value.time));
  return {
    units,
    source,
    own,
    settings,
    volume: dialOf('volume', [5, 250], () => roundStep('volume', 2, units.value)),
    flow: dialOf('flow', [0, 0.0063], () => roundStep('flow', 7e-5, units.value)),
    time: dialOf('time', [0, longest], () => hour / 2),
    here,
    parcels: computed(() => parcelsOf(here.value)),
    turnover,
    nearlyAll: computed(() =>
      turnover.value === undefined ? undefined : turnoversForShare(nearly) * turnover.value,
    ),
    line: computed(() =>
      evenly(0, longest, 97).map((time) => ({ time, share: passedBy(settings.value, time).share })),
    ),
    reset: () => {
      source.value = 'example';
      wished.value = {};
    },
  };
}
