import { pressureHead, totalDynamicHead } from '#core/gauges.ts';
import { liquidDensity } from '#core/water.ts';
import { type Given, NotUnderstood } from '../given.ts';
import { fromCanonical, type Key } from '../keys.ts';
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
  const usual = [unitCalled('psi'), unitCalled('inhg')];
  if (key === undefined || !usual.includes(key.unit)) {
    throw new NotUnderstood('a trade factor is known for psi and inHg only');
  }
  return fromCanonical(reading(given), key.unit) * given.number('factor') * foot;
}

function totalHead(given: Given): number {
  return totalDynamicHead({
    dischargePressure: given.maybe('dischargePressure') ?? given.number('pressure'),
    suctionVacuum: given.number('vacuum'),
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
  const inInches = fromCanonical(given.number('vacuum'), unitCalled('inhg'));
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
      needs: ['dischargePressure|pressure', 'vacuum'],
      takes: ['gaugeHeight', 'flow', 'dischargeBore', 'suctionBore', ...densityInputs],
      gives: { totalHead, head: totalHead, tradeTotalHead },
      when: (given) =>
        given.has('dischargeBore') === given.has('suctionBore') &&
        (given.has('flow') || !given.has('dischargeBore')),
    },
  ],
};
