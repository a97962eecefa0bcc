/** How the numbers of the form are written and read back. */
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { editable } from '#units/format.ts';
import { grouped, shortest } from '#units/numerals.ts';
import { parse, type Range } from '#units/parse.ts';
import { plainMarks, readNumber } from '#units/readNumber.ts';
import { sentenceFor } from '#units/sentences.ts';
import type { Entry } from '#widgets/kit/entry.ts';

const shown = (value: number): string => grouped(shortest(value, 12));

function allowed({ least, greatest }: Range): string {
  if (least !== undefined && greatest !== undefined) {
    return `from ${shown(least)} to ${shown(greatest)}`;
  }
  if (least !== undefined) return `${shown(least)} or more`;
  return greatest === undefined ? 'a number' : `${shown(greatest)} or less`;
}

/** A number without a unit, such as a price or an exponent. */
export function plainEntry(name: string, range: Range = {}, whole = false): Entry<number> {
  const { least = -Infinity, greatest = Infinity } = range;
  const kind = whole ? 'a whole number' : 'a number';
  return {
    format: (value) => shortest(value, 12),
    parse: (text) => {
      const typed = plainMarks(text);
      const reading = readNumber(typed);
      if (reading.kind === 'none') {
        return { ok: false, problem: `“${typed}” is not a number. Enter the ${name} as ${kind}.` };
      }
      const value = reading.kind === 'number' ? reading.value : reading.decimal;
      if (whole && !Number.isInteger(value)) {
        return { ok: false, problem: `The ${name} must be a whole number.` };
      }
      if (value >= least && value <= greatest) return { ok: true, value };
      const fault = value < least ? 'little' : 'much';
      return {
        ok: false,
        problem: `${typed} is too ${fault}. The ${name} must be ${allowed(range)}.`,
      };
    },
  };
}

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
