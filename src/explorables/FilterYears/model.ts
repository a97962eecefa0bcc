import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import { roundStep } from '#ui/controls/roundStep.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { twoMemories } from '#ui/figure/twoMemories.ts';
import { type UnitChoice, us } from '#units/choice.ts';
import {
  type Ask,
  type Basis,
  type FilterSetup,
  openingMinutes,
  type Solve,
  type Way,
  type Worked,
} from './ask.ts';

/** The reader's own pump: where its picture opens, and what works its years out. */
export interface OwnFilters {
  readonly basis: Basis;
  readonly solve: Solve;
}

/** What is set of one filter. */
export interface FilterDials {
  /** Heads at the reference flow [m]. */
  readonly cleanHead: NumberControl;
  readonly dirtyHead: NumberControl;
  /** [d] */
  readonly due: NumberControl;
  readonly interval: NumberControl;
}

export interface FilterYearsModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  readonly own: Signal<OwnFilters | undefined>;
  /** Works out the example's years, once that has been fetched. */
  readonly solver: Signal<Solve | undefined>;
  readonly basis: ReadonlySignal<Basis>;
  readonly way: Signal<Way>;
  readonly speed: NumberControl;
  /** Hours a day [h]. */
  readonly hours: NumberControl;
  readonly filters: readonly [FilterDials, FilterDials];
  readonly asked: ReadonlySignal<Ask>;
  readonly worked: ReadonlySignal<Worked>;
  reset(): void;
}

const openingWay: Way = 'hours';
/** Bounds of heads [m] and of days [d]; wider than any filter of a pool. */
const head = { least: 0.1, most: 40, about: 0.1 };
const days = { least: 2, most: 365 };

/** One pump and its plan under two filters over a year. `first` is worked out where the page is built. */
export function createModel(example: Basis, first: Worked): FilterYearsModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<OwnFilters | undefined>(undefined);
  const solver = signal<Solve | undefined>(undefined);
  const isMine = computed(() => source.value === 'mine' && own.value !== undefined);
  const basis = computed(() => (isMine.value ? (own.value?.basis ?? example) : example));
  const way = signal<Way>(openingWay);
  const step = computed(() => roundStep('head', head.about, units.value));
  const forget: (() => void)[] = [];

  /** A number that the example and the reader's own each keep for themselves. */
  function kept(of: (basis: Basis) => number) {
    const memory = twoMemories(source, {
      example: computed(() => of(example)),
      mine: computed(() => of(own.value?.basis ?? example)),
    });
    forget.push(memory.forget);
    return memory;
  }
  function filterDials(at: 0 | 1): FilterDials {
    const clean = kept(({ filters }) => filters[at].cleanHead);
    const dirty = kept(({ filters }) => filters[at].dirtyHead);
    const dueKept = kept(({ filters }) => filters[at].due);
    const intervalKept = kept(({ filters }) => filters[at].interval);
    const cleanHead = createNumberControl({ ...clean, min: head.least, max: head.most, step });
    // A filter never loses less dirty than clean, nor is it cleaned after it is due.
    const dirtyHead = createNumberControl({
      value: computed(() => Math.max(dirty.value.value, cleanHead.value.value)),
      set: dirty.set,
      min: cleanHead.value,
      max: head.most,
      step,
      page: 10,
    });
    const due = createNumberControl({
      ...dueKept,
      min: days.least,
      max: days.most,
      step: 1,
      page: 7,
    });
    const interval = createNumberControl({
      value: computed(() => Math.min(intervalKept.value.value, due.value.value)),
      set: intervalKept.set,
      min: days.least,
      max: due.value,
      step: 1,
      page: 7,
    });
    return { cleanHead, dirtyHead, due, interval };
  }

  const filters = [filterDials(0), filterDials(1)] as const;
  const speedKept = kept((of) => of.speed);
  const least = computed(() => basis.value.leastSpeed);
  const top = computed(() => basis.value.topSpeed);
  const speed = createNumberControl({
    value: computed(() => Math.min(Math.max(speedKept.value.value, least.value), top.value)),
    set: speedKept.set,
    min: least,
    max: top,
    step: 50,
  });
  const hours = createNumberControl({
    ...kept(() => openingMinutes / 60),
    min: 1,
    max: 24,
    step: 0.5,
    page: 4,
  });
  const setupOf = (dials: FilterDials): FilterSetup => ({
    cleanHead: dials.cleanHead.value.value,
    dirtyHead: dials.dirtyHead.value.value,
    due: dials.due.value.value,
    interval: dials.interval.value.value,
  });
  const asked = computed<Ask>(() => ({
    way: way.value,
    speed: speed.value.value,
    minutes: Math.round(60 * hours.value.value),
    filters: [setupOf(filters[0]), setupOf(filters[1])],
  }));
  const worked = computed<Worked>(() => {
    const solve = isMine.value ? own.value?.solve : solver.value;
    return solve === undefined ? first : solve(asked.value);
  });
  return {
    units,
    source,
    own,
    solver,
    basis,
    way,
    speed,
    hours,
    filters,
    asked,
    worked,
    reset: () =>
      batch(() => {
        source.value = 'example';
        way.value = openingWay;
        for (const each of forget) each();
      }),
  };
}

/** What the page is built with: the example as it opens. */
export function openingAsk({ speed, filters }: Basis): Ask {
  return { way: openingWay, speed, minutes: openingMinutes, filters };
}
