import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { ticks } from 'd3-array';
import { darcyWeisbach, smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { flowAtReynolds, flowAtVelocity, meanVelocity, pipeSize } from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import { evenly } from '#ui/charts/path.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, unitFor, us } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';

/** What the lesson asks for; all SI. */
export interface BoreVelocityProps {
  readonly pipes: readonly string[];
  readonly flow: number;
  readonly limit: number;
  readonly temperature: number;
}

/** One pipe to look at. */
export interface LookedPipe {
  readonly id: string;
  readonly label: string;
  /** Inside diameter [m]. */
  readonly bore: number;
  /** Part of the flow that goes through it [-]; 1 unless the water divides. */
  readonly share: number;
  /** Greatest velocity [m/s]. */
  readonly limit: number;
}

/** The pipes of a picture and the flows it spans. */
export interface BoreScene {
  readonly pipes: readonly LookedPipe[];
  /** [degC] */
  readonly temperature: number;
  readonly greatestFlow: number;
  /** Flow at the pump's slowest speed, where a pump is known [m3/s]. */
  readonly leastFlow?: number;
}

/** One flow through one pipe. */
export interface Run {
  readonly flow: number;
  readonly velocity: number;
  /** Head lost per metre of pipe [-]. */
  readonly gradient: number;
}

export interface PipeLine {
  readonly pipe: LookedPipe;
  readonly runs: readonly Run[];
}

/** Reynolds number from which a pipe is surely turbulent. */
const turbulentFrom = 4000;
const pointsOnLine = 61;

export interface BoreVelocityModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own pipes, when the pad knows enough of them. */
  readonly own: Signal<BoreScene | undefined>;
  readonly scene: ReadonlySignal<BoreScene>;
  readonly pipeId: ReadonlySignal<string>;
  readonly flow: NumberControl;
  readonly lines: ReadonlySignal<readonly PipeLine[]>;
  /** The same at flows that are round in the reader's unit, for the table. */
  readonly roundLines: ReadonlySignal<readonly PipeLine[]>;
  readonly chosen: ReadonlySignal<LookedPipe>;
  readonly here: ReadonlySignal<Run>;
  readonly flowAtLimit: ReadonlySignal<number>;
  readonly turbulentFlow: ReadonlySignal<number>;
  choosePipe(id: string): void;
  reset(): void;
}

function exampleScene({ pipes, limit, temperature }: BoreVelocityProps): BoreScene {
  const looked = pipes.map(pipeSize).map(({ id, label, bore }) => ({
    id,
    label,
    bore,
    share: 1,
    limit,
  }));
  if (looked.length === 0) throw new RangeError('pipes is empty; name at least one pipe size.');
  const widest = Math.max(...looked.map(({ bore }) => bore));
  return { pipes: looked, temperature, greatestFlow: 1.6 * flowAtVelocity(limit, widest) };
}

function run(pipe: LookedPipe, flow: number, kinematicViscosity: number): Run {
  const inPipe = flow * pipe.share;
  return {
    flow,
    velocity: meanVelocity(inPipe, pipe.bore),
    gradient: darcyWeisbach({
      flow: inPipe,
      bore: pipe.bore,
      length: 1,
      roughness: smoothPlasticRoughness,
      kinematicViscosity,
    }),
  };
}

/** Velocity and loss in pipes of one name and several bores, or in the reader's own. */
export function createModel(props: BoreVelocityProps): BoreVelocityModel {
  const example = exampleScene(props);
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<BoreScene | undefined>(undefined);
  const scene = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  const nu = computed(() => water(scene.value.temperature).kinematicViscosity);
  const linesAt = (flows: readonly number[]): readonly PipeLine[] =>
    scene.value.pipes.map((pipe) => ({
      pipe,
      runs: flows.map((flow) => run(pipe, flow, nu.value)),
    }));
  const lines = computed(() => linesAt(evenly(0, scene.value.greatestFlow, pointsOnLine)));
  const roundLines = computed(() => linesAt(roundFlows(scene.value.greatestFlow, units.value)));

  const asked = signal('');
  const chosen = computed(() => {
    const { pipes } = scene.value;
    return pipes.find(({ id }) => id === asked.value) ?? (pipes[0] as LookedPipe);
  });
  const askedFlow = signal(props.flow);
  const flow = createNumberControl({
    value: computed(() => Math.min(askedFlow.value, scene.value.greatestFlow)),
    set: (value) => {
      askedFlow.value = value;
    },
    min: 0,
    max: computed(() => scene.value.greatestFlow),
    // One whole unit of the reader's own for each key press.
    step: computed(() => flowStep(units.value)),
  });
  return {
    units,
    source,
    own,
    scene,
    pipeId: computed(() => chosen.value.id),
    flow,
    lines,
    roundLines,
    chosen,
    here: computed(() => run(chosen.value, flow.value.value, nu.value)),
    flowAtLimit: computed(
      () => flowAtVelocity(chosen.value.limit, chosen.value.bore) / chosen.value.share,
    ),
    turbulentFlow: computed(
      () => flowAtReynolds(turbulentFrom, chosen.value.bore, nu.value) / chosen.value.share,
    ),
    choosePipe: (id) => {
      if (scene.value.pipes.some((pipe) => pipe.id === id)) asked.value = id;
    },
    reset: () => {
      source.value = 'example';
      asked.value = '';
      flow.apply(props.flow);
    },
  };
}

/** About ten flows that are round in the reader's unit, so that a table can be worked out again from what it prints. */
function roundFlows(greatest: number, units: UnitChoice): readonly number[] {
  const unit = unitFor(units, 'flow');
  return ticks(0, fromSI('flow', greatest, unit), 10).map((flow) => toSI('flow', flow, unit));
}

/** A step of about a hundredth of a common flow, round in the reader's unit. */
function flowStep(units: UnitChoice): number {
  const unit = unitFor(units, 'flow');
  const aim = fromSI('flow', toSI('flow', 1, 'gpm'), unit);
  return toSI('flow', 10 ** Math.floor(Math.log10(aim) + 1e-9), unit);
}
