/**
 * Reading a number the way people write it.
 *
 * The point is always the decimal mark when it stands alone. Commas:
 * - "1,234.5" and "1.234,5": the last mark is the decimal one, the other groups thousands.
 * - "7,5", "0,125", "1234,567": one comma that cannot be grouping is the decimal mark.
 * - "1,234": one comma before exactly three digits can be either. It is read as grouping; both
 *   readings are given, so that a caller who knows the allowed range can ask instead of guessing.
 */

export type NumberReading =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'either'; readonly grouped: number; readonly decimal: number }
  | { readonly kind: 'none' };

const vulgarFractions: Readonly<Record<string, number>> = {
  '¼': 1 / 4,
  '½': 1 / 2,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};
const vulgar = Object.keys(vulgarFractions).join('');

const numberHead = new RegExp(`^[-+]?[\\d.,\\s/${vulgar}-]*(?:(?<=\\d)e[-+]?\\d+)?`, 'i');
const mixedFraction = /^(?:(\d+)[-\s])?(\d+)\s?\/\s?(\d+)$/;
const vulgarFraction = new RegExp(`^(\\d*)[-\\s]?([${vulgar}])$`);
const decimalNumber = /^(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i;

const none: NumberReading = { kind: 'none' };

/** Plain spaces, ASCII minus, ASCII slash. */
export function plainMarks(text: string): string {
  return text.replace(/[−–‒]/g, '-').replace(/⁄/g, '/').replace(/\s+/g, ' ').trim();
}

/** The leading number and what follows it, usually a unit. */
export function splitNumber(text: string): { readonly numeral: string; readonly rest: string } {
  const numeral = numberHead.exec(text)?.[0] ?? '';
  return { numeral: numeral.trim(), rest: text.slice(numeral.length).trim() };
}

function readFraction(body: string): number | undefined {
  const mixed = mixedFraction.exec(body);
  if (mixed !== null) {
    const [, whole = '0', over, under] = mixed;
    return Number(under) === 0 ? undefined : Number(whole) + Number(over) / Number(under);
  }
  const [, whole, sign = ''] = vulgarFraction.exec(body) ?? [];
  const part = vulgarFractions[sign];
  return whole === undefined || part === undefined ? undefined : Number(whole) + part;
}

function isGrouped(text: string, mark: ',' | '.' | ' '): boolean {
  const groups = text.split(mark);
  return (
    groups.length > 1 &&
    /^\d{1,3}$/.test(groups[0] ?? '') &&
    groups.slice(1).every((group) => /^\d{3}$/.test(group))
  );
}

/** Thousands set apart by spaces, closed up; undefined when a space stands anywhere else. */
function withoutSpaces(body: string): string | undefined {
  if (!body.includes(' ')) return body;
  const whole = body.split(/[.,]/)[0] ?? '';
  return isGrouped(whole, ' ') && body.lastIndexOf(' ') < whole.length
    ? body.replaceAll(' ', '')
    : undefined;
}

function withBothMarks(body: string): NumberReading {
  const decimalMark = body.lastIndexOf(',') > body.lastIndexOf('.') ? ',' : '.';
  const groupMark = decimalMark === ',' ? '.' : ',';
  const parts = body.split(decimalMark);
  const [whole = '', decimals = ''] = parts;
  if (parts.length !== 2 || !isGrouped(whole, groupMark) || !/^\d*$/.test(decimals)) return none;
  return { kind: 'number', value: Number(`${whole.replaceAll(groupMark, '')}.${decimals}`) };
}

function withOneComma(body: string): NumberReading {
  const asDecimal = body.replace(',', '.');
  if (!decimalNumber.test(asDecimal)) return none;
  const decimal = Number(asDecimal);
  if (!/^[1-9]\d{0,2},\d{3}$/.test(body)) return { kind: 'number', value: decimal };
  return { kind: 'either', grouped: Number(body.replace(',', '')), decimal };
}

function readUnsigned(body: string): NumberReading {
  const fraction = readFraction(body);
  if (fraction !== undefined) return { kind: 'number', value: fraction };
  const closed = withoutSpaces(body);
  if (closed === undefined) return none;
  const commas = closed.split(',').length - 1;
  const points = closed.split('.').length - 1;
  if (commas > 0 && points > 0) return withBothMarks(closed);
  if (commas === 1) return withOneComma(closed);
  for (const mark of [',', '.'] as const) {
    const count = mark === ',' ? commas : points;
    if (count > 1 && isGrouped(closed, mark)) {
      return { kind: 'number', value: Number(closed.replaceAll(mark, '')) };
    }
  }
  return decimalNumber.test(closed) ? { kind: 'number', value: Number(closed) } : none;
}

/** Reads one number; `text` has been through `plainMarks`. */
export function readNumber(text: string): NumberReading {
  const negative = text.startsWith('-');
  const reading = readUnsigned(text.replace(/^[-+]\s?/, ''));
  if (!negative || reading.kind === 'none') return reading;
  return reading.kind === 'number'
    ? { kind: 'number', value: 0 - reading.value }
    : { kind: 'either', grouped: -reading.grouped, decimal: -reading.decimal };
}
