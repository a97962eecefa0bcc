/** One heading of a table, over one column or over a column for each unit. */
export interface Heading {
  readonly name: string;
  /** Unit of each column under it; none for a bare number or words. */
  readonly units?: readonly string[];
}

/** A table of figures. The first cell of a row is its heading. */
export interface FigureTable {
  readonly caption: string;
  readonly headings: readonly Heading[];
  readonly rows: readonly (readonly string[])[];
}
