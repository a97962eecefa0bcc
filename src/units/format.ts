/** Stored values as text: for the eye, for speech, and for a field that can be edited. */
import { type UnitChoice, unitFor } from './choice.ts';
import { fromSI, toSI } from './convert.ts';
import { fixed, grouped, hardSpace, noValue, placesFor, shortest } from './numerals.ts';
import { type Quantity, type UnitOf, type UnitSpec, unitSpec } from './quantities.ts';

export interface FormatOptions {
  /** Figures to show instead of the unit's usual number. */
  readonly digits?: number;
  /** Fixed places after the point instead, for a column whose points must line up. */
  readonly places?: number;
  /** false leaves the unit away, for a table whose heading has it. */
  readonly withUnit?: boolean;
}

function plainNumber(shown: number, spec: UnitSpec, options: FormatOptions): string {
  if (options.places !== undefined) return fixed(shown, options.places);
  if (shown === 0) return '0';
  const { digits } = options;
  const rounded = digits === undefined ? shown : Number(shown.toPrecision(digits));
  const places =
    digits === undefined
      ? placesFor(shown, spec.figures, spec.places)
      : placesFor(rounded, digits, Number.POSITIVE_INFINITY);
  const text = fixed(rounded, places);
  return Number(text) === 0 ? '0' : text;
}

/** A percent sign and a degree sign follow the same space as other units (NIST SP 811, 7.2). */
function joined(number: string, spec: UnitSpec): string {
  return `${number}${hardSpace}${spec.symbol}`;
}

/** A stored value in a stated unit: "51 gpm", "17 235 gal". A value that is missing is a dash. */
export function formatIn<Q extends Quantity>(
  quantity: Q,
  si: number,
  unit: UnitOf<Q>,
  options: FormatOptions = {},
): string {
  if (!Number.isFinite(si)) return noValue;
  const spec = unitSpec(quantity, unit);
  const number = grouped(plainNumber(fromSI(quantity, si, unit), spec, options));
  return options.withUnit === false ? number : joined(number, spec);
}

/** A stored value in the reader's unit. */
export function format<Q extends Quantity>(
  quantity: Q,
  si: number,
  choice: UnitChoice,
  options: FormatOptions = {},
): string {
  return formatIn(quantity, si, unitFor(choice, quantity), options);
}

/** The same for speech: "51 gallons per minute". No grouping, and "minus" as a word. */
export function speak<Q extends Quantity>(
  quantity: Q,
  si: number,
  choice: UnitChoice,
  options: FormatOptions = {},
): string {
  if (!Number.isFinite(si)) return 'not known';
  const unit = unitFor(choice, quantity);
  const spec = unitSpec(quantity, unit);
  const number = plainNumber(fromSI(quantity, si, unit), spec, options);
  const words = number.replace('-', 'minus ');
  if (options.withUnit === false) return words;
  return `${words} ${number === '1' ? spec.one : spec.many}`;
}

/** The symbol of the reader's unit, for headings and field labels. */
export function symbolFor(choice: UnitChoice, quantity: Quantity): string {
  return unitSpec(quantity, unitFor(choice, quantity)).symbol;
}

const storedFigures = 12;

function sameStored(a: number, b: number, scale: number): boolean {
  return Math.abs(a - b) <= 0.5 * 10 ** -storedFigures * scale;
}

/**
 * The shortest text that reads back as the same stored value, to 12 figures: what a field shows when
 * it is opened, or when its unit changes, so that neither alters what is stored.
 */
export function editable<Q extends Quantity>(quantity: Q, si: number, unit: UnitOf<Q>): string {
  if (!Number.isFinite(si)) return '';
  const shown = fromSI(quantity, si, unit);
  const { factor, zero = 0 } = unitSpec(quantity, unit);
  const scale = Math.max(Math.abs(si), Math.abs(zero * factor));
  for (let figures = 1; figures < 17; figures += 1) {
    const text = shortest(shown, figures);
    if (sameStored(toSI(quantity, Number(text), unit), si, scale)) return text;
  }
  return shortest(shown, 17);
}
