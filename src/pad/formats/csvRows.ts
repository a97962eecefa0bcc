/** Reads a table piece by piece, row by row, however large it is. */
import Papa from 'papaparse';

export interface CsvRow {
  readonly cells: readonly string[];
  /** Line of the file it begins in, the first is 1. */
  readonly line: number;
}

/** A quote that is not closed within so many characters was never meant as one. */
const longestCell = 1_000_000;

/** Where the last whole row ends: after a line break outside quotes; 0 when there is none. */
function endOfRows(text: string): number {
  let [quoted, end] = [false, 0];
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === 34) quoted = !quoted;
    else if (code === 10 && !quoted) end = at + 1;
  }
  return end;
}

export type CsvRows = ReturnType<typeof createCsvRows>;

/** Takes the pieces of a text in order; gives the rows that are whole by then. */
export function createCsvRows(delimiter: string) {
  let [held, line] = ['', 1];

  function rowsOf(text: string): readonly CsvRow[] {
    if (text === '') return [];
    const { data } = Papa.parse<string[]>(text.endsWith('\n') ? text.slice(0, -1) : text, {
      delimiter,
      newline: '\n',
    });
    return data.map((cells) => {
      const row = { cells: cells.map((cell) => cell.trim()), line };
      line += 1 + cells.reduce((sum, cell) => sum + cell.split('\n').length - 1, 0);
      return row;
    });
  }

  return {
    push: (piece: string): readonly CsvRow[] => {
      held += piece;
      const end = endOfRows(held);
      const whole = held.slice(0, end);
      held = held.slice(end);
      return rowsOf(whole);
    },
    end: (): readonly CsvRow[] => {
      const last = held;
      held = '';
      return rowsOf(last);
    },
    /** The line of a quote that was opened and is not closed, once too much hangs on it. */
    openQuote: (most = longestCell): number | null => (held.length > most ? line : null),
  };
}

/**
 * The sign between the cells: one that is never part of a number where every one of the first rows has
 * it, or else as the library guesses, which a comma in the figures of a short table can lead astray.
 */
export function delimiterOf(sample: string): string {
  const rows = sample.split('\n', 40).filter((row) => row.trim() !== '');
  const certain = ['\t', ';'].find((sign) => rows.every((row) => row.includes(sign)));
  return certain ?? Papa.parse<string[]>(sample, { preview: 40, newline: '\n' }).meta.delimiter;
}

/** Any kind of line break as one; `tail` holds back one that may be cut in two. */
export function createLineBreaks(): (piece: string) => string {
  let tail = '';
  return (piece) => {
    const text = tail + piece;
    tail = text.endsWith('\r') ? '\r' : '';
    return text.slice(0, text.length - tail.length).replace(/\r\n?/g, '\n');
  };
}
