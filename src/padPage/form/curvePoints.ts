/** Points of a pump's curve: read from pasted text, and carried from one way of knowing to another. */
import type { PumpKnowledge } from '#pad/document/schema.ts';
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { parse } from '#units/parse.ts';
import type { Quantity } from '#units/quantities.ts';
import { sentenceFor } from '#units/sentences.ts';

export type CurvePoint = Extract<PumpKnowledge, { kind: 'curve' }>['points'][number];

export type Pasted =
  | { readonly ok: true; readonly points: readonly CurvePoint[] }
  | { readonly ok: false; readonly problem: string };

export const noPoint: CurvePoint = { flow: null, head: null, power: null };

const mostPoints = 60;

/** A line cut into its columns: by tabs or semicolons where it has any, else by blanks or commas. */
function columns(line: string): readonly string[] {
  const cut = /[\t;|]/.test(line) ? /[\t;|]/ : /\s/.test(line) ? /,?\s+/ : /,/;
  return line
    .split(cut)
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '');
}

type Cell =
  | { readonly ok: true; readonly si: number }
  | { readonly ok: false; readonly problem: string };

function cell(text: string, quantity: Quantity, units: UnitChoice): Cell {
  const result = parse(text, quantity, unitFor(units, quantity), { least: 0 });
  return result.ok ? { ok: true, si: result.si } : { ok: false, problem: sentenceFor(result) };
}

function pointFrom(cells: readonly string[], units: UnitChoice): CurvePoint | string {
  const [flowText = '', headText = '', powerText] = cells;
  if (headText === '') return 'It needs two columns: flow, then head.';
  const flow = cell(flowText, 'flow', units);
  if (!flow.ok) return flow.problem;
  const head = cell(headText, 'head', units);
  if (!head.ok) return head.problem;
  if (powerText === undefined) return { flow: flow.si, head: head.si, power: null };
  const power = cell(powerText, 'power', units);
  return power.ok ? { flow: flow.si, head: head.si, power: power.si } : power.problem;
}

/** Points out of pasted lines: flow, head and perhaps power, in the reader's units. */
export function pastedPoints(text: string, units: UnitChoice): Pasted {
  const lines = text.split(/\r?\n/).map((line) => line.trim());
  const points: CurvePoint[] = [];
  for (const [place, line] of lines.entries()) {
    // Headings have no figures in them.
    if (!/\d/.test(line)) continue;
    const point = pointFrom(columns(line), units);
    if (typeof point === 'string') return { ok: false, problem: `Line ${place + 1}: ${point}` };
    points.push(point);
  }
  if (points.length === 0) {
    return {
      ok: false,
      problem: 'There are no figures here yet. Paste two columns: flow, then head.',
    };
  }
  if (points.length > mostPoints) {
    return { ok: false, problem: `These are ${points.length} points; ${mostPoints} is the most.` };
  }
  return { ok: true, points };
}

function pointsOf(knowledge: PumpKnowledge): readonly CurvePoint[] {
  if (knowledge.kind !== 'nameplate') return knowledge.points;
  const { flow, head } = knowledge;
  return flow === null && head === null ? [] : [{ flow, head, power: null }];
}

/** First, middle and last, as many as there are. */
function threeOf(points: readonly CurvePoint[]): readonly CurvePoint[] {
  if (points.length <= 3) return points;
  const middle = Math.floor((points.length - 1) / 2);
  return [points[0], points[middle], points.at(-1)].map((point) => point ?? noPoint);
}

function filledTo(points: readonly CurvePoint[], many: number): readonly CurvePoint[] {
  const missing = Math.max(many - points.length, 0);
  return [...points, ...Array.from({ length: missing }, () => noPoint)];
}

/** Another way of knowing the pump, with as much carried over as it can hold. */
export function knowledgeAs(kind: PumpKnowledge['kind'], before: PumpKnowledge): PumpKnowledge {
  if (kind === before.kind) return before;
  if (kind === 'nameplate') {
    const middle = threeOf(pointsOf(before))[1];
    return {
      kind,
      power: null,
      powerMeans: null,
      flow: middle?.flow ?? null,
      head: middle?.head ?? null,
    };
  }
  if (kind === 'curve') return { kind, points: [...filledTo(pointsOf(before), 3)] };
  const three =
    before.kind === 'nameplate'
      ? [{ ...noPoint, flow: 0 }, ...pointsOf(before)]
      : threeOf(pointsOf(before));
  return { kind, points: [...filledTo(three, 3)] };
}
