import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;

/** From the bottom up: a folder may import from those before it, and from itself. */
const layers = ['core', 'units', 'pad', 'charts', 'widgets'] as const;
/** What stands above them all; these may import each other. */
const top = ['answers', 'components', 'layouts', 'pages', 'styles', 'content', 'content.config.ts'];
/** Those that import nothing of ours, and no package either. */
const pure = ['core', 'units'];

const topLevel = [
  '.biome.json',
  '.ci',
  '.gitignore',
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'astro.config.mjs',
  'content',
  'docs',
  'package-lock.json',
  'package.json',
  'public',
  'src',
  'tests',
  'tsconfig.json',
];

/** The one module that may read the tests: it shows their results on a page, as the site is built. */
const readsTheTests = 'src/components/reference/checks/cases.ts';

const longest = 400;

function filesUnder(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)));
}

const sources = [...filesUnder('src'), ...filesUnder('content')].filter((file) =>
  /\.(ts|tsx|mjs|astro|mdx)$/.test(file),
);

const written = [...sources, ...filesUnder('tests')].filter((file) =>
  /\.(ts|tsx|mjs|astro|css)$/.test(file),
);

const imports = [
  /\b(?:from|import)\s*\(?\s*['"]([^'"\n]+)['"]/g,
  /new URL\(\s*['"](\.[^'"\n]+)['"],\s*import\.meta\.url/g,
];

function importsOf(file: string): readonly string[] {
  const text = readFileSync(join(root, file), 'utf8').replace(/^\s*(\*|\/\/|\/\*).*$/gm, '');
  return imports.flatMap((pattern) => [...text.matchAll(pattern)].map(([, what = '']) => what));
}

/** The folder an import leads to; undefined for a package. */
function folderOf(file: string, what: string): string | undefined {
  if (what.startsWith('#')) return what.slice(1).split('/')[0];
  if (!what.startsWith('.')) return undefined;
  return placeOf(relative(root, resolve(root, dirname(file), what)));
}

function placeOf(path: string): string | undefined {
  const [first, second] = path.split('/');
  return first === 'src' ? second : first;
}

function mayImport(from: string | undefined, to: string): boolean {
  const [below, above] = [layers.indexOf(to as never), layers.indexOf(from as never)];
  if (from === to) return true;
  if (from !== undefined && pure.includes(from)) return false;
  if (above === -1) return below !== -1 || top.includes(to);
  return below !== -1 && below < above;
}

describe('imports point one way', () => {
  it('there are files to look at', () => {
    expect(sources.length).toBeGreaterThan(50);
    expect(sources.some((file) => importsOf(file).length > 0)).toBe(true);
  });

  it('core, units, pad, charts, widgets, then the rest', () => {
    const wrong = sources.flatMap((file) => {
      const from = placeOf(file);
      if (file === readsTheTests) return [];
      return importsOf(file)
        .map((what) => ({ what, to: folderOf(file, what) }))
        .filter(({ to }) => to !== undefined && !mayImport(from, to))
        .map(({ what }) => `${file} imports ${what}`);
    });
    expect(wrong).toEqual([]);
  });

  it('what reads the tests reads nothing else above itself, and only pages built from it ask for it', () => {
    const reads = importsOf(readsTheTests).map((what) => folderOf(readsTheTests, what));
    expect(new Set(reads)).toEqual(new Set([undefined, 'tests', 'components']));
    const askers = sources.filter((file) =>
      importsOf(file).some((what) => /reference\/checks\/cases\.ts$|\/cases\.ts$/.test(what)),
    );
    expect(askers).toEqual(['src/pages/reference/checks.astro']);
  });

  it('core and units need no package but a solver of linear programmes and random numbers', () => {
    const wrong = sources
      .filter((file) => pure.some((folder) => file.startsWith(`src/${folder}/`)))
      .flatMap((file) =>
        importsOf(file)
          .filter((what) => !what.startsWith('./') && !['yalps', 'd3-random'].includes(what))
          .map((what) => `${file} imports ${what}`),
      );
    expect(wrong).toEqual([]);
  });

  it('every folder of src is one that has a place in the order', () => {
    const folders = readdirSync(join(root, 'src')).filter((name) => !name.endsWith('.d.ts'));
    expect(folders.filter((name) => ![...layers, ...top].includes(name))).toEqual([]);
  });

  it('the arrows themselves', () => {
    expect(mayImport('widgets', 'core')).toBe(true);
    expect(mayImport('core', 'units')).toBe(false);
    expect(mayImport('units', 'core')).toBe(false);
    expect(mayImport('charts', 'widgets')).toBe(false);
    expect(mayImport('pad', 'components')).toBe(false);
    expect(mayImport('pages', 'layouts')).toBe(true);
  });
});

describe('the tree', () => {
  it('the top level holds what was agreed and nothing else', () => {
    const ignored = readFileSync(join(root, '.gitignore'), 'utf8')
      .split('\n')
      .map((line) => line.replace(/\/$/, ''))
      .concat('.git');
    const present = readdirSync(root).filter(
      (name) => !ignored.includes(name) && !name.endsWith('.log'),
    );
    expect(present.filter((name) => !topLevel.includes(name))).toEqual([]);
  });

  it('no file is too long to be read in one sitting', () => {
    const tooLong = written.filter(
      (file) => readFileSync(join(root, file), 'utf8').split('\n').length - 1 > longest,
    );
    expect(tooLong).toEqual([]);
  });

  it('nothing is exported by default but pages, islands and configurations', () => {
    const allowed = /^src\/pages\/|^src\/widgets\/\w+\/view\.tsx$|\.config\.ts$|\.astro$|\.mjs$/;
    const wrong = sources.filter(
      (file) =>
        !allowed.test(file) && /^export default /m.test(readFileSync(join(root, file), 'utf8')),
    );
    expect(wrong).toEqual([]);
  });
});

describe('packages', () => {
  it('there is exactly one KaTeX, the one we ask for', () => {
    const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
      packages: Record<string, unknown>;
    };
    const copies = Object.keys(lock.packages).filter((path) =>
      /(^|\/)node_modules\/katex$/.test(path),
    );
    expect(copies).toEqual(['node_modules/katex']);
  });

  it('every alias leads to a folder', () => {
    const { imports: aliases } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
      imports: Record<string, string>;
    };
    const missing = Object.values(aliases).filter(
      (path) => !existsSync(join(root, path.replace('/*', ''))),
    );
    expect(missing).toEqual([]);
  });
});
