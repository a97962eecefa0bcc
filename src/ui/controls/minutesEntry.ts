/** How the minutes of the form are written and read back. */
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';
import { editable } from '#units/format.ts';
import { parse } from '#units/parse.ts';
import type { UnitOf } from '#units/quantities.ts';
import { sentenceFor } from '#units/sentences.ts';
import type { Entry } from './entry.ts';

const minute = 60;
const day = 1440;

/** As few figures as read back as the same minute: 5 h 8 min are "5.13", and not "5.13333333333". */
function wholeMinutes(minutes: number, unit: UnitOf<'duration'>): string {
  const shown = fromSI('duration', minutes * minute, unit);
  const texts = [0, 1, 2].map((places) => String(Number(shown.toFixed(places))));
  const isSame = (text: string) =>
    Math.round(toSI('duration', Number(text), unit) / minute) === Math.round(minutes);
  return texts.find(isSame) ?? editable('duration', minutes * minute, unit);
}

/** Whole minutes, written as a time in the reader's unit; "90 min" is read as well. */
export function minutesEntry(name: string, units: UnitChoice): Entry<number> {
  const unit = unitFor(units, 'duration');
  return {
    format: (minutes) => wholeMinutes(minutes, unit),
    parse: (text) => {
      const range = { least: 0, greatest: day * minute };
      const result = parse(text, 'duration', unit, range);
      if (!result.ok) return { ok: false, problem: sentenceFor(result, name) };
      return { ok: true, value: Math.round(result.si / minute) };
    },
  };
}
