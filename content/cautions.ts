/** A short warning that stands wherever work on real equipment is described. */
export interface Caution {
  title: string;
  text: string;
  /** A hard one marks what must never be done. */
  hard: boolean;
}

/** Every caution of the site, by the short name that lessons and pages use. */
export const cautions = {
  'lock-out': {
    title: 'Power off, and locked off',
    text: 'Switch off and lock out the power before you open or reach into anything. Test that it is dead.',
    hard: true,
  },
  electrician: {
    title: 'Wiring is for an electrician',
    text: 'Wiring, bonding and ground-fault protection (GFCI, RCD) are work for a qualified electrician.',
    hard: true,
  },
  'filter-pressure': {
    title: 'Let the pressure go first',
    text: 'Stop the pump and release the filter pressure at the air valve before you open a clamp, lid or union.',
    hard: true,
  },
  'suction-cover': {
    title: 'Suction covers: never above the marked flow',
    text: 'Never run a suction outlet without a sound, rated cover, and never above the flow marked on it. A missing or broken cover closes the pool.',
    hard: true,
  },
  manuals: {
    title: 'The manual decides',
    text: 'Follow the manual of the heater, the filter and the salt cell for least and greatest flow.',
    hard: false,
  },
  'local-code': {
    title: 'Local code comes first',
    text: 'Local code and licensed practice come before anything worked out here.',
    hard: false,
  },
  estimates: {
    title: 'A calculation is not a measurement',
    text: 'Figures worked out here are estimates. Check them against gauges and the meter before you rely on them.',
    hard: false,
  },
} as const satisfies Record<string, Caution>;

/** Short name of a caution. */
export type CautionId = keyof typeof cautions;

/** Every short name, for checks of front matter. */
export const cautionIds = Object.keys(cautions) as CautionId[];
