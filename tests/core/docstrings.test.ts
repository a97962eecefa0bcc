import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const folder = new URL('../../src/core', import.meta.url).pathname;

interface Documented {
  readonly file: string;
  readonly name: string;
  readonly parameters: readonly string[];
  /** Names of the types the parameters have. */
  readonly types: readonly string[];
  /** Parameters that are functions: they have units, but no range. */
  readonly callbacks: readonly string[];
  readonly returnsNumber: boolean;
  readonly text: string;
}

interface Field {
  readonly file: string;
  readonly owner: string;
  readonly name: string;
  readonly text: string;
}

/** The comment right above a node, without its stars. */
function commentAbove(node: ts.Node, source: ts.SourceFile): string {
  const ranges = ts.getLeadingCommentRanges(source.text, node.getFullStart()) ?? [];
  const last = ranges.at(-1);
  const raw = last === undefined ? '' : source.text.slice(last.pos, last.end);
  return raw
    .replace(/^\/\*\*?|\*\/$/g, '')
    .replace(/^[ \t]*\*[ \t]?/gm, '')
    .trim();
}

const isExported = (node: ts.Statement): boolean =>
  ts.canHaveModifiers(node) &&
  (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);

/** A number or a list of them, or null where there is none. */
const numberResult = /^(readonly )?number(\[\])?( \| (null|undefined))?$/;

const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
  name.endsWith('.ts'),
);

const parsed = files.map((file) => {
  const text = readFileSync(join(folder, file), 'utf8');
  return { file, source: ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true) };
});

const functions: readonly Documented[] = parsed.flatMap(({ file, source }) =>
  source.statements
    .filter(ts.isFunctionDeclaration)
    .filter((node) => isExported(node) && node.body !== undefined)
    .map((node) => ({
      file,
      name: node.name?.text ?? '',
      parameters: node.parameters.map(({ name }) => (ts.isIdentifier(name) ? name.text : '')),
      types: node.parameters.flatMap(
        ({ type }) => type?.getText(source).match(/\b[A-Z]\w+/g) ?? [],
      ),
      callbacks: node.parameters
        .filter(({ type }) => type !== undefined && ts.isFunctionTypeNode(type))
        .map(({ name }) => name.getText(source)),
      returnsNumber: numberResult.test(node.type?.getText(source) ?? ''),
      text: commentAbove(node, source),
    })),
);

/** Steps of one algorithm that lie in two files of the core; nothing outside may call them. */
const isInternal = ({ text }: Documented): boolean => /^@internal$/m.test(text);

/** Rooms of plain arithmetic: what a function gives is said in a sentence, and its tests show it. */
const isPlain = ({ file }: Documented): boolean => /^(base|time)\//.test(file);

const internal = functions.filter(isInternal);
const open = functions.filter((each) => !isInternal(each) && !isPlain(each));

/** A number by its own name, or a list or choice of numbers. */
const numeric = /^(readonly )?number(\[\])?( \| undefined)?$/;

const fields: readonly Field[] = parsed.flatMap(({ file, source }) =>
  source.statements
    .filter(ts.isInterfaceDeclaration)
    .filter(isExported)
    .flatMap((owner) =>
      owner.members
        .filter(ts.isPropertySignature)
        .filter((member) => numeric.test(member.type?.getText(source) ?? ''))
        .map((member) => ({
          file,
          owner: owner.name.text,
          name: member.name.getText(source),
          text: commentAbove(member, source),
        })),
    ),
);

const unit = /\[[^\]]+\]/;
/** A unit, but not a pointer to a type that is documented in its own place. */
const plainUnit = /\[(?!see )[^\]]+\]/;
/** A range names a number, or says in words that anything goes, what is allowed, or where it is told. */
const range =
  /\d|\[see \w+\]|\bany\b|\babove\b|\bat least\b|\bone of\b|fields? as there|'\w+'|\b\w+ or \w+\b|as many|symmetric|\brising\b|order one|finite|empty/;

/** The text of one tag or heading, up to the next. */
function section(text: string, start: RegExp): string | undefined {
  const blocks = text.split(/\n(?=@|Law:|Accuracy:|Source:)/);
  return blocks
    .find((block) => start.test(block))
    ?.replace(start, '')
    .replace(/\s+/g, ' ')
    .trim();
}

function problemsOf({ parameters, callbacks, returnsNumber, text }: Documented): readonly string[] {
  const problems: string[] = [];
  const want = (holds: boolean, what: string) => {
    if (!holds) problems.push(what);
  };
  want(/^[A-Z]/.test(text), 'a first line that says what it gives');
  want((section(text, /^Law:/) ?? '') !== '', 'Law');
  for (const name of parameters.filter((each) => each !== '')) {
    const param = section(text, new RegExp(`^@param ${name}\\b`)) ?? '';
    want(unit.test(param), `a unit of ${name} in "${param}"`);
    want(
      callbacks.includes(name) || range.test(param.replace(plainUnit, '')),
      `a range of ${name} in "${param}"`,
    );
  }
  const returns = section(text, /^@returns/) ?? '';
  want(
    returnsNumber ? unit.test(returns) : returns !== '',
    `the unit of what it returns in "${returns}"`,
  );
  want((section(text, /^@throws/) ?? '') !== '', '@throws');
  want((section(text, /^Accuracy:/) ?? '') !== '', 'Accuracy');
  want((section(text, /^Source:/) ?? '').length > 5, 'Source');
  want(section(text, /^@example/) !== undefined, '@example');
  return problems;
}

/** `expression // 7.250`, the number last. */
const example = /^(.+?)\s*\/\/\s*(-?[\d.]+(?:e[-+]?\d+)?)$/s;

/** Half a unit in the last printed place. */
function halfPlace(printed: string): number {
  const [digits = '', exponent = '0'] = printed.toLowerCase().split('e');
  const places = digits.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - places);
}

function figures(printed: string): number {
  const digits = (printed.toLowerCase().split('e')[0] ?? '').replace(/[-.]/g, '');
  return digits.replace(/^0+/, '').length;
}

function evaluate(expression: string, scope: Readonly<Record<string, unknown>>): unknown {
  return new Function(...Object.keys(scope), `return (${expression});`)(...Object.values(scope));
}

describe('every exported function of the core is documented', () => {
  it('there are functions to look at', () => {
    expect(functions.length).toBeGreaterThan(50);
  });

  it.each(open.map((each) => [each.file, each.name, each] as const))(
    '%s: %s',
    (_file, _name, each) => expect(problemsOf(each)).toEqual([]),
  );
});

describe('every number in an exported interface has its unit', () => {
  const asked = new Set(functions.flatMap(({ types }) => types));

  it.each([...new Set(fields.map(({ file }) => file))])('%s', (file) => {
    const own = fields.filter((field) => field.file === file);
    const wrong = own.flatMap(({ owner, name, text }) => [
      ...(unit.test(text) ? [] : [`${owner}.${name} has no unit`]),
      ...(!asked.has(owner) || range.test(text.replace(unit, ''))
        ? []
        : [`${owner}.${name} has no range`]),
    ]);
    expect(wrong).toEqual([]);
  });
});

/** Whatever the core exports: an example may build what it needs. */
const everything: Promise<Record<string, unknown>> = Promise.all(
  files.map((file) => import(/* @vite-ignore */ `${folder}/${file}`)),
).then((modules) => Object.assign({}, ...modules));

describe('every example is right to the digits it prints', () => {
  it.each([...new Set(open.map(({ file }) => file))])('%s', async (file) => {
    const scope = await everything;
    const wrong = open
      .filter((each) => each.file === file)
      .flatMap(({ name, text }) => {
        const [, expression, printed] = example.exec(section(text, /^@example/) ?? '') ?? [];
        if (expression === undefined || printed === undefined)
          return [`${name}: no number behind //`];
        if (figures(printed) < 4 && Number(printed) !== 0) return [`${name}: fewer than 4 digits`];
        const got = evaluate(expression, scope);
        const isRight =
          typeof got === 'number' &&
          Math.abs(got - Number(printed)) <= halfPlace(printed) * (1 + 1e-6);
        return isRight ? [] : [`${name}: prints ${printed}, is ${String(got)}`];
      });
    expect(wrong).toEqual([]);
  });
});

describe('what only the core shares', () => {
  const sources = new URL('../../src', import.meta.url).pathname;

  it('is imported by the core alone', () => {
    const names = internal.map(({ name }) => name);
    const outside = readdirSync(sources, { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.(tsx?|astro)$/.test(path) && !path.startsWith('core/'))
      .filter((path) => {
        const text = readFileSync(join(sources, path), 'utf8');
        const fromCore = [...text.matchAll(/import \{([^}]*)\} from '#core/g)].join(' ');
        return names.some((name) => new RegExp(`\\b${name}\\b`).test(fromCore));
      });
    expect(outside).toEqual([]);
  });

  it('still says in a line what it does, as plain arithmetic does', () => {
    const silent = [...internal, ...functions.filter(isPlain)].filter(
      ({ text }) => !/^[A-Z]/.test(text),
    );
    expect(silent.map(({ name }) => name)).toEqual([]);
  });
});
