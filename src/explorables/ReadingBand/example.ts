/** An invented pad that somebody has read at four speeds. Every figure is made up. */

import { speeds } from '#explorables/example/demo.ts';
import { psi } from '#units/factors.ts';
import type { Chosen, NoteLine, NotePad } from './pad.ts';

const line = (speed: number, power: number, pounds: number): NoteLine => ({
  id: `at-${speed}`,
  speed,
  power,
  pressure: pounds * psi,
});

export const examplePad: NotePad = {
  speeds: { least: speeds.slowest, top: speeds.rated },
  lines: [
    line(3450, 1990, 22.5),
    line(2800, 1105, 14.5),
    line(1900, 430, 6.5),
    line(900, 142, 1.5),
  ],
};

/** The figure that is written down wrong on demand: the watts at 1900 rpm, 430 as 340. */
export const slipped = { id: 'at-1900', power: 340 } as const;

/** The page opens with the two fastest lines. */
export const openingChoice: Chosen = { ids: ['at-3450', 'at-2800'], gauges: true, slip: false };
