import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { pressureHead } from '#core/fit/gauges.ts';
import { suctionHead } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import {
  atmosphericPressure,
  geopotentialAltitude,
  npshAvailable,
  npshMargin,
} from '#core/pump/npsh.ts';
import { water } from '#core/water/water.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import { roundStep } from '#ui/controls/roundStep.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';

/** What the reader sets. */
export interface Settings {
  /** Height above the sea [m]. */
  readonly altitude: number;
  /** Of the water [degC]. */
  readonly temperature: number;
  /** Height of the pump above the water [m]; negative where it stands lower. */
  readonly lift: number;
  /** [m3/s] */
  readonly flow: number;
}

/** A suction line and the pump behind it, from the lesson's example or from the reader's pad. */
export interface SuctionLine {
  readonly parts: Circuit['suction'];
  /** The strainer basket among the parts, where there is one. */
  readonly basketId?: string | undefined;
  /** NPSH the pump needs [m] at a flow [m3/s]. */
  readonly required: (flow: number) => number;
  readonly opening: Settings;
  readonly greatestFlow: number;
}

/** Absolute head at each step of the ladder, from the air on the pool to the eye of the pump [m]. */
export interface Rungs {
  readonly air: number;
  readonly height: number;
  readonly line: number;
  readonly eye: number;
  /** Where this water boils. */
  readonly boils: number;
  readonly lift: number;
  readonly loss: number;
  readonly available: number;
  readonly required: number;
  readonly margin: number;
}

/** How the pump fares: in the open, with little to spare, boiling at its eye, or boiling before it. */
export type State = 'safe' | 'narrow' | 'cavitates' | 'broken';

export interface SuctionLadderModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own suction line, when the pad knows enough of it. */
  readonly own: Signal<SuctionLine | undefined>;
  readonly line: ReadonlySignal<SuctionLine>;
  readonly settings: ReadonlySignal<Settings>;
  readonly altitude: NumberControl;
  readonly temperature: NumberControl;
  readonly lift: NumberControl;
  readonly flow: NumberControl;
  /** Whether the strainer basket is full of leaves. */
  readonly basketFull: Signal<boolean>;
  readonly rungs: ReadonlySignal<Rungs>;
  readonly state: ReadonlySignal<State>;
  /** Flow at which the line would end at this absolute head [m3/s]. */
  flowForLine(head: number): number;
  reset(): void;
}

/** Margin above what the pump needs that is commonly wanted [m]: about 3 ft; common practice. */
export const usualMargin = 0.9144;
/** How many times its clean head a basket packed with leaves takes; invented. */
const packedBasket = 12;

/** No air on earth pushes water up this high [m]; a loss above it tells nothing more. */
const beyondAnyAir = 40;

/** Bounds of what can be set: more than any pool sees, within what the core knows. */
export const bounds = {
  altitude: { min: 0, max: 3000 },
  temperature: { min: 5, max: 40 },
  lift: { min: -1.83, max: 4.27 },
} as const;

function withBasket(parts: Circuit['suction'], basketId: string | undefined): CircuitPart[] {
  return parts.map((part) =>
    part.kind === 'equipment' && part.id === basketId
      ? { ...part, factor: part.factor * packedBasket }
      : part,
  );
}

function rungsOf(line: SuctionLine, settings: Settings, basketFull: boolean): Rungs {
  const { altitude, temperature, lift, flow } = settings;
  const liquid = water(temperature);
  const suction = basketFull ? withBasket(line.parts, line.basketId) : line.parts;
  const loss = Math.min(
    suctionHead({ suction, discharge: [], staticHead: 0, water: liquid }, flow),
    beyondAnyAir,
  );
  const atmosphere = atmosphericPressure(geopotentialAltitude(altitude));
  const required = line.required(flow);
  const available = npshAvailable({
    atmosphere,
    water: liquid,
    surfaceAbovePump: -lift,
    suctionLoss: loss,
  });
  const air = pressureHead(atmosphere, liquid.density);
  return {
    air,
    height: air - lift,
    line: air - lift - loss,
    eye: air - lift - loss - required,
    boils: pressureHead(liquid.vapourPressure, liquid.density),
    lift,
    loss,
    available,
    required,
    margin: npshMargin(available, required),
  };
}

function stateOf({ available, margin }: Rungs): State {
  if (available <= 0) return 'broken';
  if (margin < 0) return 'cavitates';
  return margin < usualMargin ? 'narrow' : 'safe';
}

/** The pressure on the way to the pump, step by step, against what the pump needs. */
export function createModel(example: SuctionLine): SuctionLadderModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<SuctionLine | undefined>(undefined);
  const basketFull = signal(false);
  // Whoever looks at the own pad and back finds each as it was left.
  const wished = signal<Partial<Record<Source, Settings>>>({});
  const line = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const settings = computed(() => wished.value[source.value] ?? line.value.opening);

  const dialOf = (
    name: keyof Settings,
    min: number,
    max: () => number,
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
      // What a pad says may lie beyond the usual; it is shown as it is.
      min: computed(() => Math.min(min, value.value)),
      max: computed(() => Math.max(max(), value.value)),
      step: computed(step),
    });
  };
  const { altitude, temperature, lift } = bounds;
  const rungs = computed(() =>
    rungsOf(line.value, settings.value, basketFull.value && line.value.basketId !== undefined),
  );
  return {
    units,
    source,
    own,
    line,
    settings,
    basketFull,
    altitude: dialOf(
      'altitude',
      altitude.min,
      () => altitude.max,
      () => roundStep('length', 150, units.value),
    ),
    temperature: dialOf(
      'temperature',
      temperature.min,
      () => temperature.max,
      () => roundStep('temperatureDifference', 1, units.value),
    ),
    lift: dialOf(
      'lift',
      lift.min,
      () => lift.max,
      () => roundStep('length', 0.31, units.value),
    ),
    flow: dialOf(
      'flow',
      0,
      () => line.value.greatestFlow,
      () => roundStep('flow', 7e-5, units.value),
    ),
    rungs,
    state: computed(() => stateOf(rungs.value)),
    flowForLine: (head) => {
      const full = basketFull.value && line.value.basketId !== undefined;
      const lineAt = (flow: number) => rungsOf(line.value, { ...settings.value, flow }, full).line;
      let [low, high] = [0, line.value.greatestFlow];
      for (let halving = 0; halving < 24; halving += 1) {
        const middle = (low + high) / 2;
        if (lineAt(middle) > head) low = middle;
        else high = middle;
      }
      return low;
    },
    reset: () => {
      source.value = 'example';
      basketFull.value = false;
      wished.value = {};
    },
  };
}
