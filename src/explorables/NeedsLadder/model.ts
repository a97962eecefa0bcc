import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { crossedLimits, type Limit } from '#core/day/limits.ts';
import { type Need, type Rung, speedLadder } from '#core/day/needs.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { ratioForFlow } from '#core/pump/operatingPoint.ts';
import type { PumpPower } from '#core/pump/power.ts';
import type { PumpCurve } from '#core/pump/pump.ts';
import { type OperatingState, operatingStateAt } from '#explorables/example/machine.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';

/** A need with the name the reader knows it by. */
export interface NamedNeed extends Need {
  readonly name: string;
}

/** A pad with its needs and limits, from the lesson's example or from the reader's own. */
export interface Scene {
  readonly curve: PumpCurve;
  readonly circuit: Circuit;
  readonly power: PumpPower;
  readonly needs: readonly NamedNeed[];
  readonly limits: readonly Limit[];
  /** Flows marked on the covers that share the whole flow [m3/s]. */
  readonly covers: readonly number[];
  /** Speeds [rpm]. */
  readonly referenceSpeed: number;
  readonly leastSpeed: number;
  readonly topSpeed: number;
  readonly speedStep: number;
}

/** How a need fares at a speed; `never` is one that no allowed speed serves. */
export type Fate = 'served' | 'tooSlow' | 'tooFast' | 'never';

/** A need on the ladder. */
export interface Step {
  readonly need: NamedNeed;
  readonly rung: Rung;
  /** Where its rung hangs [rpm]; undefined when the pump has no such speed. */
  readonly speed: number | undefined;
}

/** A limit on the ladder. */
export interface Ceiling {
  readonly limit: Limit;
  /** Greatest speed that keeps it [rpm]; undefined when the pump never gets there. */
  readonly speed: number | undefined;
}

/** Ladder and ceilings of one scene. */
export interface Ladder {
  readonly scene: Scene;
  readonly steps: readonly Step[];
  readonly ceilings: readonly Ceiling[];
  /** The hard stop, on the speed step [rpm]; undefined when there is none within reach. */
  readonly stop: number | undefined;
  /** Fastest speed that may be set [rpm]; below the slowest when none may. */
  readonly fastest: number;
}

/** What one cover passes against what is marked on it [m3/s]. */
export interface CoverLoad {
  readonly flow: number;
  readonly marked: number;
  readonly blocked: boolean;
}

export interface NeedsLadderModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own pad, when it knows enough. */
  readonly own: Signal<Scene | undefined>;
  readonly ladder: ReadonlySignal<Ladder>;
  /** Whether any speed of the pump keeps every hard limit. */
  readonly mayRun: ReadonlySignal<boolean>;
  readonly speed: NumberControl;
  readonly here: ReadonlySignal<OperatingState>;
  readonly crossed: ReadonlySignal<readonly Limit[]>;
  readonly blocked: Signal<boolean>;
  readonly covers: ReadonlySignal<readonly CoverLoad[]>;
  fateOf(step: Step): Fate;
  reset(): void;
}

/** Flows this near are the same: that of a rung is found to about 1e-14. */
const near = 1e-9;

function speedForFlow(scene: Scene, flow: number): number | undefined {
  // A drop a second is as good as none.
  if (flow < near) return 0;
  const found = ratioForFlow(scene.curve, compileCircuit(scene.circuit), flow, {
    max: scene.topSpeed / scene.referenceSpeed,
  });
  return found.kind === 'found' ? found.ratio * scene.referenceSpeed : undefined;
}

/** The fastest speed that keeps a limit [rpm]; undefined where every speed does. */
function ceilingOf(scene: Scene, { greatestFlow, greatestRatio }: Limit): number | undefined {
  return greatestRatio === undefined
    ? speedForFlow(scene, greatestFlow)
    : greatestRatio * scene.referenceSpeed;
}

/** Builds the ladder: the slowest speed for each need, and the fastest that each limit lets be. */
export function ladderOf(scene: Scene): Ladder {
  const { referenceSpeed, leastSpeed, topSpeed, speedStep, limits } = scene;
  const rungs = speedLadder({
    ...scene,
    minRatio: leastSpeed / referenceSpeed,
    maxRatio: topSpeed / referenceSpeed,
    ratioStep: speedStep / referenceSpeed,
  });
  const ceilings = limits.map((limit) => ({
    limit,
    speed: ceilingOf(scene, limit),
  }));
  const hard = ceilings.flatMap(({ limit, speed }) =>
    limit.hard && speed !== undefined ? [Math.floor(speed / speedStep + 1e-7) * speedStep] : [],
  );
  const stop = hard.length === 0 ? undefined : Math.min(...hard);
  const steps = scene.needs.flatMap((need, place): Step[] => {
    const rung = rungs[place];
    if (rung === undefined) return [];
    if (rung.kind === 'served') return [{ need, rung, speed: rung.ratio * referenceSpeed }];
    const exact = speedForFlow(scene, need.leastFlow);
    const speed = exact === undefined ? exact : Math.ceil(exact / speedStep - 1e-7) * speedStep;
    return [{ need, rung, speed }];
  });
  return { scene, steps, ceilings, stop, fastest: Math.min(topSpeed, stop ?? topSpeed) };
}

function loadsOf(marks: readonly number[], flow: number, blocked: boolean): CoverLoad[] {
  const open = blocked && marks.length > 1 ? marks.length - 1 : marks.length;
  return marks.map((marked, place) => {
    const shut = place >= open;
    return { flow: shut ? 0 : flow / open, marked, blocked: shut };
  });
}

/** A speed to be dragged up a ladder of needs, under ceilings, as far as the hard stop. */
export function createModel(example: Scene, opening: number): NeedsLadderModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<Scene | undefined>(undefined);
  const blocked = signal(true);
  const asked = signal(opening);
  const ladder = computed(() =>
    ladderOf(source.value === 'mine' ? (own.value ?? example) : example),
  );
  const least = computed(() => ladder.value.scene.leastSpeed);
  const mayRun = computed(() => ladder.value.fastest >= least.value);
  const most = computed(() => Math.max(ladder.value.fastest, least.value));
  // The hard stop is the end of the dial: no hand, key or typed number gets past it.
  const within = computed(() => Math.min(Math.max(asked.value, least.value), most.value));
  const speed = createNumberControl({
    value: within,
    set: (next) => {
      asked.value = next;
    },
    min: least,
    max: most,
    step: computed(() => ladder.value.scene.speedStep),
  });
  const here = computed(() => {
    const { scene } = ladder.value;
    const { curve, power, referenceSpeed, leastSpeed, topSpeed } = scene;
    const circuit = compileCircuit(scene.circuit);
    return operatingStateAt(
      { curve, circuit, power, referenceSpeed, leastSpeed, topSpeed },
      within.value,
    );
  });
  return {
    units,
    source,
    own,
    ladder,
    mayRun,
    speed,
    here,
    crossed: computed(() => {
      const { limits, referenceSpeed } = ladder.value.scene;
      return crossedLimits(limits, here.value.flow, within.value / referenceSpeed);
    }),
    blocked,
    covers: computed(() => loadsOf(ladder.value.scene.covers, here.value.flow, blocked.value)),
    fateOf: ({ need, rung }) => {
      if (rung.kind === 'unreachable') return 'never';
      if (!mayRun.value) return 'never';
      const { flow } = here.value;
      if (flow < need.leastFlow * (1 - near)) return 'tooSlow';
      return flow > (need.greatestFlow ?? Number.POSITIVE_INFINITY) * (1 + near)
        ? 'tooFast'
        : 'served';
    },
    reset: () => {
      source.value = 'example';
      blocked.value = true;
      asked.value = opening;
    },
  };
}
