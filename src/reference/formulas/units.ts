import type { FigureTable } from '#reference/table.ts';
import { shortest } from '#units/numerals.ts';
import { type Quantity, quantities, unitSpec, unitsOf } from '#units/quantities.ts';

/** Quantities whose units need a factor. */
const listed: readonly Quantity[] = [
  'flow',
  'head',
  'pressure',
  'vacuum',
  'diameter',
  'velocity',
  'volume',
  'power',
  'heatRate',
  'energy',
  'area',
  'filterRate',
  'mass',
];

const si: Readonly<Partial<Record<Quantity, string>>> = {
  flow: 'm³/s',
  head: 'm',
  pressure: 'Pa',
  vacuum: 'Pa',
  diameter: 'm',
  velocity: 'm/s',
  volume: 'm³',
  power: 'W',
  heatRate: 'W',
  energy: 'J',
  area: 'm²',
  filterRate: 'm/s',
  mass: 'kg',
};

/** Each unit a reader may choose, in SI. */
export const unitTable: FigureTable = {
  caption: 'One of each unit, in SI',
  headings: [{ name: 'Quantity' }, { name: 'One' }, { name: 'Is' }, { name: 'SI unit' }],
  rows: listed.flatMap((quantity) =>
    unitsOf(quantity)
      .map((unit) => unitSpec(quantity, unit))
      .filter(({ factor }) => factor !== 1)
      .map(({ symbol, factor }) => [
        quantities[quantity].name,
        symbol,
        shortest(factor, 10),
        si[quantity] ?? '',
      ]),
  ),
};
