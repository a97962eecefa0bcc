import { fromHtml } from 'hast-util-from-html';

/** A place found in a page, without what tells it from those of other pages. */
export interface Section {
  /** Name of the place in the page; empty at its head. */
  readonly anchor: string;
  readonly heading: string;
  readonly text: string;
}

/** What this needs to know of a page's tree. */
interface PageNode {
  readonly type: string;
  readonly tagName?: string;
  readonly value?: string;
  readonly properties?: Readonly<Record<string, unknown>>;
  readonly children?: readonly PageNode[];
}

/** No prose, or an answer that the reader is still to work out. */
const closedTags = new Set(
  'script style svg nav button input select textarea template tbody thead noscript math'.split(' '),
);
const closedClasses = new Set([
  'katex',
  'visually-hidden',
  'check',
  'step',
  'lesson-place',
  'shelf-letters',
  'source-list',
  'figure-tools',
  'range',
]);

const blockTags = new Set(
  'p li dt dd div section figcaption caption summary h1 h2 h3 h4 td tr ul ol dl table article'.split(
    ' ',
  ),
);

function isClosed({ tagName = '', properties = {} }: PageNode): boolean {
  const classes = Array.isArray(properties['className']) ? properties['className'] : [];
  return (
    closedTags.has(tagName) ||
    properties['hidden'] === true ||
    classes.some((name) => closedClasses.has(String(name)))
  );
}

function find(node: PageNode, tagName: string): PageNode | undefined {
  if (node.tagName === tagName) return node;
  for (const child of node.children ?? []) {
    const found = find(child, tagName);
    if (found !== undefined) return found;
  }
  return undefined;
}

function textOf(node: PageNode): string {
  if (node.type === 'text') return node.value ?? '';
  if (isClosed(node)) return '';
  const text = (node.children ?? []).map(textOf).join('');
  return blockTags.has(node.tagName ?? '') ? `\n${text}\n` : text;
}

const tidy = (text: string): string =>
  text
    .split('\n')
    .map((line) => line.replace(/\s+/g, ' ').trim())
    .filter((line) => line !== '')
    .join('\n');

/** An entry's own name heads it already. */
const withoutHeading = (text: string, heading: string): string =>
  text.startsWith(`${heading}\n`) ? text.slice(heading.length + 1) : text;

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** Where a new place begins: at a heading that has a name, or at what says it may be searched for. */
function opening(node: PageNode): { anchor: string; heading: string } | undefined {
  const { id, dataSearch } = node.properties ?? {};
  if (typeof id !== 'string') return undefined;
  if (typeof dataSearch === 'string') return { anchor: id, heading: dataSearch };
  return /^h[2-4]$/.test(node.tagName ?? '')
    ? { anchor: id, heading: oneLine(textOf(node)) }
    : undefined;
}

/** The places of a page: its prose, cut at its headings. */
export function readPage(html: string): { title: string; sections: readonly Section[] } {
  const main = find(fromHtml(html) as unknown as PageNode, 'main');
  if (main === undefined) return { title: '', sections: [] };
  const title = find(main, 'h1');
  const sections = [{ anchor: '', heading: '', text: '' }];
  const add = (text: string): void => {
    const section = sections.at(-1);
    if (section !== undefined) section.text += text;
  };
  const walk = (node: PageNode): void => {
    if (node.type === 'text') add(node.value ?? '');
    if (node.type === 'text' || isClosed(node) || node === title) return;
    const place = opening(node);
    if (place !== undefined) sections.push({ ...place, text: '' });
    if (/^h[1-4]$/.test(node.tagName ?? '') && place !== undefined) return;
    const isBlock = blockTags.has(node.tagName ?? '');
    if (isBlock) add('\n');
    (node.children ?? []).forEach(walk);
    if (isBlock) add('\n');
  };
  walk(main);
  return {
    title: title === undefined ? '' : oneLine(textOf(title)),
    sections: sections
      .map(({ anchor, heading, text }) => ({
        anchor,
        heading,
        text: withoutHeading(tidy(text), heading),
      }))
      .filter(({ heading, text }) => text !== '' || heading !== ''),
  };
}
