import { isUnitOf, type Quantity, type UnitOf, unitsOf } from '#units/quantities.ts';
import type { LessonValue, ValueMakers, ValueProps } from './value.ts';
import { makers as day } from './values/day.ts';
import { makers as filter } from './values/filter.ts';
import { makers as filterYears } from './values/filterYears.ts';
import { makers as head } from './values/head.ts';
import { makers as needs } from './values/needs.ts';
import { makers as operatingPoint } from './values/operatingPoint.ts';
import { makers as poolWater } from './values/poolWater.ts';
import { makers as prices } from './values/prices.ts';
import { makers as pump } from './values/pump.ts';
import { makers as readings } from './values/readings.ts';
import { makers as suctionSide } from './values/suctionSide.ts';
import { makers as water } from './values/water.ts';
import { makers as wattsAndKilowattHours } from './values/wattsAndKilowattHours.ts';
import { makers as whereTheCubeStops } from './values/whereTheCubeStops.ts';

/** Every figure a lesson may ask for, by name; one file a subject. */
const makers: ValueMakers = {
  ...water,
  ...head,
  ...prices,
  ...pump,
  ...suctionSide,
  ...day,
  ...operatingPoint,
  ...filter,
  ...filterYears,
  ...readings,
  ...whereTheCubeStops,
  ...poolWater,
  ...wattsAndKilowattHours,
  ...needs,
};

/** Works out one figure of a lesson from the core. */
export function lessonValue(name: string, given: ValueProps): LessonValue {
  const make = Object.hasOwn(makers, name) ? makers[name] : undefined;
  if (make === undefined) {
    throw new Error(`No figure is called "${name}"; there are ${Object.keys(makers).join(', ')}.`);
  }
  const found = make(given);
  if (!Number.isFinite(found.value)) throw new Error(`The figure "${name}" has no value here.`);
  return found;
}

/** The units a lesson may show a figure in, checked against what the figure is. */
export function shownUnits(quantity: Quantity, units: string): UnitOf[] {
  return units.split('|').map((unit) => {
    if (!isUnitOf(quantity, unit)) {
      throw new Error(`${unit} is no unit of ${quantity}; it has ${unitsOf(quantity).join(', ')}.`);
    }
    return unit;
  });
}
