/** Where things stand in the drawing of the pad, in its own units; y grows downward. */
import type { Spot } from '#ui/charts/labels.ts';

export const drawing = { width: 400, height: 272 } as const;
/** Middle of the suction gauge; the filter gauge stands at its own height on its own line. */
export const suctionGauge = { x: 96, y: 168 } as const;
export const filterGaugeX = 318;
export const dialRadius = 34;
/** Where the height between the gauges is drawn. */
export const heightX = 196;
/** How far the height dial's whole range reaches up the drawing. */
const reach = 150;
/** How far a needle turns to either side of upright [degrees]. */
const sweep = 130;

/** Level of the filter gauge for a height above the suction gauge, within a range. */
export function levelOf(height: number, least: number, greatest: number): number {
  const perMetre = reach / (greatest - least);
  return suctionGauge.y - height * perMetre;
}

/** The height that a level stands for. */
export function heightAt(level: number, least: number, greatest: number): number {
  return ((suctionGauge.y - level) * (greatest - least)) / reach;
}

/** Turn of a needle [degrees, clockwise from upright]. */
export function turnOf(value: number, least: number, greatest: number): number {
  const part = (value - least) / (greatest - least);
  return (2 * Math.min(1, Math.max(0, part)) - 1) * sweep;
}

/** The value whose needle would point from the middle of a dial to a place. */
export function valueAtTurn(x: number, y: number, least: number, greatest: number): number {
  const turn = (Math.atan2(x, -y) * 180) / Math.PI;
  const part = (Math.min(sweep, Math.max(-sweep, turn)) / sweep + 1) / 2;
  return least + part * (greatest - least);
}

/** Place of a needle's tip. */
export function tipOf(x: number, y: number, turn: number): { x: number; y: number } {
  const angle = (turn * Math.PI) / 180;
  const length = dialRadius - 8;
  return { x: x + length * Math.sin(angle), y: y - length * Math.cos(angle) };
}

/** A place as fractions of the drawing. */
export function spotOf(x: number, y: number): Spot {
  return { x: x / drawing.width, y: y / drawing.height };
}
