import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import {
  darcyWeisbach,
  frictionFactor,
  laminarLimit,
  smoothPlasticRoughness,
  turbulentLimit,
} from '#core/hydraulics/friction.ts';
import { hazenWilliams } from '#core/hydraulics/hazenWilliams.ts';
import { flowAtReynolds, meanVelocity, pipeSize, reynoldsNumber } from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import { roundStep } from '#ui/controls/roundStep.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, unitFor, us } from '#units/choice.ts';
import { toSI } from '#units/convert.ts';
import { gallonPerMinute } from '#units/factors.ts';

/** What the lesson asks for; all SI. */
export interface MoodyProps {
  /** Pipe sizes by id, the one looked at first. */
  readonly pipes: readonly string[];
  readonly flow: number;
  readonly greatestFlow: number;
  readonly temperature: number;
}

/** One run of pipe. */
export interface FrictionPipe {
  readonly id: string;
  readonly label: string;
  /** Inside diameter [m]. */
  readonly bore: number;
  /** Length [m]; that which losses are usually quoted for when left out. */
  readonly length?: number;
  /** Absolute roughness [m]. */
  readonly roughness: number;
  /** Part of the flow that goes through it [-]. */
  readonly share: number;
}

/** The pipes of a picture, and how much flows. */
export interface FrictionScene {
  readonly pipes: readonly FrictionPipe[];
  /** [degC] */
  readonly temperature: number;
  readonly greatestFlow: number;
}

export type Wall = 'plastic' | 'rusty';

/** Old galvanised steel, 0.15 mm (Moody 1944). */
export const rustyRoughness = 0.15e-3;
/** Hazen–Williams coefficient of new plastic pipe. */
export const plasticC = 150;
/** Where the picture begins; below it stands the same law of layered flow. */
export const leastReynolds = 600;

export type Regime = 'layered' | 'either' | 'turbulent';

/** What friction does at the flow that is set. */
export interface Friction {
  /** Flow through the pump, and in this pipe [m3/s]. */
  readonly flow: number;
  readonly inPipe: number;
  readonly velocity: number;
  readonly reynolds: number;
  readonly factor: number;
  readonly regime: Regime;
  readonly length: number;
  /** By Darcy–Weisbach [m]. */
  readonly loss: number;
  /** By Hazen–Williams [m]; it has no number for a wall that is not smooth plastic. */
  readonly hazen: number | undefined;
  /** How many times the loss with twice of one thing [-]. */
  readonly twice: { readonly flow: number; readonly length: number; readonly bore: number };
}

export interface MoodyModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own pipes, when the pad knows enough of them. */
  readonly own: Signal<FrictionScene | undefined>;
  readonly scene: ReadonlySignal<FrictionScene>;
  readonly chosen: ReadonlySignal<FrictionPipe>;
  readonly wall: Signal<Wall>;
  /** Roughness over bore of the pipe that is looked at [-]. */
  readonly relativeRoughness: ReadonlySignal<number>;
  readonly flow: NumberControl;
  readonly here: ReadonlySignal<Friction>;
  at(flow: number): Friction;
  flowAt(reynolds: number): number;
  choosePipe(id: string): void;
  chooseWall(wall: string): void;
  reset(): void;
}

export function regimeOf(reynolds: number): Regime {
  if (reynolds <= laminarLimit) return 'layered';
  return reynolds < turbulentLimit ? 'either' : 'turbulent';
}

function exampleScene({ pipes, temperature, greatestFlow }: MoodyProps): FrictionScene {
  const runs = pipes.map(pipeSize).map(({ id, label, bore }) => ({
    id,
    label,
    bore,
    roughness: smoothPlasticRoughness,
    share: 1,
  }));
  if (runs.length === 0) throw new RangeError('pipes is empty; name at least one pipe size.');
  return { pipes: runs, temperature, greatestFlow };
}

/** One run of pipe on the chart of friction factors. */
export function createModel(props: MoodyProps): MoodyModel {
  const example = exampleScene(props);
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<FrictionScene | undefined>(undefined);
  const scene = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const nu = computed(() => water(scene.value.temperature).kinematicViscosity);
  const wall = signal<Wall>('plastic');
  const asked = signal('');
  const chosen = computed(() => {
    const { pipes } = scene.value;
    const pipe = pipes.find(({ id }) => id === asked.value) ?? (pipes[0] as FrictionPipe);
    const rusty = source.value === 'example' && wall.value === 'rusty';
    return rusty ? { ...pipe, roughness: rustyRoughness } : pipe;
  });
  const quoted = computed(() => toSI('length', 100, unitFor(units.value, 'length')));

  const flowAt = (reynolds: number) =>
    flowAtReynolds(reynolds, chosen.value.bore, nu.value) / chosen.value.share;
  const at = (flow: number): Friction => {
    const { bore, roughness, share, length: own } = chosen.value;
    const inPipe = flow * share;
    const length = own || quoted.value;
    const velocity = meanVelocity(inPipe, bore);
    const reynolds = reynoldsNumber(velocity, bore, nu.value);
    const run = { flow: inPipe, bore, length, roughness, kinematicViscosity: nu.value };
    const loss = darcyWeisbach(run);
    const times = (change: Partial<typeof run>) => darcyWeisbach({ ...run, ...change }) / loss;
    const plastic = roughness === smoothPlasticRoughness;
    return {
      flow,
      inPipe,
      velocity,
      reynolds,
      factor: frictionFactor(reynolds, roughness / bore),
      regime: regimeOf(reynolds),
      length,
      loss,
      hazen: plastic ? hazenWilliams({ ...run, c: plasticC }) : undefined,
      twice: {
        flow: times({ flow: 2 * inPipe }),
        length: times({ length: 2 * length }),
        bore: times({ bore: 2 * bore }),
      },
    };
  };

  const least = computed(() => flowAt(leastReynolds));
  const greatest = computed(() => Math.max(scene.value.greatestFlow, 2 * least.value));
  const askedFlow = signal(props.flow);
  const value = computed(() => Math.min(Math.max(askedFlow.value, least.value), greatest.value));
  // Little flows are set finely, or the layered part of the picture could not be reached by keys.
  const fine = computed(() => value.value <= 5 * gallonPerMinute);
  const flow = createNumberControl({
    value,
    set: (wish) => {
      askedFlow.value = wish;
    },
    min: least,
    max: greatest,
    step: computed(() => roundStep('flow', (fine.value ? 0.1 : 1) * gallonPerMinute, units.value)),
  });
  return {
    units,
    source,
    own,
    scene,
    chosen,
    wall,
    relativeRoughness: computed(() => chosen.value.roughness / chosen.value.bore),
    flow,
    here: computed(() => at(value.value)),
    at,
    flowAt,
    choosePipe: (id) => {
      if (scene.value.pipes.some((pipe) => pipe.id === id)) asked.value = id;
    },
    chooseWall: (id) => {
      if (id === 'plastic' || id === 'rusty') wall.value = id;
    },
    reset: () => {
      source.value = 'example';
      wall.value = 'plastic';
      asked.value = '';
      flow.apply(props.flow);
    },
  };
}
