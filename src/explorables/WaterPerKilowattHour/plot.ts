import { joulesPerKilowattHour } from '#core/base/constants.ts';
import type { Side } from '#ui/charts/Frame.tsx';
import { type Placement, placeLabels, type Spot } from '#ui/charts/labels.ts';
import { evenly, linePath, type Point } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction } from '#ui/charts/scale.ts';
import { asked, bestStep, startSpeed, sweep } from './mileage.ts';
import { greatestFixed, type WaterModel } from './model.ts';

/** The axes; they stand still while the speed, the fixed draw and the lift change. */
export interface Sides {
  readonly speed: Side;
  readonly water: Side;
  readonly power: Side;
}

const pointsOnLine = 90;

export function sidesOf(model: WaterModel): Sides {
  const setup = model.setup.value;
  const units = model.units.value;
  const { power, circuit, topSpeed } = setup;
  const asItComes = bestStep(asked(setup, Math.max(power.fixed, 30), circuit.staticHead));
  const most = (asItComes?.mileage ?? 1e-6) * joulesPerKilowattHour;
  const watts = 2 * Math.max(greatestFixed, power.fixed);
  return {
    speed: quantitySide('Speed', 'speed', units, { max: topSpeed }),
    water: quantitySide('Water for a kilowatt-hour', 'volume', units, { max: 1.4 * most }),
    power: quantitySide('Wire power, lowest part', 'power', units, { max: watts, count: 4 }),
  };
}

/** What is drawn at one setting. */
export interface Drawn {
  readonly water: string;
  readonly plainWater: string;
  readonly power: string;
  readonly plainPower: string;
  readonly waterLabel: Placement | undefined;
  readonly plainLabel: Placement | undefined;
}

/** Leaves out what lies above the paper. */
function within(points: readonly Point[], greatest: number): Point[] {
  return points.map(({ x, y }) => ({ x, y: y !== undefined && y <= greatest ? y : undefined }));
}

export function drawnOf(model: WaterModel, sides: Sides): Drawn {
  const { topSpeed } = model.setup.value;
  const one = model.asked.value;
  const plain = model.plain.value;
  const x = sides.speed.axis;
  const least = Math.max(startSpeed(one), topSpeed / pointsOnLine);
  // Where the top speed does not lift the water, there is only the line along the bottom.
  const from = Math.min(least, topSpeed);
  const steps = sweep(one, evenly(from, topSpeed, pointsOnLine));
  const slow = sweep(one, evenly(0, topSpeed, pointsOnLine));
  const speeds = evenly(topSpeed / pointsOnLine, topSpeed, pointsOnLine);
  const line = (points: readonly Point[], side: Side) =>
    linePath(within(points, side.axis.max), x, side.axis);
  const water = steps.map(({ speed, mileage }) => ({
    x: speed,
    y: mileage * joulesPerKilowattHour,
  }));
  const plainWater = speeds.map((speed) => ({
    x: speed,
    y: plain.mileageAt(speed) * joulesPerKilowattHour,
  }));
  const spots = (points: readonly Point[]): Spot[] =>
    within(points, sides.water.axis.max)
      .filter(({ y }) => y !== undefined)
      .map((point) => ({
        x: fraction(x, point.x),
        y: 1 - fraction(sides.water.axis, point.y ?? 0),
      }));
  // Clear of the knob of the lift, which stands where the water starts.
  const knob = Math.min(fraction(x, startSpeed(one)), 1);
  const [plainLabel, waterLabel] = placeLabels(
    [
      { line: spots(plainWater), width: 0.34, height: 0.08, wish: 0.45 },
      { line: spots(water), width: 0.34, height: 0.08, wish: 0.3 },
    ],
    [{ left: knob - 0.08, right: knob + 0.08, top: 0.85, bottom: 1 }],
  );
  return {
    water: line(water, sides.water),
    plainWater: line(plainWater, sides.water),
    power: line(
      slow.map(({ speed, power }) => ({ x: speed, y: power })),
      sides.power,
    ),
    plainPower: line(
      speeds.map((speed) => ({ x: speed, y: plain.powerAt(speed) })),
      sides.power,
    ),
    waterLabel,
    plainLabel,
  };
}
