import { darcyWeisbach, smoothPlasticRoughness } from '#core/friction.ts';
import { flowAtReynolds, flowAtVelocity, meanVelocity, pipeSize } from '#core/pipe.ts';
import { cubePower, wirePower } from '#core/power.ts';
import { affinityFlow, affinityHead, affinityPower } from '#core/pump.ts';
import { water } from '#core/water.ts';
import { readGiven } from '#units/given.ts';
import { isUnitOf, type Quantity, type UnitOf, unitsOf } from '#units/quantities.ts';

/** What a lesson writes: plain texts, a quantity as number and unit ("6 ft/s", "28 degC"). */
export type ValueProps = Readonly<Record<string, string>>;

/** A worked-out value, stored as the core has it. */
export interface LessonValue {
  readonly quantity: Quantity;
  readonly value: number;
}

function bore(given: ValueProps): number {
  return pipeSize(given['pipe'] ?? '').bore;
}

const speeds = (given: ValueProps) =>
  [readGiven('speed', given['from']), readGiven('speed', given['to'])] as const;

function lossOver(given: ValueProps, flow: number): number {
  return darcyWeisbach({
    flow,
    bore: bore(given),
    length: readGiven('length', given['length']),
    roughness: smoothPlasticRoughness,
    kinematicViscosity: water(readGiven('temperature', given['temperature'])).kinematicViscosity,
  });
}

const makers = {
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
} as const satisfies Record<string, (given: ValueProps) => LessonValue>;

export type ValueName = keyof typeof makers;

/** Works out one figure of a lesson from the core. */
export function lessonValue(name: string, given: ValueProps): LessonValue {
  const make = Object.hasOwn(makers, name) ? makers[name as ValueName] : undefined;
  if (make === undefined) {
    throw new Error(`No figure is called "${name}"; there are ${Object.keys(makers).join(', ')}.`);
  }
  return make(given);
}

/** The units a lesson may show a figure in, checked against what the figure is. */
export function shownUnits(quantity: Quantity, units: string): UnitOf[] {
  return units.split('|').map((unit) => {
    if (!isUnitOf(quantity, unit)) {
      throw new Error(`${unit} is no unit of ${quantity}; it has ${unitsOf(quantity).join(', ')}.`);
    }
    return unit;
  });
}
