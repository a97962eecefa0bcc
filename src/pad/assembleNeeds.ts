import { chlorineMass, saltCellHours } from '#core/chlorine.ts';
import { heaterHours, heatingEnergy } from '#core/heating.ts';
import type { Need } from '#core/needs.ts';
import type { Water } from '#core/water.ts';
import type { Path } from './path.ts';
import { type Problem, problem } from './problems.ts';
import type { PadNeed } from './schema.ts';

/** A need for the core, with the name the reader gave it. */
export interface NamedNeed extends Need {
  /** Greatest flow it bears [m3/s]; left out when there is none. */
  readonly greatestFlow?: number;
  readonly name: string;
}

export interface AssembledNeeds {
  /** The needs that are fully described, in the reader's order. */
  readonly needs: readonly NamedNeed[];
  readonly problems: readonly Problem[];
}

type Basis = NonNullable<PadNeed['basis']>;

/** Hours a day that follow from a basis, or null while it is incomplete. */
function hoursFrom(basis: Basis, volume: number | null, water: Water): number | null {
  if (volume === null) return null;
  if (basis.kind === 'chlorine') {
    const { dailyUse, output } = basis;
    if (dailyUse === null || !output) return null;
    return saltCellHours(chlorineMass(volume, dailyUse), output);
  }
  const { dailyRise, heaterPower } = basis;
  if (dailyRise === null || !heaterPower) return null;
  return heaterHours(heatingEnergy(volume, dailyRise, water), heaterPower);
}

interface Minutes {
  readonly minutes: number | null;
  readonly problems: readonly Problem[];
}

/** Minutes a day: those typed, else what the basis works out to, in whole minutes that are enough. */
function minutesOf(need: PadNeed, path: Path, volume: number | null, water: Water): Minutes {
  if (need.minutes !== null) return { minutes: need.minutes, problems: [] };
  if (need.basis === null) {
    return { minutes: null, problems: [problem('needMinutes', [...path, 'minutes'])] };
  }
  const hours = hoursFrom(need.basis, volume, water);
  if (hours === null)
    return { minutes: null, problems: [problem('needBasis', [...path, 'basis'])] };
  const minutes = Math.ceil(hours * 60);
  if (minutes <= 1440) return { minutes, problems: [] };
  const shown = Number.isFinite(hours) && hours < 1000 ? hours.toFixed(1) : 'more than 1000';
  return {
    minutes: 1440,
    problems: [problem('needTooLong', [...path, 'basis'], { hours: shown })],
  };
}

function assembleNeed(
  need: PadNeed,
  path: Path,
  volume: number | null,
  water: Water,
): { readonly need: NamedNeed | null; readonly problems: readonly Problem[] } {
  const { id, kind, name, leastFlow, greatestFlow, windows, shortestRun } = need;
  const { minutes, problems } = minutesOf(need, path, volume, water);
  const flowProblems: Problem[] = [];
  if (!leastFlow) flowProblems.push(problem('needFlow', [...path, 'leastFlow']));
  const reversed = greatestFlow !== null && leastFlow !== null && greatestFlow < leastFlow;
  if (reversed) flowProblems.push(problem('needGreatest', [...path, 'greatestFlow']));
  const all = [...flowProblems, ...problems];
  if (!leastFlow || reversed || minutes === null) return { need: null, problems: all };
  const bounds = greatestFlow === null ? { leastFlow } : { leastFlow, greatestFlow };
  const whole = { id, kind, name, ...bounds, minutes, windows, shortestRun: shortestRun ?? 0 };
  return { need: whole, problems: all };
}

/** The needs of the pad, with the minutes a day that follow from a basis worked out. */
export function assembleNeeds(
  needs: readonly PadNeed[],
  volume: number | null,
  water: Water,
): AssembledNeeds {
  const each = needs.map((need, place) => assembleNeed(need, ['needs', place], volume, water));
  return {
    needs: each.flatMap(({ need }) => (need === null ? [] : [need])),
    problems: each.flatMap(({ problems }) => problems),
  };
}
