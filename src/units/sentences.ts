/** Problems of input as plain sentences: what is wrong, and what would be right, in the reader's unit. */
import { fromSI } from './convert.ts';
import { grouped, hardSpace, shortest } from './numerals.ts';
import type { ParseCode, Problem, ProblemValues } from './parse.ts';
import { quantitySpec, unitSpec, unitsOf } from './quantities.ts';

/** Figures of a bound: enough that a limit such as 2.067 in is not rounded to a wrong one. */
const boundFigures = 4;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function bound(values: ProblemValues, si: number): string {
  const shown = fromSI(values.quantity, si, values.unit);
  return `${grouped(shortest(shown, boundFigures))}${hardSpace}${symbol(values)}`;
}

function symbol({ quantity, unit }: ProblemValues): string {
  return unitSpec(quantity, unit).symbol;
}

function example({ quantity, unit, range }: ProblemValues): string {
  const { usual } = quantitySpec(quantity);
  const inRange = usual >= (range.least ?? -Infinity) && usual <= (range.greatest ?? Infinity);
  const si = inRange ? usual : (range.least ?? range.greatest ?? usual);
  const shown = fromSI(quantity, si, unit);
  return grouped(shortest(shown, Number.isInteger(shown) ? 4 : 2));
}

function allowed(values: ProblemValues): string {
  const { least, greatest } = values.range;
  if (least !== undefined && greatest !== undefined) {
    return `from ${bound(values, least)} to ${bound(values, greatest)}`;
  }
  if (least !== undefined) return `${bound(values, least)} or more`;
  return greatest === undefined ? 'a number' : `${bound(values, greatest)} or less`;
}

/** As typed, with the field's unit when none was typed. */
function given(values: ProblemValues): string {
  const { typed } = values;
  return /[\d.,]$/.test(typed) ? `${typed}${hardSpace}${symbol(values)}` : typed;
}

function unitList({ quantity }: ProblemValues): string {
  const symbols = unitsOf(quantity).map((id) => unitSpec(quantity, id).symbol);
  return symbols.length < 2
    ? symbols.join('')
    : `${symbols.slice(0, -1).join(', ')} or ${symbols.at(-1)}`;
}

type Sentence = (name: string, values: ProblemValues) => string;

const sentences: Readonly<Record<ParseCode, Sentence>> = {
  empty: (name, values) =>
    `Enter the ${name} in ${symbol(values)}, for example ${example(values)}.`,
  notANumber: (name, values) =>
    `“${values.typed}” is not a number. Enter the ${name} in ${symbol(values)}, for example ${example(values)}.`,
  unknownUnit: (name, values) =>
    `“${values.unknown ?? values.typed}” is not a unit known here for the ${name}. Use ${unitList(values)}.`,
  belowLeast: (name, values) =>
    `${given(values)} is too little. The ${name} must be ${allowed(values)}.`,
  aboveGreatest: (name, values) =>
    `${given(values)} is too much. The ${name} must be ${allowed(values)}.`,
  ambiguousComma: (name, values) =>
    `“${values.typed}” can be read as ${values.grouped} or as ${values.decimal}. The ${name} must be ${allowed(values)}: if you mean ${values.decimal}, write it with a point.`,
};

/** The sentence for a problem. `name` is the field's, as it stands after "the"; else the quantity's. */
export function sentenceFor(problem: Problem, name?: string): string {
  const { code, values } = problem;
  return capital(sentences[code](name ?? quantitySpec(values.quantity).name, values));
}
