/**
 * Changing a day's blocks. Everything here is a plain function from blocks to blocks: no two blocks
 * ever share a minute, and whatever could not be done as wished is told as a value.
 *
 * A block that grows or moves makes its neighbour give way, but never below the shortest block.
 */

import type { PadBlock } from '#pad/document/schema.ts';
import { blockMinutes, wrapMinute } from '#ui/charts/ring.ts';

/** No change makes a block shorter than this [min]. */
export const shortestBlock = 15;
/** More blocks than a day may hold. */
export const mostBlocks = 48;
/** How long a new block lasts where there is room [min]. */
const newBlockMinutes = 120;
const day = 1440;

/** What is taken hold of. */
export type Grip = 'start' | 'end' | 'body';

export interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** What there is to say about a change. Minutes are minutes of the day. */
export type Said =
  /** A neighbour was shortened and now starts or ends at `minute`. */
  | {
      readonly kind: 'gaveWay';
      readonly block: Stretch;
      readonly edge: 'start' | 'end';
      readonly minute: number;
    }
  /** It went only as far as `minute`, where the neighbour has its shortest length. */
  | {
      readonly kind: 'neighbourShort';
      readonly grip: Grip;
      readonly neighbour: Stretch;
      readonly minute: number;
    }
  /** It went only as far as `minute`: the block itself has its shortest length. */
  | { readonly kind: 'selfShort'; readonly grip: Grip; readonly minute: number }
  /** What was typed would run over a neighbour; nothing was changed. It `stays` where it was; `minute` is as far as it can go. */
  | {
      readonly kind: 'wouldCover';
      readonly grip: Grip;
      readonly neighbour: Stretch;
      readonly wish: number;
      readonly stays: number;
      readonly minute: number;
    }
  /** What was typed would leave too little; nothing was changed. */
  | {
      readonly kind: 'tooShort';
      readonly grip: Grip;
      readonly wish: number;
      readonly stays: number;
      readonly minute: number;
    }
  /** The day was full, so a block gave up a stretch to the new one. */
  | { readonly kind: 'splitOff'; readonly block: Stretch; readonly taken: Stretch }
  | { readonly kind: 'tooMany' }
  | { readonly kind: 'noRoom' };

export interface Edited {
  readonly blocks: readonly PadBlock[];
  readonly said: Said | null;
}

const lengthOf = (block: Stretch): number => blockMinutes(block.start, block.end);
/** The way forward from one minute to another, 0 up to 1439. */
const forward = (from: number, to: number): number => wrapMinute(to - from);
/** What a block keeps when another grows into it: one that is shorter already is left as it is. */
const keeps = (block: Stretch): number => Math.min(shortestBlock, lengthOf(block));
const clamp = (value: number, least: number, most: number) =>
  Math.min(most, Math.max(least, value));

/** The blocks in the order of the clock. */
export function inOrder(blocks: readonly PadBlock[]): readonly PadBlock[] {
  return [...blocks].sort((a, b) => a.start - b.start);
}

interface Neighbours {
  readonly before: PadBlock;
  readonly after: PadBlock;
}

/** The blocks before and after one on the clock's ring; null when it stands alone. */
function neighboursOf(blocks: readonly PadBlock[], id: string): Neighbours | null {
  const ordered = inOrder(blocks);
  const place = ordered.findIndex((block) => block.id === id);
  const before = ordered.at(place - 1);
  const after = ordered[(place + 1) % ordered.length];
  if (ordered.length < 2 || before === undefined || after === undefined) return null;
  return { before, after };
}

/** How far either edge can go outward, and where the neighbour begins to give way [min]. */
interface Room {
  readonly gapBefore: number;
  readonly gapAfter: number;
  readonly mostBefore: number;
  readonly mostAfter: number;
}

function roomAround(block: PadBlock, beside: Neighbours | null): Room {
  if (beside === null) {
    const free = day - lengthOf(block);
    return { gapBefore: free, gapAfter: free, mostBefore: free, mostAfter: free };
  }
  const { before, after } = beside;
  const gapBefore = forward(before.end, block.start);
  const gapAfter = forward(block.end, after.start);
  return {
    gapBefore,
    gapAfter,
    mostBefore: gapBefore + lengthOf(before) - keeps(before),
    mostAfter: gapAfter + lengthOf(after) - keeps(after),
  };
}

/** The least and the greatest way a grip can go from where it stands [min]. */
export function reachOf(
  blocks: readonly PadBlock[],
  id: string,
  grip: Grip,
): { readonly least: number; readonly most: number } {
  const block = blocks.find((each) => each.id === id);
  if (block === undefined) return { least: 0, most: 0 };
  const beside = neighboursOf(blocks, id);
  const room = roomAround(block, beside);
  const spare = lengthOf(block) - keeps(block);
  if (grip === 'start') return { least: -room.mostBefore, most: spare };
  if (grip === 'end') return { least: -spare, most: room.mostAfter };
  // Alone on the ring, a block may go round as far as it likes.
  if (beside === null) return { least: -day, most: day };
  return { least: -room.mostBefore, most: room.mostAfter };
}

function shifted(block: PadBlock, grip: Grip, by: number): PadBlock {
  const start = grip === 'end' ? block.start : wrapMinute(block.start + by);
  const end = grip === 'start' ? block.end : wrapMinute(block.end + by);
  return { ...block, start, end };
}

/** The neighbour that a grip runs into when it goes by so much, cut back to make room. */
function giveWay(
  block: PadBlock,
  beside: Neighbours | null,
  grip: Grip,
  by: number,
): { readonly was: PadBlock; readonly now: PadBlock; readonly edge: 'start' | 'end' } | null {
  if (beside === null) return null;
  const room = roomAround(block, beside);
  const moved = shifted(block, grip, by);
  if (grip !== 'start' && by > room.gapAfter) {
    return { was: beside.after, now: { ...beside.after, start: moved.end }, edge: 'start' };
  }
  if (grip !== 'end' && -by > room.gapBefore) {
    return { was: beside.before, now: { ...beside.before, end: moved.start }, edge: 'end' };
  }
  return null;
}

const edgeMinute = (block: Stretch, grip: Grip) => (grip === 'end' ? block.end : block.start);

/** Whether it is the block itself that stops a grip, rather than a neighbour. */
function stoppedBySelf(grip: Grip, by: number): boolean {
  return (grip === 'start' && by > 0) || (grip === 'end' && by < 0);
}

function stopped(
  block: PadBlock,
  beside: Neighbours | null,
  grip: Grip,
  wish: number,
  strict: boolean,
  by: number,
): Said | null {
  const minute = edgeMinute(shifted(block, grip, by), grip);
  const stays = edgeMinute(block, grip);
  const wished = wrapMinute(stays + wish);
  if (stoppedBySelf(grip, wish)) {
    return strict
      ? { kind: 'tooShort', grip, wish: wished, stays, minute }
      : { kind: 'selfShort', grip, minute };
  }
  if (beside === null) return null;
  const neighbour = wish > 0 ? beside.after : beside.before;
  return strict
    ? { kind: 'wouldCover', grip, neighbour, wish: wished, stays, minute }
    : { kind: 'neighbourShort', grip, neighbour, minute };
}

/**
 * Moves a block or one of its ends by whole minutes, later when positive. A strict change is made as
 * wished or not at all, as for something typed; any other goes as far as it can.
 */
export function shift(
  blocks: readonly PadBlock[],
  id: string,
  grip: Grip,
  wish: number,
  strict = false,
): Edited {
  const block = blocks.find((each) => each.id === id);
  if (block === undefined) return { blocks, said: null };
  const beside = neighboursOf(blocks, id);
  const reach = reachOf(blocks, id, grip);
  const by = clamp(Math.round(wish), reach.least, reach.most);
  const short = by === Math.round(wish) ? null : stopped(block, beside, grip, wish, strict, by);
  if (short !== null && strict) return { blocks, said: short };
  if (by === 0) return { blocks, said: short };
  const given = giveWay(block, beside, grip, by);
  const changed = blocks.map((each) => {
    if (each.id === id) return shifted(each, grip, by);
    return given !== null && each.id === given.was.id ? given.now : each;
  });
  return { blocks: changed, said: short ?? saidOf(given) };
}

function saidOf(given: ReturnType<typeof giveWay>): Said | null {
  if (given === null) return null;
  const minute = edgeMinute(given.now, given.edge);
  return { kind: 'gaveWay', block: given.was, edge: given.edge, minute };
}

/** Puts one end of a block at a typed minute, or refuses and says why. */
export function typeEdge(
  blocks: readonly PadBlock[],
  id: string,
  edge: 'start' | 'end',
  minute: number,
): Edited {
  const block = blocks.find((each) => each.id === id);
  if (block === undefined) return { blocks, said: null };
  const length =
    edge === 'end' ? blockMinutes(block.start, minute) : blockMinutes(minute, block.end);
  const growth = length - lengthOf(block);
  return shift(blocks, id, edge, edge === 'end' ? growth : -growth, true);
}

/** The stretches of the day in no block, in the order of the clock; one across midnight is whole. */
export function gapsOf(blocks: readonly PadBlock[]): readonly Stretch[] {
  const ordered = inOrder(blocks);
  return ordered.flatMap((block, place) => {
    const after = ordered[(place + 1) % ordered.length];
    if (after === undefined || lengthOf(block) === day) return [];
    const minutes = ordered.length === 1 ? day - lengthOf(block) : forward(block.end, after.start);
    return minutes > 0 ? [{ start: block.end, end: after.start }] : [];
  });
}

const longest = <S extends Stretch>(stretches: readonly S[]): S | undefined =>
  stretches.reduce<S | undefined>(
    (best, each) => (best === undefined || lengthOf(each) > lengthOf(best) ? each : best),
    undefined,
  );

/**
 * Adds a block where there is most room; in a full day the longest block gives up its second half.
 */
export function addBlock(
  blocks: readonly PadBlock[],
  given: Pick<PadBlock, 'id' | 'speed'>,
): Edited {
  if (blocks.length >= mostBlocks) return { blocks, said: { kind: 'tooMany' } };
  if (blocks.length === 0) {
    return { blocks: [{ ...given, start: 480, end: 960, reason: '' }], said: null };
  }
  const gap = longest(gapsOf(blocks));
  if (gap !== undefined && lengthOf(gap) >= shortestBlock) {
    const minutes = Math.min(lengthOf(gap), newBlockMinutes);
    return fillGap(blocks, { start: gap.start, end: wrapMinute(gap.start + minutes) }, given);
  }
  return splitLongest(blocks, given);
}

/** Puts a new block into a free stretch. */
export function fillGap(
  blocks: readonly PadBlock[],
  { start, end }: Stretch,
  given: Pick<PadBlock, 'id' | 'speed'>,
): Edited {
  if (blocks.length >= mostBlocks) return { blocks, said: { kind: 'tooMany' } };
  return { blocks: [...blocks, { ...given, start, end, reason: '' }], said: null };
}

function splitLongest(blocks: readonly PadBlock[], given: Pick<PadBlock, 'id' | 'speed'>): Edited {
  const block = longest(blocks);
  if (block === undefined || lengthOf(block) < 2 * shortestBlock) {
    return { blocks, said: { kind: 'noRoom' } };
  }
  const half = Math.round(lengthOf(block) / 2 / shortestBlock) * shortestBlock;
  const middle = wrapMinute(block.start + half);
  const taken = { start: middle, end: block.end };
  const rest = blocks.map((each) => (each.id === block.id ? { ...each, end: middle } : each));
  return {
    blocks: [...rest, { ...given, ...taken, reason: '' }],
    said: { kind: 'splitOff', block, taken },
  };
}

export function removeBlock(blocks: readonly PadBlock[], id: string): readonly PadBlock[] {
  return blocks.filter((block) => block.id !== id);
}

/** Speed and reason are the block's own and touch no other. */
export function describeBlock(
  blocks: readonly PadBlock[],
  id: string,
  change: Partial<Pick<PadBlock, 'speed' | 'reason'>>,
): readonly PadBlock[] {
  return blocks.map((block) => (block.id === id ? { ...block, ...change } : block));
}
