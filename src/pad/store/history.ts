/**
 * Undo and redo over whole documents. A document is never changed in place, so a step costs one
 * reference. Quick changes of the same field, as a drag makes them, count as one step.
 */
export interface Step<Document> {
  readonly document: Document;
  /** What undoing it takes back, as it stands in a sentence: "the length of a pipe". */
  readonly label: string;
}

export interface History<Document> {
  readonly past: readonly Step<Document>[];
  readonly present: Document;
  readonly future: readonly Step<Document>[];
  /** The field of the last change and when it was made [ms]; null when the next must stand alone. */
  readonly last: { readonly field: string; readonly at: number } | null;
}

export interface Change {
  readonly label: string;
  /** Changes with the same field, one soon after another, become one step. */
  readonly field?: string | undefined;
  /** When it was made [ms], from any steady clock. */
  readonly at: number;
}

/** Changes of one field closer together than this are one step [ms]. */
export const coalesceWithin = 800;

/** Steps kept; the oldest are forgotten. */
export const longestHistory = 200;

export function startHistory<Document>(document: Document): History<Document> {
  return { past: [], present: document, future: [], last: null };
}

function continues<Document>(history: History<Document>, change: Change): boolean {
  const { last } = history;
  return last !== null && last.field === change.field && change.at - last.at <= coalesceWithin;
}

/** The history after `document` took the place of the present one. */
export function record<Document>(
  history: History<Document>,
  document: Document,
  change: Change,
): History<Document> {
  if (Object.is(document, history.present)) return history;
  const last = change.field === undefined ? null : { field: change.field, at: change.at };
  if (continues(history, change)) return { ...history, present: document, future: [], last };
  const step = { document: history.present, label: change.label };
  const past = [...history.past, step].slice(-longestHistory);
  return { past, present: document, future: [], last };
}

/** One step back; the same history when there is none. */
export function undo<Document>(history: History<Document>): History<Document> {
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return {
    past: history.past.slice(0, -1),
    present: step.document,
    future: [{ document: history.present, label: step.label }, ...history.future],
    last: null,
  };
}

/** One step forward again; the same history when there is none. */
export function redo<Document>(history: History<Document>): History<Document> {
  const [step, ...future] = history.future;
  if (step === undefined) return history;
  return {
    past: [...history.past, { document: history.present, label: step.label }],
    present: step.document,
    future,
    last: null,
  };
}
