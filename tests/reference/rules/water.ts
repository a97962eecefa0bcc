import { standardGravity } from '#core/base/constants.ts';
import { pressureHead } from '#core/fit/gauges.ts';
import {
  liquidDensity,
  liquidSpecificHeat,
  liquidViscosity,
  vapourPressure,
  type Water,
  water,
} from '#core/water/water.ts';
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

/** The core's water is that of an open pool, at 0.1 MPa. */
const isOpenWater = (given: Given): boolean =>
  !given.has('pressure') || Math.abs(given.number('pressure') - 1e5) < 2e3;

export const waterFamily: Family = {
  name: 'water',
  quantity: /density|viscosity|vapou?r pressure|water propert/i,
  rules: [
    {
      what: 'properties of water at a temperature',
      needs: ['temperature'],
      takes: ['pressure'],
      when: isOpenWater,
      gives: {
        density: property('density', liquidDensity),
        dynamicViscosity: property('dynamicViscosity', liquidViscosity),
        kinematicViscosity: property(
          'kinematicViscosity',
          (celsius) => liquidViscosity(celsius) / liquidDensity(celsius),
        ),
        specificHeat: property('specificHeat', liquidSpecificHeat),
        vapourPressure: (given) => vapourPressure(temperature(given)),
        vapourHead: (given) =>
          pressureHead(vapourPressure(temperature(given)), liquidDensity(temperature(given))),
        specificWeight: (given) => liquidDensity(temperature(given)) * standardGravity,
        specificGravity: (given) => liquidDensity(temperature(given)) / 1000,
      },
    },
    {
      what: 'weight and relative density',
      needs: ['density'],
      gives: {
        specificGravity: (given) => given.number('density') / 1000,
        specificWeight: (given) => given.number('density') * standardGravity,
      },
    },
    {
      what: 'density of a relative density',
      needs: ['specificGravity'],
      gives: {
        density: (given) => given.number('specificGravity') * 1000,
        specificWeight: (given) => given.number('specificGravity') * 1000 * standardGravity,
      },
    },
    {
      what: 'kinematic viscosity',
      needs: ['dynamicViscosity', 'density'],
      gives: {
        kinematicViscosity: (given) => given.number('dynamicViscosity') / given.number('density'),
      },
    },
  ],
};
