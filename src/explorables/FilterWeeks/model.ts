import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { columnPressure } from '#core/fit/gauges.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import { operatingPoint, ratioForFlow } from '#core/pump/operatingPoint.ts';
import { wirePower } from '#core/pump/power.ts';
import { type FilterBench, stepsPerWeek, weeksToDue } from '#explorables/example/filterBench.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';

/** The pump in its pipes at one speed and one state of the filter. */
export interface State {
  /** [rpm] */
  readonly speed: number;
  /** [m3/s]; 0 when no water moves. */
  readonly flow: number;
  /** Wire power [W]. */
  readonly power: number;
  /** On the filter gauge, at the level of the pool's surface [Pa]. */
  readonly pressure: number;
}

/** One moment since cleaning: the speed left alone, and the speed that holds the clean flow. */
export interface Moment {
  readonly weeks: number;
  readonly left: State;
  /** Undefined where top speed no longer gives the clean flow. */
  readonly held: State | undefined;
}

export interface FilterWeeksModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  readonly own: Signal<FilterBench | undefined>;
  readonly bench: ReadonlySignal<FilterBench>;
  readonly weeks: NumberControl;
  readonly speed: NumberControl;
  /** From clean to due, evenly. */
  readonly moments: ReadonlySignal<readonly Moment[]>;
  readonly clean: ReadonlySignal<Moment>;
  readonly here: ReadonlySignal<Moment>;
  readonly due: ReadonlySignal<Moment>;
  /** Most that any speed and any state of the filter give: what the axes reach to. */
  readonly reach: ReadonlySignal<{
    /** [m3/s] */
    readonly flow: number;
    /** On the filter gauge [Pa]. */
    readonly pressure: number;
  }>;
  /** Energy that holding the flow has taken since cleaning, beyond what a clean filter takes [J]. */
  readonly extraEnergy: ReadonlySignal<number | undefined>;
  /** Its price, where energy has one price. */
  readonly extraCost: ReadonlySignal<number | undefined>;
  reset(): void;
}

/** Hours a day at this speed, for the energy since cleaning; invented. */
export const hoursPerDay = 10;

/** The rise of the filter gauge that usually says "clean" [Pa]: 10 psi; common practice, no source. */
export const usualRise = 10 * 6894.757;

const openingWeeks = 4;
const secondsRunPerWeek = 7 * hoursPerDay * 3600;

function stateAt(bench: FilterBench, step: number, speed: number): State {
  const circuit = circuitAt(bench, step);
  const ratio = speed / bench.speeds.reference;
  const point = operatingPoint(bench.curve, circuit, ratio);
  const flowing = point.kind === 'flowing';
  return stateOf(bench, speed, flowing ? point.flow : 0, flowing ? point.head : point.shutoffHead);
}

function stateOf(bench: FilterBench, speed: number, flow: number, head: number): State {
  return {
    speed,
    flow,
    power: wirePower(bench.power, flow, speed / bench.speeds.reference),
    pressure: columnPressure(head - compiledHead(bench.suction, flow), bench.density),
  };
}

function heldAt(bench: FilterBench, step: number, flow: number): State | undefined {
  if (flow === 0) return undefined;
  const { reference, top } = bench.speeds;
  const found = ratioForFlow(bench.curve, circuitAt(bench, step), flow, { max: top / reference });
  if (found.kind !== 'found') return undefined;
  return stateOf(bench, found.ratio * reference, flow, found.head);
}

function circuitAt({ loaded }: FilterBench, step: number) {
  const circuit = loaded[step];
  if (circuit === undefined) throw new RangeError(`There is no step ${step}.`);
  return circuit;
}

/** Every moment from clean to due at one speed left alone. */
export function momentsOf(bench: FilterBench, speed: number): readonly Moment[] {
  const clean = stateAt(bench, 0, speed);
  return bench.loaded.map((_, step) => ({
    weeks: step / stepsPerWeek,
    left: stateAt(bench, step, speed),
    held: step === 0 && clean.flow > 0 ? clean : heldAt(bench, step, clean.flow),
  }));
}

/** Energy beyond the clean filter's, summed over the weeks by trapezoids; undefined past reach. */
function extraOf(moments: readonly Moment[], until: number): number | undefined {
  const powers = moments.filter(({ weeks }) => weeks <= until).map(({ held }) => held?.power);
  const [first] = powers;
  let sum = 0;
  for (let at = 1; at < powers.length; at += 1) {
    const before = powers[at - 1];
    const after = powers[at];
    if (first === undefined || before === undefined || after === undefined) return undefined;
    sum += ((before + after) / 2 - first) / stepsPerWeek;
  }
  return sum * secondsRunPerWeek;
}

/** A filter that loads week by week, with the speed left alone or turned up to hold the flow. */
export function createModel(example: FilterBench, opening: number): FilterWeeksModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<FilterBench | undefined>(undefined);
  const bench = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const week = signal(openingWeeks);
  const asked = signal(opening);
  const weeks = createNumberControl({
    value: week,
    min: 0,
    max: weeksToDue,
    step: 1 / stepsPerWeek,
    page: stepsPerWeek,
  });
  const least = computed(() => bench.value.speeds.least);
  const top = computed(() => bench.value.speeds.top);
  const speed = createNumberControl({
    value: computed(() => Math.min(Math.max(asked.value, least.value), top.value)),
    set: (value) => {
      asked.value = value;
    },
    min: least,
    max: top,
    step: 10,
  });
  const moments = computed(() => momentsOf(bench.value, speed.value.value));
  const momentAt = (at: number) => {
    const found = moments.value[at];
    if (found === undefined) throw new RangeError(`There is no moment ${at}.`);
    return found;
  };
  const here = computed(() => momentAt(Math.round(week.value * stepsPerWeek)));
  const extraEnergy = computed(() => extraOf(moments.value, here.value.weeks));
  return {
    units,
    source,
    own,
    bench,
    weeks,
    speed,
    moments,
    clean: computed(() => momentAt(0)),
    here,
    due: computed(() => momentAt(weeksToDue * stepsPerWeek)),
    reach: computed(() => {
      // Clean at top speed moves the most water; due at top speed presses hardest, held or not. Above
      // the usual sign there is room for its name.
      const atTop = (step: number) => stateAt(bench.value, step, top.value);
      const [clean, due] = [atTop(0), atTop(weeksToDue * stepsPerWeek)];
      const pressure = Math.max(due.pressure, clean.pressure + 1.5 * usualRise);
      return { flow: Math.max(1.2 * clean.flow, 1e-4), pressure };
    }),
    extraEnergy,
    extraCost: computed(() => {
      const { price } = bench.value;
      const energy = extraEnergy.value;
      if (price === null || energy === undefined) return undefined;
      return (energy / joulesPerKilowattHour) * price.perKilowattHour;
    }),
    reset: () => {
      source.value = 'example';
      weeks.apply(openingWeeks);
      speed.apply(opening);
    },
  };
}
