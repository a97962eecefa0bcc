import { metric } from '#units/choice.ts';
import { checkDocument } from './check.ts';
import { type DocumentProblem, documentProblemSentence } from './documentProblems.ts';
import { migrate } from './migrate.ts';
import type { Pad } from './schema.ts';
import { padFormat, padVersion } from './version.ts';

/** What came of reading a pad file: the pad, or one sentence and everything that is wrong. */
export type ParsedPad =
  | {
      readonly ok: true;
      readonly pad: Pad;
      /** The version the text was written in. */
      readonly from: number;
    }
  | {
      readonly ok: false;
      readonly sentence: string;
      readonly problems: readonly DocumentProblem[];
    };

/** A pad file is never longer than this [characters]. */
export const longestText = 1_000_000;

const unchanged = 'Your present pad is unchanged.';

function refuse(sentence: string, problems: readonly DocumentProblem[] = []): ParsedPad {
  return { ok: false, sentence: `${sentence} ${unchanged}`, problems };
}

function refuseValues(problems: readonly DocumentProblem[]): ParsedPad {
  const [first] = problems;
  if (first === undefined) return refuse('This pad file cannot be read.');
  const count =
    problems.length === 1 ? 'One value in it is' : `${problems.length} values in it are`;
  const place = first.path.length === 0 ? 'the top level' : first.path.join(' › ');
  const reason = documentProblemSentence(first, metric);
  return refuse(
    `This pad file cannot be opened. ${count} wrong; the first, at ${place}: ${reason}`,
    problems,
  );
}

/** Brackets that may stand in one another in a pad file; the definition itself needs about twenty. */
const mostBrackets = 200;

/** Whether the text opens more brackets in one another than any pad file: reading it would run out of room. */
function isTooDeep(text: string): boolean {
  let depth = 0;
  let inText = false;
  for (let at = 0; at < text.length; at += 1) {
    const letter = text[at];
    if (inText && letter === '\\') at += 1;
    else if (letter === '"') inText = !inText;
    else if (!inText && (letter === '[' || letter === '{')) depth += 1;
    else if (!inText && (letter === ']' || letter === '}')) depth -= 1;
    if (depth > mostBrackets) return true;
  }
  return false;
}

function parseJson(text: string): { readonly value: unknown } | null {
  try {
    return { value: JSON.parse(text) as unknown };
  } catch {
    return null;
  }
}

/** Reads the text of a pad file of any known version. */
export function parsePad(text: string): ParsedPad {
  if (text.length > longestText) {
    return refuse('This is too long for a pad file, which holds a million characters at most.');
  }
  if (isTooDeep(text)) {
    return refuse(
      'This is not a pad file: its lists stand inside one another deeper than any pad.',
    );
  }
  const json = parseJson(text);
  if (json === null) {
    return refuse('This is not a pad file, or it is damaged: its text is not complete JSON.');
  }
  const migrated = migrate(json.value);
  switch (migrated.kind) {
    case 'notAPad':
      return refuse(`This is not a pad file: its “format” must be “${padFormat}”.`);
    case 'unknownVersion':
      return refuse(`This pad file has no usable “version”; it must be 0 to ${padVersion}.`);
    case 'newer':
      return refuse(
        `This pad file is of version ${migrated.version}, and this page reads versions up to ` +
          `${padVersion}. Reload the page to get its newest edition, then open the file again.`,
      );
    case 'present': {
      const checked = checkDocument(migrated.document);
      if (!checked.ok) return refuseValues(checked.problems);
      return { ok: true, pad: checked.pad, from: migrated.from };
    }
  }
}
