/** What is asked about a year under two filters, and the answer: plain numbers, so that a page can carry them. */

/** A filter that loads evenly from clean to due. */
export interface FilterSetup {
  /** Head at the reference flow, clean and due for cleaning [m]. */
  readonly cleanHead: number;
  readonly dirtyHead: number;
  /** Days from clean to due [d]. */
  readonly due: number;
  /** Days between cleanings [d], no more than until it is due. */
  readonly interval: number;
}

/** What is done about a loading filter: nothing, more hours, or more speed. */
export const ways = ['left', 'hours', 'speed'] as const;
export type Way = (typeof ways)[number];

export interface Ask {
  readonly way: Way;
  /** Speed that is set [rpm]. */
  readonly speed: number;
  /** Minutes a day that are set [min]. */
  readonly minutes: number;
  readonly filters: readonly [FilterSetup, FilterSetup];
}

/** One day of those from a cleaning to the next. */
export interface CycleDay {
  /** While it runs [m3/s]. */
  readonly flow: number;
  /** Wire power while it runs [W]. */
  readonly power: number;
  /** [J] */
  readonly energy: number;
  /** [rpm] */
  readonly speed: number;
  /** [min] */
  readonly minutes: number;
}

/** A year and what it comes to. */
export interface YearSum {
  /** [J] */
  readonly energy: number;
  /** Price of the energy [currency]. */
  readonly cost: number;
  /** [m3] */
  readonly water: number;
  /** [min] */
  readonly minutes: number;
  readonly cleanings: number;
}

export interface FilterYear extends YearSum {
  /** The days from one cleaning to the next; the year repeats them. */
  readonly cycle: readonly CycleDay[];
  /** Days on which the water asked for cannot be moved [d]. */
  readonly lackDays: number;
}

export interface Worked {
  readonly filters: readonly [FilterYear, FilterYear];
  /** Water of a day through the easier filter, clean [m3]; what the two ways of keeping it move. */
  readonly asked: number;
  /** The first filter cleaned twice as often. */
  readonly oftener: YearSum & { readonly interval: number };
}

export type Solve = (ask: Ask) => Worked;

/** Where the picture opens, and what bounds it; for the example and for the reader's own pump. */
export interface Basis {
  readonly leastSpeed: number;
  readonly topSpeed: number;
  readonly speed: number;
  readonly filters: readonly [FilterSetup, FilterSetup];
  /** Flow at which the heads of the filters are told [m3/s]. */
  readonly referenceFlow: number;
  readonly currency: string;
}

/** The year whose calendar and prices are taken. */
export const year = 2027;
export const daysOfYear = 365;
/** Hours the picture opens with [min]. */
export const openingMinutes = 600;
