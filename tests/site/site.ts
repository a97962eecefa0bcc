import { existsSync, globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

/** Port the tests serve the site on. */
export const sitePort = Number(process.env['SITE_PORT'] ?? 4330);

/** Address of the served site, without a closing slash. */
export const siteAddress = `http://localhost:${sitePort}`;

/** Folder of the built site. */
export const distFolder = resolve(
  fileURLToPath(new URL('../..', import.meta.url)),
  process.env['SITE_DIST'] ?? 'dist',
);

/** Every page of the built site by its address path, such as `/lessons/`. */
export function pagePaths(): string[] {
  const pages = globSync('**/*.html', { cwd: distFolder }).map((file) => pathOf(file));
  if (pages.length === 0) throw new Error(`No built site in ${distFolder}: run "npm run build".`);
  return pages.sort();
}

function pathOf(file: string): string {
  const address = `/${file.split('\\').join('/')}`;
  return address.replace(/index\.html$/, '');
}

/** The built file behind an address path; undefined where nothing answers. */
export function fileOf(path: string): string | undefined {
  const file = join(distFolder, path.endsWith('/') ? `${path}index.html` : path);
  if (existsSync(file) && !path.endsWith('/') && !/\.\w+$/.test(path)) return undefined;
  return existsSync(file) ? file : undefined;
}

/** Text of a built page. */
export function pageSource(path: string): string {
  const file = fileOf(path);
  if (file === undefined) throw new Error(`No built page at ${path}.`);
  return readFileSync(file, 'utf8');
}

/** Size of a built file as it travels [KiB], gzipped unless it is packed already. */
export function travelSize(path: string): number {
  const file = fileOf(path);
  if (file === undefined) throw new Error(`No built file at ${path}.`);
  const bytes = readFileSync(file);
  return (path.endsWith('.woff2') ? bytes.length : gzipSync(bytes, { level: 9 }).length) / 1024;
}
