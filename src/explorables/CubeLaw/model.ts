import { computed, createModel, signal } from '@preact/signals';
import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { bestMileageRatio, wirePower } from '#core/pump/power.ts';
import * as demo from '#explorables/example/demo.ts';
import { evenly } from '#ui/charts/path.ts';
import { createNumberControl } from '#ui/controls/numberControl.ts';
import { type UnitChoice, us } from '#units/choice.ts';

/** What one speed gives, and what it costs. */
export interface SpeedPoint {
  /** [rpm] */
  readonly speed: number;
  /** Speed over rated speed. */
  readonly ratio: number;
  /** [m3/s] */
  readonly flow: number;
  /** Power at the wire [W]. */
  readonly power: number;
  /** Water moved for the energy [m3/J]. */
  readonly mileage: number;
  /** Time to move the pool's volume once [s]. */
  readonly turnover: number;
  /** Price of moving the pool's volume once, in the demo currency. */
  readonly cost: number;
}

const circuit = compileCircuit(demo.demoCircuit);

/** Works one speed out. */
export function pointAt(speed: number): SpeedPoint {
  const ratio = speed / demo.speeds.rated;
  const point = operatingPoint(demo.demoCurve, circuit, ratio);
  const flow = point.kind === 'flowing' ? point.flow : 0;
  const power = wirePower(demo.demoPower, flow, ratio);
  const mileage = flow / power;
  const turnover = demo.poolVolume / flow;
  const cost = (demo.poolVolume / mileage / joulesPerKilowattHour) * demo.energyPrice;
  return { speed, ratio, flow, power, mileage, turnover, cost };
}

/** The pump at full speed, which everything is compared with. */
export const full: SpeedPoint = pointAt(demo.speeds.rated);

/** The whole range of speeds, close enough together for a smooth line. */
export const sweep: readonly SpeedPoint[] = evenly(demo.speeds.slowest, demo.speeds.rated, 58).map(
  pointAt,
);

/** The speed that moves the most water for the energy [rpm]; slower costs more for every litre. */
export const thriftiestSpeed =
  demo.speeds.rated * bestMileageRatio({ fixed: demo.fixedDraw, cube: demo.cubeDraw });

/** The home picture: one speed to set, and what follows from it. */
export const CubeLawModel = createModel(() => {
  const units = signal<UnitChoice>(us);
  const set = signal<number>(demo.speeds.opening);
  const { slowest, rated, step } = demo.speeds;
  const speed = createNumberControl({ value: set, min: slowest, max: rated, step });
  const here = computed(() => pointAt(set.value));
  const waterShare = computed(() => here.value.flow / full.flow);
  const powerShare = computed(() => here.value.power / full.power);
  const reset = () => speed.apply(demo.speeds.opening);
  return { units, speed, here, waterShare, powerShare, reset };
});

export type CubeLaw = InstanceType<typeof CubeLawModel>;
