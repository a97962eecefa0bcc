import { standardGravity } from '#core/base/constants.ts';
import { type PumpPower, powerFromEfficiency } from '#core/pump/power.ts';
import {
  type PumpCurve,
  type PumpPoint,
  pumpFromPoints,
  pumpFromThreePoints,
  typicalPump,
} from '#core/pump/pump.ts';
import { type StatedPower, statedPower, type WattPoint } from '#core/pump/statedPower.ts';
import type { Water } from '#core/water/water.ts';
import type { Pump, PumpKnowledge, Reading } from '#pad/document/schema.ts';
import { type Assumption, assumption } from '#pad/messages/assumptions.ts';
import type { Path } from '#pad/messages/path.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';
import type { PumpSpeeds } from './heldSpeed.ts';
import { heldProblems } from './heldSpeed.ts';
import { unlessRefused } from './memo.ts';

export interface AssembledPump {
  readonly speeds: PumpSpeeds | null;
  readonly curve: PumpCurve | null;
  readonly curveKnown: 'dataSheet' | 'estimated';
  /** Wire power known apart from readings, or null; watts of a data sheet are whole. */
  readonly power: PumpPower | StatedPower | null;
  /** Draw that does not fall with speed [W] as typed, or null. */
  readonly fixedDraw: number | null;
  readonly problems: readonly Problem[];
  readonly assumptions: readonly Assumption[];
}

/** Slowest speed over reference speed when it is not given; common practice, no source. */
const usualLeastRatio = 0.2;
/** Ratios the core accepts for the speeds of a pad. */
const ratioRange = { least: 0.05, greatest: 2 };

/** Head at the best point of a pool pump at 3450 rpm [m]; common practice, no source. */
const usualBestHead = 16;
/** Hydraulic over shaft power, and shaft over wire power, at the best point; common practice, no source. */
const usualEfficiency = 0.6;
const usualDriveEfficiency = 0.85;
/** Draw that does not fall with speed [W], when an efficiency is typed without it; common practice, no source. */
const usualFixedDraw = 40;

/** Best points outside these are a slip of the pen, not a pump [m3/s, m]. */
const pumpFlows = { least: 1e-6, greatest: 1 };
const pumpHeads = { least: 1e-3, greatest: 150 };

function isPump({ flow, head }: PumpPoint): boolean {
  const flows = flow >= pumpFlows.least && flow <= pumpFlows.greatest;
  return flows && head >= pumpHeads.least && head <= pumpHeads.greatest;
}

const rpm = (value: number) => ({ quantity: 'speed' as const, value });
const watts = (value: number) => ({ quantity: 'power' as const, value });
const share = (value: number) => ({ quantity: 'share' as const, value });

interface Found<T> {
  readonly value: T;
  readonly problems: readonly Problem[];
  readonly assumptions: readonly Assumption[];
}

function found<T>(
  value: T,
  problems: readonly Problem[] = [],
  assumptions: readonly Assumption[] = [],
): Found<T> {
  return { value, problems, assumptions };
}

function speedProblems(pump: Pump, reference: number): readonly Problem[] {
  const [least, greatest] = [ratioRange.least * reference, ratioRange.greatest * reference];
  const outside = (['leastSpeed', 'topSpeed'] as const).filter((name) => {
    const speed = pump[name];
    return speed !== null && (speed < least || speed > greatest);
  });
  return outside.map((name) =>
    problem('speedRange', ['pump', name], { least: rpm(least), greatest: rpm(greatest) }),
  );
}

function within(value: number, least: number, greatest: number): number {
  return Math.min(Math.max(value, least), greatest);
}

/** The finest step a speed is set in [rpm]: one. Common practice, no source. */
const finestStep = 1;

/** The speeds of the pump, with usual ones for those that are missing or impossible. */
function speedsOf(pump: Pump): Found<PumpSpeeds | null> {
  const reference = pump.referenceSpeed ?? pump.topSpeed;
  if (reference === null || reference < 1) {
    return found(null, [problem('referenceSpeed', ['pump', 'referenceSpeed'])]);
  }
  const assumptions: Assumption[] = [];
  if (pump.referenceSpeed === null) {
    assumptions.push(assumption('referenceIsTop', { value: rpm(reference) }));
  }
  const [least, greatest] = [ratioRange.least * reference, ratioRange.greatest * reference];
  const top = within(pump.topSpeed ?? reference, least, greatest);
  const usual = Math.min(top, usualLeastRatio * reference);
  const slowest = within(pump.leastSpeed ?? usual, least, greatest);
  if (pump.leastSpeed === null) assumptions.push(assumption('leastSpeed', { value: rpm(slowest) }));
  const order =
    slowest > top ? [problem('speedOrder', ['pump', 'leastSpeed'], { top: rpm(top) })] : [];
  const floor = Math.min(slowest, top);
  const asked = pump.speedStep ?? 0;
  const isSmall = asked > 0 && asked < finestStep;
  const step = isSmall ? finestStep : asked;
  const isLarge = floor < top && step > top - floor;
  const range = { found: rpm(step), least: rpm(floor), top: rpm(top) };
  const large = isLarge ? [problem('speedStepLarge', ['pump', 'speedStep'], range)] : [];
  const small = isSmall
    ? [problem('speedStepSmall', ['pump', 'speedStep'], { least: rpm(finestStep) })]
    : [];
  // A step that leads nowhere between the ends is as good as the whole way up.
  const speeds = { reference, least: floor, top, step: isLarge ? Math.min(top, reference) : step };
  const called = (['primingSpeed', 'overrideSpeed'] as const).flatMap((name) =>
    heldProblems(pump[name], ['pump', name], speeds),
  );
  return found(
    speeds,
    [...speedProblems(pump, reference), ...order, ...large, ...small, ...called],
    assumptions,
  );
}

type Points = Extract<PumpKnowledge, { kind: 'curve' }>['points'];
interface PlacedPoint extends PumpPoint {
  readonly power: number | null;
  readonly path: Path;
}

const pointsPath: Path = ['pump', 'knowledge', 'points'];

/** The points that have both a flow and a head, in the order of their flow. */
function wholePoints(points: Points): Found<readonly PlacedPoint[]> {
  const placed = points.map((point, place) => ({ ...point, path: [...pointsPath, place] }));
  const half = placed.filter(({ flow, head }) => (flow === null) !== (head === null));
  const whole = placed.flatMap(({ flow, head, power, path }): readonly PlacedPoint[] =>
    flow === null || head === null ? [] : [{ flow, head, power, path }],
  );
  return found(
    whole.sort((one, other) => one.flow - other.flow),
    half.map(({ flow, path }) => problem('curveHalf', [...path, flow === null ? 'flow' : 'head'])),
  );
}

/** Whatever keeps points from being a falling curve. */
function curveProblems(points: readonly PlacedPoint[], needed: number): readonly Problem[] {
  if (points.length < needed) {
    return [problem('curvePoints', pointsPath, { needed, found: points.length })];
  }
  const pairs = points
    .slice(1)
    .map((point, place) => [points[place] as PlacedPoint, point] as const);
  const same = pairs.filter(([before, point]) => point.flow - before.flow <= 1e-6 * point.flow);
  const rising = pairs.filter(([before, point]) => point.head > before.head);
  const [first, last] = [points[0], points.at(-1)];
  const level = first !== undefined && last !== undefined && last.head >= first.head;
  const wrong = [
    ...same.map(([, point]) => problem('curveSameFlow', [...point.path, 'flow'])),
    ...rising.map(([, point]) => problem('curveRises', [...point.path, 'head'])),
  ];
  return wrong.length === 0 && level ? [problem('curveLevel', pointsPath)] : wrong;
}

function curveFromPoints(points: Points): Found<PumpCurve | null> {
  const whole = wholePoints(points);
  const problems = curveProblems(whole.value, 2);
  const curve = problems.length === 0 ? pumpFromPoints(whole.value) : null;
  return found(curve, [...whole.problems, ...problems]);
}

/** Three points bend smoothly only when each is below the one before and the first is at no flow. */
function curveFromThree(points: Points): Found<PumpCurve | null> {
  const whole = wholePoints(points);
  const [first, second, third] = whole.value;
  const problems = [...curveProblems(whole.value, 3)];
  if (problems.length === 0 && first !== undefined && first.flow !== 0) {
    problems.push(problem('curveShutoff', [...first.path, 'flow']));
  }
  for (const [before, point] of [[first, second] as const, [second, third] as const]) {
    const level = before !== undefined && point !== undefined && point.head === before.head;
    if (problems.length === 0 && level) {
      problems.push(problem('curveRises', [...point.path, 'head']));
    }
  }
  if (problems.length > 0) return found(null, [...whole.problems, ...problems]);
  return found(threePointCurve(whole.value), whole.problems);
}

/** Three points that no power law between 0.5 and 10 fits still make a curve, point by point. */
function threePointCurve(points: readonly PumpPoint[]): PumpCurve {
  try {
    return pumpFromThreePoints(points);
  } catch {
    return pumpFromPoints(points);
  }
}

interface ShaftPower {
  readonly power: number;
  readonly assumptions: readonly Assumption[];
}

/** Power at the shaft at the reference speed, from the nameplate or else from the watts read. */
function shaftPowerOf(
  knowledge: Extract<PumpKnowledge, { kind: 'nameplate' }>,
  readings: readonly Reading[],
  reference: number,
): ShaftPower | null {
  const { power, powerMeans } = knowledge;
  if (power !== null && power > 0) {
    const shaft = powerMeans === 'wire' ? power * usualDriveEfficiency : power;
    const assumed = powerMeans === null ? [assumption('powerIsShaft')] : [];
    return { power: shaft, assumptions: assumed };
  }
  const [fastest] = readings
    .flatMap(({ speed, power: read }) => (speed && read ? [{ speed, power: read }] : []))
    .sort((one, other) => other.speed - one.speed);
  if (fastest === undefined) return null;
  const shaft = fastest.power * (reference / fastest.speed) ** 3 * usualDriveEfficiency;
  const assumed = assumption('powerFromReading', { power: watts(fastest.power) });
  return { power: shaft, assumptions: [assumed] };
}

/** The usual shape through the best point, which is typed or guessed from the power. */
function curveFromNameplate(
  knowledge: Extract<PumpKnowledge, { kind: 'nameplate' }>,
  readings: readonly Reading[],
  reference: number,
  water: Water,
): Found<PumpCurve | null> {
  const typical = (best: PumpPoint) =>
    assumption('typicalPump', {
      flow: { quantity: 'flow', value: best.flow },
      head: { quantity: 'head', value: best.head },
    });
  const { flow, head } = knowledge;
  if (flow && head && isPump({ flow, head }))
    return found(typicalPump({ flow, head }), [], [typical({ flow, head })]);
  const shaft = shaftPowerOf(knowledge, readings, reference);
  if (shaft === null) return found(null, [problem('pumpUnknown', ['pump', 'knowledge'])]);
  const weight = water.density * standardGravity;
  const hydraulic = shaft.power * usualEfficiency;
  const usualHead = usualBestHead * (reference / 3450) ** 2;
  const bestHead = head || (flow ? hydraulic / (weight * flow) : usualHead);
  const best = { head: bestHead, flow: flow || hydraulic / (weight * bestHead) };
  if (!isPump(best)) {
    return found(null, [problem('pumpUnknown', ['pump', 'knowledge'])]);
  }
  const power = { ...watts(shaft.power), digits: 2 };
  const guess = assumption('pumpFromPower', { power });
  return found(typicalPump(best), [], [typical(best), guess, ...shaft.assumptions]);
}

/** Wire power from the points of the data sheet, where at least two give it. */
function powerFromPoints(points: Points): StatedPower | null {
  const known = wholePoints(points).value.flatMap(({ flow, power }): readonly WattPoint[] =>
    power === null ? [] : [{ flow, power }],
  );
  return known.length < 2 ? null : statedPower(known);
}

/** Wire power from a typed efficiency, with its best point two thirds along the curve. */
function powerFromTyped(pump: Pump, curve: PumpCurve, water: Water): Found<PumpPower | null> {
  if (!pump.efficiency) return found(null);
  const driveEfficiency = pump.driveEfficiency || usualDriveEfficiency;
  const fixed = pump.fixedPower ?? usualFixedDraw;
  const best = { flow: curve.lastFlow / 1.4, efficiency: pump.efficiency };
  const power = unlessRefused(() =>
    powerFromEfficiency({
      fixed,
      curve,
      best,
      driveEfficiency,
      density: water.density,
    }),
  );
  if (power === null) return found(null);
  const allTyped = pump.driveEfficiency && pump.fixedPower !== null;
  const taken = { drive: share(driveEfficiency), fixed: watts(fixed) };
  return found(power, [], allTyped ? [] : [assumption('efficiencyTyped', taken)]);
}

function curveOf(
  pump: Pump,
  readings: readonly Reading[],
  reference: number,
  water: Water,
): Found<PumpCurve | null> {
  const { knowledge } = pump;
  switch (knowledge.kind) {
    case 'curve':
      return curveFromPoints(knowledge.points);
    case 'powerLaw':
      return curveFromThree(knowledge.points);
    case 'nameplate':
      return curveFromNameplate(knowledge, readings, reference, water);
  }
}

/** Speeds, head curve and power of the pump, as far as they are known. */
export function assemblePump(
  pump: Pump,
  readings: readonly Reading[],
  water: Water,
): AssembledPump {
  const speeds = speedsOf(pump);
  const reference = speeds.value?.reference ?? 3450;
  const curve = curveOf(pump, readings, reference, water);
  const fromPoints =
    pump.knowledge.kind === 'nameplate' || curve.value === null
      ? null
      : powerFromPoints(pump.knowledge.points);
  const typed =
    fromPoints === null && curve.value !== null
      ? powerFromTyped(pump, curve.value, water)
      : found(null);
  return {
    speeds: speeds.value,
    curve: curve.value,
    curveKnown: pump.knowledge.kind === 'nameplate' ? 'estimated' : 'dataSheet',
    power: fromPoints ?? typed.value,
    fixedDraw: pump.fixedPower,
    problems: [...speeds.problems, ...curve.problems],
    assumptions: [...speeds.assumptions, ...curve.assumptions, ...typed.assumptions],
  };
}
