import { type Limit, type LimitInputs, limitsFor } from '#core/day/limits.ts';
import type { Circuit } from '#core/hydraulics/circuitParts.ts';
import { atmosphericPressure, geopotentialAltitude } from '#core/pump/npsh.ts';
import type { Pad, PadLimits, Plumbing, Section } from '#pad/document/schema.ts';
import { type Assumption, assumption } from '#pad/messages/assumptions.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';

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

/** Where a unit stands, as far as the circuit has that branch. */
function branchOf(branchId: string | null, branches: ReadonlySet<string>): { branchId?: string } {
  return branchId !== null && branches.has(branchId) ? { branchId } : {};
}

/** The filters with an area, each where it stands. */
function filtersOf(
  placed: readonly Placed[],
  branches: ReadonlySet<string>,
): NonNullable<LimitInputs['filters']> {
  return placed.flatMap(({ section, branchId }) => {
    if (section.kind !== 'equipment' || section.equipment !== 'filter' || !section.area) return [];
    return [{ id: section.id, area: section.area, ...branchOf(branchId, branches) }];
  });
}

/** The heaters, each where it stands; a pad that names none has its limit all the same. */
function heatersOf(
  greatestFlow: number | undefined,
  placed: readonly Placed[],
  branches: ReadonlySet<string>,
): LimitInputs['heaters'] {
  if (greatestFlow === undefined) return [];
  const heaters = placed.flatMap(({ section, branchId }) => {
    if (section.kind !== 'equipment' || section.equipment !== 'heater') return [];
    return [{ id: section.id, greatestFlow, ...branchOf(branchId, branches) }];
  });
  return heaters.length === 0 ? [{ greatestFlow }] : heaters;
}

const valveFittings: readonly string[] = [
  'gateValve',
  'ballValve',
  'butterflyValve',
  'globeValve',
  'angleValve',
  'threeWayValveStraight',
  'threeWayValveBranch',
];

function isValve(section: Section): boolean {
  if (section.kind === 'fitting') return valveFittings.includes(section.fitting);
  return section.kind === 'equipment' && section.equipment === 'valve';
}

/** Branches of their own that a valve on them can shut. */
function valvedBranches(placed: readonly Placed[]): readonly string[] {
  return placed.flatMap(({ section, branchId }) =>
    branchId !== null && isValve(section) ? [branchId] : [],
  );
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

/** A cover whose branch is not there counts as one whose pipe is not known, which errs to the safe side. */
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
  const branches = new Set([...suctionBranches, ...branchIds(circuit.discharge)]);
  const placed = everySection([...plumbing.suction, ...plumbing.discharge], null);
  const rate = given(limits.filterRate);
  const filters = filtersOf(placed, branches);
  const found = limitsFor({
    circuit,
    suctionVelocity: given(limits.suctionVelocity),
    dischargeVelocity: given(limits.dischargeVelocity),
    filterRate: rate,
    filters,
    heaters: heatersOf(given(limits.heaterGreatestFlow), placed, branches),
    suctionCovers: coversOf(limits, suctionBranches),
    coversBalanced: limits.coversBalanced,
    valvedBranches: valvedBranches(everySection(plumbing.suction, null)),
    npsh: npshOf(limits, site),
  });
  const areaMissing = rate !== undefined && filters.length === 0;
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
