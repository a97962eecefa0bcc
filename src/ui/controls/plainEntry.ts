import { grouped, shortest } from '#units/numerals.ts';
import type { Range } from '#units/parse.ts';
import { plainMarks, readNumber } from '#units/readNumber.ts';
import type { Entry } from './entry.ts';

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
