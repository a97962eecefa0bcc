import { darcyWeisbach, smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { flowAtReynolds, flowAtVelocity, meanVelocity, pipeSize } from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { readGiven } from '#units/given.ts';

function bore(given: ValueProps): number {
  return pipeSize(given['pipe'] ?? '').bore;
}

function lossOver(given: ValueProps, flow: number): number {
  return darcyWeisbach({
    flow,
    bore: bore(given),
    length: readGiven('length', given['length']),
    roughness: smoothPlasticRoughness,
    kinematicViscosity: water(readGiven('temperature', given['temperature'])).kinematicViscosity,
  });
}

/** Water in pipes. */
export const makers = {
  bore: (given) => ({ quantity: 'diameter', value: bore(given) }),
  flowAtVelocity: (given) => ({
    quantity: 'flow',
    value: flowAtVelocity(readGiven('velocity', given['velocity']), bore(given)),
  }),
  velocity: (given) => ({
    quantity: 'velocity',
    value: meanVelocity(readGiven('flow', given['flow']), bore(given)),
  }),
  flowAtReynolds: (given) => ({
    quantity: 'flow',
    value: flowAtReynolds(
      Number(given['reynolds']),
      bore(given),
      water(readGiven('temperature', given['temperature'])).kinematicViscosity,
    ),
  }),
  frictionLoss: (given) => ({
    quantity: 'head',
    value: lossOver(given, readGiven('flow', given['flow'])),
  }),
  frictionLossAtVelocity: (given) => ({
    quantity: 'head',
    value: lossOver(given, flowAtVelocity(readGiven('velocity', given['velocity']), bore(given))),
  }),
} as const satisfies ValueMakers;
