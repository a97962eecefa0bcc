/** The answers to a pad: one speed to set, and everything that follows from pad and speed. */
import { batch, computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { CalendarDate } from '#core/time/calendar.ts';
import type { Pad } from '#pad/document/schema.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import { pricedDate } from '#pad/model/someDay.ts';
import type { PadStore } from '#pad/store/store.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { UnitChoice } from '#units/choice.ts';
import {
  type HeadPiece,
  type Here,
  headPieces,
  hereAt,
  type LadderRung,
  type LimitRow,
  limitRows,
  type Prices,
  pricesOn,
  rungsOf,
} from './figures.ts';
import { leastSpecificEnergySpeed, type Scene, sceneOf, settable } from './scene.ts';

export interface AnswersModel {
  readonly pad: ReadonlySignal<Pad>;
  readonly units: ReadonlySignal<UnitChoice>;
  /** Null while the pad says too little. */
  readonly scene: ReadonlySignal<Scene | null>;
  readonly speed: NumberControl;
  /** What the speed gives; null while the pad says too little. */
  readonly here: ReadonlySignal<Here | null>;
  readonly pieces: ReadonlySignal<readonly HeadPiece[]>;
  readonly rungs: ReadonlySignal<readonly LadderRung[]>;
  readonly limits: ReadonlySignal<readonly LimitRow[]>;
  /** Null while there is no sound tariff. */
  readonly prices: ReadonlySignal<Prices | null>;
  /** Speed with the most water for the energy, and what it gives. */
  readonly leastEnergy: ReadonlySignal<Here | null>;
  /** To be called in an effect after mount: follows the pad until called off. */
  follow(store: PadStore): () => void;
}

/** How long a pad keeps still before it is worked out anew, so that typing stays quick [ms]. */
const settleAfter = 120;

function todayByClock(): CalendarDate {
  const now = new Date();
  return { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() };
}

/** Where the picture opens: at the fastest rung of the ladder, else half way. */
function openingSpeed(scene: Scene, rungs: readonly LadderRung[]): number {
  const rung = rungs.find(({ kind }) => kind === 'served');
  if (rung?.kind === 'served') return rung.here.speed;
  return settable(scene, (scene.speeds.least + scene.speeds.top) / 2);
}

export function createAnswers(first: Pad): AnswersModel {
  const pad = signal(first);
  const today = signal<CalendarDate | null>(null);
  const asked = signal<number | null>(null);

  const scene = computed(() => sceneOf(pad.value));
  const rungs = computed(() => {
    const now = scene.value;
    return now === null ? [] : (unlessRefused(() => rungsOf(now)) ?? []);
  });
  const chosen = computed(() => {
    if (scene.value === null) return 0;
    const { least, top } = scene.value.speeds;
    const wish = asked.value ?? openingSpeed(scene.value, rungs.value);
    return Math.min(Math.max(wish, least), top);
  });
  const speed = createNumberControl({
    value: chosen,
    min: computed(() => scene.value?.speeds.least ?? 0),
    max: computed(() => scene.value?.speeds.top ?? 0),
    step: computed(() => scene.value?.step ?? 1),
    set: (wish) => {
      asked.value = wish;
    },
  });
  const at = (wish: number | null): Here | null => {
    const now = scene.value;
    return now === null || wish === null ? null : unlessRefused(() => hereAt(now, wish));
  };
  const here = computed(() => at(chosen.value));

  return {
    pad,
    units: computed(() => pad.value.units),
    scene,
    speed,
    here,
    rungs,
    pieces: computed(() => {
      const [now, point] = [scene.value, here.value];
      return now === null || point === null ? [] : headPieces(now, point);
    }),
    limits: computed(() => {
      const now = scene.value;
      return now === null ? [] : (unlessRefused(() => limitRows(now)) ?? []);
    }),
    prices: computed(() => {
      const tariff = scene.value?.known.tariff ?? null;
      if (tariff === null) return null;
      const date = pricedDate(pad.value.day.date, today.value ?? undefined);
      return unlessRefused(() => pricesOn(tariff, date));
    }),
    leastEnergy: computed(() =>
      at(scene.value === null ? null : leastSpecificEnergySpeed(scene.value)),
    ),
    follow: (store) => {
      const disconnect = store.connect();
      let timer: ReturnType<typeof setTimeout> | undefined;
      batch(() => {
        today.value = todayByClock();
        pad.value = store.pad.peek();
      });
      const stop = effect(() => {
        const next = store.pad.value;
        clearTimeout(timer);
        timer = setTimeout(() => {
          pad.value = next;
        }, settleAfter);
      });
      return () => {
        clearTimeout(timer);
        stop();
        disconnect();
      };
    },
  };
}
