/** Reads a file of a meter or of temperatures piece by piece, in a worker or in Node. */
import { type CsvChoice, type CsvLook, lookAtCsv, type Wanted } from '#pad/formats/csvLook.ts';
import { createLineBreaks } from '#pad/formats/csvRows.ts';
import { mostBytes } from '#pad/formats/fileSentences.ts';
import { createGreenButton } from '#pad/formats/greenButton.ts';
import { createIntervalsCsv } from '#pad/formats/intervalsCsv.ts';
import type { MeterFile } from '#pad/formats/meterFile.ts';
import type { FileProblem, ToLocal } from '#pad/formats/series.ts';
import { createTemperatureCsv, type TemperatureFile } from '#pad/formats/temperatureCsv.ts';

/** What is asked for. */
export interface AskedFile {
  readonly file: Blob;
  readonly want: Wanted;
  /** How to read a table; null to have a look first. */
  readonly choice: CsvChoice | null;
}

/** How a table was read, and what else there was to choose. */
export interface ReadTable {
  readonly look: CsvLook;
  readonly choice: CsvChoice;
}

export type FileNews =
  | { readonly kind: 'progress'; readonly done: number; readonly of: number }
  /** The table leaves something open: the reader must choose. */
  | { readonly kind: 'asks'; readonly look: CsvLook }
  | {
      readonly kind: 'done';
      readonly result: MeterFile | TemperatureFile;
      /** Null for a file that is no table. */
      readonly table: ReadTable | null;
    }
  | { readonly kind: 'refused'; readonly problem: FileProblem; readonly look: CsvLook | null };

interface PieceReader {
  push(piece: string): FileProblem | null;
  end(): MeterFile | TemperatureFile | FileProblem;
}

/** So much of a file is looked at before it is read [bytes]. */
const headBytes = 65_536;

const isProblem = (result: object): result is FileProblem => 'code' in result;

function encodingOf(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  return first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
}

/** What can be said of a file from its first bytes alone. */
function problemOf(head: Uint8Array, text: string): FileProblem | null {
  if (text.trim() === '') return { code: 'empty' };
  if (head[0] === 0x50 && head[1] === 0x4b && (head[2] ?? 9) < 9) return { code: 'packed' };
  return text.includes('\0') ? { code: 'notText' } : null;
}

/** The news of reading a file, the last of them what came of it. */
export async function* readSeries(
  { file, want, choice }: AskedFile,
  ownClock: ToLocal,
): AsyncGenerator<FileNews> {
  const refused = (problem: FileProblem, look: CsvLook | null = null): FileNews => ({
    kind: 'refused',
    problem,
    look,
  });
  if (file.size > mostBytes) return yield refused({ code: 'tooLarge', bytes: file.size });
  const head = new Uint8Array(await file.slice(0, headBytes).arrayBuffer());
  const encoding = encodingOf(head);
  const text = new TextDecoder(encoding).decode(head);
  const problem = problemOf(head, text);
  if (problem !== null) return yield refused(problem);

  if (text.trimStart().startsWith('<') && want === 'meter') {
    const news = yield* readAll(file, encoding, createGreenButton(ownClock), (piece) => piece);
    return yield isProblem(news) ? refused(news) : { kind: 'done', result: news, table: null };
  }
  const breaks = createLineBreaks();
  const isWhole = file.size <= headBytes;
  const look = lookAtCsv(breaks(text) + (isWhole ? breaks('\n') : ''), isWhole, want);
  if (isProblem(look)) return yield refused(look);
  if (choice === null && look.unsure.length > 0) return yield { kind: 'asks', look };
  const chosen = choice ?? look.guess;
  const make = want === 'meter' ? createIntervalsCsv : createTemperatureCsv;
  const news = yield* readAll(file, encoding, make(chosen, ownClock), createLineBreaks());
  return yield isProblem(news)
    ? refused(news, look)
    : { kind: 'done', result: news, table: { look, choice: chosen } };
}

async function* readAll(
  file: Blob,
  encoding: string,
  reader: PieceReader,
  prepare: (piece: string) => string,
): AsyncGenerator<FileNews, MeterFile | TemperatureFile | FileProblem> {
  const decoder = new TextDecoder(encoding);
  const stream = file.stream().getReader();
  let done = 0;
  for (;;) {
    const next = await stream.read();
    const piece = next.done ? decoder.decode() : decoder.decode(next.value, { stream: true });
    const problem = reader.push(prepare(piece));
    if (problem !== null) return problem;
    if (next.done) return reader.end();
    done += next.value.length;
    yield { kind: 'progress', done, of: file.size };
  }
}
