import type { JSX } from 'preact';
import { type Live, read } from './live.ts';

export interface TableData {
  /** Says what the table holds. */
  readonly caption: string;
  readonly columns: readonly string[];
  /** The first cell of a row is its heading. */
  readonly rows: readonly (readonly string[])[];
}

interface TableProps {
  readonly data: Live<TableData>;
  readonly summary?: string;
}

/** The numbers behind a picture, folded away on screen and open on paper. */
export function Table({ data, summary = 'The numbers as a table' }: TableProps): JSX.Element {
  const { caption, columns, rows } = read(data);
  return (
    <details class="data-table">
      <summary>{summary}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls sideways, so keys must reach it */}
      <section class="data-table-scroll" tabIndex={0} aria-label={caption}>
        <table>
          <caption>{caption}</caption>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([heading, ...cells], index) => (
              <tr key={`${index}-${heading}`}>
                <th scope="row">{heading}</th>
                {cells.map((cell, column) => (
                  <td key={columns[column + 1] ?? column}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
