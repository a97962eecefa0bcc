import { columnPressure, pressureHead, totalDynamicHead } from '#core/fit/gauges.ts';
import { liquidDensity } from '#core/water/water.ts';
import { type Given, NotUnderstood } from '../given.ts';
import { fromCanonical, type Key, toCanonical } from '../keys.ts';
import { type KeyUnit, keyUnits } from '../keyUnits.ts';
import type { Family } from '../rule.ts';
import { densityInputs, densityOf } from './shared.ts';

const foot = 0.3048;
const tradeFeetPerPsi = 2.31;
const tradeFeetPerInchOfMercury = 1.13;

function reading(given: Given): number {
  return given.maybe('pressure') ?? given.number('vacuum');
}

/** The density given, or that of water at the temperature named in the key: `head_ft_at_4_c`. */
function densityFor(given: Given, key: Key): number {
  return key.at === undefined ? densityOf(given) : liquidDensity(key.at);
}

function unitCalled(spelling: string): KeyUnit {
  const unit = keyUnits.get(spelling);
  if (unit === undefined) throw new RangeError(`${spelling} is no unit`);
  return unit;
}

/** The trade's rounded factor times the reading in the unit the factor is for. */
function headByFactor(given: Given): number {
  const key = given.key('pressure') ?? given.key('vacuum');
  if (key === undefined) throw new NotUnderstood('there is no reading');
  // Feet to a psi or an inch of mercury; metres to a bar or a kilopascal.
  const isTrade = [unitCalled('psi'), unitCalled('inhg')].includes(key.unit);
  const size = given.expectedUnit('head')?.factor ?? (isTrade ? foot : 1);
  return fromCanonical(reading(given), key.unit) * given.number('factor') * size;
}

/** A gauge on the suction side that shows pressure shows a vacuum below nothing. */
const suctionVacuum = (given: Given): number =>
  given.maybe('vacuum') ?? -given.number('suctionPressure');

const difference = (given: Given): number =>
  given.number('inletPressure') - given.number('outletPressure');

/** 0.433 psi a foot, or kPa and bar a metre, by the unit of head and the size of the factor. */
function pressureByFactor(given: Given): number {
  const unit = given.key('head')?.unit;
  const shown = unit === undefined ? 0 : fromCanonical(given.number('head'), unit);
  const wanted = given.expectedUnit('pressure');
  if (wanted === undefined) throw new NotUnderstood('the unit of the factor is not stated');
  return toCanonical(shown * given.number('factor'), wanted);
}

function totalHead(given: Given): number {
  return totalDynamicHead({
    dischargePressure: given.maybe('dischargePressure') ?? given.number('pressure'),
    suctionVacuum: suctionVacuum(given),
    gaugeHeight: given.maybe('gaugeHeight') ?? 0,
    density: densityOf(given),
    flow: given.maybe('flow'),
    dischargeBore: given.maybe('dischargeBore'),
    suctionBore: given.maybe('suctionBore'),
  });
}

function tradeTotalHead(given: Given): number {
  const pressure = given.maybe('dischargePressure') ?? given.number('pressure');
  const inPsi = fromCanonical(pressure, unitCalled('psi'));
  const inInches = fromCanonical(suctionVacuum(given), unitCalled('inhg'));
  const feet = tradeFeetPerPsi * inPsi + tradeFeetPerInchOfMercury * inInches;
  return feet * foot + (given.maybe('gaugeHeight') ?? 0);
}

export const gaugesFamily: Family = {
  name: 'gauges',
  quantity: /pressure as head|gauge|total dynamic head|hydraulics/i,
  rules: [
    {
      what: 'pressure as head',
      needs: ['pressure|vacuum'],
      takes: densityInputs,
      gives: { head: (given, key) => pressureHead(reading(given), densityFor(given, key)) },
      when: (given) => !(given.has('pressure') && given.has('vacuum')),
    },
    {
      what: 'head as pressure',
      needs: ['head'],
      takes: densityInputs,
      gives: {
        pressure: (given, key) => given.number('head') / pressureHead(1, densityFor(given, key)),
        vacuum: (given, key) => given.number('head') / pressureHead(1, densityFor(given, key)),
      },
    },
    {
      what: 'head lost between two gauges',
      needs: ['inletPressure', 'outletPressure'],
      takes: densityInputs,
      gives: {
        head: (given) => pressureHead(difference(given), densityOf(given)),
        headLoss: (given) => pressureHead(difference(given), densityOf(given)),
        pressureLoss: difference,
      },
    },
    {
      what: 'pressure of a column',
      needs: ['density|temperature'],
      takes: densityInputs,
      gives: {
        pressureGradient: (given) => 1 / pressureHead(1, densityOf(given)),
        headPerPressure: (given) => pressureHead(1, densityOf(given)),
      },
    },
    {
      what: 'a trade factor from head to pressure beside the exact pressure',
      needs: ['head', 'factor'],
      takes: densityInputs,
      gives: {
        pressure: pressureByFactor,
        error: (given) =>
          pressureByFactor(given) / columnPressure(given.number('head'), densityOf(given)) - 1,
      },
    },
    {
      what: 'a trade factor beside the exact head',
      needs: ['pressure|vacuum', 'factor'],
      takes: densityInputs,
      gives: {
        head: headByFactor,
        error: (given) => headByFactor(given) / pressureHead(reading(given), densityOf(given)) - 1,
      },
    },
    {
      what: 'total dynamic head from gauges',
      needs: ['dischargePressure|pressure', 'vacuum|suctionPressure'],
      takes: ['gaugeHeight', 'flow', 'dischargeBore', 'suctionBore', ...densityInputs],
      gives: {
        totalHead,
        head: totalHead,
        tradeTotalHead,
        velocityHeadDifference: (given) =>
          totalDynamicHead({
            dischargePressure: 0,
            suctionVacuum: 0,
            gaugeHeight: 0,
            density: densityOf(given),
            flow: given.number('flow'),
            dischargeBore: given.number('dischargeBore'),
            suctionBore: given.number('suctionBore'),
          }),
        error: (given) => tradeTotalHead(given) / totalHead(given) - 1,
      },
      when: (given) =>
        given.has('dischargeBore') === given.has('suctionBore') &&
        (given.has('flow') || !given.has('dischargeBore')),
    },
  ],
};
