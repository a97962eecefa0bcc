/** Tables as text that any spreadsheet opens (RFC 4180). */
import Papa from 'papaparse';

/** Numbers stay numbers; nothing is an empty cell. */
export type Cell = string | number | null;

/**
 * A cell that begins like this would be worked out by a spreadsheet. Numbers of ours are not text, so a
 * minus before one is safe.
 */
const looksLikeFormula = /^[\s]*[=+\-@\t\r]/;

/** Figures of a number; more than any instrument gives. */
const figures = 7;

function written(cell: Cell): Cell {
  if (typeof cell !== 'number') return cell;
  // An empty cell says that nothing is known; a cell of letters would spoil a column of numbers.
  return Number.isFinite(cell) ? Number(cell.toPrecision(figures)) : null;
}

/** Lines end in CR LF, quotes are doubled, and no cell that was typed becomes a formula. */
export function csvText(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const data = [[...columns], ...rows.map((row) => row.map(written))];
  return `${Papa.unparse(data, { newline: '\r\n', escapeFormulae: looksLikeFormula })}\r\n`;
}
