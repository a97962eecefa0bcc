/** The cheapest day of the reader's pad: what is asked of it, what was found, what it is worth. */
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { CheapestDay } from '#core/planner/cheapestDay.ts';
import type { SearchProgress } from '#core/planner/fewChanges.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import { type NeedPrice, needPrices } from '#core/planner/prices.ts';
import { usualDay, type WorkedDay, workOut } from '#dayPage/day/figures.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import {
  cheapestOn,
  type PlannerRequest,
  padBlocks,
  plannerInputsOf,
  reasoned,
  rowsOf,
  toBeSet,
} from '#dayPage/planning/plannerInputs.ts';
import type { PadBlock } from '#pad/document/schema.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import { createNumberControl, type NumberControl } from '#ui/controls/numberControl.ts';
import type { SearchNews } from './searchNews.ts';

/** How far the search with few changes has come. */
export type Searching =
  | { readonly kind: 'idle' }
  | { readonly kind: 'searching'; readonly progress: SearchProgress | null }
  | { readonly kind: 'calledOff' | 'failed' };

export type StartSearch = (
  inputs: CheapestDayInputs,
  tell: (news: SearchNews) => void,
) => () => void;

/** A need whose hours can be tried. */
export interface NeedDial {
  readonly need: NamedNeed;
  /** Minutes a day. */
  readonly dial: NumberControl;
}

export type FinderModel = ReturnType<typeof createFinder>;

/** Turnovers looked for where the pad names no target [-]; common practice, no source. */
const usualTurnovers = 1;

export function createFinder(day: DayModel, startSearch: StartSearch) {
  const { bench, date } = day;
  const target = computed(() => day.pad.value.turnoverTarget ?? usualTurnovers);
  const tried = signal<Readonly<Record<string, number>>>({});
  const triedTurnovers = signal<number | null>(null);
  const mayStop = signal(true);
  const mostChanges = signal<number | null>(null);

  // The same text while the speeds of the sheet stay, so that a drag in time works out no speed anew.
  const laidSpeeds = computed(() =>
    JSON.stringify([...new Set(day.pad.value.day.blocks.map(({ speed }) => speed))].sort()),
  );
  const rows = computed(() =>
    bench.value === null
      ? []
      : rowsOf(bench.value, JSON.parse(laidSpeeds.value) as readonly (number | null)[]),
  );
  const turnovers = computed(() => triedTurnovers.value ?? target.value);
  const wishes = computed<PlannerRequest>(() => ({
    minutes: tried.value,
    turnovers: turnovers.value,
    mayStop: mayStop.value,
    mostChanges: mostChanges.value,
  }));
  const asked = computed(() =>
    bench.value === null
      ? null
      : plannerInputsOf(bench.value, rows.value, date.value, wishes.value),
  );
  const searched = signal<CheapestDay | null>(null);
  const searching = signal<Searching>({ kind: 'idle' });
  const found: ReadonlySignal<CheapestDay | null> = computed(() => {
    if (asked.value === null || bench.value === null) return null;
    return mostChanges.value === null
      ? cheapestOn(bench.value, date.value, asked.value).found
      : searched.value;
  });
  const needsOnBench = computed(() => bench.value?.needs ?? []);
  const needs = computed<readonly NeedDial[]>(() =>
    needsOnBench.value.map((need) => ({
      need,
      dial: createNumberControl({
        value: computed(() => tried.value[need.id] ?? need.minutes),
        set: (minutes) => {
          tried.value = { ...tried.peek(), [need.id]: minutes };
        },
        min: 0,
        max: 1440,
        step: 15,
        page: 4,
      }),
    })),
  );
  const blocks = computed<readonly PadBlock[]>(() => {
    if (found.value?.kind !== 'found' || bench.value === null) return [];
    return padBlocks(found.value, bench.value.speeds.reference);
  });
  const worked = computed<WorkedDay | null>(() =>
    bench.value === null || blocks.value.length === 0
      ? null
      : workOut(bench.value, blocks.value, date.value),
  );
  const usual = computed<WorkedDay | null>(() =>
    bench.value === null ? null : workOut(bench.value, usualDay(bench.value), date.value),
  );
  const prices = computed<readonly NeedPrice[]>(() =>
    asked.value === null || found.value?.kind !== 'found' ? [] : needPrices(asked.value),
  );

  let callOff = (): void => {};
  function hear(news: SearchNews): void {
    if (news.kind === 'progress') searching.value = { kind: 'searching', progress: news.progress };
    else if (news.kind === 'failed') searching.value = { kind: 'failed' };
    else {
      searched.value = news.found;
      searching.value = { kind: 'idle' };
    }
  }

  return {
    day,
    asked,
    rows,
    found,
    blocks,
    worked,
    usual,
    prices,
    needs,
    mayStop,
    mostChanges,
    searching,
    turnovers: createNumberControl({
      value: turnovers,
      set: (wish) => {
        triedTurnovers.value = wish;
      },
      min: 0,
      max: computed(() => Math.max(6, Math.ceil(2 * target.value))),
      step: 0.1,
      page: 5,
    }),
    isTried: computed(() => triedTurnovers.value !== null || Object.keys(tried.value).length > 0),
    reset: () => {
      tried.value = {};
      triedTurnovers.value = null;
    },
    cancel: () => {
      callOff();
      searching.value = { kind: 'calledOff' };
    },
    /** To be called in an effect: searches anew whenever something asked for has changed. */
    follow: () =>
      effect(() => {
        const inputs = mostChanges.value === null ? null : asked.value;
        callOff();
        searched.value = null;
        searching.value = { kind: 'idle' };
        if (inputs === null) return;
        searching.value = { kind: 'searching', progress: null };
        callOff = startSearch(toBeSet(inputs), hear);
        return callOff;
      }),
    /** Lays the found day on the sheet; the one before is kept to compare with. */
    lay: () => {
      const laid = reasoned(blocks.peek(), worked.peek());
      day.store.edit(
        (now) => ({
          ...now,
          day: { ...now.day, oldBlocks: now.day.blocks, blocks: laid, compareWith: 'old' },
        }),
        'the cheapest day',
      );
    },
  };
}
