/**
 * From what the reader typed to everything that can be worked out from it: the one way from the pad
 * document to the core. It never throws for anything a pad can hold, gives as much as a half-filled
 * pad allows, and names what each answer still lacks.
 */

import { type Block, minutesAt } from '#core/day/day.ts';
import type { DayPlan, QuietHours } from '#core/day/dayReport.ts';
import type { Limit } from '#core/day/limits.ts';
import { type Rung, speedLadder } from '#core/day/needs.ts';
import type { Priming } from '#core/day/priming.ts';
import { fitPad } from '#core/fit/fitPad.ts';
import type { PadFit } from '#core/fit/padEvidence.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import type { Estimate } from '#core/numerics/band.ts';
import type { Tariff } from '#core/tariff/tariff.ts';
import { type Water, water } from '#core/water/water.ts';
import type { Pad } from '#pad/document/schema.ts';
import { type Assumption, assumption } from '#pad/messages/assumptions.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';
import { assembleCircuit } from './assembleCircuit.ts';
import { assembleBlocks, assembleQuiet, yearProblems } from './assembleDay.ts';
import { type AssembledLimits, assembleLimits } from './assembleLimits.ts';
import { assembleNeeds, type NamedNeed } from './assembleNeeds.ts';
import { assemblePool } from './assemblePool.ts';
import { type AssembledPump, assemblePump } from './assemblePump.ts';
import {
  assembleInstruments,
  assembleReadings,
  contradictionProblem,
  fitAssumption,
} from './assembleReadings.ts';
import { assembleTariff } from './assembleTariff.ts';
import { heldRatio, type PumpSpeeds } from './heldSpeed.ts';
import { lazy, memoize, unlessRefused } from './memo.ts';
import { type Answer, missingFor } from './missing.ts';
import { type RunningPad, runningPad } from './runningPad.ts';
import { dateProblems } from './someDay.ts';
import { typicalCircuit } from './typicalCircuit.ts';
import { waterPowerProblems } from './waterPower.ts';
import { greatestFlowAt, speedStops, withStops } from './worstState.ts';

/** Everything that follows from a pad. Members that cost something are worked out when asked for. */
export interface PadModel {
  readonly water: Water;
  /** Water in the pool [m3], or null while it is not known. */
  readonly volume: number | null;
  /** The circuit just as it is described, or null while no part of it is. */
  readonly described: Circuit | null;
  /** Speeds of the pump, or null while none is known. */
  readonly speeds: PumpSpeeds | null;
  readonly curveKnown: AssembledPump['curveKnown'];
  /** The most likely pad by description and readings, with its bands; null while there is no pump. */
  readonly fit: PadFit | null;
  /** That pad, ready to run; null while there is no pump. */
  readonly running: RunningPad | null;
  readonly limits: readonly Limit[];
  readonly needs: readonly NamedNeed[];
  readonly quiet: readonly QuietHours[];
  /** The slowest speed for each need, in the reader's order; null while there is no pump. */
  readonly ladder: readonly Rung[] | null;
  readonly tariff: Tariff | null;
  /** The planned day and the one before it. */
  readonly blocks: readonly Block[];
  readonly oldBlocks: readonly Block[];
  /** Draw while the pump is stopped [W]. */
  readonly standbyPower: number;
  /** How the pump primes at every start; undefined where the pad names no priming. */
  readonly priming: Priming | undefined;
  readonly problems: readonly Problem[];
  readonly assumptions: readonly Assumption[];
  /** What each answer still lacks; empty for one that can be given. */
  readonly missing: Readonly<Record<Answer, readonly Problem[]>>;
  /** Speed over reference speed [-]; 0 while no speed is known. */
  ratioOf(speed: number): number;
  /** Speed [rpm] of a ratio, to 12 figures so that steps come out whole; 0 while none is known. */
  speedOf(ratio: number): number;
  /** What the core needs for a day of these blocks, or null while pool or pump is unknown. */
  planOf(blocks: readonly Block[]): DayPlan<NamedNeed, Limit> | null;
}

/** Temperature of the water when nobody said [degC]; common practice, no source. */
const usualTemperature = 26;
/** Slowest speed over reference speed that the fit looks at. */
const leastFitRatio = 0.05;

const waterAt = memoize(water);
const poolOf = memoize(assemblePool);
const circuitOf = memoize(assembleCircuit);
const pumpOf = memoize(assemblePump);
const readingsOf = memoize(assembleReadings);
const instrumentsOf = memoize(assembleInstruments);
const needsOf = memoize(assembleNeeds);
const limitsOf = memoize(assembleLimits);
const tariffOf = memoize(assembleTariff);
const quietOf = memoize(assembleQuiet);
const blocksOf = memoize(assembleBlocks);
const yearProblemsOf = memoize(yearProblems);
const typicalOf = memoize(typicalCircuit);
const groundOf = memoize((circuit: Circuit | null, plumbing: Pad['plumbing']) => ({
  circuit,
  plumbing,
}));
const runningOf = memoize(({ circuit, curve, power }: PadFit, standby: number) =>
  runningPad(circuit, curve, { ...power, standby }),
);
const fitOf = memoize(
  (
    circuit: Circuit,
    pump: AssembledPump,
    readings: ReturnType<typeof assembleReadings>,
    instruments: ReturnType<typeof assembleInstruments>,
    found: Estimate | undefined,
  ): PadFit | null => {
    const { curve, speeds } = pump;
    if (curve === null || speeds === null) return null;
    const evidence = {
      circuit,
      curve,
      curveKnown: pump.curveKnown,
      power: pump.power ?? undefined,
      fixedDraw: pump.fixedDraw ?? undefined,
      readings: readings.readings,
      instruments: instruments.accuracy,
      leastRatio: Math.min(Math.max(speeds.least / speeds.reference, leastFitRatio), 1),
      greatestRatio: speeds.top / speeds.reference,
    };
    return unlessRefused(() => fitPad(evidence, found));
  },
);
const ladderOf = memoize(
  (
    running: RunningPad,
    needs: readonly NamedNeed[],
    limits: readonly Limit[],
    speeds: PumpSpeeds,
  ) =>
    unlessRefused(() =>
      speedLadder({
        needs,
        curve: running.curve,
        circuit: running.circuit,
        power: running.power,
        limits,
        minRatio: speeds.least / speeds.reference,
        maxRatio: speeds.top / speeds.reference,
        ratioStep: Math.min(speeds.step / speeds.reference, 1),
      }),
    ),
);

/** The limits with the speed at which each hard one is kept in the worst state. */
const stoppedOf = memoize(
  (found: AssembledLimits, fit: PadFit, plumbing: Pad['plumbing'], speeds: PumpSpeeds) => {
    const flowAt = greatestFlowAt(fit, plumbing);
    const limits = unlessRefused(() => withStops(found.limits, flowAt, speeds));
    return limits === null ? found : { ...found, limits };
  },
);

/** How the pump primes, at the speed it can really turn at; memoized so that the same pump gives the same object. */
const primingOf = memoize((pump: Pad['pump'], speeds: PumpSpeeds): Priming | undefined => {
  const minutes = pump.primingMinutes ?? 0;
  const ratio = heldRatio(pump.primingSpeed, speeds);
  return minutes > 0 && ratio > 0 ? { ratio, minutes } : undefined;
});

const noLimits: AssembledLimits = { limits: [], problems: [], assumptions: [] };
const newPath = { blocks: ['day', 'blocks'], oldBlocks: ['day', 'oldBlocks'] } as const;
/** Stands in for the speeds of an unknown pump, so that blocks and readings can still be judged. */
const noSpeeds: PumpSpeeds = { reference: 1, least: 0, top: Number.POSITIVE_INFINITY, step: 0 };

let carried: { readonly pad: Pad; readonly found: Estimate } | undefined;

/** Where the fit of a pad came to rest when the page was built, so that the browser need not seek it again. */
export function carryFit(pad: Pad, found: Estimate): void {
  carried = { pad, found };
}

/** The carried fit, for every pad that differs from its own in nothing that is fitted. */
function carriedFor({ site, plumbing, pump, readings, instruments }: Pad): Estimate | undefined {
  const from = carried?.pad;
  return from?.plumbing === plumbing &&
    from.pump === pump &&
    from.readings === readings &&
    from.instruments === instruments &&
    from.site.waterTemperature === site.waterTemperature
    ? carried?.found
    : undefined;
}

function build(pad: Pad): PadModel {
  const { site, plumbing, day } = pad;
  const standbyPower = pad.pump.standbyPower ?? 0;
  const liquid = waterAt(site.waterTemperature ?? usualTemperature);
  const pool = poolOf(pad.pool);
  const described = circuitOf(plumbing, liquid);
  const pump = pumpOf(pad.pump, pad.readings, liquid);
  const { speeds, curve } = pump;
  const priming = speeds === null ? undefined : primingOf(pad.pump, speeds);
  const readings =
    speeds === null
      ? { readings: [], problems: [] }
      : readingsOf(pad.readings, speeds, pad.pump.voltage);
  const instruments = instrumentsOf(pad.instruments, readings.readings);
  const circuit =
    described.circuit ??
    (curve === null ? null : typicalOf(curve, plumbing.staticHead ?? 0, liquid));

  const tariff = tariffOf(pad.tariff);
  const quiet = quietOf(pad.quiet, speeds ?? noSpeeds);
  const blocks = blocksOf(day.blocks, speeds ?? noSpeeds, newPath.blocks);
  const oldBlocks = blocksOf(day.oldBlocks, speeds ?? noSpeeds, newPath.oldBlocks);

  const fitted = lazy(() =>
    circuit === null ? null : fitOf(circuit, pump, readings, instruments, carriedFor(pad)),
  );
  const running = lazy(() => {
    const found = fitted();
    return found === null ? null : runningOf(found, standbyPower);
  });
  const inBranch = pad.needs.some(({ branchId }) => branchId !== null);
  const needs = lazy(() =>
    needsOf(
      pad.needs,
      pool.volume,
      liquid,
      groundOf(inBranch ? (running()?.circuit ?? circuit) : null, plumbing),
    ),
  );
  const limits = lazy(() => {
    const within = running()?.circuit ?? circuit;
    const found =
      (within && unlessRefused(() => limitsOf(pad.limits, site, plumbing, within))) ?? noLimits;
    const fit = fitted();
    return fit === null || speeds === null ? found : stoppedOf(found, fit, plumbing, speeds);
  });
  const ladder = lazy(() => {
    const ready = running();
    if (ready === null || speeds === null) return null;
    return ladderOf(ready, needs().needs, limits().limits, speeds);
  });
  const refused = lazy(() =>
    circuit !== null && curve !== null && speeds !== null && fitted() === null
      ? [problem('notTogether', ['pump'])]
      : [],
  );
  const waterPower = lazy(() => {
    const ready = running();
    return ready === null || speeds === null
      ? []
      : (unlessRefused(() => waterPowerProblems(pad, ready, speeds)) ?? []);
  });
  const problems = lazy(() => [
    ...refused(),
    ...pool.problems,
    ...described.problems,
    ...pump.problems,
    ...readings.problems,
    ...waterPower(),
    ...(fitted()?.contradictions ?? []).map((found) => contradictionProblem(found, pad.readings)),
    ...needs().problems,
    ...limits().problems,
    ...speedStops(pad, limits().limits, speeds),
    ...quiet.problems,
    ...tariff.problems,
    ...dateProblems(day.date),
    ...blocks.problems,
    ...oldBlocks.problems,
    ...yearProblemsOf(pad.year, speeds ?? noSpeeds),
  ]);
  const assumptions = lazy(() => [
    ...(site.waterTemperature === null
      ? [
          assumption('waterTemperature', {
            value: { quantity: 'temperature', value: usualTemperature },
          }),
        ]
      : []),
    ...(described.circuit === null && circuit !== null ? [assumption('circuitTypical')] : []),
    ...pump.assumptions,
    ...standbyAssumption(pad, blocks.blocks),
    ...instruments.assumptions,
    ...(fitted()?.assumptions ?? []).map(fitAssumption),
    ...limits().assumptions,
  ]);
  const missing = lazy(() => missingFor(pad, { pool, pump, needs: needs(), tariff }, refused()));

  return {
    water: liquid,
    volume: pool.volume,
    described: described.circuit,
    speeds,
    curveKnown: pump.curveKnown,
    get fit() {
      return fitted();
    },
    get running() {
      return running();
    },
    get limits() {
      return limits().limits;
    },
    get needs() {
      return needs().needs;
    },
    quiet: quiet.quiet,
    get ladder() {
      return ladder();
    },
    tariff: tariff.tariff,
    blocks: blocks.blocks,
    oldBlocks: oldBlocks.blocks,
    standbyPower,
    priming,
    get problems() {
      return problems();
    },
    get assumptions() {
      return assumptions();
    },
    get missing() {
      return missing();
    },
    ratioOf: (speed) => (speeds === null ? 0 : speed / speeds.reference),
    speedOf: (ratio) => (speeds === null ? 0 : Number((ratio * speeds.reference).toPrecision(12))),
    planOf: (planned) => {
      const ready = running();
      if (ready === null || pool.volume === null) return null;
      return {
        blocks: planned,
        pointAt: ready.runningAt,
        volume: pool.volume,
        needs: needs().needs,
        limits: limits().limits,
        quiet: quiet.quiet,
        standbyPower,
        priming,
      };
    },
  };
}

/** Watts while the pump is stopped matter only where the planned day stops it. */
function standbyAssumption({ pump }: Pad, blocks: readonly Block[]): readonly Assumption[] {
  const stops = blocks.length > 0 && minutesAt(blocks, 0) > 0;
  if (pump.standbyPower !== null || !stops) return [];
  return [assumption('standbyNone', { value: { quantity: 'power', value: 0 } })];
}

/** Everything that follows from a pad. The same pad gives the same model. */
export const padModel: (pad: Pad) => PadModel = memoize(build);
