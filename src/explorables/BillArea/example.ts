import type { Load } from './model.ts';

/** An invented pump, motor and price. */
export const exampleLoad: Load = {
  power: 1600,
  greatestPower: 2500,
  time: 8 * 3600,
  price: 0.2,
  currency: '$',
  voltage: 230,
  magnetising: 3.4,
};
