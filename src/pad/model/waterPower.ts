/** Wire power held against what the water takes up: no pump gives more than it draws. */
import { hydraulicPower } from '#core/pump/power.ts';
import type { Pad } from '#pad/document/schema.ts';
import type { Path } from '#pad/messages/path.ts';
import { type Problem, problem } from '#pad/messages/problems.ts';
import type { PumpSpeeds } from './heldSpeed.ts';
import type { RunningPad } from './runningPad.ts';

/** How many speeds are looked at from the slowest to the fastest. */
const looks = 16;

/** Place of the entry that lies nearest to a value. */
function nearest(values: readonly (number | null)[], wish: number): number {
  const off = (at: number) => Math.abs((values[at] ?? Number.POSITIVE_INFINITY) - wish);
  return values.reduce<number>((best, _, at) => (off(at) < off(best) ? at : best), 0);
}

/** The field that gives the watts at a flow of the reference speed and a speed [rpm]. */
function fieldOf({ pump, readings }: Pad, flow: number, speed: number): Path {
  const { knowledge } = pump;
  if (knowledge.kind !== 'nameplate') {
    const flows = knowledge.points.map((point) => (point.power === null ? null : point.flow));
    if (flows.filter((each) => each !== null).length > 1) {
      return ['pump', 'knowledge', 'points', nearest(flows, flow), 'power'];
    }
  }
  const read = readings.map((each) => (each.power === null ? null : each.speed));
  if (read.some((each) => each !== null)) return ['readings', nearest(read, speed), 'power'];
  return pump.efficiency === null ? ['pump'] : ['pump', 'efficiency'];
}

/** Where the water would take up more than the pump draws, at the speed where that is worst. */
export function waterPowerProblems(
  pad: Pad,
  running: RunningPad,
  { least, top, reference }: PumpSpeeds,
): readonly Problem[] {
  const ratios = Array.from(
    { length: looks + 1 },
    (_, at) => (least + ((top - least) * at) / looks) / reference,
  );
  const { density } = running.circuit.water;
  const found = running.sweep(ratios).flatMap((point) => {
    if (point.kind === 'noFlow') return [];
    const { ratio, flow, head } = point;
    const power = running.powerAt(ratio);
    const hydraulic = hydraulicPower(density, flow, Math.max(head, 0));
    return power < hydraulic * (1 - 1e-9) ? [{ ratio, flow, power, hydraulic }] : [];
  });
  const [worst] = found.sort((a, b) => b.hydraulic - b.power - (a.hydraulic - a.power));
  if (worst === undefined) return [];
  const speed = worst.ratio * reference;
  const watts = (value: number) => ({ quantity: 'power' as const, value });
  return [
    problem('powerBelowWater', fieldOf(pad, worst.flow / worst.ratio, speed), {
      speed: { quantity: 'speed', value: speed },
      power: watts(worst.power),
      hydraulic: watts(worst.hydraulic),
    }),
  ];
}
