/** Tables as text that any spreadsheet opens (RFC 4180). */
import Papa from 'papaparse';

/** Numbers stay numbers; nothing is an empty cell. */
export type Cell = string | number | null;

/**
 * What a spreadsheet would work out: the beginning of a cell, wherever it splits the line. Numbers of
 * ours are not text, so a minus before one is safe. An apostrophe makes it take the text as text.
 */
const beginsFormula = /(^|[,;\t\r\n])([\s"]*)(?=[=+\-@])/g;

function asText(text: string): string {
  return text.replace(beginsFormula, "$1$2'");
}

/** Figures of a number; more than any instrument gives. */
const figures = 7;

function written(cell: Cell): Cell {
  if (typeof cell === 'string') return asText(cell);
  if (cell === null) return null;
  // An empty cell says that nothing is known; a cell of letters would spoil a column of numbers.
  return Number.isFinite(cell) ? Number(cell.toPrecision(figures)) : null;
}

/** Lines end in CR LF, quotes are doubled, and no cell that was typed becomes a formula,
 * not even where a program splits the lines at semicolons or tabs. */
export function csvText(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const data = [columns.map(asText), ...rows.map((row) => row.map(written))];
  return `${Papa.unparse(data, { newline: '\r\n' })}\r\n`;
}
