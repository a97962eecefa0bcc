import {
  liquidDensity,
  liquidSpecificHeat,
  liquidViscosity,
  vapourPressure,
  type Water,
  water,
} from '#core/water.ts';
import type { Given } from '../given.ts';
import type { Family } from '../rule.ts';

const temperature = (given: Given): number => given.number('temperature');

/** Through the front door where it is open, by the bare formulas beyond it. */
function property(key: keyof Water, beyond: (celsius: number) => number) {
  return (given: Given): number => {
    const celsius = temperature(given);
    return celsius >= 0 && celsius <= 45 ? water(celsius)[key] : beyond(celsius);
  };
}

export const waterFamily: Family = {
  name: 'water',
  quantity: /density|viscosity|vapou?r pressure|water propert/i,
  rules: [
    {
      what: 'properties of water at a temperature',
      needs: ['temperature'],
      gives: {
        density: property('density', liquidDensity),
        dynamicViscosity: property('dynamicViscosity', liquidViscosity),
        kinematicViscosity: property(
          'kinematicViscosity',
          (celsius) => liquidViscosity(celsius) / liquidDensity(celsius),
        ),
        specificHeat: property('specificHeat', liquidSpecificHeat),
        vapourPressure: (given) => vapourPressure(temperature(given)),
      },
    },
  ],
};
