/** What one speed gives, what each need and each limit asks for, and where the head goes. */

import { crossedLimits, type Limit } from '#core/day/limits.ts';
import type { Unreachable } from '#core/day/needs.ts';
import type { PadBand } from '#core/fit/padEvidence.ts';
import { lackingIds } from '#core/fit/resistance.ts';
import {
  type FastestPlace,
  type HeadShare,
  headShares,
  largestVelocity,
} from '#core/hydraulics/circuit.ts';
import { type OperatingPoint, ratioForFlow } from '#core/pump/operatingPoint.ts';
import { coversFlow } from '#core/pump/statedPower.ts';
import { ruleOn, type Tariff } from '#core/tariff/tariff.ts';
import type { CalendarDate } from '#core/time/calendar.ts';
import { filteredShare, turnoversInRun, turnoverTime } from '#core/water/mixing.ts';
import type { Section } from '#pad/document/schema.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import { bandNear, ratioWhere, type Scene, settable, settableBelow } from './scene.ts';

/** What one speed gives. */
export interface Here {
  /** [rpm] */
  readonly speed: number;
  readonly point: OperatingPoint;
  /** [m3/s]; 0 when no water moves. */
  readonly flow: number;
  /** [m] */
  readonly head: number;
  /** Wire power [W]. */
  readonly power: number;
  /** Whether the watts lie past those of the data sheet, whose nearest are taken. */
  readonly isPowerCarried: boolean;
  readonly band: PadBand;
  /** Fastest water on either side; undefined where no pipe is described. */
  readonly suction: FastestPlace | undefined;
  readonly discharge: FastestPlace | undefined;
  /** [A] as read at this very speed, or null: amperes do not follow from the watts. */
  readonly current: number | null;
  /** Time of one turnover [s], or null. */
  readonly turnover: number | null;
  /** Share of the water filtered in a day at this speed [-], or null. */
  readonly filtered: number | null;
  readonly crossed: readonly Limit[];
}

const secondsInDay = 86_400;

export function hereAt(scene: Scene, speed: number): Here {
  const { running, speeds, known, limits } = scene;
  const ratio = speed / speeds.reference;
  const point = running.pointAt(ratio);
  const flow = point.kind === 'flowing' ? point.flow : 0;
  const head = point.kind === 'flowing' ? point.head : point.shutoffHead;
  const power = running.powerAt(ratio);
  const fastest = (side: 'suction' | 'discharge') => largestVelocity(running.circuit, flow, side);
  const { volume } = known;
  const turns = volume !== null && volume > 0 && flow > 0;
  return {
    speed,
    point,
    flow,
    head,
    power,
    isPowerCarried: flow > 0 && !coversFlow(running.power, flow, ratio),
    band: bandNear(scene, ratio, { flow, head, power }),
    suction: fastest('suction'),
    discharge: fastest('discharge'),
    current: currentAt(scene, speed),
    turnover: turns ? turnoverTime(volume, flow) : null,
    filtered: turns ? filteredShare(turnoversInRun(volume, flow, secondsInDay)) : null,
    crossed: crossedLimits(limits, flow, ratio),
  };
}

/** Current as it was last read at a speed; none at any other. */
function currentAt({ pad, step }: Scene, speed: number): number | null {
  const read = pad.readings.findLast(
    (each) =>
      each.current !== null && each.speed !== null && Math.abs(each.speed - speed) < step / 2,
  );
  return read?.current ?? null;
}

/** The dearest and the cheapest price of a day. */
export interface Prices {
  /** [currency/kWh] */
  readonly low: number;
  readonly high: number;
  readonly currency: string;
}

export function pricesOn(tariff: Tariff, date: CalendarDate): Prices | null {
  const all = ruleOn(tariff, date).dayType.bands.map(({ price }) => price);
  if (all.length === 0) return null;
  return { low: Math.min(...all), high: Math.max(...all), currency: tariff.currency };
}

/** One need with the slowest speed that serves it, or with why there is none. */
export type LadderRung = { readonly id: string; readonly need: NamedNeed } & (
  | { readonly kind: 'served'; readonly here: Here }
  | {
      readonly kind: 'unreachable';
      readonly reason: Unreachable;
      /** [m3/s] */
      readonly greatestReachableFlow: number;
    }
);

/** The ladder, the fastest rung on top as on a real one; what cannot be reached stands above it. */
export function rungsOf(scene: Scene): readonly LadderRung[] {
  const { known, speeds } = scene;
  const rungs = (known.ladder ?? []).map((rung): LadderRung => {
    const need = rung.need as NamedNeed;
    if (rung.kind === 'unreachable') return { ...rung, id: need.id, need };
    const speed = settable(scene, rung.ratio * speeds.reference);
    return { kind: 'served', id: need.id, need, here: hereAt(scene, speed) };
  });
  const height = (rung: LadderRung) =>
    rung.kind === 'served' ? rung.here.speed : Number.POSITIVE_INFINITY;
  return rungs.toSorted((a, b) => (height(a) === height(b) ? 0 : height(b) - height(a)));
}

/** When a limit is crossed: the greatest speed that keeps it, by the likeliest flow and by the most. */
export interface LimitRow {
  readonly limit: Limit;
  readonly crossed: 'always' | 'above' | 'never';
  /** Fastest speed that keeps it by the likeliest flow [rpm]; null when every speed does or none. */
  readonly keeps: number | null;
  /** The same even at the upper end of the band [rpm]; null when every speed keeps it, 0 when none does. */
  readonly surelyKeeps: number | null;
}

/** The limits, hard stops first. */
export function limitRows(scene: Scene): readonly LimitRow[] {
  const rows = scene.limits.map((limit) => limitRow(scene, limit));
  return rows.toSorted((a, b) => Number(b.limit.hard) - Number(a.limit.hard));
}

function limitRow(scene: Scene, limit: Limit): LimitRow {
  const { machine, speeds, notches } = scene;
  if (limit.hard) return stopRow(scene, limit);
  const [min, max] = [speeds.least / speeds.reference, speeds.top / speeds.reference];
  const bound = ratioWhere(scene, ({ band }) => band.flow.high, limit.greatestFlow);
  const surelyKeeps =
    bound === null ? null : bound <= min ? 0 : settableBelow(scene, bound * speeds.reference);
  const slowest = notches[0]?.flow ?? 0;
  if (crossedLimits([limit], slowest).length > 0) {
    return { limit, crossed: 'always', keeps: null, surelyKeeps };
  }
  const fastest = notches.at(-1)?.flow ?? 0;
  if (crossedLimits([limit], fastest).length === 0) {
    return { limit, crossed: 'never', keeps: null, surelyKeeps };
  }
  const found = ratioForFlow(machine.curve, machine.circuit, limit.greatestFlow, { min, max });
  const ratio = found.kind === 'found' ? found.ratio : max;
  const keeps = settableBelow(scene, ratio * speeds.reference);
  return { limit, crossed: 'above', keeps, surelyKeeps };
}

/** A hard stop holds at the worst state of the pad, so its speed is one and has no band. */
function stopRow(scene: Scene, limit: Limit): LimitRow {
  const { least, reference } = scene.speeds;
  const { greatestRatio } = limit;
  if (greatestRatio === undefined)
    return { limit, crossed: 'never', keeps: null, surelyKeeps: null };
  const stop = greatestRatio * reference;
  if (stop < least) return { limit, crossed: 'always', keeps: null, surelyKeeps: 0 };
  const keeps = settableBelow(scene, stop);
  return { limit, crossed: 'above', keeps, surelyKeeps: keeps };
}

/** One piece of the head, by part or by a group of parts. */
export interface HeadPiece {
  readonly id: string;
  /** The parts it is made of: one, or all pipe and fittings of a side. */
  readonly what:
    | Section
    | 'suctionPipes'
    | 'dischargePipes'
    | 'suction'
    | 'discharge'
    | 'suctionLacking'
    | 'dischargeLacking'
    | 'lift';
  /** [m] */
  readonly head: number;
}

/** More pieces than this are too many to tell apart in a bar. */
const mostPieces = 8;

/** Share of the head below which what the description lacks shows as nothing [-]. */
const sliverShare = 0.005;

/** Whether a part is what the description lacks, and too little to be told apart. */
export const isSliver = ({ id, side, head }: HeadShare, whole: number): boolean =>
  id === lackingIds[side] && head < sliverShare * whole;

/** Where the head goes, in the order the water meets the parts; the pieces add up to the head. */
export function headPieces({ running, pad }: Scene, { flow, head }: Here): readonly HeadPiece[] {
  if (flow === 0) return [];
  const pieces = new Map<string, { side: HeadShare['side']; shares: HeadShare[] }>();
  for (const share of headShares(running.circuit, flow)) {
    if (share.id === 'static') continue;
    const id = share.path[0] ?? share.id;
    const piece = pieces.get(id) ?? { side: share.side, shares: [] };
    piece.shares.push(share);
    pieces.set(id, piece);
  }
  const sections = new Map(
    [...pad.plumbing.suction, ...pad.plumbing.discharge].map((section) => [section.id, section]),
  );
  const merged = pieces.size > mostPieces;
  const found = new Map<string, HeadPiece & { readonly side: HeadShare['side'] }>();
  for (const [id, { side, shares }] of pieces) {
    const what =
      id === lackingIds[side]
        ? (`${side}Lacking` as const)
        : pieceName(sections.get(id) ?? side, side, merged);
    const key = typeof what === 'string' ? what : id;
    const before = found.get(key)?.head ?? 0;
    found.set(key, { id: key, what, head: before + wayHead(shares, 0), side });
  }
  for (const { id, side, head: sliver } of found.values()) {
    if (id !== `${side}Lacking` || sliver >= sliverShare * head) continue;
    // Too little to be told apart goes with the largest piece of its side, so that the pieces add up.
    found.delete(id);
    const own = [...found.values()].filter((piece) => piece.side === side);
    const [largest] = own.toSorted((one, other) => other.head - one.head);
    if (largest) found.set(largest.id, { ...largest, head: largest.head + sliver });
  }
  const lift = head - [...found.values()].reduce((sum, piece) => sum + piece.head, 0);
  // What no part takes is height: of the whole loop, or of the branch that breaks free above the pool.
  const risen: HeadPiece[] = lift > 1e-6 * head ? [{ id: 'lift', what: 'lift', head: lift }] : [];
  return [...found.values(), ...risen];
}

function pieceName(
  section: Section | HeadShare['side'],
  side: HeadShare['side'],
  merged: boolean,
): HeadPiece['what'] {
  if (typeof section === 'string' || !merged) return section;
  const plain = section.kind === 'pipe' || section.kind === 'fitting';
  return plain ? `${side}Pipes` : section;
}

/** Head along one way through parts and groups; every way of a group takes the same. */
function wayHead(shares: readonly HeadShare[], depth: number): number {
  const here = shares.filter(({ path }) => path.length === depth);
  const inside = shares.filter(({ path }) => path.length > depth);
  const groups = Map.groupBy(inside, ({ path }) => path[depth]);
  const through = [...groups.values()].map((group) => {
    const ways = [...Map.groupBy(group, ({ path }) => path[depth + 1]).values()];
    return Math.max(...ways.map((way) => wayHead(way, depth + 2)));
  });
  return [...here.map((share) => share.head), ...through].reduce((sum, head) => sum + head, 0);
}
