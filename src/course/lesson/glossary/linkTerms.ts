import { formsOf, glossary, glossaryPath, type Term, termAnchor } from '#content/glossary.ts';

/** What this needs to know of a node of a lesson's text. */
export interface TextNode {
  type: string;
  value?: string;
  /** Name of a tag of ours. */
  name?: string | null;
  children?: TextNode[];
  [field: string]: unknown;
}

/** Where a term may not be linked: other links, headings, maths, code and whatever is no prose. */
const closedTypes = new Set([
  'heading',
  'link',
  'linkReference',
  'definition',
  'image',
  'inlineCode',
  'code',
  'inlineMath',
  'math',
  'html',
  'yaml',
  'mdxjsEsm',
  'mdxFlowExpression',
  'mdxTextExpression',
]);

/** Tags whose inside is a formula, or hidden until the reader asks: a link there would be missed. */
const closedTags = new Set(['Formula', 'Ask', 'Step', 'details', 'a']);

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
const oneSpaced = (text: string) => text.replace(/\s+/g, ' ');

/** Finds spellings of terms in prose. */
class TermFinder {
  readonly #byForm: ReadonlyMap<string, { form: string; term: Term }>;
  readonly #pattern: RegExp;

  constructor(terms: readonly Term[]) {
    const forms = terms.flatMap((term) => formsOf(term).map((form) => ({ form, term })));
    this.#byForm = new Map(forms.map((entry) => [entry.form.toLowerCase(), entry]));
    // The longest first, so that "wire power" is never taken for "power".
    const choices = forms
      .map(({ form }) => escaped(form).replace(/ /g, '\\s+'))
      .sort((a, b) => b.length - a.length)
      .join('|');
    this.#pattern = new RegExp(`(?<![\\p{L}\\p{N}-])(?:${choices})(?![\\p{L}\\p{N}-])`, 'giu');
  }

  /** The first spelling of each term not taken yet, in the order of the text. */
  *find(
    text: string,
    taken: ReadonlySet<Term>,
  ): Generator<{ at: number; found: string; term: Term }> {
    for (const { index, 0: found } of text.matchAll(this.#pattern)) {
      const written = oneSpaced(found);
      const entry = this.#byForm.get(written.toLowerCase());
      if (entry === undefined || taken.has(entry.term)) continue;
      // Names and signs keep their capitals; a plain word may begin a sentence.
      const isName = entry.form !== entry.form.toLowerCase();
      if (isName && written !== entry.form) continue;
      yield { at: index, found, term: entry.term };
    }
  }
}

function linkTo(term: Term, words: string): TextNode {
  return {
    type: 'link',
    url: `${glossaryPath}#${termAnchor(term)}`,
    title: null,
    data: { hProperties: { className: ['term'] } },
    children: [{ type: 'text', value: words }],
  };
}

function linked(text: string, finder: TermFinder, taken: Set<Term>): TextNode[] {
  const parts: TextNode[] = [];
  let done = 0;
  for (const { at, found, term } of finder.find(text, taken)) {
    taken.add(term);
    if (at > done) parts.push({ type: 'text', value: text.slice(done, at) });
    parts.push(linkTo(term, found));
    done = at + found.length;
  }
  if (done < text.length) parts.push({ type: 'text', value: text.slice(done) });
  return parts;
}

function walk(node: TextNode, finder: TermFinder, taken: Set<Term>): void {
  if (node.children === undefined) return;
  node.children = node.children.flatMap((child) => {
    if (child.type === 'text') return linked(child.value ?? '', finder, taken);
    if (!closedTypes.has(child.type) && !closedTags.has(child.name ?? '')) {
      walk(child, finder, taken);
    }
    return [child];
  });
}

/** Links the first use of each term in a lesson's prose to the glossary. Works on the tree in place. */
export function linkTerms(tree: TextNode, terms: readonly Term[] = glossary): readonly Term[] {
  const taken = new Set<Term>();
  walk(tree, new TermFinder(terms), taken);
  return [...taken];
}

/** The same as a plugin of the text pipeline, for the lessons alone. */
export function glossaryLinks(): (tree: TextNode, file: { path?: string }) => void {
  return (tree, { path = '' }) => {
    if (/[\\/]content[\\/]lessons[\\/]/.test(path)) linkTerms(tree);
  };
}
