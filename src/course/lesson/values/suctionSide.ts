import { pressureHead } from '#core/fit/gauges.ts';
import {
  atmosphericPressure,
  geopotentialAltitude,
  npshAvailable,
  npshMargin,
} from '#core/pump/npsh.ts';
import { water } from '#core/water/water.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { readGiven } from '#units/given.ts';

const airAt = (given: ValueProps) =>
  atmosphericPressure(geopotentialAltitude(readGiven('length', given['altitude'])));

const waterAt = (given: ValueProps) => water(readGiven('temperature', given['temperature']));

function available(given: ValueProps): number {
  return npshAvailable({
    atmosphere: airAt(given),
    water: waterAt(given),
    surfaceAbovePump: -readGiven('head', given['lift']),
    suctionLoss: readGiven('head', given['loss']),
  });
}

/** Air, boiling and what is left of both at the pump. */
export const makers = {
  airPressure: (given) => ({ quantity: 'pressure', value: airAt(given) }),
  airHead: (given) => ({
    quantity: 'head',
    value: pressureHead(airAt(given), waterAt(given).density),
  }),
  boilingHead: (given) => {
    const { vapourPressure, density } = waterAt(given);
    return { quantity: 'head', value: pressureHead(vapourPressure, density) };
  },
  npshAvailable: (given) => ({ quantity: 'head', value: available(given) }),
  suctionMargin: (given) => ({
    quantity: 'head',
    value: npshMargin(available(given), readGiven('head', given['required'])),
  }),
} as const satisfies ValueMakers;
