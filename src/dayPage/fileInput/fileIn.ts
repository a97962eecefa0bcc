/** A file on its way in: read, asked about, refused or called off. What was there before stays until another is whole. */
import { computed, signal } from '@preact/signals';
import type { CsvChoice, CsvLook, Wanted } from '#pad/formats/csvLook.ts';
import type { FileProblem } from '#pad/formats/series.ts';
import type { FileNews, ReadTable } from './readSeries.ts';
import type { StartReading } from './startReading.ts';

/** A file with the name it is called by on the page. */
export interface NamedFile {
  readonly name: string;
  readonly file: Blob;
  /** Made up here to try things out. */
  readonly isInvented: boolean;
}

export interface Loaded<Result> extends Pick<NamedFile, 'name' | 'file' | 'isInvented'> {
  readonly result: Result;
  readonly table: ReadTable | null;
}

export type Coming =
  | { readonly kind: 'idle' }
  | { readonly kind: 'reading'; readonly of: NamedFile; readonly share: number }
  | {
      readonly kind: 'asks';
      readonly of: NamedFile;
      readonly look: CsvLook;
      readonly choice: CsvChoice;
    }
  | {
      readonly kind: 'refused';
      readonly of: NamedFile;
      readonly problem: FileProblem;
      /** A table that other columns might make sense of. */
      readonly look: CsvLook | null;
      readonly choice: CsvChoice | null;
    }
  | { readonly kind: 'calledOff'; readonly of: NamedFile };

export type FileIn<Result> = ReturnType<typeof createFileIn<Result>>;

export function createFileIn<Result>(want: Wanted, start: StartReading) {
  const coming = signal<Coming>({ kind: 'idle' });
  const loaded = signal<Loaded<Result> | null>(null);
  let callOff = (): void => {};

  function read(of: NamedFile, choice: CsvChoice | null): void {
    callOff();
    coming.value = { kind: 'reading', of, share: 0 };
    callOff = start({ file: of.file, want, choice }, (news) => hear(of, choice, news));
  }

  function hear(of: NamedFile, choice: CsvChoice | null, news: FileNews): void {
    switch (news.kind) {
      case 'progress':
        coming.value = { kind: 'reading', of, share: news.done / news.of };
        return;
      case 'asks':
        coming.value = { kind: 'asks', of, look: news.look, choice: news.look.guess };
        return;
      case 'refused':
        coming.value = {
          kind: 'refused',
          of,
          problem: news.problem,
          look: news.look,
          choice: choice ?? news.look?.guess ?? null,
        };
        return;
      case 'done':
        // The reader asked for this kind, and the worker gives no other.
        loaded.value = { ...of, result: news.result as Result, table: news.table };
        coming.value = { kind: 'idle' };
    }
  }

  /** The table that can be read another way: one that is asked about, refused or loaded. */
  const table = computed<(ReadTable & { readonly of: NamedFile }) | null>(() => {
    const now = coming.value;
    if (now.kind === 'asks') return now;
    if (now.kind === 'refused') {
      const { look, choice, of } = now;
      return look === null || choice === null ? null : { look, choice, of };
    }
    const there = loaded.value;
    if (now.kind !== 'idle' || there?.table == null) return null;
    return { ...there.table, of: there };
  });

  return {
    coming,
    loaded,
    table,
    take: (of: NamedFile) => read(of, null),
    /** Reads the table that is in hand with another choice of columns. */
    choose: (change: Partial<CsvChoice>) => {
      const now = coming.peek();
      const { choice, of } = table.peek() ?? {};
      if (choice === undefined || of === undefined) return;
      if (now.kind === 'asks') coming.value = { ...now, choice: { ...choice, ...change } };
      else read(of, { ...choice, ...change });
    },
    /** The reader has chosen all that was asked. */
    readAsked: () => {
      const now = coming.peek();
      if (now.kind === 'asks') read(now.of, now.choice);
    },
    cancel: () => {
      const now = coming.peek();
      callOff();
      if (now.kind === 'reading') coming.value = { kind: 'calledOff', of: now.of };
    },
    forget: () => {
      callOff();
      loaded.value = null;
      coming.value = { kind: 'idle' };
    },
    /** To be called when the part goes away. */
    stop: () => callOff(),
  };
}
