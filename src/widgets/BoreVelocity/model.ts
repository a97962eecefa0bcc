import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { evenly } from '#charts/path.ts';
import { darcyWeisbach, smoothPlasticRoughness } from '#core/friction.ts';
import {
  flowAtReynolds,
  flowAtVelocity,
  meanVelocity,
  type PipeSize,
  pipeSize,
} from '#core/pipe.ts';
import { water } from '#core/water.ts';
import { type UnitChoice, unitFor, us } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';
import { createDial, type Dial } from '#widgets/kit/dial.ts';

/** What the lesson asks for; all SI. */
export interface BoreVelocityProps {
  readonly pipes: readonly string[];
  readonly flow: number;
  readonly limit: number;
  readonly temperature: number;
}

/** One flow through one pipe. */
export interface Run {
  readonly flow: number;
  readonly velocity: number;
  /** Head lost per metre of pipe [-]. */
  readonly gradient: number;
}

export interface PipeLine {
  readonly pipe: PipeSize;
  readonly runs: readonly Run[];
}

/** Reynolds number from which a pipe is surely turbulent. */
const turbulentFrom = 4000;
const pointsOnLine = 61;

export interface BoreVelocityModel {
  readonly units: Signal<UnitChoice>;
  readonly pipeId: ReadonlySignal<string>;
  readonly flow: Dial;
  readonly lines: readonly PipeLine[];
  readonly chosen: ReadonlySignal<PipeSize>;
  readonly here: ReadonlySignal<Run>;
  readonly limit: number;
  readonly greatestFlow: number;
  readonly flowAtLimit: ReadonlySignal<number>;
  readonly turbulentFlow: ReadonlySignal<number>;
  readonly temperature: number;
  choosePipe(id: string): void;
  reset(): void;
}

/** Velocity and loss in pipes of one name and several bores. */
export function createModel(props: BoreVelocityProps): BoreVelocityModel {
  const { limit, temperature } = props;
  const nu = water(temperature).kinematicViscosity;
  const pipes = props.pipes.map(pipeSize);
  const first = pipes[0];
  if (first === undefined) throw new RangeError('pipes is empty; name at least one pipe size.');

  const run = (pipe: PipeSize, flow: number): Run => ({
    flow,
    velocity: meanVelocity(flow, pipe.bore),
    gradient: darcyWeisbach({
      flow,
      bore: pipe.bore,
      length: 1,
      roughness: smoothPlasticRoughness,
      kinematicViscosity: nu,
    }),
  });
  const widest = pipes.reduce((a, b) => (b.bore > a.bore ? b : a), first);
  const greatestFlow = 1.6 * flowAtVelocity(limit, widest.bore);
  const lines = pipes.map((pipe) => ({
    pipe,
    runs: evenly(0, greatestFlow, pointsOnLine).map((flow) => run(pipe, flow)),
  }));

  const units = signal<UnitChoice>(us);
  const pipeId = signal(first.id);
  const flow = createDial({
    value: signal(props.flow),
    min: 0,
    max: greatestFlow,
    // One whole unit of the reader's own for each key press.
    step: computed(() => flowStep(units.value)),
  });
  const chosen = computed(() => pipes.find((pipe) => pipe.id === pipeId.value) ?? first);
  return {
    units,
    pipeId,
    flow,
    lines,
    chosen,
    here: computed(() => run(chosen.value, flow.value.value)),
    limit,
    greatestFlow,
    temperature,
    flowAtLimit: computed(() => flowAtVelocity(limit, chosen.value.bore)),
    turbulentFlow: computed(() => flowAtReynolds(turbulentFrom, chosen.value.bore, nu)),
    choosePipe: (id) => {
      if (pipes.some((pipe) => pipe.id === id)) pipeId.value = id;
    },
    reset: () => {
      pipeId.value = first.id;
      flow.apply(props.flow);
    },
  };
}

/** A step of about a hundredth of a common flow, round in the reader's unit. */
function flowStep(units: UnitChoice): number {
  const unit = unitFor(units, 'flow');
  const aim = fromSI('flow', toSI('flow', 1, 'gpm'), unit);
  return toSI('flow', 10 ** Math.floor(Math.log10(aim) + 1e-9), unit);
}
