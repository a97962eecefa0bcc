/** How the minutes of the form are written and read back. */
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { editable } from '#units/format.ts';
import { parse } from '#units/parse.ts';
import { sentenceFor } from '#units/sentences.ts';
import type { Entry } from '#widgets/kit/entry.ts';

const minute = 60;
const day = 1440;

/** Whole minutes, written as a time in the reader's unit; "90 min" is read as well. */
export function minutesEntry(name: string, units: UnitChoice): Entry<number> {
  const unit = unitFor(units, 'duration');
  return {
    format: (minutes) => editable('duration', minutes * minute, unit),
    parse: (text) => {
      const range = { least: 0, greatest: day * minute };
      const result = parse(text, 'duration', unit, range);
      if (!result.ok) return { ok: false, problem: sentenceFor(result, name) };
      return { ok: true, value: Math.round(result.si / minute) };
    },
  };
}
