/**
 * The steps of the capstone, worked out by the core where the page is built, in either system of
 * units. Each is a question with one number; each slip is what a known thought would give.
 */
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import {
  energyStep,
  hoursStep,
  oldPriceStep,
  powerStep,
  priceStep,
  waterStep,
} from './stepsOfTheDay.ts';
import { flowStep, headStep, speedSteps, velocityStep } from './stepsOfWater.ts';
import { type Asked, type CapstoneStep, type Worked, workCapstone } from './worked.ts';

/** The steps in the reader's units. */
export function capstoneSteps(units: UnitChoice, worked: Worked = workCapstone()): CapstoneStep[] {
  const asked = [
    headStep(units, worked),
    flowStep(units, worked),
    velocityStep(units, worked),
    ...speedSteps(units, worked),
    powerStep(units, worked),
    hoursStep(worked),
    waterStep(units, worked),
    energyStep(units, worked),
    oldPriceStep(worked),
    priceStep(worked),
  ];
  return asked.map((step) => ({
    ...step,
    kind: 'number',
    shown: shownAnswer(step, units, worked),
  }));
}

function shownAnswer(step: Asked, units: UnitChoice, { pad }: Worked): string {
  const { quantity, answer, unit = '' } = step;
  if (quantity !== null) return format(quantity, answer, units, { digits: 3 });
  return unit === pad.tariff.currency
    ? formatMoney(answer, unit)
    : `${Number(answer.toFixed(2))} ${unit}`;
}
