/** One table that turns what is the matter with a file into sentences. */
import { dateOfMinute } from './dateOfMinute.ts';
import type { FileNote, FileProblem, RowProblem } from './series.ts';

/** Greatest size of a file [bytes]. */
export const mostBytes = 50 * 1024 * 1024;

/** What a file was to hold. */
export type FileKind = 'meter' | 'temperature';

const quoted = (text: string) => `“${text.length > 40 ? `${text.slice(0, 40)}…` : text}”`;
const counted = (count: number, one: string, many: string) =>
  `${count} ${count === 1 ? one : many}`;
const columns = (count: number) => counted(count, 'column', 'columns');

const wantedTable: Readonly<Record<FileKind, string>> = {
  meter: 'a column of dates and times and one of kWh, Wh, kW or W',
  temperature: 'a column of dates and times and one of temperatures',
};

/** What is wrong with a row, and what would be right. */
export function rowSentence(row: RowProblem): string {
  switch (row.code) {
    case 'fewColumns':
      return `Line ${row.line} has ${columns(row.found)}; it needs at least ${row.wanted}.`;
    case 'badTime':
      return row.text === ''
        ? `Line ${row.line} has no time; one such as 2027-07-01 14:15 would be right.`
        : `${quoted(row.text)} in line ${row.line} is not a time in the chosen order; one such as 2027-07-01 14:15 would be right.`;
    case 'badValue':
      return row.text === ''
        ? `Line ${row.line} has no number in the chosen column.`
        : `${quoted(row.text)} in line ${row.line} is not a number; one such as 0.25 would be right.`;
  }
}

/** Why nothing was taken from a file, and what would be right. */
export function problemSentenceOf(problem: FileProblem, kind: FileKind): string {
  switch (problem.code) {
    case 'empty':
      return 'This file is empty.';
    case 'packed':
      return 'This is a packed file, such as a workbook or a zip archive. Save the table as CSV, or unpack it first.';
    case 'notText':
      return `This is not a text file. It must be ${kind === 'meter' ? 'Green Button XML, or ' : ''}a table saved as CSV.`;
    case 'unreadable':
      return 'This file could not be read to its end. Copy it to this device and open it from there.';
    case 'failed':
      return 'A part of this page could not be fetched, or failed. Reload the page and open the file again.';
    case 'tooLarge':
      return `This file has ${Math.ceil(problem.bytes / 1024 / 1024)} MB; at most ${mostBytes / 1024 / 1024} MB can be read. A shorter stretch of time would do.`;
    case 'notXml':
      return `This XML is damaged in line ${problem.line}: a tag is not closed, or a sign stands where it must not. Save the file anew.`;
    case 'cutShort':
      return `This XML breaks off in line ${problem.line}: its last tags are not closed. It was not saved to its end; save it anew.`;
    case 'noGreenButton':
      return 'This is XML, but no Green Button data: nothing in it belongs to http://naesb.org/espi. Ask for the usage data, or take a table saved as CSV.';
    case 'otherMeter':
      return `This file counts something else than electricity taken from the grid${problem.unit === '' ? '' : ` (unit ${problem.unit} of Green Button; 72 is Wh)`}.`;
    case 'noReadings':
      return kind === 'meter'
        ? 'There are no readings in this file. It needs two intervals or more.'
        : 'There are no temperatures in this file.';
    case 'allNegative':
      return `All ${problem.count} readings are below 0, from line ${problem.line} on. That is what goes back to the grid; what is taken from it counts 0 or more and may stand in another column.`;
    case 'noTable':
      return `No table was found in this file. It must have ${wantedTable[kind]}, and two rows or more.`;
    case 'openQuote':
      return `A quote opened in line ${problem.line} is never closed. Take the quote out, or double it.`;
    case 'mostlyBad':
      return `${problem.count} of ${problem.of} rows cannot be read. The first: ${rowSentence(problem.row)} Choose other columns, or look at the file.`;
    case 'mostlyAbsurd':
      return kind === 'meter'
        ? `${problem.count} of ${problem.of} readings would be above 200 kW, the first in line ${problem.line}. The unit is likely another: Wh instead of kWh, or W instead of kW.`
        : `${problem.count} of ${problem.of} values are no temperatures of air, the first in line ${problem.line}. The unit or the column is likely another.`;
  }
}

/** What the reader should know of a file that was taken. */
export function noteSentence(note: FileNote, kind: FileKind): string {
  switch (note.code) {
    case 'leftOut':
      return `${counted(note.count, 'row was', 'rows were')} left out. ${note.count === 1 ? '' : 'The first: '}${rowSentence(note.row)}`;
    case 'negative':
      return `${counted(note.count, 'negative reading was', 'negative readings were')} left out, the first in line ${note.line}. A meter on what is taken from the grid counts 0 or more.`;
    case 'absurd':
      return kind === 'meter'
        ? `${counted(note.count, 'reading was', 'readings were')} left out, the first in line ${note.line}: above 200 kW, or longer than a month.`
        : `${counted(note.count, 'value was', 'values were')} left out, the first in line ${note.line}: no temperature of air.`;
    case 'gaps':
      return `${counted(note.count, 'gap', 'gaps')}, ${lengthOf(note.minutes)} in all, the first from ${dateOfMinute(note.local)} on. Nothing is made up for them.`;
    case 'overlaps':
      return `${counted(note.count, 'interval', 'intervals')} claimed time that another had already; the first such is in line ${note.line}. The earlier line counts.`;
    case 'clockForward':
      return `${dateOfMinute(note.local)} has 23 hours: the clock went forward. Nothing is missing.`;
    case 'clockBack':
      return `${dateOfMinute(note.local)} has 25 hours: the clock went back. One hour of the clock counts twice.`;
    case 'ownZone':
      return 'The times of this file are in UTC; they were turned into the time zone of this device.';
    case 'noReadingType':
      return 'This file does not say its unit; Wh was taken, as is usual.';
    case 'otherSeries':
      return `${counted(note.count, 'other series', 'other series')} in this file (another meter, another unit, or what went back to the grid) ${note.count === 1 ? 'was' : 'were'} left aside; the longest of electricity counts.`;
  }
}

function lengthOf(minutes: number): string {
  if (minutes < 120) return `${Math.round(minutes)} minutes`;
  const hours = minutes / 60;
  return hours < 48 ? `${hours.toFixed(1)} hours` : `${(hours / 24).toFixed(1)} days`;
}
