/** The cheapest day of a pad, as found and as shown with its shortest block kept. */
import { type CheapestDay, cheapestDay, type FoundDay } from '#core/planner/cheapestDay.ts';
import { benchOf } from '#dayPage/day/bench.ts';
import { workOut } from '#dayPage/day/figures.ts';
import { cheapestOn, padBlocks, plannerInputsOf, rowsOf } from '#dayPage/planning/plannerInputs.ts';
import type { Pad } from '#pad/document/schema.ts';
import { dateOf } from './dayAnswers.ts';

/** Turnovers looked for where the pad names no target [-]; common practice, no source. */
const usualTurnovers = 1;

function blocksIn({ blocks }: FoundDay, reference: number) {
  return blocks.map(({ start, end, ratio }) => ({
    start,
    end: end % 1440,
    rpm: Number((ratio * reference).toPrecision(12)),
  }));
}

function whyNone(found: Exclude<CheapestDay, FoundDay>) {
  return found.kind === 'none' ? found.collision : null;
}

/** The cheapest day; null while pump, pool or price is not known. */
export function cheapestAnswer(pad: Pad) {
  const { bench } = benchOf(pad);
  if (bench === null) return null;
  const rows = rowsOf(
    bench,
    pad.day.blocks.map(({ speed }) => speed),
  );
  const asked = plannerInputsOf(bench, rows, dateOf(pad), {
    minutes: {},
    turnovers: pad.turnoverTarget ?? usualTurnovers,
    mayStop: true,
    mostChanges: null,
  });
  if (asked === null) return null;
  const begun = performance.now();
  const found = cheapestDay(asked);
  const head = {
    kind: found.kind,
    speedsTried: rows.length,
    leastVolumeM3: asked.leastVolume,
    tookMs: performance.now() - begun,
  };
  if (found.kind !== 'found') return { ...head, collision: whyNone(found) };
  const shown = cheapestOn(bench, dateOf(pad), asked).found;
  const shownDay = shown.kind === 'found' ? padBlocks(shown, bench.speeds.reference) : [];
  const sheet = workOut(bench, shownDay, dateOf(pad));
  const { reference } = bench.speeds;
  return {
    ...head,
    money: found.cost,
    bound: found.bound,
    gap: found.gap,
    volumeM3: found.volumeMoved,
    blocks: blocksIn(found, reference),
    ...(shown.kind === 'found' && {
      shownMoney: sheet.prices?.day.energyCost ?? null,
      shownBound: shown.bound,
      shownBlocks: blocksIn(shown, reference),
    }),
  };
}
