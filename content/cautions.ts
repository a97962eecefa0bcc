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
    text: 'Switch off and lock out the power before you open or reach into anything: timers and automation restart pumps. Wait the time on the drive’s label, then test that it is dead.',
    hard: true,
  },
  electrician: {
    title: 'Wiring is for an electrician',
    text: 'Wiring, bonding and ground-fault protection (GFCI, RCD) are work for a qualified electrician, as local code says.',
    hard: true,
  },
  'filter-pressure': {
    title: 'Let the pressure go first',
    text: 'Stop the pump and release the filter pressure at the air valve before you open a clamp, lid or union. Never turn a multiport valve under pressure.',
    hard: true,
  },
  strainer: {
    title: 'Opening the strainer is opening the pump',
    text: 'Power off and locked, pressure let go, valves shut where the pump lies below the water; then basket, lid, prime, air out.',
    hard: true,
  },
  'filter-restart': {
    title: 'Restart after cleaning a filter',
    text: 'Clamp seated and checked, air valve open, lowest speed, stand clear; close the valve at a steady stream. Only then the test speed.',
    hard: true,
  },
  'suction-cover': {
    title: 'Suction covers: never above the marked flow',
    text: 'Never run a suction outlet without a sound, rated cover, and never above the flow marked on it. A missing or broken cover: pump off, pool closed.',
    hard: true,
  },
  entrapment: {
    title: 'A rated cover is not the whole protection',
    text: 'Suction can hold a body, hair or a limb; a ring or tie can catch. Two balanced outlets are the rule; a single one that a body can block needs a second protection (vacuum release, vent line, gravity drain, shut-off). Someone held: cut the pump, break the seal. Mark its switch.',
    hard: true,
  },
  'other-speeds': {
    title: 'Speeds outside the plan count too',
    text: 'Priming, quick clean, override, freeze protection and outside controls must stay below the stop of the suction covers as well.',
    hard: true,
  },
  'no-flow': {
    title: 'No flow, no chlorine and no heat',
    text: 'A salt cell or feeder that runs without flow collects gas: tie it to the pump’s power and to a proven flow switch. A pressure switch can stay closed; a qualified person sets it and proves that it opens.',
    hard: true,
  },
  'heater-cool-down': {
    title: 'Let the heater cool down',
    text: 'Heater off 10 to 20 minutes before the pump stops or slows, as its manual says.',
    hard: false,
  },
  frost: {
    title: 'Frost',
    text: 'Moving water often protects the main loop. See that every line moves, or drain it. Freeze protection may ship disabled or adjustable: check yours.',
    hard: false,
  },
  manuals: {
    title: 'The manual decides',
    text: 'Follow the manual of the heater, the filter and the salt cell for least and greatest flow.',
    hard: false,
  },
  'local-code': {
    title: 'Local code comes first',
    text: 'Local code and licensed practice come before anything worked out here. Some codes set a default speed and a timed override.',
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
