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
    text: 'Lock out the power before you open or reach into anything: a timer or automation restarts a pump that is only off. Wait the time on the drive’s label, then test that it is dead.',
    hard: true,
  },
  electrician: {
    title: 'Wiring is for an electrician',
    text: 'Wiring, bonding and ground-fault protection (GFCI, RCD) are work for a qualified electrician, to local code.',
    hard: true,
  },
  strainer: {
    title: 'Opening the strainer is opening the pump',
    text: 'Lock off the power, let the pressure go, and shut the valves where the pump lies below the water. Then clean the basket, seat the lid, open the valves, prime, and let the air out.',
    hard: true,
  },
  'filter-pressure': {
    title: 'Let the pressure go first',
    text: 'Stop the pump and release the filter pressure at the air valve before you open a clamp, lid or union. Never turn a multiport valve under pressure.',
    hard: true,
  },
  'filter-restart': {
    title: 'After you close a filter',
    text: 'Seat the clamp and check it. Open the air valve, stand clear, and start at the lowest speed. Close the valve when the water comes in a steady stream; only then go to the test speed.',
    hard: true,
  },
  'suction-cover': {
    title: 'Suction covers: never above the marked flow',
    text: 'Never run a suction outlet without a sound, rated cover, and never above the flow marked on it. A missing or broken cover means pump off, pool closed.',
    hard: true,
  },
  'second-protection': {
    title: 'A rated cover is not the whole protection',
    text: 'It lowers the risk. Two balanced outlets are the rule; a single outlet that a body can block needs a second protection: a vacuum release, a vent line, a gravity drain or an automatic shut-off.',
    hard: true,
  },
  entrapment: {
    title: 'If someone is held by suction',
    text: 'Cut the pump at once, then break the seal at the edge of the cover; don’t pull against the suction. Know the pump’s switch and mark it. Suction can hold a body, a limb or hair, injure the bowels, and jewelry or a strap can catch in a cover.',
    hard: true,
  },
  'other-speeds': {
    title: 'Speeds outside the plan',
    text: 'Priming, quick-clean, freeze and override speeds, and speeds set from outside, must lie below the stop too. Check each one in the pump’s own settings.',
    hard: true,
  },
  'do-not-run': {
    title: 'Do not run this plan',
    text: 'It takes more flow through the suction covers than they may bear. Lower the speed, or have the outlets changed, before the pump runs.',
    hard: true,
  },
  'heater-cool-down': {
    title: 'Heater off first',
    text: 'Turn the heater off 10 to 20 minutes before the pump stops or slows down, as its manual says, so that it can cool.',
    hard: true,
  },
  'no-flow': {
    title: 'No salt cell, no feeder without flow',
    text: 'Without flow they collect gas. Tie each to the pump’s power and to a proven flow switch, both. A pressure switch can stay closed without flow: prove at the slowest planned speed that it opens. A qualified person sets it.',
    hard: true,
  },
  frost: {
    title: 'Frost',
    text: 'Half speed is the cap of an energy rule’s default, no proof of protection: half the flow cools twice as much. Moving water is often enough in the main loop; see that every line moves, or drain it. Freeze protection may ship disabled or adjustable.',
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
