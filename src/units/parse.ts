/** What a reader typed, as a stored value or as a problem with a code. Never throws on input. */
import { toSI } from './convert.ts';
import { type Quantity, quantitySpec, type UnitOf, unitSpec, unitsOf } from './quantities.ts';
import { type NumberReading, plainMarks, readNumber, splitNumber } from './readNumber.ts';

/** Allowed stored values, ends included. */
export interface Range {
  readonly least?: number | undefined;
  readonly greatest?: number | undefined;
}

export type ParseCode =
  | 'empty'
  | 'notANumber'
  | 'unknownUnit'
  | 'belowLeast'
  | 'aboveGreatest'
  | 'ambiguousComma';

/** What a sentence about the problem needs; values are stored ones unless named otherwise. */
export interface ProblemValues<Q extends Quantity = Quantity> {
  readonly typed: string;
  readonly quantity: Q;
  /** The unit of the field, or the one that was typed. */
  readonly unit: UnitOf<Q>;
  readonly si?: number;
  readonly range: Range;
  /** The two readings of a comma, in `unit`. */
  readonly grouped?: number;
  readonly decimal?: number;
  /** What stood where a unit was expected. */
  readonly unknown?: string;
}

export interface Problem<Q extends Quantity = Quantity> {
  readonly ok: false;
  readonly code: ParseCode;
  readonly values: ProblemValues<Q>;
}

export type ParseResult<Q extends Quantity = Quantity> =
  | { readonly ok: true; readonly si: number; readonly unit: UnitOf<Q> }
  | Problem<Q>;

/** Bounds met to this share count as met: they may have been converted on their way. */
const boundSlack = 1e-12;

const squeezed = (text: string): string => text.toLowerCase().replace(/[\s.]/g, '');

/** The unit of the quantity that `text` names, if any. */
export function unitNamed<Q extends Quantity>(quantity: Q, text: string): UnitOf<Q> | undefined {
  const wanted = squeezed(text);
  return unitsOf(quantity).find((id) => {
    const { symbol, one, many, typed = [] } = unitSpec(quantity, id);
    return [id, symbol, one, many, ...typed].some((name) => squeezed(name) === wanted);
  });
}

const feetAndInches = /^(-?)([^-]+?) ?(?:ft|feet|foot|'|′) ?(.+?) ?(?:inches|inch|in|"|″)$/i;

/** `5 ft 6 in` and `5' 6"`, for every quantity measured in feet. */
function readFeetAndInches(quantity: Quantity, text: string): number | undefined {
  if (!Object.hasOwn(quantitySpec(quantity).units, 'ft')) return undefined;
  const [, sign, feetText, inchText] = feetAndInches.exec(text) ?? [];
  if (feetText === undefined || inchText === undefined) return undefined;
  const feet = readNumber(feetText);
  const inches = readNumber(inchText);
  if (feet.kind !== 'number' || inches.kind !== 'number') return undefined;
  const si = toSI('length', feet.value, 'ft') + toSI('diameter', inches.value, 'in');
  return sign === '-' ? -si : si;
}

function boundBroken(si: number, { least, greatest }: Range): ParseCode | undefined {
  if (least !== undefined && si < least - boundSlack * Math.abs(least)) return 'belowLeast';
  if (greatest !== undefined && si > greatest + boundSlack * Math.abs(greatest)) {
    return 'aboveGreatest';
  }
  return undefined;
}

function clamped(si: number, { least = -Infinity, greatest = Infinity }: Range): number {
  return Math.min(Math.max(si, least), greatest);
}

/** Settles one number against the range; the comma is asked about only where the answer matters. */
function settle<Q extends Quantity>(
  reading: NumberReading,
  values: ProblemValues<Q>,
): ParseResult<Q> {
  const { quantity, unit, range } = values;
  if (reading.kind === 'none') return { ok: false, code: 'notANumber', values };
  const shown = reading.kind === 'number' ? reading.value : reading.grouped;
  const si = toSI(quantity, shown, unit);
  if (!Number.isFinite(si)) return { ok: false, code: 'notANumber', values };
  const broken = boundBroken(si, range);
  if (broken === undefined) return { ok: true, si: clamped(si, range), unit };
  if (reading.kind === 'either') {
    const { grouped, decimal } = reading;
    if (boundBroken(toSI(quantity, decimal, unit), range) === undefined) {
      return { ok: false, code: 'ambiguousComma', values: { ...values, grouped, decimal } };
    }
  }
  return { ok: false, code: broken, values: { ...values, si } };
}

function settleStored<Q extends Quantity>(si: number, values: ProblemValues<Q>): ParseResult<Q> {
  const broken = boundBroken(si, values.range);
  return broken === undefined
    ? { ok: true, si: clamped(si, values.range), unit: values.unit }
    : { ok: false, code: broken, values: { ...values, si } };
}

/**
 * Reads a number in the field's unit, or in another unit of the same quantity typed behind it:
 * "55", "7,5", "1 1/2", "17 235", "8 m3/h". The range is in stored values.
 */
export function parse<Q extends Quantity>(
  text: string,
  quantity: Q,
  unit: UnitOf<Q>,
  range: Range = {},
): ParseResult<Q> {
  const plain = plainMarks(text);
  const values: ProblemValues<Q> = { typed: plain, quantity, unit, range };
  if (plain === '') return { ok: false, code: 'empty', values };
  const stored = readFeetAndInches(quantity, plain);
  if (stored !== undefined) return settleStored(stored, values);
  const { numeral, rest } = splitNumber(plain);
  const reading = readNumber(numeral);
  if (reading.kind === 'none' || rest === '') return settle(reading, values);
  const named = unitNamed(quantity, rest);
  if (named === undefined) {
    return { ok: false, code: 'unknownUnit', values: { ...values, unknown: rest } };
  }
  return settle(reading, { ...values, unit: named });
}
