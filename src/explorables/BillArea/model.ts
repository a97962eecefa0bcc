import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { motorCurrent, powerFactor } from '#core/pump/power.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { twoMemories } from '#ui/figure/twoMemories.ts';
import { type UnitChoice, us } from '#units/choice.ts';

/** A pump at the meter, and what the picture opens with. */
export interface Load {
  /** Wire power [W]. */
  readonly power: number;
  readonly greatestPower: number;
  /** How long it runs in a day [s]. */
  readonly time: number;
  /** Price of energy [currency/kWh]. */
  readonly price: number;
  readonly currency: string;
  /** [V] */
  readonly voltage: number;
  /** Current that only magnetises a motor run straight from the supply [A]; none behind a drive. */
  readonly magnetising: number | undefined;
  /** Behind a drive, what was read: nothing is said of the amperes between. */
  readonly read?: readonly ReadAmperes[];
}

/** Watts and amperes read at one speed [W, A]. */
export interface ReadAmperes {
  readonly power: number;
  readonly current: number;
}

/** What the ammeter shows, and what of it does the work. */
export interface Amperes {
  /** Line current [A]. */
  readonly current: number;
  /** The current that the watts alone would take [A]. */
  readonly working: number;
  /** Volts times amperes [VA]. */
  readonly apparent: number;
  /** Watts over volts times amperes [-]. */
  readonly factor: number;
}

export interface BillModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  readonly own: Signal<Load | undefined>;
  readonly load: ReadonlySignal<Load>;
  readonly power: NumberControl;
  readonly time: NumberControl;
  readonly price: NumberControl;
  /** Energy of the day [J]. */
  readonly energy: ReadonlySignal<number>;
  /** Its price in the currency of the load. */
  readonly cost: ReadonlySignal<number>;
  readonly amperes: ReadonlySignal<Amperes | undefined>;
  reset(): void;
}

export const day = 86_400;
/** A motor that runs takes at least this [W]; at nothing it would be off. */
const leastPower = 20;
const greatestPrice = 2;

/** Energy of a steady draw [J]. */
export function energyOf(power: number, time: number): number {
  return power * time;
}

export function costOf(energy: number, price: number): number {
  return (energy / joulesPerKilowattHour) * price;
}

/** Half a step of the watts' slider [W]: as near as a reading can be set. */
const nearEnough = 5;

/** Amperes of the motor in the example; behind a drive only at watts that were read. */
export function amperesAt(load: Load, power: number): Amperes | undefined {
  const { voltage, magnetising, read = [] } = load;
  const current =
    magnetising === undefined
      ? read.find((each) => Math.abs(each.power - power) <= nearEnough)?.current
      : motorCurrent(power, voltage, magnetising);
  return current === undefined ? undefined : amperesOf(power, voltage, current);
}

function amperesOf(power: number, voltage: number, current: number): Amperes {
  return {
    current,
    working: motorCurrent(power, voltage, 0),
    apparent: voltage * current,
    factor: powerFactor(power, voltage, current),
  };
}

/** Watts for so many hours: an area that is the bill, and the amperes that are not. */
export function createModel(example: Load): BillModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<Load | undefined>(undefined);
  const load = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const remembered = (pick: (one: Load) => number) =>
    twoMemories(source, {
      example: computed(() => pick(example)),
      mine: computed(() => pick(own.value ?? example)),
    });
  const memories = {
    power: remembered((one) => one.power),
    time: remembered((one) => one.time),
    price: remembered((one) => one.price),
  };
  const power = createNumberControl({
    value: memories.power.value,
    set: memories.power.set,
    min: leastPower,
    max: computed(() => load.value.greatestPower),
    step: 10,
  });
  const time = createNumberControl({
    value: memories.time.value,
    set: memories.time.set,
    min: 0,
    max: day,
    // A quarter of an hour for each key press, two hours and a half for a page.
    step: 900,
  });
  const price = createNumberControl({
    value: memories.price.value,
    set: memories.price.set,
    min: 0,
    max: computed(() => Math.max(greatestPrice, load.value.price)),
    step: 0.01,
  });
  const energy = computed(() => energyOf(power.value.value, time.value.value));
  return {
    units,
    source,
    own,
    load,
    power,
    time,
    price,
    energy,
    cost: computed(() => costOf(energy.value, price.value.value)),
    amperes: computed(() => amperesAt(load.value, power.value.value)),
    reset: () => {
      source.value = 'example';
      for (const memory of Object.values(memories)) memory.forget();
    },
  };
}
