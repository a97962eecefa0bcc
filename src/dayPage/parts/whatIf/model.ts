/** One input of the pad over a range: the price of its cheapest day, and the plan at one value. */
import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { Limit } from '#core/day/limits.ts';
import type { CheapestDay } from '#core/planner/cheapestDay.ts';
import type { CheapestDayInputs, SpeedRow } from '#core/planner/inputs.ts';
import { type Sweep, type SweptDay, sweepSteps } from '#core/planner/sweep.ts';
import { ruleOn } from '#core/tariff/tariff.ts';
import { type Bench, type WorkedDay, workOut } from '#dayPage/day/figures.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import { cheapestOn, plannerInputsOf, rowsOf } from '#dayPage/planning/plannerInputs.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { withoutOverlap } from '#pad/model/assembleDay.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import { createNumberControl } from '#ui/controls/numberControl.ts';
import type { RunSteps } from './slices.ts';
import { type Changed, type Ground, type Sweepable, sweepablesOf } from './sweepables.ts';

export type WhatIfModel = ReturnType<typeof createWhatIf>;

/** The plan at one value. */
export interface Looked {
  readonly value: number;
  readonly changed: Changed;
  readonly day: CheapestDay | null;
  /** The reader's own day at that value. */
  readonly own: OwnDay | null;
}

/** The reader's own day at a value. */
export interface OwnDay {
  readonly value: number;
  /** Price of its energy. */
  readonly cost: number;
  /** Whether it gives all that is asked and crosses nothing. */
  readonly keeps: boolean;
}

/** Turnovers asked for where the pad names no target [-]; common practice, no source. */
const usualTurnovers = 1;

/** `pad` follows the reader's pad when it has kept still for a moment: a sweep is a hundred days of work. */
export function createWhatIf(day: DayModel, pad: ReadonlySignal<Pad>, run: RunSteps) {
  const ground = groundOf(day, pad);
  const chosenId = signal<string | null>(null);
  const looked = signal<{ readonly id: string; readonly value: number } | null>(null);
  const swept = signal<{ readonly of: Sweepable; readonly sweep: Sweep | null } | null>(null);

  const offers = computed<readonly Sweepable[]>(() =>
    ground.value === null ? [] : sweepablesOf(ground.value),
  );
  const chosen = computed(
    () => offers.value.find(({ id }) => id === chosenId.value) ?? offers.value[0] ?? null,
  );
  /** Everything known of the chosen input by value, kept while it stays chosen. */
  const known = computed(() =>
    ground.value === null || chosen.value === null ? null : lookup(ground.value, chosen.value),
  );
  const owned = signal<{ readonly of: Sweepable; readonly days: readonly OwnDay[] } | null>(null);
  const isSwept = computed(() => swept.value !== null && swept.value.of === chosen.value);
  const isDone = computed(() => isSwept.value && owned.value?.of === chosen.value);
  const sweep = computed(() => (isDone.value ? (swept.value?.sweep ?? null) : null));

  const value = computed(() => {
    const input = chosen.value;
    if (input === null) return 0;
    if (looked.value?.id !== input.id) return input.present;
    const [first = 0, last = 0] = [input.values[0], input.values.at(-1)];
    return Math.min(last, Math.max(first, looked.value.value));
  });
  const blocks = computed(() => withoutOverlap(pad.value.day.blocks));
  const ownAt = (at: number, mine = blocks.value, date = day.date.value): OwnDay | null => {
    const changed = known.value?.changedAt(at) ?? null;
    if (changed === null || mine.length === 0) return null;
    const worked = unlessRefused(() => workOut(changed.bench, mine, date));
    if (worked === null || worked.prices === null) return null;
    const keeps = keepsAll(worked, changed.turnovers);
    return { value: at, cost: worked.prices.day.energyCost, keeps };
  };
  const own = computed<readonly OwnDay[]>(() => (isDone.value ? (owned.value?.days ?? []) : []));
  const lookAt = (at: number): Looked | null => {
    const changed = known.value?.changedAt(at) ?? null;
    if (changed === null || known.value === null) return null;
    return { value: at, changed, day: known.value.dayAt(at), own: ownAt(at) };
  };
  const present = computed(() => (chosen.value === null ? null : lookAt(chosen.value.present)));

  return {
    day,
    units: day.units,
    currency: day.currency,
    offers,
    chosen,
    choose: (id: string) => {
      chosenId.value = id;
    },
    isDone,
    sweep,
    /** Whether no value in the whole range has a day. */
    isBarren: computed(
      () => sweep.value?.days.every(({ day: each }) => each?.kind !== 'found') ?? false,
    ),
    own,
    lookAt,
    here: computed(() => (chosen.value === null ? null : lookAt(value.value))),
    present,
    /** Prices of the day as the plan names them by their place, as they are today. */
    bandsOfDay: computed(() => {
      const tariff = ground.value?.bench.tariff ?? null;
      return tariff === null ? [] : ruleOn(tariff, day.date.value).dayType.bands;
    }),
    /** The cheapest day with so much more of the input as the finding prices; null where that is out of range. */
    more: computed<CheapestDay | null>(() => {
      const input = chosen.value;
      if (input === null || known.value === null) return null;
      const at = input.present + input.more;
      const within = at >= (input.values[0] ?? 0) && at <= (input.values.at(-1) ?? 0);
      return within ? known.value.dayAt(at) : null;
    }),
    /** Days of the curve, with those that were worked out on the way to a change. */
    curve: computed(() => (sweep.value === null ? [] : curveOf(sweep.value))),
    dial: createNumberControl({
      value,
      set: (next) => {
        const id = chosen.peek()?.id;
        if (id !== undefined) looked.value = { id, value: next };
      },
      min: computed(() => chosen.value?.values[0] ?? 0),
      max: computed(() => chosen.value?.values.at(-1) ?? 1),
      step: computed(() => chosen.value?.step ?? 1),
      page: 5,
    }),
    isElsewhere: computed(() => chosen.value !== null && value.value !== chosen.value.present),
    back: () => {
      looked.value = null;
    },
    /** Fastest speed over reference of any plan in the range, so that the strip keeps its scale. */
    fastest: computed(() =>
      Math.max(
        0.01,
        ...(sweep.value?.days ?? []).flatMap(({ day: each }) =>
          each?.kind === 'found' ? each.blocks.map(({ ratio }) => ratio) : [],
        ),
      ),
    ),
    /** To be called in an effect: sweeps anew whenever the input or the pad beneath it has changed. */
    follow: () => {
      const sweeping = effect(() => {
        const [input, at] = [chosen.value, known.value];
        if (input === null || at === null) return;
        const { values, narrowTo } = input;
        const steps = sweepSteps({ values, inputsAt: at.inputsAt, narrowTo });
        return run(steps, (result) => {
          swept.value = { of: input, sweep: result };
        });
      });
      // The reader's own day changes with its blocks, which the sweep does not stand on.
      const ownDays = effect(() => {
        const input = chosen.value;
        if (input === null || !isSwept.value) return;
        // Read here, since the steps are taken later, when nobody follows any more.
        const [mine, date] = [blocks.value, day.date.value];
        const steps = ownSteps(input.values, (at) => untracked(() => ownAt(at, mine, date)));
        return run(steps, (days) => {
          owned.value = { of: input, days: days ?? [] };
        });
      });
      return () => {
        sweeping();
        ownDays();
      };
    },
  };
}

function* ownSteps(
  values: readonly number[],
  ownAt: (value: number) => OwnDay | null,
): Generator<number, readonly OwnDay[]> {
  const days: OwnDay[] = [];
  for (const value of values) {
    const day = ownAt(value);
    if (day !== null) days.push(day);
    yield days.length;
  }
  return days;
}

/** The pad as it is; the same object as long as nothing that a sweep stands on has changed. */
function groundOf(day: DayModel, pad: ReadonlySignal<Pad>): ReadonlySignal<Ground | null> {
  const model = computed(() => padModel(pad.value));
  const running = computed(() => model.value.running);
  const fit = computed(() => model.value.fit);
  const speeds = computed(() => model.value.speeds);
  const needs = computed(() => model.value.needs);
  const limits = computed<readonly Limit[]>(() => model.value.limits);
  const quiet = computed(() => model.value.quiet);
  const tariff = computed(() => model.value.tariff);
  const volume = computed(() => model.value.volume);
  const standbyPower = computed(() => model.value.standbyPower);
  const priming = computed(() => model.value.priming);
  const plumbing = computed(() => pad.value.plumbing);
  const given = computed(() => pad.value.limits);
  const site = computed(() => pad.value.site);
  const turnovers = computed(() => pad.value.turnoverTarget ?? usualTurnovers);
  return computed(() => {
    if (running.value === null || fit.value === null || speeds.value === null) return null;
    if (tariff.value === null || volume.value === null) return null;
    const bench: Bench = {
      speeds: speeds.value,
      pointAt: running.value.runningAt,
      volume: volume.value,
      needs: needs.value,
      limits: limits.value,
      quiet: quiet.value,
      tariff: tariff.value,
      standbyPower: standbyPower.value,
      priming: priming.value,
    };
    return {
      bench,
      running: running.value,
      fit: fit.value,
      pad: { plumbing: plumbing.value, limits: given.value, site: site.value },
      date: day.date.value,
      turnovers: turnovers.value,
    };
  });
}

/** What is known of an input at each of its values, worked out once. */
function lookup({ date }: Ground, input: Sweepable) {
  const rows = new WeakMap<Bench['pointAt'], readonly SpeedRow[]>();
  const rowsFor = (bench: Bench): readonly SpeedRow[] => {
    const kept = rows.get(bench.pointAt) ?? rowsOf(bench);
    rows.set(bench.pointAt, kept);
    return kept;
  };
  const changedAt = keyed((value) => unlessRefused(() => input.at(value)));
  const inputsAt = (value: number): CheapestDayInputs | null => {
    const changed = changedAt(value);
    if (changed === null) return null;
    const { bench, turnovers } = changed;
    const wishes = { minutes: {}, turnovers, mayStop: true, mostChanges: null };
    return unlessRefused(() => plannerInputsOf(bench, rowsFor(bench), date, wishes));
  };
  const dayAt = keyed((value): CheapestDay | null => {
    const inputs = inputsAt(value);
    const changed = changedAt(value);
    if (inputs === null || changed === null) return null;
    return unlessRefused(() => cheapestOn(changed.bench, date, inputs).found);
  });
  return { changedAt, inputsAt, dayAt };
}

function keyed<Result>(work: (value: number) => Result): (value: number) => Result {
  const kept = new Map<number, Result>();
  return (value) => {
    const found = kept.get(value);
    if (found !== undefined) return found;
    const result = work(value);
    kept.set(value, result);
    return result;
  };
}

function keepsAll({ report, turnovers }: WorkedDay, wanted: number): boolean {
  const short = report.needs.some(({ met }) => !met);
  const crosses = report.crossings.length + report.quietCrossings.length > 0;
  return !short && !crosses && (turnovers ?? 0) >= wanted * (1 - 1e-9);
}

function curveOf({ days, changes }: Sweep): readonly SweptDay[] {
  const beside = changes.flatMap(({ before, after }) => [before, after]);
  const byValue = new Map([...beside, ...days].map((each) => [each.value, each]));
  return [...byValue.values()].sort((one, other) => one.value - other.value);
}
