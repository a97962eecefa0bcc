import { gallon, gallonPerMinute } from '#units/factors.ts';
import type { Settings } from './model.ts';

/** An invented pool that one turnover takes eight hours in. */
export const examplePool: Settings = {
  volume: 19_200 * gallon,
  flow: 40 * gallonPerMinute,
  time: 8 * 3600,
};
