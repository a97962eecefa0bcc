/** What a pad does at a few speeds, where it must stop, and the slowest speed for each need. */

import type { Limit } from '#core/day/limits.ts';
import type { Rung } from '#core/day/needs.ts';
import { branchFlows, largestVelocity, suctionHead } from '#core/hydraulics/circuit.ts';
import { atmosphericPressure, geopotentialAltitude, npshAvailable } from '#core/pump/npsh.ts';
import type { Pad } from '#pad/document/schema.ts';
import type { PadModel } from '#pad/model/assemble.ts';
import type { RunningPad } from '#pad/model/runningPad.ts';
import { greatestFlowAt, ratioKeeping } from '#pad/model/worstState.ts';
import { fromSI } from '#units/convert.ts';

/** Speeds over reference speed that are asked for. */
const ratios = [1, 0.85, 0.7, 0.55, 0.4];

export const cubicMetresPerHour = (flow: number): number => fromSI('flow', flow, 'm3/h');

const orNull = <Value>(value: Value | undefined): Value | null => value ?? null;

function npshAt({ site, limits }: Pad, { circuit }: RunningPad, flow: number) {
  const available = npshAvailable({
    atmosphere: atmosphericPressure(geopotentialAltitude(site.altitude ?? 0)),
    water: circuit.water,
    surfaceAbovePump: site.surfaceAbovePump ?? 0,
    suctionLoss: suctionHead(circuit, flow),
  });
  const { npshRequired } = limits;
  return { available, margin: npshRequired === null ? null : available - npshRequired };
}

function speedAnswer(pad: Pad, { volume }: PadModel, running: RunningPad, ratio: number) {
  const point = running.pointAt(ratio);
  const wirePowerW = running.powerAt(ratio);
  if (point.kind === 'noFlow')
    return { reason: point.reason, leastRatio: point.leastRatio, wirePowerW };
  const { flow, head, extrapolated } = point;
  const { circuit } = running;
  const velocity = (side: 'suction' | 'discharge') =>
    orNull(largestVelocity(circuit, flow, side)?.velocity);
  const npsh = npshAt(pad, running, flow);
  const shares = branchFlows(circuit, flow).map((branch) => [branch.branchId, branch.flow / flow]);
  return {
    flowM3h: cubicMetresPerHour(flow),
    headM: head,
    wirePowerW,
    extrapolated,
    suctionVelocityMs: velocity('suction'),
    dischargeVelocityMs: velocity('discharge'),
    branchShares: Object.fromEntries(shares) as Record<string, number>,
    npshAvailableM: npsh.available,
    npshMarginM: npsh.margin,
    turnoverH: volume === null ? null : volume / cubicMetresPerHour(flow),
  };
}

/** What the pad does at each of a few speed ratios; null while there is no pump to run. */
export function speedsAnswer(pad: Pad, model: PadModel) {
  const { running } = model;
  if (running === null) return null;
  return Object.fromEntries(
    ratios.map((ratio) => [String(ratio), speedAnswer(pad, model, running, ratio)]),
  );
}

/** Every limit, with the greatest speed that keeps it when the pad moves the most it can. */
export function limitsAnswer(pad: Pad, { limits, fit, speeds }: PadModel) {
  const flowAt = fit === null ? null : greatestFlowAt(fit, pad.plumbing);
  const rpmOf = (limit: Limit) => {
    if (flowAt === null || speeds === null) return null;
    const ratio = ratioKeeping(limit, flowAt, speeds);
    return ratio === undefined ? speeds.top : ratio * speeds.reference;
  };
  return limits.map((limit) => ({
    id: limit.id,
    kind: limit.kind,
    flowM3h: cubicMetresPerHour(limit.greatestFlow),
    flowGpm: fromSI('flow', limit.greatestFlow, 'gpm'),
    hard: limit.hard,
    rpm: rpmOf(limit),
  }));
}

function rungAnswer(rung: Rung, model: PadModel) {
  const need = rung.need.id;
  if (rung.kind === 'unreachable') {
    return {
      need,
      unreachable: rung.reason.kind,
      greatestReachableM3h: cubicMetresPerHour(rung.greatestReachableFlow),
    };
  }
  return {
    need,
    rpm: model.speedOf(rung.ratio),
    flowM3h: cubicMetresPerHour(rung.flow),
    headM: rung.head,
    wirePowerW: rung.power,
    suctionVelocityMs: orNull(rung.velocity.suction),
    dischargeVelocityMs: orNull(rung.velocity.discharge),
    crossed: rung.crossed.map(({ id }) => id),
  };
}

/** The slowest speed for each need; null while there is no pump to run. */
export function ladderAnswer(model: PadModel) {
  return model.ladder?.map((rung) => rungAnswer(rung, model)) ?? null;
}
