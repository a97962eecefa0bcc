/** A table read as it was agreed: each row a time and a value. */
import type { CsvChoice } from './csvLook.ts';
import { type CsvRow, createCsvRows } from './csvRows.ts';
import { readClock, readMoment } from './moment.ts';
import {
  type FileNote,
  type FileProblem,
  minutesTo1970,
  type RowProblem,
  type TimedValue,
  type ToLocal,
  withRunningClock,
} from './series.ts';

export interface CsvSeries {
  /** In the order of time; the running clock is there. */
  readonly values: readonly TimedValue[];
  readonly notes: readonly FileNote[];
}

/** Above this share of rows that cannot be read the choice of columns is wrong, or the file. */
const mostBad = 0.5;

function numberOf(text: string, decimal: '.' | ','): number {
  const plain = text.replace(/[\s\u00a0\u202f']/g, '').replace('\u2212', '-');
  const shown =
    decimal === ',' ? plain.replaceAll('.', '').replace(',', '.') : plain.replaceAll(',', '');
  return /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(shown) ? Number(shown) : Number.NaN;
}

/** Takes a table piece by piece. */
export function createCsvSeries(choice: CsvChoice, toLocal: ToLocal) {
  const rows = createCsvRows(choice.delimiter);
  const values: TimedValue[] = [];
  const bad: { count: number; first: RowProblem | null } = { count: 0, first: null };
  const wanted = 1 + Math.max(choice.time, choice.amount, choice.clock ?? 0);
  let [seen, hasZone] = [0, false];

  function refuse(row: RowProblem): void {
    bad.count += 1;
    bad.first ??= row;
  }

  function take({ cells, line }: CsvRow): void {
    seen += 1;
    if (seen <= choice.skip || cells.every((cell) => cell === '')) return;
    if (cells.length < wanted) {
      refuse({ code: 'fewColumns', line, found: cells.length, wanted });
      return;
    }
    const time = timeOf(cells);
    const [value, text] = [
      numberOf(cells[choice.amount] ?? '', choice.decimal),
      cells[choice.amount] ?? '',
    ];
    if (time === null) refuse({ code: 'badTime', line, text: momentText(cells) });
    else if (!Number.isFinite(value)) refuse({ code: 'badValue', line, text });
    else values.push({ ...time, value, line });
  }

  const momentText = (cells: readonly string[]) =>
    [cells[choice.time], choice.clock === null ? '' : cells[choice.clock]].join(' ').trim();

  function timeOf(cells: readonly string[]): Pick<TimedValue, 'local' | 'running'> | null {
    const moment = readMoment(cells[choice.time] ?? '', choice.order);
    if (moment === null) return null;
    const apart = choice.clock === null ? null : readClock(cells[choice.clock] ?? '');
    if (choice.clock !== null && apart === null) return null;
    const clock = (moment.day - 1) * 1440 + (apart?.minute ?? moment.minute ?? 0);
    const offset = apart?.offset ?? moment.offset;
    if (offset === null) return { local: clock, running: clock };
    const utc = clock - offset;
    // A time of day written with its own offset is the local clock; one in UTC must be turned into it.
    if (offset !== 0) return { local: clock, running: utc };
    hasZone = true;
    return { local: toLocal(utc - minutesTo1970), running: utc };
  }

  function end(): CsvSeries | FileProblem {
    const open = rows.openQuote();
    if (open !== null) return { code: 'openQuote', line: open };
    rows.end().forEach(take);
    const all = values.length + bad.count;
    if (all === 0) return { code: 'noReadings' };
    if (bad.first !== null && bad.count > mostBad * all) {
      return { code: 'mostlyBad', count: bad.count, of: all, row: bad.first };
    }
    const naive = values.every(({ local, running }) => local === running);
    return {
      values: naive ? withRunningClock(values) : values,
      notes: [
        ...(bad.first === null
          ? []
          : [{ code: 'leftOut', count: bad.count, row: bad.first } as const]),
        ...(hasZone ? [{ code: 'ownZone' } as const] : []),
      ],
    };
  }

  return {
    /** Takes the next piece; a problem stops the reading. */
    push: (piece: string): FileProblem | null => {
      rows.push(piece).forEach(take);
      const open = rows.openQuote();
      return open === null ? null : { code: 'openQuote', line: open };
    },
    end,
  };
}

/** Whether what came back is a reason and not a result. */
export function isProblem(result: object): result is FileProblem {
  return 'code' in result;
}
