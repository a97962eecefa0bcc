import { CoreError } from '#core/base/errors.ts';
import type { Outline as CoreOutline, OutlineSide } from '#core/pool/poolOutline.ts';
import { type Depth as CoreDepth, poolVolume } from '#core/pool/poolVolume.ts';
import type { Depth, Outline, Pool } from '#pad/document/schema.ts';
import type { Path } from '#pad/messages/path.ts';
import { type Problem, type ProblemCode, problem } from '#pad/messages/problems.ts';

export interface AssembledPool {
  /** Volume of water [m3], or null while it cannot be worked out. */
  readonly volume: number | null;
  readonly problems: readonly Problem[];
}

const outlinePath: Path = ['pool', 'outline'];
const depthPath: Path = ['pool', 'depth'];

/** Every size of a shape that is missing or 0, tied to its field. */
function missingSizes(sizes: Readonly<Record<string, unknown>>, path: Path): readonly Problem[] {
  return Object.entries(sizes)
    .filter(([name, value]) => value === null || (value === 0 && name !== 'distance'))
    .map(([name]) => problem('poolSize', [...path, name]));
}

function outlineProblems(outline: Outline): readonly Problem[] {
  if (outline.kind === 'polygon') return [];
  if (outline.kind !== 'twoRadius') return missingSizes(outline, outlinePath);
  const { sides, ...sizes } = outline;
  const bends = sides.flatMap((side, place) =>
    side.kind === 'straight' ? [] : missingSizes(side, [...outlinePath, 'sides', place]),
  );
  return [...missingSizes(sizes, outlinePath), ...bends];
}

function depthProblems(depth: Depth): readonly Problem[] {
  if (depth.kind !== 'stations') return missingSizes(depth, depthPath);
  if (depth.stations.length < 2) return [problem('poolStations', [...depthPath, 'stations'])];
  return depth.stations.flatMap((station, place) =>
    missingSizes(station, [...depthPath, 'stations', place]),
  );
}

/** A shape whose sizes are all given: what its problems show. */
type Complete<T> = { readonly [Key in keyof T]: NonNullable<T[Key]> };

function coreSide(side: { readonly kind: OutlineSide['kind']; readonly radius: number | null }) {
  return side.kind === 'straight'
    ? ({ kind: 'straight' } as const)
    : { kind: side.kind, radius: side.radius as number };
}

/** The outline for the core; only for one without missing sizes. */
function coreOutline(outline: Outline): CoreOutline {
  if (outline.kind === 'polygon') {
    return { kind: 'polygon', vertices: outline.vertices.map(({ x, y }) => [x, y] as const) };
  }
  if (outline.kind === 'twoRadius') {
    const { sides, ...sizes } = outline;
    const [first, second] = sides;
    return { ...(sizes as Complete<typeof sizes>), sides: [coreSide(first), coreSide(second)] };
  }
  return outline as CoreOutline;
}

const shapeCodes: Readonly<Record<Outline['kind'], ProblemCode>> = {
  rectangle: 'poolSize',
  circle: 'poolSize',
  ellipse: 'poolSize',
  stadium: 'poolWidth',
  twoRadius: 'poolEnds',
  polygon: 'poolCorners',
};

function shapeProblem(error: CoreError, kind: Outline['kind']): Problem {
  return error.field.startsWith('stations')
    ? problem('poolStations', [...depthPath, 'stations'])
    : problem(shapeCodes[kind], outlinePath);
}

/** The outline of the reader's pool for drawing, or null while sizes are missing. */
export function drawableOutline(pool: Pool): CoreOutline | null {
  if (pool.kind === 'known' || outlineProblems(pool.outline).length > 0) return null;
  return coreOutline(pool.outline);
}

/** The volume of the pool, from what is typed or from the shape. */
export function assemblePool(pool: Pool): AssembledPool {
  if (pool.kind === 'known') {
    const known = pool.volume !== null && pool.volume > 0;
    if (known) return { volume: pool.volume, problems: [] };
    return { volume: null, problems: [problem('volumeMissing', ['pool', 'volume'])] };
  }
  const problems = [...outlineProblems(pool.outline), ...depthProblems(pool.depth)];
  if (problems.length > 0) return { volume: null, problems };
  try {
    const volume = poolVolume({
      outline: coreOutline(pool.outline),
      depth: pool.depth as CoreDepth,
    });
    return { volume, problems: [] };
  } catch (error) {
    if (!(error instanceof CoreError)) throw error;
    return { volume: null, problems: [shapeProblem(error, pool.outline.kind)] };
  }
}
