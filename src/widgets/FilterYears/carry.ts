/** The answer as a page carries it: no more figures than the picture and its words show. */
import type { Worked } from './ask.ts';

const figures = 6;

export function carried(worked: Worked): Worked {
  const text = JSON.stringify(worked, (_, value) =>
    typeof value === 'number' ? Number(value.toPrecision(figures)) : value,
  );
  return JSON.parse(text) as Worked;
}
