/** A first look at a table: which column holds the time, which the amount, and in what. */
import { plainMarks, readNumber } from '#units/readNumber.ts';
import { type CsvRow, createCsvRows, delimiterOf } from './csvRows.ts';
import { type DateOrder, dateOrderOf, readClock, readMoment } from './moment.ts';
import type { FileProblem } from './series.ts';

export type AmountUnit = 'kWh' | 'Wh' | 'kW' | 'W';
export type TemperatureUnit = 'degC' | 'degF';
export type CellUnit = AmountUnit | TemperatureUnit;
/** What is looked for in a table. */
export type Wanted = 'meter' | 'temperature';

/** How a table is to be read. Columns are counted from 0. */
export interface CsvChoice {
  readonly delimiter: string;
  /** Rows before the first of the data. */
  readonly skip: number;
  /** Column of date, or of date and time. */
  readonly time: number;
  /** Column of the time of day, where it stands apart. */
  readonly clock: number | null;
  /** The time is the end of the interval instead of its start. */
  readonly atEnd: boolean;
  readonly amount: number;
  readonly unit: CellUnit;
  readonly order: DateOrder;
  readonly decimal: '.' | ',';
}

/** What cannot be told from the table alone. */
export type Unsure = 'amount' | 'unit' | 'order';

export interface CsvLook {
  /** Names of the columns as the table has them, or their numbers. */
  readonly columns: readonly string[];
  /** Columns that hold numbers. */
  readonly amounts: readonly number[];
  /** Columns that hold dates. */
  readonly times: readonly number[];
  /** The best guess; where unsure, one of several. */
  readonly guess: CsvChoice;
  readonly unsure: readonly Unsure[];
}

/** A column counts as dates or numbers when so large a share of its cells are. */
const enough = 0.8;

/** In the beginning of a table no cell is as long as this. */
const longestOpen = 5000;

const share = <T>(items: readonly T[], test: (item: T) => boolean) =>
  items.length === 0 ? 0 : items.filter(test).length / items.length;

const isMoment = (cell: string) =>
  readMoment(cell, 'mdy') !== null || readMoment(cell, 'dmy') !== null;
const isNumber = (cell: string) => readNumber(plainMarks(cell)).kind !== 'none';

const isData = ({ cells }: CsvRow) =>
  cells.some(isMoment) && cells.some((cell) => isNumber(cell) && !isMoment(cell));

const unitWords: readonly (readonly [CellUnit, RegExp])[] = [
  ['kWh', /\bk\.?\s?w\.?\s?-?h\b|kilowatt.?hours?/i],
  ['Wh', /\bwh\b|\bwatt.?hours?/i],
  ['kW', /\bkw\b|\bkilowatts?\b/i],
  ['W', /\bw\b|\bwatts?\b/i],
  ['degC', /°\s?c\b|\bdeg(?:rees?)?[ _]?c|\bcelsius\b|[(_\s]c\)?$/i],
  ['degF', /°\s?f\b|\bdeg(?:rees?)?[ _]?f|\bfahrenheit\b|[(_\s]f\)?$/i],
];
const powerUnits: readonly CellUnit[] = ['kWh', 'Wh', 'kW', 'W'];

/** A unit that stands in a text, of the kind that is wanted. */
export function unitIn(text: string, want: Wanted): CellUnit | null {
  const found = unitWords.find(
    ([unit, words]) => powerUnits.includes(unit) === (want === 'meter') && words.test(text),
  );
  return found?.[0] ?? null;
}

const wantedWords: Readonly<Record<Wanted, RegExp>> = {
  meter: /usage|consum|energy|import|deliver|power|amount|value|use\b/i,
  temperature: /temp|air|\bt\b/i,
};
/** Columns of numbers that are something else. */
const otherWords =
  /cost|price|charge|\$|€|£|rate|humid|wind|rain|dew|press|soil|water|duration|minutes|id\b/i;

/** The table of a text's beginning, or why there is none. */
export function lookAtCsv(sample: string, isWhole: boolean, want: Wanted): CsvLook | FileProblem {
  if (sample.trim() === '') return { code: 'empty' };
  const delimiter = delimiterOf(sample);
  const reader = createCsvRows(delimiter);
  const whole = reader.push(sample);
  const open = reader.openQuote(longestOpen);
  const rows = [...whole, ...(isWhole ? reader.end() : [])];
  const first = rows.findIndex(isData);
  const data = rows.slice(first).filter(isData);
  if (first < 0 || data.length < 2) {
    return open === null ? { code: 'noTable' } : { code: 'openQuote', line: open };
  }
  const width = Math.max(...data.map(({ cells }) => cells.length));
  const column = (index: number) => data.map(({ cells }) => cells[index] ?? '');
  const all = Array.from({ length: width }, (_, index) => index);
  const times = all.filter((index) => share(column(index), isMoment) >= enough);
  const clocks = all.filter(
    (index) => share(column(index), (cell) => readClock(cell) !== null) >= enough,
  );
  const amounts = all.filter(
    (index) =>
      !times.includes(index) && !clocks.includes(index) && share(column(index), isNumber) >= enough,
  );
  const headings = headingsOf(rows[first - 1], width);
  const named = (index: number) => headings[index] ?? '';
  if (times.length === 0 || amounts.length === 0) return { code: 'noTable' };

  const time = startFirst(times, named);
  const hasClock =
    share(
      column(time),
      (cell) => readMoment(cell, 'mdy')?.minute != null || readMoment(cell, 'dmy')?.minute != null,
    ) >= enough;
  const clock = hasClock || clocks.length === 0 ? null : startFirst(clocks, named);
  const likely = likelyAmounts(amounts, named, want);
  const amount = likely[0] ?? amounts[0] ?? 0;
  const besides = all
    .filter((index) => index !== time && index !== amount)
    .flatMap((index) => column(index).slice(0, 1));
  const unit =
    unitIn(named(amount), want) ?? unitIn(besides.join(' ; '), want) ?? onlyUnit(headings, want);
  const order = dateOrderOf(column(time)) ?? steadierOrder(column(time));
  const unsure: Unsure[] = [
    ...(likely.length === 1 ? [] : (['amount'] as const)),
    ...(unit === null ? (['unit'] as const) : []),
    ...(order === null ? (['order'] as const) : []),
  ];
  const stamp = named(clock ?? time);
  return {
    columns: all.map((index) => named(index) || `Column ${index + 1}`),
    amounts,
    times,
    unsure,
    guess: {
      delimiter,
      skip: first,
      time,
      clock,
      atEnd: /\bend(ing|s)?\b|\buntil\b|\bto\b/i.test(stamp) && !/start|begin|from/i.test(stamp),
      amount,
      unit: unit ?? (want === 'meter' ? 'kWh' : 'degC'),
      order: order ?? 'mdy',
      decimal: decimalOf(column(amount)),
    },
  };
}

/** Of two orders that would both do, the one in which the rows lie close together, if it is clear. */
function steadierOrder(cells: readonly string[]): DateOrder | null {
  const spanOf = (order: DateOrder): number => {
    const days = cells.flatMap((cell) => readMoment(cell, order)?.day ?? []);
    return Math.max(...days) - Math.min(...days);
  };
  const [monthFirst, dayFirst] = [spanOf('mdy'), spanOf('dmy')];
  if (3 * monthFirst < dayFirst) return 'mdy';
  return 3 * dayFirst < monthFirst ? 'dmy' : null;
}

/** The row above the data, where it has words and no numbers. */
function headingsOf(row: CsvRow | undefined, width: number): readonly string[] {
  if (row === undefined || row.cells.length < 2 || row.cells.some(isMoment)) return [];
  return row.cells.slice(0, width);
}

const startFirst = (columns: readonly number[], named: (index: number) => string): number =>
  columns.find((index) => /start|begin|from/i.test(named(index))) ?? columns[0] ?? 0;

/** Columns that may be the one looked for: by its unit, by its name, or because it is the only one. */
function likelyAmounts(
  amounts: readonly number[],
  named: (index: number) => string,
  want: Wanted,
): readonly number[] {
  const fit = amounts.filter((index) => !otherWords.test(named(index)));
  const wanted = fit.filter((index) => wantedWords[want].test(named(index)));
  const byUnit = fit.filter((index) => unitIn(named(index), want) !== null);
  const both = byUnit.filter((index) => wanted.includes(index));
  return [both, byUnit, wanted, fit, amounts].find((each) => each.length > 0) ?? [];
}

/** A unit named once in all the headings, such as in a column "Unit". */
function onlyUnit(headings: readonly string[], want: Wanted): CellUnit | null {
  const found = new Set(headings.map((text) => unitIn(text, want)).filter((unit) => unit !== null));
  return found.size === 1 ? ([...found][0] ?? null) : null;
}

/** A comma is the decimal mark where cells have one comma and no point. */
function decimalOf(cells: readonly string[]): '.' | ',' {
  const commas = cells.filter((cell) => /^-?\d+,\d+$/.test(cell)).length;
  return commas > 0 && !cells.some((cell) => cell.includes('.')) ? ',' : '.';
}
