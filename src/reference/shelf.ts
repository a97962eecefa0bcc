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
    path: '/reference/safety/',
    title: 'Safety',
    text: 'What to do before you open, start, stop or change anything, and if someone is held by suction.',
  },
  {
    path: '/reference/pipes/',
    title: 'Pipe tables',
    text: 'Outside diameter, wall and bore of every size, what it carries at the usual limits, and the head that takes.',
  },
  {
    path: '/reference/fittings/',
    title: 'Fittings',
    text: 'Loss coefficients of elbows, tees, valves and pipe ends, worked out for each size.',
  },
  {
    path: '/reference/equipment/',
    title: 'Equipment and limits',
    text: 'Usual losses, needs and limits to start from, clearly marked, what codes print, and where things go on a pad.',
  },
  {
    path: '/reference/formulas/',
    title: 'Formula sheet',
    text: 'Every law this site uses, with the unit of each symbol, its conditions and its source.',
  },
  {
    path: '/reference/glossary/',
    title: 'Glossary',
    text: 'The words of the trade, one plain sentence each.',
  },
  {
    path: '/reference/sources/',
    title: 'Sources',
    text: 'The documents our figures come from, and which lessons use them.',
  },
  {
    path: '/reference/checks/',
    title: 'How the numbers are checked',
    text: 'Every published or independent value we test against, next to ours, with the difference.',
  },
  {
    path: '/reference/planner/',
    title: 'How the planner proves its day',
    text: 'Why no day can be cheaper than the bound beside it, with one day worked out by hand.',
  },
] as const satisfies readonly ShelfPage[];

export type ShelfPath = (typeof shelf)[number]['path'];

/** The entry of a page on the shelf. */
export function shelfPage(path: ShelfPath): ShelfPage {
  const found = shelf.find((page) => page.path === path);
  if (found === undefined) throw new Error(`No page of the shelf is at ${path}.`);
  return found;
}
