import { standardGravity } from '#core/base/constants.ts';
import {
  colebrookWhite,
  darcyWeisbach,
  frictionFactor,
  laminarFriction,
} from '#core/hydraulics/friction.ts';
import { type HazenWilliamsForm, hazenWilliams } from '#core/hydraulics/hazenWilliams.ts';
import { meanVelocity, reynoldsNumber } from '#core/hydraulics/pipe.ts';
import { liquidDensity } from '#core/water/water.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Family } from '../rule.ts';
import { pipesTogether } from './pipesTogether.ts';
import {
  boreInputs,
  boreNeed,
  boreOf,
  densityInputs,
  densityOf,
  viscosityInputs,
  viscosityOf,
} from './shared.ts';

type FrictionLaw = (reynolds: number, relativeRoughness: number) => number;

const laws: Readonly<Record<string, FrictionLaw>> = {
  'colebrook-white': colebrookWhite,
  colebrook: colebrookWhite,
  'colebrook white': colebrookWhite,
  laminar: laminarFriction,
  'hagen-poiseuille': laminarFriction,
  poiseuille: laminarFriction,
  '64/re': laminarFriction,
  measured: frictionFactor,
};

function frictionLaw(given: Given): FrictionLaw {
  const law = given.has('law') ? laws[given.text('law')] : frictionFactor;
  if (law === undefined) throw new NotUnderstood(`the law ${given.text('law')} is not in the core`);
  return law;
}

function relativeRoughness(given: Given): number {
  if (given.has('relativeRoughness')) return given.number('relativeRoughness');
  return given.has('roughness') ? given.number('roughness') / boreOf(given) : 0;
}

function velocity(given: Given): number {
  return given.maybe('velocity') ?? meanVelocity(given.number('flow'), boreOf(given));
}

function reynolds(given: Given): number {
  return reynoldsNumber(velocity(given), boreOf(given), viscosityOf(given));
}

const metresUnlessGiven = (given: Given): number =>
  given.has('length') ? given.number('length') + (given.maybe('equivalentLength') ?? 0) : 1;

function flow(given: Given): number {
  const bore = boreOf(given);
  return given.maybe('flow') ?? (given.number('velocity') * Math.PI * bore ** 2) / 4;
}

function darcyLoss(given: Given): number {
  return darcyWeisbach({
    flow: flow(given),
    bore: boreOf(given),
    length: metresUnlessGiven(given),
    roughness: relativeRoughness(given) * boreOf(given),
    kinematicViscosity: viscosityOf(given),
  });
}

/** The forms by the name of the law or of its leading constant; "any" leaves the choice to us. */
const hazenForms: Readonly<Record<string, HazenWilliamsForm>> = {
  si: 'si',
  '10.67': 'si',
  rational: 'rational',
  '1.318': 'rational',
  '0.2083': 'gpm',
  gpm: 'gpm',
  any: 'si',
};

/** The law may be named where it is the one meant. */
const isDarcy = (given: Given): boolean =>
  ['form', 'law'].every((id) => !given.has(id) || /darcy/.test(given.text(id)));

function hazenLoss(given: Given): number {
  const form = given.has('form') ? hazenForms[given.text('form')] : 'si';
  if (form === undefined) throw new NotUnderstood(`the form ${given.text('form')} is not known`);
  return hazenWilliams(
    {
      flow: flow(given),
      bore: boreOf(given),
      length: metresUnlessGiven(given),
      c: given.number('hazenC'),
    },
    form,
  );
}

function perLength(loss: (given: Given) => number) {
  return (given: Given): number => loss(given) / metresUnlessGiven(given);
}

function overLength(loss: (given: Given) => number) {
  return (given: Given): number => {
    if (!given.has('length')) throw new NotUnderstood('no length is given');
    return loss(given);
  };
}

const factorAt = (given: Given): number =>
  frictionLaw(given)(given.number('reynolds'), relativeRoughness(given));

const pressurePerLength = (loss: (given: Given) => number) => (given: Given) =>
  perLength(loss)(given) * densityFor(given) * standardGravity;

/** Cold water where the case says nothing: its law has no property of water in it. */
const densityFor = (given: Given): number =>
  given.has('density') || given.has('temperature') ? densityOf(given) : liquidDensity(15.6);

export const frictionFactorFamily: Family = {
  name: 'friction factor',
  quantity: /friction factor/i,
  rules: [
    {
      what: 'friction factor',
      needs: ['reynolds'],
      takes: ['relativeRoughness', 'roughness', 'bore', 'law'],
      gives: { frictionFactor: factorAt, fanningFactor: (given) => factorAt(given) / 4 },
      when: (given) => !given.has('roughness') || given.has('bore'),
    },
  ],
};

export const frictionLossFamily: Family = {
  name: 'friction loss',
  quantity: /head loss per|friction loss|pipe loss|loss of pipe/i,
  rules: [
    pipesTogether,
    {
      what: 'Darcy-Weisbach',
      needs: [
        'flow|velocity',
        boreNeed,
        'roughness|relativeRoughness',
        'kinematicViscosity|dynamicViscosity|temperature',
      ],
      takes: [...boreInputs, ...viscosityInputs, 'length', 'equivalentLength', 'form', 'law'],
      when: isDarcy,
      gives: {
        headGradient: perLength(darcyLoss),
        headLoss: overLength(darcyLoss),
        pressureLoss: (given) => overLength(darcyLoss)(given) * densityOf(given) * standardGravity,
        pressureGradient: (given) =>
          perLength(darcyLoss)(given) * densityOf(given) * standardGravity,
        velocityHead: (given) => velocity(given) ** 2 / (2 * standardGravity),
        velocity,
        reynolds,
        frictionFactor: (given) => frictionFactor(reynolds(given), relativeRoughness(given)),
      },
    },
    {
      what: 'Hazen-Williams',
      needs: ['flow|velocity', boreNeed, 'hazenC'],
      takes: [...boreInputs, 'form', 'length', 'equivalentLength', 'density', 'temperature'],
      gives: {
        headGradient: perLength(hazenLoss),
        headLoss: overLength(hazenLoss),
        pressureGradient: pressurePerLength(hazenLoss),
        pressureLoss: (given) => overLength(hazenLoss)(given) * densityFor(given) * standardGravity,
        velocity,
      },
    },
    {
      what: 'loss of a length at a gradient',
      needs: ['headGradient', 'length'],
      takes: [...densityInputs, 'equivalentLength'],
      gives: {
        headLoss: (given) => given.number('headGradient') * metresUnlessGiven(given),
        pressureLoss: (given) =>
          given.number('headGradient') *
          given.number('length') *
          densityOf(given) *
          standardGravity,
      },
    },
    {
      what: 'pressure lost over a length at a gradient',
      needs: ['pressureGradient', 'length'],
      takes: [...densityInputs, 'equivalentLength'],
      gives: {
        pressureLoss: (given) => given.number('pressureGradient') * metresUnlessGiven(given),
        headLoss: (given) =>
          (given.number('pressureGradient') * metresUnlessGiven(given)) /
          (densityOf(given) * standardGravity),
      },
    },
    {
      what: 'one gradient as the other',
      needs: ['headGradient|pressureGradient', 'density|temperature'],
      takes: densityInputs,
      gives: {
        pressureGradient: (given) =>
          given.number('headGradient') * densityOf(given) * standardGravity,
        headGradient: (given) =>
          given.number('pressureGradient') / (densityOf(given) * standardGravity),
      },
    },
  ],
};
