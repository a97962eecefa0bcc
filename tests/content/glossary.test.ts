import { readdirSync, readFileSync } from 'node:fs';
import remarkMath from 'remark-math';
import remarkMdx from 'remark-mdx';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { describe, expect, it } from 'vitest';
import { formsOf, glossary, termAnchor } from '#content/glossary.ts';
import { glossaryLinks, linkTerms, type TextNode } from '#course/lesson/glossary/linkTerms.ts';

const reader = unified()
  .use(remarkParse)
  .use(remarkMdx)
  .use(remarkMath, { singleDollarTextMath: false });

const read = (text: string) => reader.parse(text) as unknown as TextNode;

const terms = [
  { term: 'Head', says: 'x', forms: ['head'] },
  { term: 'Wire power', says: 'x', forms: ['wire power'] },
  { term: 'Power', says: 'x', forms: ['power'] },
  { term: 'TDH', says: 'x', forms: ['TDH'] },
];

/** Every link in a tree, as what it reads and where it leads. */
function linksIn(node: TextNode): string[] {
  const here = node.type === 'link' ? [`${textOf(node)} ${String(node['url'])}`] : [];
  return [...here, ...(node.children ?? []).flatMap(linksIn)];
}

function textOf(node: TextNode): string {
  return (node.value ?? '') + (node.children ?? []).map(textOf).join('');
}

function linksOf(text: string): string[] {
  const tree = read(text);
  linkTerms(tree, terms);
  return linksIn(tree).map((link) => link.replace(' /reference/glossary/#', ' > '));
}

describe('links to the glossary', () => {
  it('the first use is linked, and only that', () => {
    expect(linksOf('The head falls.\n\nThen head rises, and head falls.')).toEqual(['head > head']);
    const tree = read('Low head, high head.');
    linkTerms(tree, terms);
    expect(textOf(tree)).toBe('Low head, high head.');
    expect(tree.children?.[0]?.children?.map(({ type }) => type)).toEqual(['text', 'link', 'text']);
  });

  it('a longer term is not taken for a shorter one inside it', () => {
    expect(linksOf('The wire power, not other power.')).toEqual([
      'wire power > wire-power',
      'power > power',
    ]);
    expect(linksOf('A line that breaks at wire\npower.')).toEqual(['wire\npower > wire-power']);
  });

  it('parts of words are left alone', () => {
    expect(linksOf('A header, ahead, head-on, powerful, overpower.')).toEqual([]);
  });

  it('a plain word may begin a sentence; a name keeps its capitals', () => {
    expect(linksOf('Head and TDH.')).toEqual(['Head > head', 'TDH > tdh']);
    expect(linksOf('A tdh.')).toEqual([]);
  });

  it('headings, links, code, maths and props are never touched', () => {
    const text = [
      '## Head',
      '[the head](/x/)',
      '`head` and $$head$$',
      '$$\nhead\n$$',
      '```\nhead\n```',
      '<Worked title="head">\n\nNothing.\n\n</Worked>',
      '{"head"}',
    ].join('\n\n');
    expect(linksOf(text)).toEqual(['the head /x/']);
  });

  it('formulas and what is hidden until asked for are passed over', () => {
    const hidden = ['Formula', 'Ask', 'Step', 'details'].map(
      (tag) => `<${tag}>\n\nThe head.\n\n</${tag}>`,
    );
    expect(linksOf([...hidden, 'Then **head**.'].join('\n\n'))).toEqual(['head > head']);
    expect(linksOf('<InShort>\n\n- The head.\n\n</InShort>')).toEqual(['head > head']);
  });

  it('only lessons are linked', () => {
    const elsewhere = read('The head.');
    glossaryLinks()(elsewhere, { path: '/site/content/notes/x.mdx' });
    expect(linksIn(elsewhere)).toEqual([]);
    const lesson = read('The head.');
    glossaryLinks()(lesson, { path: '/site/content/lessons/x.mdx' });
    expect(linksIn(lesson)).toEqual(['head /reference/glossary/#head']);
  });
});

describe('the glossary', () => {
  it('is in alphabetical order, each term once', () => {
    const names = glossary.map(({ term }) => term.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
    expect(names).toEqual([...names].sort((a, b) => a.localeCompare(b, 'en')));
  });

  it('every place on its page is its own, and none is empty', () => {
    const anchors = glossary.map(termAnchor);
    expect(new Set(anchors).size).toBe(anchors.length);
    expect(anchors.filter((anchor) => !/^[a-z][a-z0-9-]*$/.test(anchor))).toEqual([]);
  });

  it('says each in one sentence', () => {
    const odd = glossary.filter(({ says }) => {
      return !/^[A-Z][^\n]{20,170}\.$/.test(says) || /[.!?] [A-Z]/.test(says);
    });
    expect(odd.map(({ term }) => term)).toEqual([]);
  });

  it('no spelling leads to two terms', () => {
    const forms = glossary.flatMap(formsOf).map((form) => form.toLowerCase());
    expect(forms.filter((form, index) => forms.indexOf(form) !== index)).toEqual([]);
  });
});

describe('lessons', () => {
  const folder = new URL('../../content/lessons/', import.meta.url);
  const lessons = readdirSync(folder).filter((name) => name.endsWith('.mdx'));
  const anchors = new Set(glossary.map((term) => `/reference/glossary/#${termAnchor(term)}`));

  it('there are some', () => {
    expect(lessons.length).toBeGreaterThan(1);
  });

  it.each(lessons)('%s links its terms, each once and to an entry that is there', (name) => {
    const text = readFileSync(new URL(name, folder), 'utf8').replace(/^---[\s\S]*?\n---\n/, '');
    const tree = read(text);
    const before = linksIn(tree).length;
    linkTerms(tree);
    const links = linksIn(tree).map((link) => link.split(' ').at(-1) ?? '');
    const made = links.filter((link) => link.startsWith('/reference/glossary/'));
    expect(made.length).toBe(links.length - before);
    expect(made.length).toBeGreaterThanOrEqual(5);
    expect(new Set(made).size).toBe(made.length);
    expect(made.filter((link) => !anchors.has(link))).toEqual([]);
  });
});
