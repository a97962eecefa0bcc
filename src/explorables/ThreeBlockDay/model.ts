import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Block } from '#core/day/day.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';
import type { Setting, WorkedDay, Worker } from './bench.ts';

export const blockNames = ['high', 'middle', 'low'] as const;
export type BlockName = (typeof blockNames)[number];
type Each<Value> = Readonly<Record<BlockName, Value>>;

export interface ThreeBlockModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own pad, when it says enough. */
  readonly own: Signal<OwnDay | undefined>;
  /** What works the example out; not there until it has been fetched. */
  readonly worker: Signal<Worker | undefined>;
  readonly setting: ReadonlySignal<Setting>;
  /** When each block begins [min]; it ends where the next begins. */
  readonly begins: Each<NumberControl>;
  /** How fast each runs [rpm]. */
  readonly speeds: Each<NumberControl>;
  /** The pump stops instead of running low. */
  readonly stops: Signal<boolean>;
  readonly here: ReadonlySignal<WorkedDay>;
  /** Whether both lengths are those of the usual day. */
  readonly usual: ReadonlySignal<boolean>;
  reset(): void;
}

export interface OwnDay {
  readonly setting: Setting;
  readonly worker: Worker;
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
export function createModel(example: Setting, first: WorkedDay): ThreeBlockModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<OwnDay | undefined>(undefined);
  const worker = signal<Worker | undefined>(undefined);
  const mine = computed(() => (source.value === 'mine' ? own.value : undefined));
  const setting = computed(() => mine.value?.setting ?? example);

  const opened = (name: BlockName) => first.parts.find(({ block }) => block.id === name);
  const each = (value: (name: BlockName) => number): Each<number> => ({
    high: value('high'),
    middle: value('middle'),
    low: value('low'),
  });
  const openingBegins = each((name) => opened(name)?.block.start ?? 0);
  const opening = each((name) => Math.round(opened(name)?.speed ?? 0));
  const begin = {
    high: signal(openingBegins.high),
    middle: signal(openingBegins.middle),
    low: signal(openingBegins.low),
  };
  const beginDial = (name: BlockName, min: () => number, max: () => number) =>
    createNumberControl({
      value: begin[name],
      min: computed(min),
      max: computed(max),
      step: grid,
      page: 60 / grid,
    });
  const begins: Each<NumberControl> = {
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

  const least = computed(() => setting.value.speeds.least);
  const top = computed(() => setting.value.speeds.top);
  const asked = {
    high: signal(opening.high),
    middle: signal(opening.middle),
    low: signal(opening.low),
  };
  const speedDial = (name: BlockName) =>
    createNumberControl({
      value: computed(() => Math.min(Math.max(asked[name].value, least.value), top.value)),
      set: (value) => {
        asked[name].value = value;
      },
      min: least,
      max: top,
      step: speedStep,
    });
  const speeds: Each<NumberControl> = {
    high: speedDial('high'),
    middle: speedDial('middle'),
    low: speedDial('low'),
  };
  const stops = signal(false);

  const blocks = computed((): readonly Block[] =>
    blockNames.map((name, at) => {
      const next = blockNames[(at + 1) % blockNames.length] ?? 'high';
      const off = name === 'low' && stops.value;
      const ratio = off ? 0 : speeds[name].value.value / setting.value.speeds.reference;
      return { id: name, start: begin[name].value, end: begin[next].value, ratio };
    }),
  );
  return {
    units,
    source,
    own,
    worker,
    setting,
    begins,
    speeds,
    stops,
    here: computed(() => {
      const working = mine.value?.worker ?? worker.value;
      return working === undefined ? first : working(blocks.value);
    }),
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
