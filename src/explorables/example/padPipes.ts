import { type HeadShare, headShares } from '#core/hydraulics/circuit.ts';
import { smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { pipeSizes } from '#core/hydraulics/pipe.ts';
import { publishedVelocityLimits } from '#core/hydraulics/publishedLimits.ts';
import type { Pad, PipeSection, Section } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { format } from '#units/format.ts';

/** One bore on one side of the reader's own pad, at the place where it is fastest. */
export interface PadPipe {
  readonly id: string;
  readonly side: 'suction' | 'discharge';
  readonly label: string;
  /** Inside diameter [m]. */
  readonly bore: number;
  /** Length of that run [m]. */
  readonly length: number;
  /** Absolute roughness [m]. */
  readonly roughness: number;
  /** Part of the pump's flow that goes through it [-], above 0. */
  readonly share: number;
  /** Greatest velocity [m/s]: the pad's own limit, else the usual one. */
  readonly limit: number;
}

/** The pipes of a pad and the flows of its pump. */
export interface PadPipes {
  readonly pipes: readonly PadPipe[];
  readonly temperature: number;
  /** Flow at the slowest and at the fastest speed [m3/s]; the first may be 0. */
  readonly leastFlow: number;
  readonly greatestFlow: number;
}

const usualDocument = 'ANSI/APSP/ICC-15 2011';
const lines = { suction: 'suction', discharge: 'return' } as const;
const sideNames = { suction: 'Suction', discharge: 'Return' } as const;

function usualLimit(side: 'suction' | 'discharge'): number {
  const found = publishedVelocityLimits.find(
    ({ document, line }) => document === usualDocument && line === lines[side],
  );
  return found?.velocity ?? Number.POSITIVE_INFINITY;
}

function pipesIn(sections: readonly Section[]): readonly PipeSection[] {
  return sections.flatMap((section) => {
    if (section.kind === 'pipe') return [section];
    return section.kind === 'parallel'
      ? section.branches.flatMap((branch) => pipesIn(branch.sections))
      : [];
  });
}

function labelOf(share: HeadShare, bore: number, part: number, pad: Pad): string {
  const size = pipeSizes.find((one) => one.bore === bore);
  const name = size?.label ?? `bore ${format('diameter', bore, pad.units)}`;
  const partly = part < 0.995 ? ` (${Math.round(part * 100)}\u00a0%)` : '';
  return `${sideNames[share.side]} ${name}${partly}`;
}

/** More of the flow goes before more length, so that the fastest run stands for its bore. */
function outdoes(run: { part: number; length: number }, before: PadPipe): boolean {
  const more = run.part / before.share - 1;
  return more > 1e-9 || (more > -1e-9 && run.length > before.length);
}

/** The fastest run of each bore on each side, the longest of equally fast ones, where the pump runs at its top speed. */
function pipesAt(pad: Pad, shares: readonly HeadShare[], flow: number): PadPipe[] {
  const { suction, discharge } = pad.plumbing;
  const sections = new Map(pipesIn([...suction, ...discharge]).map((pipe) => [pipe.id, pipe]));
  const fastest = new Map<string, PadPipe>();
  for (const share of shares) {
    const { bore, side } = share;
    const section = sections.get(share.id);
    if (section === undefined || bore === undefined || share.flow <= 0) continue;
    const part = share.flow / flow;
    const key = `${side}-${bore}`;
    const length = section.length ?? 0;
    const before = fastest.get(key);
    if (before !== undefined && !outdoes({ part, length }, before)) continue;
    const typed = side === 'suction' ? pad.limits.suctionVelocity : pad.limits.dischargeVelocity;
    fastest.set(key, {
      id: share.id,
      side,
      label: labelOf(share, bore, part, pad),
      bore,
      length,
      roughness: section.roughness ?? smoothPlasticRoughness,
      share: part,
      limit: typed || usualLimit(side),
    });
  }
  return [...fastest.values()];
}

/** The pipes of the pad, or nothing while it describes no pipe or its pump is not known. */
export function padPipes(pad: Pad): PadPipes | undefined {
  const { running, described, speeds, water, ratioOf } = padModel(pad);
  if (running === null || described === null || speeds === null) return undefined;
  const top = running.pointAt(ratioOf(speeds.top));
  if (top.kind !== 'flowing') return undefined;
  const pipes = pipesAt(pad, headShares(running.circuit, top.flow), top.flow);
  if (pipes.length === 0) return undefined;
  const slow = running.pointAt(ratioOf(speeds.least));
  return {
    pipes,
    temperature: water.temperature,
    leastFlow: slow.kind === 'flowing' ? slow.flow : 0,
    greatestFlow: top.flow,
  };
}
