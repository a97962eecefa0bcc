import type { Circuit } from '#core/circuit.ts';
import { type Limit, type LimitInputs, limitsFor } from '#core/limits.ts';
import { atmosphericPressure, geopotentialAltitude } from '#core/npsh.ts';
import { type Assumption, assumption } from './assumptions.ts';
import { type Problem, problem } from './problems.ts';
import type { Pad, PadLimits, Plumbing, Section } from './schema.ts';

export interface AssembledLimits {
  /** Flows no plan may pass, the least first. */
  readonly limits: readonly Limit[];
  readonly problems: readonly Problem[];
  readonly assumptions: readonly Assumption[];
}

interface Placed {
  readonly section: Section;
  /** The innermost branch around it, or null. */
  readonly branchId: string | null;
}

function everySection(sections: readonly Section[], branchId: string | null): readonly Placed[] {
  return sections.flatMap((section) => [
    { section, branchId },
    ...(section.kind === 'parallel'
      ? section.branches.flatMap((branch) => everySection(branch.sections, branch.id))
      : []),
  ]);
}

/** Area of all filters together [m2]; water that divides between them shares it. */
function filterArea(plumbing: Plumbing): number {
  return everySection([...plumbing.suction, ...plumbing.discharge], null).reduce(
    (area, { section }) =>
      section.kind === 'equipment' && section.equipment === 'filter'
        ? area + (section.area ?? 0)
        : area,
    0,
  );
}

/** The branch the heater stands in, when it stands in one that the circuit has. */
function heaterBranch(plumbing: Plumbing, branches: ReadonlySet<string>): string | undefined {
  const heater = everySection(plumbing.discharge, null).find(
    ({ section }) => section.kind === 'equipment' && section.equipment === 'heater',
  );
  const branchId = heater?.branchId ?? undefined;
  return branchId !== undefined && branches.has(branchId) ? branchId : undefined;
}

function branchIds(parts: Circuit['suction']): readonly string[] {
  return parts.flatMap((part) =>
    part.kind === 'parallel'
      ? part.branches.flatMap((branch) => [branch.id, ...branchIds(branch.parts)])
      : [],
  );
}

/** A limit that is given and is not 0, which would forbid all flow. */
function given(value: number | null): number | undefined {
  return value === null || value === 0 ? undefined : value;
}

const zeroable = [
  'suctionVelocity',
  'dischargeVelocity',
  'filterRate',
  'heaterGreatestFlow',
] as const satisfies readonly (keyof PadLimits)[];

function zeroProblems(limits: PadLimits): readonly Problem[] {
  return zeroable
    .filter((name) => limits[name] === 0)
    .map((name) => problem('limitZero', ['limits', name]));
}

function coverProblems(limits: PadLimits, branches: ReadonlySet<string>): readonly Problem[] {
  return limits.suctionCovers.flatMap(({ markedFlow, branchId }, place) => {
    const path = ['limits', 'suctionCovers', place];
    const lost = branchId !== null && !branches.has(branchId);
    return [
      ...(markedFlow ? [] : [problem('coverFlow', [...path, 'markedFlow'])]),
      ...(lost ? [problem('coverBranch', [...path, 'branchId'])] : []),
    ];
  });
}

/** A cover whose branch is not there is taken to share the whole flow, which errs to the safe side. */
function coversOf(limits: PadLimits, branches: ReadonlySet<string>): LimitInputs['suctionCovers'] {
  return limits.suctionCovers.flatMap(({ id, markedFlow, branchId }) => {
    if (!markedFlow) return [];
    const placed = branchId !== null && branches.has(branchId);
    return [placed ? { id, markedFlow, branchId } : { id, markedFlow }];
  });
}

function npshOf(limits: PadLimits, site: Pad['site']): LimitInputs['npsh'] {
  const { npshRequired, npshMargin } = limits;
  if (!npshRequired) return undefined;
  return {
    atmosphere: atmosphericPressure(geopotentialAltitude(site.altitude ?? 0)),
    surfaceAbovePump: site.surfaceAbovePump ?? 0,
    required: () => npshRequired,
    margin: npshMargin ?? 0,
  };
}

function assumptionsOf(limits: PadLimits, site: Pad['site']): readonly Assumption[] {
  if (!limits.npshRequired) return [];
  return [
    assumption('npshLevel'),
    ...(site.altitude === null ? [assumption('seaLevel')] : []),
    ...(site.surfaceAbovePump === null ? [assumption('pumpAtSurface')] : []),
  ];
}

/** The limits of the pad as greatest flows through the pump. */
export function assembleLimits(
  limits: PadLimits,
  site: Pad['site'],
  plumbing: Plumbing,
  circuit: Circuit,
): AssembledLimits {
  const suctionBranches = new Set(branchIds(circuit.suction));
  const dischargeBranches = new Set(branchIds(circuit.discharge));
  const area = filterArea(plumbing);
  const rate = given(limits.filterRate);
  const heaterFlow = given(limits.heaterGreatestFlow);
  const found = limitsFor({
    circuit,
    suctionVelocity: given(limits.suctionVelocity),
    dischargeVelocity: given(limits.dischargeVelocity),
    filter: rate !== undefined && area > 0 ? { area, rate } : undefined,
    heater:
      heaterFlow === undefined
        ? undefined
        : { greatestFlow: heaterFlow, branchId: heaterBranch(plumbing, dischargeBranches) },
    suctionCovers: coversOf(limits, suctionBranches),
    npsh: npshOf(limits, site),
  });
  const areaMissing = rate !== undefined && area === 0;
  return {
    limits: found,
    problems: [
      ...zeroProblems(limits),
      ...coverProblems(limits, suctionBranches),
      ...(areaMissing ? [problem('filterArea', ['limits', 'filterRate'])] : []),
    ],
    assumptions: assumptionsOf(limits, site),
  };
}
