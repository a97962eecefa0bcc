/** Where everything of the picture stands: axes and still lines of a pad, moving ones of a speed. */

import { pumpHead } from '#core/pump/pump.ts';
import { type HeadAt, pumpLine, systemLine } from '#explorables/example/machine.ts';
import type { Side } from '#ui/charts/Frame.tsx';
import type { Placement, Spot } from '#ui/charts/labels.ts';
import { linePath, type Point } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { across, fraction, span, upward } from '#ui/charts/scale.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import type { Here, LadderRung } from './figures.ts';
import type { Notch, Scene } from './scene.ts';
import { limitShortName } from './text.ts';

/** A limit that stands within the picture. */
interface Bound {
  /** From the left, as a fraction. */
  readonly at: number;
  readonly label: Placement;
  readonly text: string;
}

/** One or more rungs that stand at one place. */
export interface RungMark {
  readonly spot: Spot;
  /** Their numbers on the ladder: "2", "3·4". */
  readonly text: string;
}

/** Everything of the picture that does not follow the speed. */
export interface Plot {
  readonly scene: Scene;
  readonly x: Side;
  readonly y: Side;
  readonly topCurve: string;
  readonly pipes: string;
  /** Where the operating point may lie, along the whole line of the pipes. */
  readonly reach: string;
  readonly topLabel: Placement;
  readonly topText: string;
  readonly pipesLabel: Placement | null;
  /** The tightest flow that no plan may cross, and the tightest of the others. */
  readonly stop: Bound | null;
  readonly limit: Bound | null;
  readonly rungs: readonly RungMark[];
}

/** Room to the right of the flow at top speed. */
const roomBeyond = 1.3;
/** Where the names of the pump's lines stand, as a fraction of the width. */
const nameAt = 0.04;

export function plotOf(scene: Scene, rungs: readonly LadderRung[], units: UnitChoice): Plot {
  const { machine, notches } = scene;
  const last = notches.at(-1);
  const topRatio = machine.topSpeed / machine.referenceSpeed;
  const flowAtTop =
    last !== undefined && last.flow > 0 ? last.flow : machine.curve.lastFlow * topRatio;
  const x = quantitySide('Flow', 'flow', units, { max: roomBeyond * flowAtTop });
  const y = quantitySide('Head', 'head', units, { max: pumpHead(machine.curve, 0, topRatio) });
  const sides = { x, y };
  const pipes = systemLine(machine, x.axis.max);
  // Further right the words would be pushed back over the line.
  const pipeEnd = pipes.findLast(
    ({ flow, head }) => head <= 0.8 * y.axis.max && flow <= 0.6 * x.axis.max,
  );
  return {
    scene,
    ...sides,
    topCurve: pathOf(pumpLine(machine, machine.topSpeed, x.axis.max), sides),
    pipes: pathOf(pipes, sides),
    reach: reachPath(notches, sides),
    topLabel: pumpLabel(scene, machine.topSpeed, sides),
    topText: `pump at ${machine.topSpeed} rpm`,
    pipesLabel: pipeEnd === undefined ? null : besideLine(spotOf(pipeEnd, sides)),
    stop: boundOf(scene, true, sides, units),
    limit: boundOf(scene, false, sides, units),
    rungs: rungMarks(rungs, sides),
  };
}

/** A little to the right of the line, so that a limit that crosses it there stays free. */
const besideLine = ({ x, y }: Spot): Placement => ({ x: x + 0.02, y, above: false, ends: false });

type Sides = Pick<Plot, 'x' | 'y'>;

export function spotOf({ flow, head }: HeadAt, { x, y }: Sides): Spot {
  return { x: fraction(x.axis, flow), y: 1 - fraction(y.axis, head) };
}

function pathOf(line: readonly HeadAt[], { x, y }: Sides): string {
  const points = line
    .filter(({ head }) => head <= y.axis.max)
    .map(({ flow, head }): Point => ({ x: flow, y: head }));
  return linePath(points, x.axis, y.axis);
}

/** The name of a pump's line, just under where it begins. */
function pumpLabel({ machine }: Scene, speed: number, sides: Sides): Placement {
  const flow = nameAt * sides.x.axis.max;
  const head = pumpHead(machine.curve, flow, speed / machine.referenceSpeed);
  return { ...spotOf({ flow, head: Math.max(head, 0) }, sides), above: true, ends: false };
}

/** Up along the least flow of each speed and down along the greatest. */
function reachPath(notches: readonly Notch[], { x, y }: Sides): string {
  const edge = (side: 'low' | 'high') =>
    notches
      .filter(({ flow }) => flow > 0)
      .map(({ band, head }): Point => ({ x: Math.min(band.flow[side], x.axis.max), y: head }));
  const around = [...edge('low'), ...edge('high').reverse()];
  return around.length === 0 ? '' : `${linePath(around, x.axis, y.axis)}Z`;
}

function boundOf(scene: Scene, hard: boolean, { x, y }: Sides, units: UnitChoice): Bound | null {
  const { limits, machine } = scene;
  const tightest = limits
    .filter((limit) => limit.hard === hard)
    .toSorted((a, b) => a.greatestFlow - b.greatestFlow)[0];
  if (tightest === undefined || tightest.greatestFlow >= x.axis.max) return null;
  const at = fraction(x.axis, tightest.greatestFlow);
  const flow = format('flow', tightest.greatestFlow, units);
  // The stop is named above the corner that it takes; a limit under the line of the fastest pump, whose
  // own name stands at the left above it, and clear of the knob there.
  const fastest = pumpHead(
    machine.curve,
    tightest.greatestFlow,
    machine.topSpeed / machine.referenceSpeed,
  );
  const ends = at > 0.45;
  const under = Math.min(Math.max(1 - fraction(y.axis, fastest) + 0.03, 0), 0.6);
  const label: Placement = hard
    ? { x: 1, y: 0, above: true, ends: true }
    : { x: ends ? at - 0.05 : at, y: ends ? under : 0, above: false, ends };
  const text = hard ? `stop at ${flow}` : `${limitShortName(tightest)} limit ${flow}`;
  return { at, label, text };
}

/** Nearer than this two marks would cover each other, as a fraction of the picture. */
const tooNear = 0.055;

function rungMarks(rungs: readonly LadderRung[], sides: Sides): readonly RungMark[] {
  const marks: RungMark[] = [];
  rungs.forEach((rung, place) => {
    if (rung.kind === 'unreachable' || rung.here.flow === 0) return;
    const spot = spotOf(rung.here, sides);
    const before = marks.at(-1);
    const near =
      before !== undefined && Math.hypot(before.spot.x - spot.x, before.spot.y - spot.y) < tooNear;
    if (near) marks.splice(-1, 1, { ...before, text: `${before.text}·${place + 1}` });
    else marks.push({ spot, text: String(place + 1) });
  });
  return marks;
}

/** Everything of the picture that follows the speed. */
export interface Moving {
  readonly spot: Spot;
  /** The pump's line as far as its curve is known, and what lies past that. */
  readonly known: string;
  readonly beyond: string;
  /** How far the operating point may be off, both ways. */
  readonly cross: string;
  readonly label: Placement;
  readonly name: Placement;
  /** Whether knob and figure leave a rung's number free. */
  leaves(rung: Spot): boolean;
}

export function movingOf(plot: Plot, here: Here): Moving {
  const { scene, x, y } = plot;
  const { machine } = scene;
  const end = machine.curve.lastFlow * (here.speed / machine.referenceSpeed);
  const line = pumpLine(machine, here.speed, x.axis.max);
  const spot = spotOf(here, plot);
  // Near the axis the figure stands above the knob, where it covers no mark.
  const above = spot.x > 0.6 || spot.y > 0.86 || here.flow === 0;
  const label: Placement = { ...spot, above, ends: spot.x > 0.6 };
  const past = line.findIndex(({ flow }) => flow > end);
  const cut = past < 0 ? line.length : past;
  return {
    spot,
    known: pathOf(line.slice(0, cut), plot),
    beyond: pathOf(line.slice(Math.max(cut - 1, 0)), plot),
    cross: crossPath(here, plot),
    label,
    name: pumpLabel(scene, here.speed, { x, y }),
    leaves: (rung) => !isCovered(rung, label),
  };
}

/** Reach of the knob, and of the figure beside it, on a small picture. */
const knobReach = 0.09;
const figureReach = { across: 0.55, up: 0.17 } as const;

/** Whether the knob or its figure lies over the number of a rung, which stands above its spot. */
function isCovered(rung: Spot, { x, y, above, ends }: Placement): boolean {
  const [right, up] = [rung.x - x, y - rung.y];
  if (Math.hypot(right, up) < knobReach) return true;
  const beside = ends ? -right : right;
  const over = above ? up : -up;
  return beside > 0 && beside < figureReach.across && over > -0.05 && over < figureReach.up;
}

function crossPath({ flow, head, band }: Here, { x, y }: Sides): string {
  const clip = (place: number) => Math.min(Math.max(place, 0), span).toFixed(1);
  const [left, right] = [band.flow.low, band.flow.high].map((end) => clip(across(x.axis, end)));
  const [low, high] = [band.head.low, band.head.high].map((end) => clip(upward(y.axis, end)));
  const [mid, level] = [clip(across(x.axis, flow)), clip(upward(y.axis, head))];
  return `M${left},${level}H${right}M${mid},${low}V${high}`;
}

/** The speed whose operating point lies nearest on the line of the pipes, whichever way the pointer went. */
export function speedFor({ scene, x, y }: Plot, place: Spot): number {
  const { machine, notches } = scene;
  const spots = notches.map(({ flow, head, ratio }) => ({
    x: fraction(x.axis, flow),
    y: 1 - fraction(y.axis, head),
    ratio,
  }));
  const nearest = spots.slice(1).reduce(
    (best, after, at) => {
      const before = spots[at] ?? after;
      const [dx, dy] = [after.x - before.x, after.y - before.y];
      const length = dx * dx + dy * dy;
      const along =
        length > 0 ? ((place.x - before.x) * dx + (place.y - before.y) * dy) / length : 0;
      const part = Math.min(1, Math.max(0, along));
      const away = Math.hypot(before.x + part * dx - place.x, before.y + part * dy - place.y);
      return away < best.away
        ? { away, ratio: before.ratio + part * (after.ratio - before.ratio) }
        : best;
    },
    { away: Number.POSITIVE_INFINITY, ratio: spots[0]?.ratio ?? 0 },
  );
  return nearest.ratio * machine.referenceSpeed;
}
