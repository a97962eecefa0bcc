import {
  boosterPoint,
  complianceDate,
  curveCHead,
  curveCPoint,
  energyFactor,
  freezeProtection,
  hydraulicHorsepower,
  leastWef,
  type PumpVariety,
  variableSpeedPoints,
  weightedEnergyFactor,
} from '#core/pump/energyFactor.ts';
import { type Given, NotUnderstood } from '../given.ts';
import { toCanonical } from '../keys.ts';
import { keyUnits } from '../keyUnits.ts';
import { evaluate } from '../polynomial.ts';
import type { Family } from '../rule.ts';
import { curveText } from './pumpText.ts';

/** The core's rule counts 1000 US gal per kWh, the same number as US gal per Wh. */
const thousandGallonsPerKilowattHour = 3.785411784e-3 / 3600;
const hour = 3600;
const mechanicalHorsepower = 550 * 0.3048 * 4.4482216152605;

const varieties: Readonly<Record<string, PumpVariety>> = {
  selfpriming: 'selfPriming',
  nonselfpriming: 'nonSelfPriming',
  pressurecleanerbooster: 'pressureCleanerBooster',
};

/** A case that names no variety means the common, self-priming one. */
function variety(given: Given): PumpVariety {
  if (!given.has('variety')) return 'selfPriming';
  const found =
    varieties[
      given
        .text('variety')
        .replace(/[^a-z]/g, '')
        .replace(/^(small|standard)size|(filter)?pump$/g, '')
        .replace(/^pool/, '')
    ];
  if (found === undefined) throw new NotUnderstood(`${given.text('variety')} is not a variety`);
  return found;
}

const inSI = (wef: number | null) => (wef === null ? null : wef * thousandGallonsPerKilowattHour);

function horsepower(given: Given): number {
  // The booster's least value is the same at every size.
  if (variety(given) === 'pressureCleanerBooster') return 1;
  const stated = given.maybe('hydraulicHorsepower');
  return stated ?? given.number('hydraulicPower') / mechanicalHorsepower;
}

const least = (given: Given) => inSI(leastWef(variety(given), horsepower(given)));

function top(given: Given) {
  const coefficients = curveText(given, 'pumpHead');
  return curveCPoint((flow) => evaluate(coefficients, flow));
}

function topHorsepower(given: Given): number {
  return top(given).hydraulicHorsepower;
}

function rated(given: Given) {
  const { flow, hydraulicHorsepower: horsepowerThere } = top(given);
  return variableSpeedPoints(flow, horsepowerThere);
}

function variableWef(given: Given): number {
  const { low, high } = rated(given);
  return weightedEnergyFactor([
    { ...low, power: given.number('powerLow') },
    { ...high, power: given.number('powerHigh') },
  ]);
}

function topLeast(given: Given): number | null {
  return leastWef(variety(given), topHorsepower(given));
}

function passes(wef: (given: Given) => number) {
  return (given: Given): boolean => {
    const needed = topLeast(given);
    if (needed === null) throw new NotUnderstood('the class has no least value at this size');
    return wef(given) >= needed;
  };
}

function singleWef(given: Given): number {
  return weightedEnergyFactor([{ flow: top(given).flow, power: given.number('power'), weight: 1 }]);
}

/** Any number of load points, each with its own weight. */
function weightedSum(given: Given): number {
  const indices = [1, 2, 3, 4, 5, 6].filter((index) => given.has(`weight#${index}`));
  return weightedEnergyFactor(
    indices.map((index) => ({
      flow: given.number(`flow#${index}`),
      power: given.number(`power#${index}`),
      weight: given.number(`weight#${index}`),
    })),
  );
}

function onePoint(given: Given): number {
  return weightedEnergyFactor([
    { flow: given.maybe('flow') ?? boosterPoint.flow, power: given.number('power'), weight: 1 },
  ]);
}

/** The rule's own weights for a pump that can run at two speeds or more. */
const ruleWeights = { low: 0.8, high: 0.2 };

function lowAndHigh(given: Given): number {
  return weightedEnergyFactor([
    {
      flow: given.number('flowLow'),
      power: given.number('powerLow'),
      weight: ruleWeights.low,
    },
    {
      flow: given.number('flowHigh'),
      power: given.number('powerHigh'),
      weight: ruleWeights.high,
    },
  ]);
}

function listedSum(given: Given): number {
  return weightedEnergyFactor(
    given.list('points').map((each) => {
      const inner = given.inside(each, ['name', 'flow', 'power', 'weight']);
      return {
        flow: inner.number('flow'),
        power: inner.number('power'),
        weight: inner.number('weight'),
      };
    }),
  );
}

const statedWef = (given: Given): number => given.number('wef');

type Wef = (given: Given) => number | null;

function passesBy(wef: Wef, needed: Wef) {
  return (given: Given): boolean | null => {
    const [has, must] = [wef(given), needed(given)];
    return has === null || must === null ? null : has >= must;
  };
}

function marginOver(wef: Wef, needed: Wef) {
  return (given: Given): number | null => {
    const [has, must] = [wef(given), needed(given)];
    return has === null || must === null ? null : has / must - 1;
  };
}

const fahrenheit = (degrees: number): number => {
  const unit = keyUnits.get('f');
  if (unit === undefined) throw new RangeError('f is no unit');
  return toCanonical(degrees, unit);
};

const isParagraph = (letter: string) => (given: Given) =>
  given.text('paragraph').endsWith(`431.465(${letter})`);

export const energyFactorFamily: Family = {
  name: 'energy factor',
  quantity: /energy factor/i,
  rules: [
    {
      what: 'least weighted energy factor of a class',
      needs: ['variety', 'hydraulicHorsepower|hydraulicPower'],
      gives: { wef: least, leastWef: least },
    },
    {
      what: 'least weighted energy factor of a booster',
      needs: ['variety'],
      gives: { wef: least, leastWef: least },
      when: (given) => variety(given) === 'pressureCleanerBooster',
    },
    {
      what: 'whether a weighted energy factor passes',
      needs: ['variety', 'hydraulicHorsepower|hydraulicPower', 'wef'],
      gives: {
        leastWef: least,
        passes: passesBy(statedWef, least),
        margin: marginOver(statedWef, least),
      },
    },
    {
      what: 'a booster at its one point',
      needs: ['variety', 'power'],
      takes: ['flow'],
      gives: {
        wef: (given) => inSI(onePoint(given)),
        leastWef: least,
        passes: passesBy((given) => inSI(onePoint(given)) ?? 0, least),
        margin: marginOver((given) => inSI(onePoint(given)) ?? 0, least),
      },
      when: (given) => variety(given) === 'pressureCleanerBooster',
    },
    {
      what: 'a booster at the point of the rule',
      needs: ['power'],
      gives: { wef: (given) => inSI(onePoint(given)) },
      when: (given) => /booster/i.test(given.what),
      ownFamilyOnly: true,
    },
    {
      what: 'weighted energy factor of two stated points',
      needs: ['flowLow', 'flowHigh', 'powerLow', 'powerHigh'],
      gives: { wef: (given) => inSI(lowAndHigh(given)) },
    },
    {
      what: 'weighted energy factor of listed points',
      needs: ['points'],
      gives: { wef: (given) => inSI(listedSum(given)) },
      ownFamilyOnly: true,
    },
    {
      what: 'freeze protection as shipped',
      needs: ['paragraph'],
      gives: {
        airTemperature: () => fahrenheit(freezeProtection.airTemperatureF),
        runTime: () => freezeProtection.runTimeHours * hour,
        speedRatio: () => freezeProtection.speedRatio,
      },
      when: isParagraph('h'),
    },
    {
      what: 'compliance date',
      needs: ['paragraph'],
      gives: { date: () => complianceDate },
      when: (given) => ['f', 'g', 'h'].some((letter) => isParagraph(letter)(given)),
    },
    {
      what: 'energy factor of a point',
      needs: ['flow', 'power'],
      gives: {
        energyFactor: (given) => inSI(energyFactor(given.number('flow'), given.number('power'))),
        wef: (given) => inSI(onePoint(given)),
      },
    },
    {
      what: 'weighted energy factor of given points',
      needs: ['flow#1', 'power#1', 'weight#1'],
      takes: ['flow', 'power', 'weight'],
      gives: { wef: (given) => inSI(weightedSum(given)) },
    },
    {
      what: 'hydraulic horsepower',
      needs: ['flow', 'head'],
      takes: ['divisor'],
      gives: {
        hydraulicHorsepower: (given) =>
          hydraulicHorsepower(given.number('flow'), given.number('head'), given.maybe('divisor')),
      },
    },
    {
      what: 'system curve C',
      needs: ['flow'],
      gives: { head: (given) => curveCHead(given.number('flow')) },
      ownFamilyOnly: true,
    },
    {
      what: 'single-speed pump on curve C',
      needs: ['pumpHead'],
      takes: ['power', 'variety'],
      gives: {
        flow: (given) => top(given).flow,
        head: (given) => top(given).head,
        hydraulicHorsepower: topHorsepower,
        wef: (given) => inSI(singleWef(given)),
        leastWef: (given) => inSI(topLeast(given)),
        passes: passes(singleWef),
      },
      ownFamilyOnly: true,
    },
    {
      what: 'variable-speed pump on curve C',
      needs: ['pumpHead', 'powerLow', 'powerHigh'],
      takes: ['variety'],
      gives: {
        flow: (given) => top(given).flow,
        head: (given) => top(given).head,
        flowLow: (given) => rated(given).low.flow,
        headLow: (given) => rated(given).low.head,
        flowHigh: (given) => rated(given).high.flow,
        headHigh: (given) => rated(given).high.head,
        hydraulicHorsepower: topHorsepower,
        wef: (given) => inSI(variableWef(given)),
        leastWef: (given) => inSI(topLeast(given)),
        passes: passes(variableWef),
      },
      ownFamilyOnly: true,
    },
  ],
};
