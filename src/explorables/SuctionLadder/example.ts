/**
 * An invented suction line: a pump that stands above its pool, drawing through one 2 in pipe. Every
 * figure is made up for teaching.
 */
import { smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { pipeSize } from '#core/hydraulics/pipe.ts';
import { toSI } from '#units/convert.ts';
import { foot, gallonPerMinute } from '#units/factors.ts';
import type { SuctionLine } from './model.ts';

const { bore } = pipeSize('sch40-2');

export const exampleLine: SuctionLine = {
  parts: [
    { kind: 'pipe', id: 'line', bore, length: 40 * foot, roughness: smoothPlasticRoughness },
    { kind: 'fitting', id: 'inlet-bends-valve', k: 4, bore },
    {
      kind: 'equipment',
      id: 'basket',
      referenceHead: 1 * foot,
      referenceFlow: 60 * gallonPerMinute,
      exponent: 2,
      factor: 1,
    },
  ],
  basketId: 'basket',
  // A line through invented points of a pump's own table: 6 ft at no flow, 11 ft at 80 gpm.
  required: (flow) => (6 + 5 * (flow / (80 * gallonPerMinute)) ** 2) * foot,
  opening: {
    altitude: 0,
    temperature: toSI('temperature', 82, 'degF'),
    lift: 3 * foot,
    flow: 60 * gallonPerMinute,
  },
  greatestFlow: 110 * gallonPerMinute,
};
