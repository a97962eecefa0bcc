import type { CompiledCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import { pumpHead } from '#core/pump/pump.ts';
import type { HeadAt } from '#explorables/example/machine.ts';
import { efficiencyAt, walkAt } from '#explorables/example/rig.ts';
import type { Side } from '#ui/charts/Frame.tsx';
import { type Placement, placeLabels, type Spot } from '#ui/charts/labels.ts';
import { evenly, linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction } from '#ui/charts/scale.ts';
import type { ValveWalkModel } from './model.ts';

/** Both axes; they stand still while the valve, the filter or the pump changes. */
export interface Sides {
  readonly flow: Side;
  readonly head: Side;
  readonly efficiency: Side;
}

const pointsOnLine = 60;

export function sidesOf(model: ValveWalkModel): Sides {
  const rig = model.rig.value;
  const units = model.units.value;
  const open = rig.pumps.map((pump) => walkAt(rig, pump, 0, 1).flow);
  const ends = rig.pumps.map(({ curve }) => curve.lastFlow * rig.ratio);
  const shutoff = rig.pumps.map(({ curve }) => curve.shutoffHead * rig.ratio ** 2);
  return {
    flow: quantitySide('Flow', 'flow', units, { max: 1.08 * Math.max(...open, ...ends) }),
    head: quantitySide('Head', 'head', units, { max: 1.05 * Math.max(...shutoff) }),
    efficiency: quantitySide('Efficiency', 'share', units, { max: 0.6, count: 3 }),
  };
}

export function spotOf(sides: Sides, at: HeadAt): Spot {
  return { x: fraction(sides.flow.axis, at.flow), y: 1 - fraction(sides.head.axis, at.head) };
}

/** What is drawn of pump and pipes at one setting. */
export interface Drawn {
  readonly known: string;
  readonly beyond: string;
  readonly pipes: string;
  readonly free: string;
  /** From the head of the bare pipes up to the head of the pump. */
  readonly lost: string;
  readonly efficiency: string;
  readonly pumpLabel: Placement | undefined;
  readonly freeLabel: Placement | undefined;
  readonly pipesLabel: Placement | undefined;
}

export function drawnOf(model: ValveWalkModel, sides: Sides): Drawn {
  const rig = model.rig.value;
  const { curve } = model.pump.value;
  const here = model.here.value;
  const x = sides.flow.axis;
  const y = sides.head.axis;
  const end = Math.min(curve.lastFlow * rig.ratio, x.max);
  const head = (flow: number) => ({ flow, head: pumpHead(curve, flow, rig.ratio) });
  const known = evenly(0, end, pointsOnLine).map(head);
  const beyond = evenly(end, Math.max(x.max, end), pointsOnLine)
    .map(head)
    .filter((at) => at.head >= 0);
  const free = lineOf(model.freePipes.value, x.max, y.max);
  const now = model.pipes.value;
  // A throttled line is steep: it is drawn over the flows it needs to leave the picture, no more.
  const reach = here.head > 0 ? here.flow * 1.1 * Math.sqrt(y.max / here.head) : 0;
  const throttledLine =
    now === undefined || here.flow === 0 ? [] : lineOf(now, Math.min(reach, x.max), y.max);
  const path = (line: readonly HeadAt[]) =>
    linePath(
      line.map((at) => ({ x: at.flow, y: at.head })),
      x,
      y,
    );
  const gap = here.valveHead + here.dirtHead;
  const column = [
    { flow: here.flow, head: here.head - gap },
    { flow: here.flow, head: here.head },
  ];
  const efficiencies = evenly(0, end, pointsOnLine).map((flow) => ({
    x: flow,
    y: efficiencyAt(rig, model.pump.value, flow),
  }));
  const [pumpLabel, freeLabel, pipesLabel] = labelsOf(sides, { known, free, now: throttledLine });
  return {
    known: path(known),
    beyond: beyond.length > 1 ? path(beyond) : '',
    pipes: path(throttledLine),
    free: path(free),
    lost: gap > 0 ? path(column) : '',
    efficiency: linePath(efficiencies, x, sides.efficiency.axis),
    pumpLabel,
    freeLabel,
    pipesLabel: gap > 0.03 * y.max ? pipesLabel : undefined,
  };
}

/** The head that pipes take, from no flow to where it leaves the picture. */
function lineOf(pipes: CompiledCircuit, greatestFlow: number, greatestHead: number): HeadAt[] {
  return evenly(0, greatestFlow, pointsOnLine)
    .map((flow) => ({ flow, head: compiledHead(pipes, flow) }))
    .filter(({ head }) => head <= greatestHead);
}

interface Lines {
  readonly known: readonly HeadAt[];
  readonly free: readonly HeadAt[];
  readonly now: readonly HeadAt[];
}

function labelsOf(sides: Sides, { known, free, now }: Lines): (Placement | undefined)[] {
  const spots = (line: readonly HeadAt[]) => line.map((at) => spotOf(sides, at));
  const size = { height: 0.08 };
  return placeLabels([
    { ...size, line: spots(known), width: 0.3, wish: 0.1 },
    { ...size, line: spots(free), width: 0.4, wish: 0.6 },
    { ...size, line: spots(now), width: 0.28, wish: 0.3 },
  ]);
}
