/** A page of the shelf. */
export interface ShelfPage {
  readonly path: string;
  readonly title: string;
  /** One sentence: what is found there. */
  readonly text: string;
}

/** Every page of the shelf, in the order to show. */
export const shelf = [
  {
    path: '/reference/pipes/',
    title: 'Pipe tables',
    text: 'Outside diameter, wall and bore of every size, what it carries at the usual limits, and what that costs in head.',
  },
  {
    path: '/reference/fittings/',
    title: 'Fittings',
    text: 'Loss coefficients of elbows, tees, valves and pipe ends, worked out for each size.',
  },
  {
    path: '/reference/equipment/',
    title: 'Equipment and limits',
    text: 'Usual losses, needs and limits to begin with, marked as what they are, and limits that codes print.',
  },
  {
    path: '/reference/formulas/',
    title: 'Formula sheet',
    text: 'Every law this site works by, each symbol with its unit, each with its source.',
  },
  {
    path: '/reference/glossary/',
    title: 'Glossary',
    text: 'The words of the trade, one plain sentence each.',
  },
  {
    path: '/reference/sources/',
    title: 'Sources',
    text: 'The documents that figures are taken from, and which lessons rest on them.',
  },
  {
    path: '/reference/checks/',
    title: 'How the numbers are checked',
    text: 'Every published or independent value we test against, beside ours, with the difference.',
  },
] as const satisfies readonly ShelfPage[];

export type ShelfPath = (typeof shelf)[number]['path'];

/** The entry of a page on the shelf. */
export function shelfPage(path: ShelfPath): ShelfPage {
  const found = shelf.find((page) => page.path === path);
  if (found === undefined) throw new Error(`No page of the shelf is at ${path}.`);
  return found;
}
