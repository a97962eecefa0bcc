import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;

/**
 * The rooms of the house from the bottom up: a file may import from its own room and from those
 * before it, and from none beside or after it.
 */
const rooms = [
  'core/base',
  'core/numerics',
  'core/time',
  'core/pool',
  'core/water',
  'core/tariff',
  'core/hydraulics',
  'core/pump',
  'core/fit',
  'core/day',
  'core/uncertainty',
  'core/planner',
  'core/year',
  'core/meter',
  'units',
  'pad/messages',
  'pad/document',
  'pad/demos',
  'pad/store',
  'pad/model',
  'pad/formats',
  'words',
  'content',
  'ui/charts',
  'ui/controls',
  'ui/loading',
  'ui/figure',
  'ui/page',
  'explorables/example',
  'explorables/*',
  'course/Ask',
  'course/Check',
  'course/CapstoneSteps',
  'course/CourseMap',
  'course/lesson',
  'padPage/form',
  'padPage/answers',
  'dayPage/day',
  'dayPage/fileInput',
  'dayPage/planning',
  'dayPage/parts/*',
  'dayPage',
  'search',
  'reference',
  'styles',
  'layouts',
  'answers',
  'pages',
] as const;
/** These import nothing of ours but themselves, and no package but a solver and random numbers. */
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

const longest = 400;

function filesUnder(folder: string): readonly string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)));
}

const sources = [...filesUnder('src'), ...filesUnder('content')].filter((file) =>
  /(?<!\.d)\.(ts|tsx|mjs|astro|mdx)$/.test(file),
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

/** The file an import leads to, from the top; undefined for a package. */
function fileOf(file: string, what: string): string | undefined {
  if (what.startsWith('#content/')) return what.slice(1);
  if (what.startsWith('#')) return `src/${what.slice(1)}`;
  return what.startsWith('.') ? relative(root, resolve(root, dirname(file), what)) : undefined;
}

/** The room a file lies in: the longest name in the table that leads to it. */
function roomOf(file: string): { readonly room: string; readonly place: number } | undefined {
  const path = file.replace(/^src\//, '').replace(/^content[./].*/, 'content/');
  const depthOf = (name: string) => name.split('/').length;
  const found = rooms
    .map((name, place) => ({ name, place }))
    .filter(({ name }) => new RegExp(`^${name.replace('*', '[^/]+')}/`).test(path))
    .toSorted((one, other) => Number(one.name.includes('*')) - Number(other.name.includes('*')))
    .toSorted((one, other) => depthOf(other.name) - depthOf(one.name))[0];
  if (found === undefined) return undefined;
  return { room: path.split('/').slice(0, depthOf(found.name)).join('/'), place: found.place };
}

function mayImport(from: string, to: string): boolean {
  const [here, there] = [roomOf(from), roomOf(to)];
  if (here === undefined || there === undefined) return false;
  if (here.room === there.room) return true;
  const pureRoom = pure.find((name) => from.startsWith(`src/${name}/`));
  if (pureRoom !== undefined && !to.startsWith(`src/${pureRoom}/`)) return false;
  return there.place < here.place;
}

describe('imports point one way', () => {
  it('there are files to look at', () => {
    expect(sources.length).toBeGreaterThan(50);
    expect(sources.some((file) => importsOf(file).length > 0)).toBe(true);
  });

  it('every file lies in a room', () => {
    const outside = sources.filter((file) => roomOf(file) === undefined);
    expect(outside).toEqual([]);
  });

  it('a room imports from those before it in the table, and from none beside it', () => {
    const wrong = sources.flatMap((file) =>
      importsOf(file)
        .map((what) => ({ what, to: fileOf(file, what) }))
        .filter(({ to }) => to !== undefined && !mayImport(file, to))
        .map(({ what }) => `${file} imports ${what}`),
    );
    expect(wrong).toEqual([]);
  });

  it('only the page of the checks asks for them, as it is built', () => {
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
          .filter(
            (what) => fileOf(file, what) === undefined && !['yalps', 'd3-random'].includes(what),
          )
          .map((what) => `${file} imports ${what}`),
      );
    expect(wrong).toEqual([]);
  });

  it('no file leads back to itself', () => {
    const seen = new Map<string, 'open' | 'done'>();
    const circles: string[] = [];
    const walk = (file: string, path: readonly string[]): void => {
      seen.set(file, 'open');
      for (const what of importsOf(file)) {
        const to = fileOf(file, what);
        if (to === undefined || !sources.includes(to)) continue;
        if (seen.get(to) === 'open')
          circles.push([...path.slice(path.indexOf(to)), to].join(' > '));
        else if (!seen.has(to)) walk(to, [...path, to]);
      }
      seen.set(file, 'done');
    };
    for (const file of sources) if (!seen.has(file)) walk(file, [file]);
    expect(circles).toEqual([]);
  });

  it('no file passes on what another exports', () => {
    const passing = sources.filter((file) =>
      /^export (type )?(\*|\{[^}]*\}) from /m.test(readFileSync(join(root, file), 'utf8')),
    );
    expect(passing).toEqual([]);
  });

  it('the arrows themselves', () => {
    const between = (from: string, to: string) => mayImport(`src/${from}/a.ts`, `src/${to}/b.ts`);
    expect(between('dayPage/day', 'core/day')).toBe(true);
    expect(between('core/day', 'units')).toBe(false);
    expect(between('core/pump', 'core/fit')).toBe(false);
    expect(between('units', 'core/base')).toBe(false);
    expect(between('ui/charts', 'ui/controls')).toBe(false);
    expect(between('explorables/CubeLaw', 'explorables/GaugeHead')).toBe(false);
    expect(between('explorables/CubeLaw', 'explorables/example')).toBe(true);
    expect(between('dayPage/parts/year', 'dayPage/parts/meter')).toBe(false);
    expect(between('dayPage', 'dayPage/parts/meter')).toBe(true);
    expect(between('pages', 'layouts')).toBe(true);
  });
});

describe('the tree', () => {
  it('every room of the core says what it holds, in twenty lines at most where it states no model', () => {
    const models = ['planner', 'fit'];
    const rooms = readdirSync(join(root, 'src/core'));
    const short = rooms.filter((room) => !models.includes(room));
    const linesOf = (room: string) => {
      const page = join(root, 'src/core', room, 'README.md');
      return existsSync(page) ? readFileSync(page, 'utf8').split('\n').length - 1 : 0;
    };
    expect(Math.min(...rooms.map(linesOf))).toBeGreaterThan(0);
    expect(Math.max(...short.map(linesOf))).toBeLessThanOrEqual(20);
  });

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
    const allowed = /^src\/pages\/|\/view\.tsx$|\.config\.ts$|\.astro$|\.mjs$/;
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
