import { cubePower, wirePower } from '#core/pump/power.ts';
import { affinityFlow, affinityHead, affinityPower } from '#core/pump/pump.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { readGiven } from '#units/given.ts';

const speeds = (given: ValueProps) =>
  [readGiven('speed', given['from']), readGiven('speed', given['to'])] as const;

/** The pump and its power. */
export const makers = {
  affinityFlow: (given) => ({
    quantity: 'flow',
    value: affinityFlow(readGiven('flow', given['flow']), ...speeds(given)),
  }),
  affinityHead: (given) => ({
    quantity: 'head',
    value: affinityHead(readGiven('head', given['head']), ...speeds(given)),
  }),
  affinityPower: (given) => ({
    quantity: 'power',
    value: affinityPower(readGiven('power', given['power']), ...speeds(given)),
  }),
  wirePower: (given) => {
    const [from, to] = speeds(given);
    const power = cubePower({
      fixed: readGiven('power', given['fixed']),
      cube: readGiven('power', given['cube']),
    });
    return { quantity: 'power', value: wirePower(power, 0, to / from) };
  },
} as const satisfies ValueMakers;
