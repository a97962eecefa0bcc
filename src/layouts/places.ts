import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** A place named in the masthead. */
export interface Place {
  path: string;
  name: string;
}

const planned: readonly Place[] = [
  { path: '/lessons/', name: 'Learn' },
  { path: '/pad/', name: 'Your pad' },
  { path: '/day/', name: 'Day sheet' },
  { path: '/class/', name: 'Class kit' },
  { path: '/reference/', name: 'Reference' },
];

/** Places whose page is there: a link never leads nowhere. Read while the site is built. */
export const places: readonly Place[] = planned.filter(({ path }) => {
  const page = join(process.cwd(), 'src/pages', path);
  return existsSync(join(page, 'index.astro')) || existsSync(`${page.slice(0, -1)}.astro`);
});

/** Says whether the site has this place yet. */
export function hasPlace(path: string): boolean {
  return places.some((place) => place.path === path);
}
