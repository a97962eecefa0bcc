import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import { type Block, usualThreeBlockDay } from '#core/day.ts';
import { type UnitChoice, us } from '#units/choice.ts';
import { createDial, type Dial } from '#widgets/kit/dial.ts';
import type { Source } from '#widgets/kit/Figure.tsx';
import type { Bench } from './bench.ts';
import { type WorkedDay, workOut } from './figures.ts';

export const blockNames = ['high', 'middle', 'low'] as const;
export type BlockName = (typeof blockNames)[number];
type Each<Value> = Readonly<Record<BlockName, Value>>;

export interface ThreeBlockModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own bench, when the pad knows enough. */
  readonly own: Signal<Bench | undefined>;
  readonly bench: ReadonlySignal<Bench>;
  /** When each block begins [min]; it ends where the next begins. */
  readonly begins: Each<Dial>;
  /** How fast each runs [rpm]. */
  readonly speeds: Each<Dial>;
  /** The pump stops instead of running low. */
  readonly stops: Signal<boolean>;
  readonly here: ReadonlySignal<WorkedDay>;
  /** Whether both lengths are those of the usual day. */
  readonly usual: ReadonlySignal<boolean>;
  reset(): void;
}

/** Least length of a block, and the grid its ends lie on [min]. */
const shortest = 60;
const grid = 15;
const lastBegin = 1440 - grid;
/** Speeds go by this [rpm]. */
const speedStep = 10;

/** Lengths of the usual day [min]; common practice, no source. */
const usualLengths = { high: [120, 240], middle: [240, 480] } as const;

const within = (value: number, [least, greatest]: readonly [number, number]) =>
  value >= least && value <= greatest;

/** Three blocks that cover the clock: two by day, the third over midnight to the first. */
export function createModel(example: Bench, opening: Each<number>): ThreeBlockModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<Bench | undefined>(undefined);
  const bench = computed(() => (source.value === 'mine' ? (own.value ?? example) : example));

  const [usualHigh, usualMiddle, usualLow] = usualThreeBlockDay({ high: 1, middle: 1, low: 1 });
  const openingBegins: Each<number> = {
    high: usualHigh?.start ?? 0,
    middle: usualMiddle?.start ?? 0,
    low: usualLow?.start ?? 0,
  };
  const begin = {
    high: signal(openingBegins.high),
    middle: signal(openingBegins.middle),
    low: signal(openingBegins.low),
  };
  const beginDial = (name: BlockName, min: () => number, max: () => number) =>
    createDial({
      value: begin[name],
      min: computed(min),
      max: computed(max),
      step: grid,
      page: 60 / grid,
    });
  const begins: Each<Dial> = {
    high: beginDial(
      'high',
      () => Math.max(0, begin.low.value - 1440 + shortest),
      () => begin.middle.value - shortest,
    ),
    middle: beginDial(
      'middle',
      () => begin.high.value + shortest,
      () => begin.low.value - shortest,
    ),
    low: beginDial(
      'low',
      () => begin.middle.value + shortest,
      () => Math.min(lastBegin, begin.high.value + 1440 - shortest),
    ),
  };

  const least = computed(() => bench.value.speeds.least);
  const top = computed(() => bench.value.speeds.top);
  const asked = {
    high: signal(opening.high),
    middle: signal(opening.middle),
    low: signal(opening.low),
  };
  const speedDial = (name: BlockName) =>
    createDial({
      value: computed(() => Math.min(Math.max(asked[name].value, least.value), top.value)),
      set: (value) => {
        asked[name].value = value;
      },
      min: least,
      max: top,
      step: speedStep,
    });
  const speeds: Each<Dial> = {
    high: speedDial('high'),
    middle: speedDial('middle'),
    low: speedDial('low'),
  };
  const stops = signal(false);

  const blocks = computed((): readonly Block[] =>
    blockNames.map((name, at) => {
      const next = blockNames[(at + 1) % blockNames.length] ?? 'high';
      const off = name === 'low' && stops.value;
      const ratio = off ? 0 : speeds[name].value.value / bench.value.speeds.reference;
      return { id: name, start: begin[name].value, end: begin[next].value, ratio };
    }),
  );
  return {
    units,
    source,
    own,
    bench,
    begins,
    speeds,
    stops,
    here: computed(() => workOut(bench.value, blocks.value)),
    usual: computed(
      () =>
        within(begin.middle.value - begin.high.value, usualLengths.high) &&
        within(begin.low.value - begin.middle.value, usualLengths.middle),
    ),
    reset: () => {
      source.value = 'example';
      stops.value = false;
      for (const name of blockNames) {
        begin[name].value = openingBegins[name];
        speeds[name].apply(opening[name]);
      }
    },
  };
}
