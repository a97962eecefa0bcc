/** Writing numbers: plain decimals, never an exponent, never a minus before nothing. */

/** U+202F: groups thousands and cannot break a line. */
export const thinSpace = '\u202f';
/** U+00A0: holds a number and its unit together. */
export const hardSpace = '\u00a0';
/** U+2212, as wide as the plus sign and the figures of a table. */
export const minusSign = '\u2212';
/** Stands where a value is missing. */
export const noValue = '\u2013';

const mostPlaces = 60;

/** Power of ten of the first figure that is not 0; 0 for 0. */
export function magnitude(value: number): number {
  return value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
}

/** Places after the point that show `figures` figures, but never more than `places`. */
export function placesFor(value: number, figures: number, places: number): number {
  return Math.min(Math.max(figures - 1 - magnitude(value), 0), places);
}

/** `value` with a fixed number of places, a point, no grouping and no "-0". */
export function fixed(value: number, places: number): string {
  const text = value.toFixed(Math.min(places, mostPlaces));
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}

/** `value` rounded to `figures` figures, written out without trailing zeros. */
export function shortest(value: number, figures: number): string {
  const rounded = Number(value.toPrecision(figures));
  const text = fixed(rounded, Math.max(figures - 1 - magnitude(rounded), 0));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** Thin spaces between thousands, from five digits on (NIST SP 811, 10.5.3); a true minus sign. */
export function grouped(plain: string): string {
  const [whole = '', decimals] = plain.replace('-', '').split('.');
  const body = whole.length < 5 ? whole : whole.replace(/\B(?=(\d{3})+$)/g, thinSpace);
  const sign = plain.startsWith('-') ? minusSign : '';
  return sign + (decimals === undefined ? body : `${body}.${decimals}`);
}
