/**
 * The state of a pad in which it moves the most water: filters clean, throttling valves open, and
 * the flow at the upper end of what the readings leave open. A stop must hold there, whatever the
 * filter and the valves are like today.
 */

import { flowSlack } from '#core/day/dayReport.ts';
import { greatestRatioWithin, type Limit } from '#core/day/limits.ts';
import type { PadFit, SettledPad } from '#core/fit/padEvidence.ts';
import { changedParts } from '#core/fit/resistance.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { type CompiledCircuit, compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { type OperatingPoint, operatingPoint } from '#core/pump/operatingPoint.ts';
import type { Pad, Plumbing, Section } from '#pad/document/schema.ts';
import type { Path } from '#pad/messages/path.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';
import { circuitWithLoading } from './changedCircuit.ts';
import type { PumpSpeeds } from './heldSpeed.ts';
import { heldSpeed } from './heldSpeed.ts';

/** Valves whose loss is stated, by id. */
function valvesIn(sections: readonly Section[]): readonly string[] {
  return sections.flatMap((section) => {
    if (section.kind === 'parallel')
      return section.branches.flatMap((branch) => valvesIn(branch.sections));
    return section.kind === 'equipment' && section.equipment === 'valve' ? [section.id] : [];
  });
}

function opened(
  parts: readonly CircuitPart[],
  valves: ReadonlySet<string>,
): readonly CircuitPart[] {
  return parts.map((part) => {
    if (part.kind === 'parallel') {
      const branches = part.branches.map((branch) => ({
        ...branch,
        parts: opened(branch.parts, valves),
      }));
      return { ...part, branches };
    }
    return part.kind === 'equipment' && valves.has(part.id) ? { ...part, referenceHead: 0 } : part;
  });
}

/** The circuit with its filters clean and its throttling valves open. */
export function freestCircuit(circuit: Circuit, plumbing: Plumbing): Circuit {
  const clean = circuitWithLoading(circuit, plumbing, 0);
  const valves = new Set(valvesIn([...plumbing.suction, ...plumbing.discharge]));
  return changedParts(clean, (parts) => opened(parts, valves));
}

const flowOf = (point: OperatingPoint) => (point.kind === 'flowing' ? point.flow : 0);

/** The most water the pad may move at a speed ratio [m3/s], with a change of its circuit if there is one. */
export function greatestFlowAt(
  fit: Pick<PadFit, 'bandOf'>,
  plumbing: Plumbing,
  changed: (circuit: Circuit) => Circuit = (circuit) => circuit,
): (ratio: number) => number {
  // The pads about a fit are asked at many speeds, and their circuits stay as they are.
  const compiled = new WeakMap<SettledPad, CompiledCircuit>();
  const freest = (pad: SettledPad) => {
    const known =
      compiled.get(pad) ?? compileCircuit(freestCircuit(changed(pad.circuit), plumbing));
    compiled.set(pad, known);
    return known;
  };
  return (ratio) => fit.bandOf((pad) => flowOf(operatingPoint(pad.curve, freest(pad), ratio))).high;
}

/** Greatest speed ratio that keeps a limit even in that state; undefined where every speed does. */
export function ratioKeeping(
  { greatestFlow }: Limit,
  flowAt: (ratio: number) => number,
  speeds: PumpSpeeds,
): number | undefined {
  return greatestRatioWithin(flowAt, greatestFlow, speeds.top / speeds.reference);
}

/** The limits, each hard one with the speed that keeps it in that state. */
export function withStops(
  limits: readonly Limit[],
  flowAt: (ratio: number) => number,
  speeds: PumpSpeeds,
): readonly Limit[] {
  return limits.map((limit) => {
    if (!limit.hard) return limit;
    const greatestRatio = ratioKeeping(limit, flowAt, speeds);
    return greatestRatio === undefined ? limit : { ...limit, greatestRatio };
  });
}

/** Speeds that the pump runs at outside the day, each at the limit of its range as the pump would. */
function speedsOutside({ pump, year }: Pad): readonly OutsideSpeed[] {
  return [
    { code: 'primingTooFast', path: ['pump', 'primingSpeed'], speed: pump.primingSpeed },
    { code: 'overrideTooFast', path: ['pump', 'overrideSpeed'], speed: pump.overrideSpeed },
    { code: 'frostTooFast', path: ['year', 'frostSpeed'], speed: year.frostSpeed },
  ];
}

interface OutsideSpeed {
  readonly code: 'primingTooFast' | 'overrideTooFast' | 'frostTooFast';
  readonly path: Path;
  readonly speed: number | null;
}

/** Priming, override and freeze speeds that pass a hard stop: no plan is safe while one does. */
export function speedStops(
  pad: Pad,
  limits: readonly Limit[],
  speeds: PumpSpeeds | null,
): readonly Problem[] {
  if (speeds === null) return [];
  const stops = limits.flatMap(({ hard, greatestRatio }) =>
    hard && greatestRatio !== undefined ? [greatestRatio * speeds.reference] : [],
  );
  if (stops.length === 0) return [];
  const stop = Math.min(...stops);
  const rpm = (value: number) => ({ quantity: 'speed' as const, value });
  return speedsOutside(pad).flatMap(({ code, path, speed }) => {
    const found = heldSpeed(speed, speeds);
    if (found <= stop * (1 + flowSlack)) return [];
    return [problem(code, path, { found: rpm(found), stop: rpm(Math.floor(stop)) })];
  });
}
