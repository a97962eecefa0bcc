/** How sure the reader's day is: its bands, its trial pads, and what would make it surer. */
import { computed, effect, type ReadonlySignal, signal, untracked } from '@preact/signals';
import type { Limit } from '#core/day/limits.ts';
import type { Instrument, SettledPad } from '#core/fit/padEvidence.ts';
import type { Band } from '#core/numerics/band.ts';
import {
  type AnswerBand,
  type DayAnswer,
  type DayTrial,
  dayBands,
  dayQuestions,
  dayTrial,
  trialSummary,
  type UncertainDay,
} from '#core/uncertainty/dayBands.ts';
import {
  type AnswerNarrowing,
  monteCarloSamples,
  partingOf,
  uncertaintyOf,
} from '#core/uncertainty/uncertainty.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import { openFrost } from '#dayPage/day/openFrost.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { coreBlocks } from '#pad/model/assembleDay.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import { limitsWith } from '#pad/model/trialLimits.ts';
import { inSlices } from './slices.ts';
import { yearBand } from './yearBand.ts';

/** How many trial pads are asked, and how many of them are drawn. */
export const trialCount = 1000;
export const drawnTrials = 200;
/** Any would do; a fixed one gives the same pad the same picture each time. */
const seed = 20_270_714;
/** Bands that part by more than this share of their width are said to part: five times what chance does. */
const noticed = 0.1;
/** Slowest speed over reference speed at which the core takes a reading [-]. */
const leastRead = 0.05;
/** A reading that narrows by less than this share is not worth the walk. */
const worthIt = 0.05;

/** One answer of the day as it is drawn and told. */
export interface Shown extends AnswerBand {
  readonly of: DayAnswer;
  /** Band of the trial pads; null until they have been asked. */
  readonly trial: Band | null;
  /** Whether the trials part from the slopes so far that only they can be believed. */
  readonly parts: boolean;
  /** The band to be told. */
  readonly told: Band;
  /** What the drawn trial pads answer. */
  readonly dots: readonly number[];
}

/** A reading that could be taken, with the band it would leave. */
export interface Next {
  readonly instrument: Instrument;
  /** [rpm] */
  readonly speed: number;
  readonly band: Band;
  /** Width after over width before [-]. */
  readonly left: number;
}

/** A need or limit, and in what share of the trial pads it fares badly. */
export interface Chance<Of> {
  readonly of: Of;
  readonly share: number;
}

interface Asked {
  readonly day: UncertainDay<NamedNeed, Limit>;
  readonly questions: ReturnType<typeof dayQuestions>;
}

export type SurenessModel = ReturnType<typeof createSureness>;

/** `pad` follows the reader's pad when it has kept still for a moment. */
export function createSureness(day: DayModel, pad: ReadonlySignal<Pad>) {
  const matters = signal<DayAnswer>('energy');
  const built = computed(() => padModel(pad.value));
  const spread = computed(() => built.value.fit?.spread ?? null);
  const sureness = computed(() => {
    const now = spread.value;
    return now === null ? null : unlessRefused(() => uncertaintyOf(now));
  });
  /** Trial pads hang on the fit alone and are kept while the day is changed. */
  const drawn = computed(() => {
    const now = spread.value;
    const next = now === null ? null : unlessRefused(() => monteCarloSamples(now, seed));
    return next === null ? null : { next, pads: [] as SettledPad[] };
  });
  const asked = computed<Asked | null>(() => {
    const { speeds, needs, tariff, standbyPower, priming } = built.value;
    const best = sureness.value?.best;
    if (speeds === null || best === undefined) return null;
    const { limits, site, plumbing, day: plan } = pad.value;
    // Of a day on which nothing runs there is nothing to be sure of.
    if (!plan.blocks.some(({ speed }) => (speed ?? 0) > 0)) return null;
    const uncertain = {
      blocks: coreBlocks(plan.blocks, speeds),
      needs,
      limitsOf: limitsWith(limits, site, plumbing, best),
      tariff,
      date: day.date.value,
      standbyPower,
      priming,
    };
    return unlessRefused(() => ({ day: uncertain, questions: dayQuestions(uncertain) }));
  });
  const linear = computed(() => {
    const [sure, now] = [sureness.value, asked.value];
    if (sure === null || now === null) return null;
    return unlessRefused(() => dayBands(sure, now.questions));
  });

  const trials = signal<{ readonly of: Asked; readonly days: readonly DayTrial[] } | null>(null);
  const summary = computed(() => {
    const now = trials.value;
    return now === null || now.of !== asked.value || now.days.length < trialCount
      ? null
      : trialSummary(now.days);
  });
  const shown = computed<readonly Shown[]>(() => {
    const bands = linear.value;
    if (bands === null) return [];
    const price = built.value.tariff === null ? [] : (['cost'] as const);
    return (['water', 'energy', ...price] as const).map((of) => {
      const trial = summary.value?.bands[of] ?? null;
      const parts = trial !== null && partingOf(bands[of].band, trial) > noticed;
      const dots = (trials.value?.days ?? []).slice(0, drawnTrials).map((each) => each[of]);
      return { of, ...bands[of], trial, parts, told: parts ? trial : bands[of].band, dots };
    });
  });
  const focus = computed(
    () => shown.value.find(({ of }) => of === matters.value) ?? shown.value[1] ?? null,
  );

  const next = computed<readonly Next[]>(() => {
    const [sure, now, of] = [sureness.value, asked.value, focus.value?.of];
    if (sure === null || now === null || of === undefined) return [];
    const { answers, laws } = now.questions;
    const ratios = speedsToRead(now, sure.best);
    if (ratios.length === 0) return [];
    const found = unlessRefused(() =>
      sure.narrowingsFor((settled) => [answers[of](settled)], ratios, laws[of]),
    );
    return (found ?? []).filter(isWorthIt).map(({ instrument, ratio, bands, ...width }) => ({
      instrument,
      speed: built.value.speedOf(ratio),
      band: bands[0] as Band,
      left: width.widthAfter / width.widthBefore,
    }));
  });

  const chances = computed(() => {
    const [now, sums] = [asked.value, summary.value];
    const best = sureness.value?.best;
    if (now === null || sums === null || best === undefined) return null;
    const limits = now.day.limitsOf(best, Number.POSITIVE_INFINITY);
    return {
      needs: now.day.needs.map(
        (of): Chance<NamedNeed> => ({ of, share: sums.short.get(of.id) ?? 0 }),
      ),
      limits: limits
        .map((of): Chance<Limit> => ({ of, share: sums.crossed.get(of.id) ?? 0 }))
        .sort((one, other) => Number(other.of.hard) - Number(one.of.hard)),
    };
  });

  const year = signal<{
    readonly of: Asked;
    readonly number: number;
    readonly cost: AnswerBand;
  } | null>(null);

  function* work(now: Asked): Generator {
    const from = drawn.peek();
    if (from === null) return;
    const run = dayTrial(now.day, now.questions);
    const days: DayTrial[] = [];
    for (let at = 0; at < trialCount; at += 1) {
      const settled = from.pads[at] ?? from.next();
      from.pads[at] = settled;
      days.push(run(settled));
      if (days.length === drawnTrials) trials.value = { of: now, days: [...days] };
      yield;
    }
    trials.value = { of: now, days };
    const [sure, number] = [sureness.peek(), now.day.date.year];
    const when = { year: number, frostOn: untracked(() => openFrost(day.store)) };
    const cost = sure === null ? null : yield* yearBand(pad.peek(), built.peek(), sure, when);
    year.value = cost === null ? null : { of: now, number, cost };
  }

  return {
    day,
    units: day.units,
    currency: day.currency,
    matters,
    /** Whether some of the readings cannot all be right. */
    isContradicted: computed(() => (built.value.fit?.contradictions.length ?? 0) > 0),
    /** How many readings it all rests on. */
    readings: computed(() => spread.value?.evidence.readings.length ?? 0),
    shown,
    focus,
    next,
    chances,
    year: computed(() => (year.value?.of === asked.value ? year.value : null)),
    /** Whether the trial pads are those of the day as it stands. */
    isFresh: computed(() => trials.value !== null && trials.value.of === asked.value),
    /** Asks the trial pads anew whenever pad or day has changed; gives what ends it. */
    follow: () => {
      let stop = () => {};
      const end = effect(() => {
        const now = asked.value;
        // Another frost is another year.
        openFrost(day.store);
        stop();
        if (now !== null) stop = inSlices(work(now));
      });
      return () => {
        stop();
        end();
      };
    },
  };
}

const isWorthIt = ({ widthBefore, widthAfter }: AnswerNarrowing) =>
  widthAfter < widthBefore * (1 - worthIt);

/** The speeds of the day that a reader may stand beside: none at which more flows than a hard limit allows. */
function speedsToRead({ day, questions }: Asked, best: SettledPad): readonly number[] {
  const limits = day.limitsOf(best, Number.POSITIVE_INFINITY);
  const most = Math.min(...limits.map((each) => (each.hard ? each.greatestFlow : Infinity)));
  const speeds = new Set(day.blocks.map(({ ratio }) => ratio));
  return [...speeds].filter(
    (ratio) => ratio >= leastRead && questions.stateOf(best, ratio).flow <= most,
  );
}
