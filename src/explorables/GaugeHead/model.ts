import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { pressureHead, roundedDynamicHead, totalDynamicHead } from '#core/fit/gauges.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import { roundStep } from '#ui/controls/roundStep.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';
import { foot, inchOfMercury, psi } from '#units/factors.ts';

/** What the two gauges of a pad show at one moment; all SI. */
export interface GaugeState {
  readonly id: string;
  readonly label: string;
  /** Above atmosphere [Pa]. */
  readonly filterPressure: number;
  /** Below atmosphere [Pa]; negative where the inlet stands under pressure. */
  readonly suctionVacuum: number;
  /** Filter gauge above suction gauge [m]. */
  readonly gaugeHeight: number;
  /** What the pad moves then [m3/s]; null where nobody measured it. */
  readonly flow: number | null;
}

/** A pad with its gauges in one or more states. */
export interface GaugeScene {
  readonly states: readonly GaugeState[];
  /** Of the water [kg/m3]. */
  readonly density: number;
}

/** Head of each piece and of all together [m]. */
export interface Heads {
  readonly vacuum: number;
  readonly height: number;
  readonly pressure: number;
  readonly total: number;
  /** The same by the trade's rounded factors. */
  readonly rounded: number;
}

export type GaugeName = 'filterPressure' | 'suctionVacuum' | 'gaugeHeight';

type Values = Pick<GaugeState, GaugeName>;

export interface GaugeHeadModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own readings, where both gauges were read. */
  readonly own: Signal<GaugeScene | undefined>;
  readonly scene: ReadonlySignal<GaugeScene>;
  readonly dials: Readonly<Record<GaugeName, NumberControl>>;
  /** The state that the gauges stand in, or undefined once one was moved by hand. */
  readonly picked: ReadonlySignal<GaugeState | undefined>;
  readonly heads: ReadonlySignal<Heads>;
  /** Lowest head that the gauges can add up to, and the highest in any state and as they stand now [m]. */
  readonly reach: ReadonlySignal<{ readonly least: number; readonly most: number }>;
  pick(id: string): void;
  reset(): void;
}

/** Scales of ordinary gauges, and how high one is set above the other. */
const scales: Readonly<Record<GaugeName, readonly [least: number, greatest: number]>> = {
  filterPressure: [0, 60 * psi],
  suctionVacuum: [0, 28 * inchOfMercury],
  gaugeHeight: [-2 * foot, 6 * foot],
};

const names = ['filterPressure', 'suctionVacuum', 'gaugeHeight'] as const;
const steps: Readonly<Record<GaugeName, number>> = {
  filterPressure: 0.1 * psi,
  suctionVacuum: 0.1 * inchOfMercury,
  gaugeHeight: 0.1 * foot,
};

/** What each of them is measured as. */
export const measured = {
  filterPressure: 'pressure',
  suctionVacuum: 'vacuum',
  gaugeHeight: 'length',
} as const;

const toMark = (value: number, mark: number) => Math.round(value / mark) * mark;

/** Head of the pieces in a state of the gauges. */
export function headsOf(state: Values, density: number): Heads {
  const pair = {
    dischargePressure: state.filterPressure,
    suctionVacuum: state.suctionVacuum,
    gaugeHeight: state.gaugeHeight,
    density,
  };
  return {
    vacuum: pressureHead(state.suctionVacuum, density),
    height: state.gaugeHeight,
    pressure: pressureHead(state.filterPressure, density),
    total: totalDynamicHead(pair),
    rounded: roundedDynamicHead(pair),
  };
}

/** Two gauges beside a pump, and the head that they tell of. */
export function createModel(example: GaugeScene): GaugeHeadModel {
  const first = example.states[0];
  if (first === undefined) throw new RangeError('states is empty; give at least one.');
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<GaugeScene | undefined>(undefined);
  const stepOf = (name: GaugeName) => roundStep(measured[name], steps[name], units.value);
  // A gauge is read to its marks; what the reader typed stays as it was typed.
  const readExample = computed<GaugeScene>(() => ({
    ...example,
    states: example.states.map((state) => ({
      ...state,
      ...Object.fromEntries(names.map((name) => [name, toMark(state[name], stepOf(name))])),
    })),
  }));
  const scene = computed(() =>
    source.value === 'mine' ? (own.value ?? readExample.value) : readExample.value,
  );

  const pickedId = signal('');
  // What was set by hand stays with the pad it was set on.
  const byHand = signal<(Values & { readonly source: Source }) | undefined>(undefined);
  const picks = signal(0);
  const moved = computed(() => (byHand.value?.source === source.value ? byHand.value : undefined));
  const standing = computed(
    () =>
      scene.value.states.find(({ id }) => id === pickedId.value) ?? scene.value.states[0] ?? first,
  );
  const now = computed<Values>(() => moved.value ?? standing.value);

  const dialOf = (name: GaugeName): NumberControl => {
    const values = computed(() => scene.value.states.map((state) => state[name]));
    const dial = createNumberControl({
      value: computed(() => now.value[name]),
      set: (value) => {
        const { filterPressure, suctionVacuum, gaugeHeight } = now.peek();
        const before = { filterPressure, suctionVacuum, gaugeHeight };
        byHand.value = { ...before, [name]: value, source: source.peek() };
      },
      min: computed(() => Math.min(scales[name][0], ...values.value)),
      max: computed(() => Math.max(scales[name][1], ...values.value)),
      step: computed(() => stepOf(name)),
    });
    // A state picked sets the dial too, so that half-typed text goes.
    return { ...dial, changes: computed(() => dial.changes.value + picks.value) };
  };
  const pick = (id: string) =>
    batch(() => {
      byHand.value = undefined;
      pickedId.value = id;
      picks.value = picks.peek() + 1;
    });
  const dials = Object.fromEntries(names.map((name) => [name, dialOf(name)])) as Record<
    GaugeName,
    NumberControl
  >;
  const levels = ({ vacuum, height, total }: Heads) => [0, vacuum, vacuum + height, total];
  const lowest = computed(() => {
    const at = Object.fromEntries(names.map((name) => [name, dials[name].min.value]));
    return Math.min(...levels(headsOf(at as unknown as Values, scene.value.density)));
  });
  const heads = computed(() => headsOf(now.value, scene.value.density));
  return {
    units,
    source,
    own,
    scene,
    dials,
    picked: computed(() => (moved.value === undefined ? standing.value : undefined)),
    heads,
    reach: computed(() => {
      const states = scene.value.states.map((state) => headsOf(state, scene.value.density));
      const most = Math.max(...[...states, heads.value].flatMap(levels));
      return { least: lowest.value, most };
    }),
    pick,
    reset: () =>
      batch(() => {
        source.value = 'example';
        pick(first.id);
      }),
  };
}
