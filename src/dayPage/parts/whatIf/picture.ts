/** What the picture of a sweep is drawn from: lines, gaps, flags and labels as plain data. */

import type { SweptDay } from '#core/planner/sweep.ts';
import type { Side } from '#ui/charts/Frame.tsx';
import { type Box, type Placement, placeLabels, type Spot } from '#ui/charts/labels.ts';
import { bandPath, linePath } from '#ui/charts/path.ts';
import { type Axis, fraction, niceAxis } from '#ui/charts/scale.ts';
import { type ChangeWords, changesIn, inputWords, minorRank } from './changes.ts';
import type { OwnDay, WhatIfModel } from './model.ts';

/** A mark where the best plan changes. */
export interface Flag {
  /** From the left, 0 to 1. */
  readonly x: number;
  /** Row its words stand in, the topmost 0. */
  readonly row: number;
  readonly label: string;
  /** Words end at the mark instead of beginning there. */
  readonly ends: boolean;
}

export interface Drawn {
  readonly x: Side;
  readonly y: Side;
  readonly cheapest: string;
  /** One dot per value where nothing lies between; empty for a line. */
  readonly dots: readonly Spot[];
  readonly ownKept: string;
  readonly ownShort: string;
  readonly gaps: string;
  readonly flags: readonly Flag[];
  /** Name of the line; of both where one lies on the other. */
  readonly cheapestName: string;
  readonly cheapestLabel: Placement | undefined;
  readonly ownLabel: Placement | undefined;
  readonly presentLabel: Placement | undefined;
  /** Where the pad stands today, or null where it has no day. */
  readonly present: Spot | null;
}

/** Flags shown at most; the table has every change. */
const mostFlags = 3;
/** Nearer to one another than this the more important one stands for both, as a share of the picture. */
const closest = 0.025;
/** Height of a row of words, width of a letter and reach of the handle, as shares of the picture on a phone. */
const rowHeight = 0.08;
const charWidth = 0.025;
const handleReach = 0.06;
/** Width of a name on a line, as much as the style keeps free for it: or it is pushed into another. */
const nameWidth = (text: string) => 0.0295 * text.length + 0.025;

/** Names of the lines and of where the pad stands. */
export const lineNames = {
  cheapest: 'the cheapest day',
  own: 'the day on your sheet',
  both: 'both days',
  present: 'the pad today',
} as const;

const costOf = ({ day }: SweptDay): number | undefined =>
  day?.kind === 'found' ? day.cost : undefined;

export function drawnOf(model: WhatIfModel): Drawn | null {
  const input = model.chosen.value;
  const words = inputWords(model);
  if (input === null || words === null || model.sweep.value === null) return null;
  // Ground that is hatched from end to end would show nothing.
  if (model.isBarren.value) return null;
  const isStepped = input.narrowTo === undefined;
  const { axis } = words.side;
  const days = isStepped ? model.sweep.value.days : model.curve.value;
  const own = model.own.value;
  const flags = flagsOf(changesIn(model), axis, input.present, isStepped);
  const costs = [...days.flatMap((day) => costOf(day) ?? []), ...own.map(({ cost }) => cost)];
  const head = 1 - rowHeight * flags.length - 0.02;
  const least = Math.min(0, ...costs);
  const y: Side = {
    axis: niceAxis({
      min: least,
      max: least + (Math.max(0, ...costs) - least) / head,
      exact: true,
    }),
    title: 'Price of the day',
    unit: model.currency.value.sign,
  };
  const spot = (value: number, cost: number): Spot => ({
    x: fraction(axis, value),
    y: 1 - fraction(y.axis, cost),
  });
  const line = days.flatMap((day) => {
    const cost = costOf(day);
    return cost === undefined ? [] : [spot(day.value, cost)];
  });
  const now = model.present.value;
  const cost = now?.day?.kind === 'found' ? now.day.cost : null;
  const present = now === null || cost === null ? null : spot(now.value, cost);
  const ownLine = own.map((each) => spot(each.value, each.cost));
  const isOne = coincide(line, ownLine);
  return {
    x: words.side,
    y,
    cheapest: isStepped ? steps(days, axis, y.axis) : linePath(pointsOf(days), axis, y.axis),
    dots: isStepped ? line : [],
    ...ownPaths(own, axis, y.axis),
    gaps: gapsOf(days, axis, y.axis, isStepped),
    flags,
    ...labelsOf(line, isOne ? [] : ownLine, present, flags),
    cheapestName: isOne ? lineNames.both : lineNames.cheapest,
    present,
  };
}

/** Whether two lines would be seen as one. */
function coincide(line: readonly Spot[], other: readonly Spot[]): boolean {
  const heights = [...line, ...other].map(({ y }) => y);
  const isLevel = Math.max(...heights) - Math.min(...heights) < 1e-3;
  return line.length > 0 && other.length > 0 && isLevel;
}

/** The names of the two lines and of the present value, clear of the flags and of the handle. */
function labelsOf(
  line: readonly Spot[],
  own: readonly Spot[],
  present: Spot | null,
  flags: readonly Flag[],
): Pick<Drawn, 'cheapestLabel' | 'ownLabel' | 'presentLabel'> {
  const wish = (spots: readonly Spot[], text: string, at: number) => ({
    line: spots,
    width: nameWidth(text),
    height: rowHeight,
    wish: at,
  });
  const far = (present?.x ?? 0) <= 0.5 ? 0.95 : 0.05;
  // The longer name first: the room left over is enough for the shorter, seldom the other way round.
  const [ownLabel, cheapestLabel, presentLabel] = placeLabels(
    [
      wish(own, lineNames.own, far),
      wish(line, lineNames.cheapest, far),
      wish(present === null ? [] : [present], lineNames.present, 0.5),
    ],
    [...flags.map(boxOfFlag), ...(present === null ? [] : [boxOfHandle(present)])],
  );
  return { cheapestLabel, ownLabel, presentLabel };
}

function boxOfFlag({ x, row, label, ends }: Flag): Box {
  const width = charWidth * label.length;
  const left = ends ? x - width : x;
  return { left, right: left + width, top: row * rowHeight, bottom: (row + 1) * rowHeight };
}

const boxOfHandle = ({ x, y }: Spot): Box => ({
  left: x - handleReach,
  right: x + handleReach,
  top: y - handleReach,
  bottom: y + handleReach,
});

const pointsOf = (days: readonly SweptDay[]) =>
  days.map((day) => ({ x: day.value, y: costOf(day) }));

/** A level stretch for each value, since nothing lies between them. */
function steps(days: readonly SweptDay[], x: Axis, y: Axis): string {
  return linePath(
    days.flatMap((day) => {
      const cost = costOf(day);
      return [
        { x: day.value - 0.5, y: cost },
        { x: day.value + 0.5, y: cost },
      ];
    }),
    x,
    y,
  );
}

/** The reader's own day, where it keeps all that is asked and where it falls short; the pieces meet. */
function ownPaths(own: readonly OwnDay[], x: Axis, y: Axis) {
  const path = (belongs: (place: number) => boolean) =>
    linePath(
      own.map(({ value, cost }, place) => ({ x: value, y: belongs(place) ? cost : undefined })),
      x,
      y,
    );
  const isShort = (place: number) => own[place]?.keeps === false;
  return {
    ownKept: path((place) => !isShort(place)),
    ownShort: path((place) => isShort(place) || isShort(place + 1) || isShort(place - 1)),
  };
}

/** The stretches without a day. */
function gapsOf(days: readonly SweptDay[], x: Axis, y: Axis, isStepped: boolean): string {
  const edge = (one: SweptDay | undefined, other: SweptDay | undefined, end: number) =>
    one === undefined || other === undefined ? end : (one.value + other.value) / 2;
  return days
    .flatMap((day, place) => {
      if (day.character !== null) return [];
      const from = isStepped ? day.value - 0.5 : edge(days[place - 1], day, x.min);
      const to = isStepped ? day.value + 0.5 : edge(day, days[place + 1], x.max);
      return [
        bandPath(
          [from, to].map((at) => ({ x: at, low: y.min, high: y.max })),
          x,
          y,
        ),
      ];
    })
    .join('');
}

/** The changes that matter most, each with a row of its own for its words. */
function flagsOf(
  changes: readonly ChangeWords[],
  axis: Axis,
  present: number,
  isStepped: boolean,
): readonly Flag[] {
  const nearness = ({ at }: ChangeWords) => Math.abs(at - present);
  const apart = (one: ChangeWords, other: ChangeWords) =>
    Math.abs(fraction(axis, one.at) - fraction(axis, other.at));
  const kept = changes
    .filter(({ rank }) => rank < minorRank)
    .sort((one, other) => one.rank - other.rank || nearness(one) - nearness(other))
    .filter((each, place, all) =>
      all.slice(0, place).every((better) => apart(each, better) >= closest),
    )
    .slice(0, mostFlags)
    .sort((one, other) => one.at - other.at);
  return kept.map(({ at, label }, row) => {
    const x = fraction(axis, isStepped ? at - 0.5 : at);
    return { x, row, label, ends: x > 0.5 };
  });
}
