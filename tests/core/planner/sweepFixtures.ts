import { expect } from 'vitest';
import type { FoundDay } from '#core/planner/cheapestDay.ts';
import type { CheapestDayInputs } from '#core/planner/inputs.ts';
import type { SweptDay } from '#core/planner/sweep.ts';
import { inventedSpeeds, nothingAsked } from './cases.ts';

export const hour = 60;

export const asked: CheapestDayInputs = { ...nothingAsked, speeds: inventedSpeeds(24) };

export const evenly = (from: number, to: number, count: number) =>
  Array.from({ length: count }, (_, place) => from + ((to - from) * place) / (count - 1));

export function foundIn({ day }: SweptDay): FoundDay {
  if (day?.kind !== 'found') return expect.fail(`no day was found: ${day?.kind}`);
  return day;
}
