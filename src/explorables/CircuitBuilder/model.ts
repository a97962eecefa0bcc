import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import type { Water } from '#core/water/water.ts';
import { evenly } from '#ui/charts/path.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import { roundStep } from '#ui/controls/roundStep.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';
import { foot, gallonPerMinute } from '#units/factors.ts';

/** Something the reader puts in or takes out, once or several times. */
export interface Piece {
  readonly id: string;
  readonly label: string;
  readonly side: 'suction' | 'discharge';
  readonly least: number;
  readonly most: number;
  /** How many there are to begin with. */
  readonly opening: number;
  /** The parts of so many of it; asked for at least one. */
  make(count: number): readonly CircuitPart[];
}

/** A pad to build on. */
export interface CircuitScene {
  readonly pieces: readonly Piece[];
  readonly water: Water;
  /** Height at which the water breaks free above the pool, to begin with [m]. */
  readonly lift: number;
  readonly greatestFlow: number;
}

/** How many of each piece, by its id; one that is not named stands as it opened. */
type Counts = Readonly<Record<string, number>>;

/** One state of a circuit. */
export interface Built {
  readonly counts: Counts;
  readonly lift: number;
}

/** What one piece takes of the head [m]. */
export interface PieceHead {
  readonly piece: Piece;
  readonly count: number;
  readonly head: number;
}

export interface HeadAt {
  readonly flow: number;
  readonly head: number;
}

/** The head at the flow that is set [m]. */
export interface Taken {
  readonly flow: number;
  readonly head: number;
  readonly suction: number;
  readonly lift: number;
  /** In the circuit to compare with. */
  readonly before: number;
  readonly atTwice: number;
}

export interface CircuitBuilderModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own circuit, when the pad describes one. */
  readonly own: Signal<CircuitScene | undefined>;
  readonly scene: ReadonlySignal<CircuitScene>;
  readonly flow: NumberControl;
  readonly lift: NumberControl;
  readonly line: ReadonlySignal<readonly HeadAt[]>;
  /** The circuit to compare with. */
  readonly keptLine: ReadonlySignal<readonly HeadAt[]>;
  readonly isKept: ReadonlySignal<boolean>;
  /** Head of the hardest circuit that can be built, at the greatest flow [m]. */
  readonly greatestHead: ReadonlySignal<number>;
  readonly here: ReadonlySignal<Taken>;
  /** Pieces that are in, in the order the water meets them. */
  readonly heads: ReadonlySignal<readonly PieceHead[]>;
  countOf(piece: Piece): number;
  setCount(id: string, count: number): void;
  /** Compares with the circuit as it stands from now on. */
  keep(): void;
  reset(): void;
}

const pointsOnLine = 61;
/** Highest lift that can be set [m]: twelve feet, or more where the pad has more. */
const usualLift = 12 * foot;

const countIn = (counts: Counts, piece: Piece) => counts[piece.id] ?? piece.opening;

/** The circuit of so many of each piece. */
export function circuitOf({ pieces, water }: CircuitScene, { counts, lift }: Built): Circuit {
  const partsOn = (side: Piece['side']) =>
    pieces
      .filter((piece) => piece.side === side && countIn(counts, piece) > 0)
      .flatMap((piece) => piece.make(countIn(counts, piece)));
  return {
    suction: partsOn('suction'),
    discharge: partsOn('discharge'),
    staticHead: lift,
    water,
  };
}

/** Head of a few parts alone, at a flow. */
function headOf(parts: readonly CircuitPart[], water: Water, flow: number): number {
  return compiledHead(
    compileCircuit({ suction: parts, discharge: [], staticHead: 0, water }),
    flow,
  );
}

/** What each piece takes, of those that are in. */
export function pieceHeads(scene: CircuitScene, { counts }: Built, flow: number): PieceHead[] {
  return scene.pieces.flatMap((piece) => {
    const count = countIn(counts, piece);
    if (count === 0) return [];
    return [{ piece, count, head: headOf(piece.make(count), scene.water, flow) }];
  });
}

/** Head at the greatest flow when each piece stands as it takes most; returns take most when fewest. */
function hardest({ pieces, water, greatestFlow }: CircuitScene): number {
  const taken = (piece: Piece, count: number) =>
    count === 0 ? 0 : headOf(piece.make(count), water, greatestFlow);
  return pieces.reduce(
    (sum, piece) =>
      sum +
      Math.max(...[piece.least, piece.opening, piece.most].map((count) => taken(piece, count))),
    0,
  );
}

/** A circuit put together piece by piece, and the curve that comes of it. */
export function createModel(example: CircuitScene, openingFlow: number): CircuitBuilderModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<CircuitScene | undefined>(undefined);
  const scene = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));
  // What is built stays with the pad it was built on.
  const builds = signal<Partial<Record<Source, Built>>>({});
  const keeps = signal<Partial<Record<Source, Built>>>({});
  const opened = computed<Built>(() => ({ counts: {}, lift: scene.value.lift }));
  const built = computed(() => builds.value[source.value] ?? opened.value);
  const kept = computed(() => keeps.value[source.value] ?? opened.value);
  const build = (change: Partial<Built>) => {
    builds.value = {
      ...builds.peek(),
      [source.peek()]: { ...built.peek(), ...change },
    };
  };

  const folded = computed(() => compileCircuit(circuitOf(scene.value, built.value)));
  const foldedKept = computed(() => compileCircuit(circuitOf(scene.value, kept.value)));
  const lineOf = (circuit: typeof folded) =>
    computed(() =>
      evenly(0, scene.value.greatestFlow, pointsOnLine).map((flow) => ({
        flow,
        head: compiledHead(circuit.value, flow),
      })),
    );

  const asked = signal(openingFlow);
  const flow = createNumberControl({
    value: computed(() => Math.min(asked.value, scene.value.greatestFlow)),
    set: (value) => {
      asked.value = value;
    },
    min: 0,
    max: computed(() => scene.value.greatestFlow),
    step: computed(() => roundStep('flow', gallonPerMinute, units.value)),
  });
  const lift = createNumberControl({
    value: computed(() => built.value.lift),
    set: (value) => build({ lift: value }),
    min: 0,
    max: computed(() => Math.max(usualLift, 2 * scene.value.lift)),
    step: computed(() => roundStep('length', foot, units.value)),
  });
  const heads = computed(() => pieceHeads(scene.value, built.value, flow.value.value));
  return {
    units,
    source,
    own,
    scene,
    flow,
    lift,
    line: lineOf(folded),
    keptLine: lineOf(foldedKept),
    isKept: computed(() => built.value === kept.value),
    greatestHead: computed(() => hardest(scene.value) + lift.max.value),
    here: computed(() => ({
      flow: flow.value.value,
      head: compiledHead(folded.value, flow.value.value),
      suction: heads.value.reduce(
        (sum, { piece, head }) => (piece.side === 'suction' ? sum + head : sum),
        0,
      ),
      lift: built.value.lift,
      before: compiledHead(foldedKept.value, flow.value.value),
      atTwice: compiledHead(folded.value, 2 * flow.value.value),
    })),
    heads,
    countOf: (piece) => countIn(built.value.counts, piece),
    setCount: (id, count) => {
      const piece = scene.peek().pieces.find((one) => one.id === id);
      if (piece === undefined || !Number.isInteger(count)) return;
      const within = Math.min(piece.most, Math.max(piece.least, count));
      build({ counts: { ...built.peek().counts, [id]: within } });
    },
    keep: () => {
      keeps.value = { ...keeps.peek(), [source.peek()]: built.peek() };
    },
    reset: () =>
      batch(() => {
        source.value = 'example';
        builds.value = {};
        keeps.value = {};
        flow.apply(openingFlow);
      }),
  };
}
