import { flowSlack } from '#core/day/dayReport.ts';
import { flowForBranch } from '#core/day/limits.ts';
import type { Need } from '#core/day/needs.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { chlorineMass, saltCellHours } from '#core/water/chlorine.ts';
import { heaterHours, heatingEnergy } from '#core/water/heating.ts';
import type { Water } from '#core/water/water.ts';
import type { PadNeed, Plumbing, Section } from '#pad/document/schema.ts';
import type { Path } from '#pad/messages/path.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';
import { unlessRefused } from './memo.ts';

/** A need for the core, with the name the reader gave it. */
export interface NamedNeed extends Need {
  /** Greatest flow it bears [m3/s]; left out when there is none. */
  readonly greatestFlow?: number;
  readonly name: string;
  /** The branch that must carry the flows, with those flows; the need's own are then what the pump must move for them. */
  readonly branch?: NeedBranch;
}

/** A branch by its name, and the flows a need asks of it. */
export interface NeedBranch {
  readonly id: string;
  readonly name: string;
  /** [m3/s] */
  readonly leastFlow: number;
  /** [m3/s]; left out when there is none. */
  readonly greatestFlow?: number;
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
  // Rounding of doubles must not add a minute to a whole number of them.
  const minutes = Math.ceil(hours * 60 * (1 - flowSlack));
  if (minutes <= 1440) return { minutes, problems: [] };
  const shown = Number.isFinite(hours) && hours < 1000 ? hours.toFixed(1) : 'more than 1000';
  return {
    minutes: 1440,
    problems: [problem('needTooLong', [...path, 'basis'], { hours: shown })],
  };
}

/** The branches of a circuit by id, named as the reader named them. */
function branchNames(sections: readonly Section[]): ReadonlyMap<string, string> {
  return new Map(
    sections.flatMap((section): (readonly [string, string])[] =>
      section.kind === 'parallel'
        ? section.branches.flatMap((branch) => [
            [branch.id, branch.name] as const,
            ...branchNames(branch.sections),
          ])
        : [],
    ),
  );
}

/** Where branches of a need are looked for. */
export interface NeedGround {
  readonly circuit: Circuit | null;
  readonly plumbing: Plumbing;
}

/** More than any pool pump moves [m3/s]: what a flow comes to that no branch can carry. */
const beyondAnyPump = 10;

/** The need with the flow that the pump must move for its branch to carry what it asks. */
function throughBranch(need: NamedNeed, branchId: string, ground: NeedGround): NamedNeed | null {
  const { circuit, plumbing } = ground;
  const names = branchNames([...plumbing.suction, ...plumbing.discharge]);
  const name = names.get(branchId);
  if (circuit === null || name === undefined) return null;
  const { leastFlow, greatestFlow } = need;
  const total = (flow: number) =>
    unlessRefused(() => ({ flow: flowForBranch(circuit, branchId, flow) ?? beyondAnyPump }));
  const least = total(leastFlow);
  if (least === null) return null;
  const greatest = greatestFlow === undefined ? null : total(greatestFlow);
  return {
    ...need,
    leastFlow: least.flow,
    ...(greatest === null ? {} : { greatestFlow: greatest.flow }),
    branch: {
      id: branchId,
      name,
      leastFlow,
      ...(greatestFlow === undefined ? {} : { greatestFlow }),
    },
  };
}

function assembleNeed(
  need: PadNeed,
  path: Path,
  volume: number | null,
  water: Water,
  ground: NeedGround,
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
  if (need.branchId === null) return { need: whole, problems: all };
  const through = throughBranch(whole, need.branchId, ground);
  const lost = through === null ? [problem('needBranch', [...path, 'branchId'])] : [];
  return { need: through ?? whole, problems: [...all, ...lost] };
}

/** The needs of the pad, with the minutes a day that follow from a basis worked out. */
export function assembleNeeds(
  needs: readonly PadNeed[],
  volume: number | null,
  water: Water,
  ground: NeedGround,
): AssembledNeeds {
  const each = needs.map((need, place) =>
    assembleNeed(need, ['needs', place], volume, water, ground),
  );
  return {
    needs: each.flatMap(({ need }) => (need === null ? [] : [need])),
    problems: each.flatMap(({ problems }) => problems),
  };
}
