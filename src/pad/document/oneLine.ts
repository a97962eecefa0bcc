/** Texts of the reader's own hold what can be seen: no control character, and a line break only in notes. */

/** One line of text: no control character and no separator of lines (Unicode general categories Cc, Zl, Zp). */
export const oneLine = /^[^\p{Cc}\p{Zl}\p{Zp}]*$/u;

/** Several lines of text: line feeds and tabs besides. */
export const manyLines = /^(?:[^\p{Cc}\p{Zl}\p{Zp}]|[\n\t])*$/u;

/** The text on one line: what cannot stand there becomes a space. */
export function onOneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ');
}

/** The text on as many lines as it has, without other control characters. */
export function onLines(text: string): string {
  return text.replace(/\r\n?|[\u0085\p{Zl}\p{Zp}]/gu, '\n').replace(/[^\P{Cc}\n\t]+/gu, ' ');
}
