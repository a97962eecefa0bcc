/**
 * The lessons' invented pump and prices, worked out where the page is built: the page carries a list
 * of running points and not the hydraulics.
 */
import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { operatingStateAt } from '#explorables/example/machine.ts';
import { exampleTariff } from '#explorables/example/tariff.ts';
import { yearStep } from './model.ts';
import type { CarriedYear } from './place.ts';

const { leastSpeed, topSpeed } = exampleMachine;

/** Every speed that can be set, and half of the top speed, at which frost is run through. */
const speeds = [
  ...Array.from(
    { length: Math.floor((topSpeed - leastSpeed) / yearStep) + 1 },
    (_, step) => leastSpeed + step * yearStep,
  ),
  topSpeed / 2,
];

export const carriedYear: CarriedYear = {
  points: speeds.map((speed) => {
    const { flow, power } = operatingStateAt(exampleMachine, speed);
    return [speed, Number(flow.toPrecision(8)), Number(power.toPrecision(8))];
  }),
  tariff: exampleTariff,
  year: 2027,
};
