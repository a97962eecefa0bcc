/** Power of water, shaft and wire, and the current that carries it. */
import { pressureHead } from '#core/fit/gauges.ts';
import {
  hydraulicPower,
  lineCurrent,
  powerFactor,
  shaftPower,
  threePhaseCurrent,
} from '#core/pump/power.ts';
import { energyPerVolume } from '#core/tariff/pricing.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Rule } from '../rule.ts';
import { densityInputs, densityOf } from './shared.ts';

const heads = ['head', 'totalHead'] as const;
const pressures = ['pressure', 'pressureLoss', 'dischargePressure'] as const;
const headNeed = [...heads, ...pressures].join('|');
const waterInputs = [...heads, ...pressures, ...densityInputs];

/** A head weighs what the water weighs; from a pressure the density falls out again. */
function hydraulic(given: Given): number {
  const [stated, ...others] = [...heads, ...pressures].filter((id) => given.has(id));
  if (stated === undefined || others.length > 0)
    throw new NotUnderstood('head or pressure is not stated once');
  const isPressure = pressures.some((id) => id === stated);
  const isLight = isPressure && !densityInputs.some((id) => given.has(id));
  const density = isLight ? 1000 : densityOf(given);
  const head = isPressure ? pressureHead(given.number(stated), density) : given.number(stated);
  return hydraulicPower(density, given.number('flow'), head);
}

/** A head says nothing about power where the water is not known. */
const isWeighed = (given: Given): boolean =>
  densityInputs.some((id) => given.has(id)) || pressures.some((id) => given.has(id));

const parts = ['pumpEfficiency', 'motorEfficiency', 'driveEfficiency'];

const allEfficiencies = (given: Given): number =>
  parts.reduce((product, id) => product * (given.maybe(id) ?? 1), 1);

/** Two of water, shaft and wire power, the first over the second. */
const share = (first: string, second: string) => (given: Given) =>
  given.number(first) / given.number(second);

const behindEfficiency = (given: Given): number =>
  shaftPower(
    given.number('hydraulicPower'),
    given.maybe('efficiency') ?? given.number('pumpEfficiency'),
  );

const motorInput = (given: Given): number =>
  shaftPower(
    given.number('shaftPower'),
    given.maybe('efficiency') ?? given.number('motorEfficiency'),
  );

const wireInput = (given: Given): number =>
  shaftPower(hydraulic(given), given.maybe('efficiency') ?? 1);

/** Three phases where the case counts them or says so. */
function isThreePhase(given: Given): boolean {
  const phases =
    given.maybe('phases') ?? (/three.?phase|3.?phase|sqrt ?3/i.test(given.what) ? 3 : 1);
  if (phases !== 1 && phases !== 3) throw new NotUnderstood('the phases are neither one nor three');
  return phases === 3;
}

/** Current per watt at a power factor of 1. */
function currentFor(given: Given, power: number, factor = 1): number {
  const law = isThreePhase(given) ? threePhaseCurrent : lineCurrent;
  return law(power, given.number('voltage'), factor);
}

export const waterPowerRules: readonly Rule[] = [
  {
    what: 'power behind an efficiency',
    needs: ['hydraulicPower', 'efficiency|pumpEfficiency'],
    gives: { shaftPower: behindEfficiency, power: behindEfficiency },
  },
  {
    what: 'efficiency from water to wire',
    needs: ['hydraulicPower', 'power'],
    takes: ['shaftPower'],
    gives: {
      efficiency: share('hydraulicPower', 'power'),
      pumpEfficiency: share('hydraulicPower', 'shaftPower'),
      motorEfficiency: share('shaftPower', 'power'),
    },
  },
  {
    what: 'efficiency of a pump',
    needs: ['hydraulicPower', 'shaftPower'],
    gives: {
      efficiency: share('hydraulicPower', 'shaftPower'),
      pumpEfficiency: share('hydraulicPower', 'shaftPower'),
    },
  },
  {
    what: 'efficiency of a motor',
    needs: ['shaftPower', 'power'],
    gives: {
      efficiency: share('shaftPower', 'power'),
      motorEfficiency: share('shaftPower', 'power'),
    },
  },
  {
    what: 'wire to water',
    needs: ['flow', headNeed, 'power|shaftPower'],
    takes: waterInputs,
    when: isWeighed,
    gives: {
      efficiency: (given) =>
        hydraulic(given) / (given.maybe('power') ?? given.number('shaftPower')),
      pumpEfficiency: (given) => hydraulic(given) / given.number('shaftPower'),
      hydraulicPower: hydraulic,
    },
  },
  {
    what: 'power through pump, motor and drive',
    needs: ['flow', headNeed, 'pumpEfficiency|motorEfficiency'],
    takes: [...waterInputs, ...parts],
    when: isWeighed,
    gives: {
      hydraulicPower: hydraulic,
      shaftPower: (given) => shaftPower(hydraulic(given), given.maybe('pumpEfficiency') ?? 1),
      power: (given) => shaftPower(hydraulic(given), allEfficiencies(given)),
      efficiency: allEfficiencies,
    },
  },
  {
    what: 'efficiencies one behind the other',
    needs: ['pumpEfficiency', 'motorEfficiency'],
    takes: parts,
    gives: { efficiency: allEfficiencies },
  },
  {
    what: 'power from voltage, current and power factor',
    needs: ['voltage', 'current', 'powerFactor'],
    takes: ['phases'],
    gives: {
      power: (given) => given.number('current') / currentFor(given, 1, given.number('powerFactor')),
    },
  },
  {
    what: 'current from power',
    needs: ['voltage', 'power', 'powerFactor'],
    takes: ['phases'],
    gives: {
      current: (given) => currentFor(given, given.number('power'), given.number('powerFactor')),
    },
  },
  {
    what: 'power factor',
    needs: ['voltage', 'power', 'current'],
    takes: ['phases'],
    gives: {
      powerFactor: (given) =>
        isThreePhase(given)
          ? currentFor(given, given.number('power')) / given.number('current')
          : powerFactor(given.number('power'), given.number('voltage'), given.number('current')),
    },
  },
  {
    what: 'wire power of a motor',
    needs: ['shaftPower', 'efficiency|motorEfficiency'],
    gives: { power: motorInput },
  },
  {
    what: 'current of a motor',
    needs: ['shaftPower', 'efficiency|motorEfficiency', 'voltage', 'powerFactor'],
    takes: ['phases'],
    gives: {
      current: (given) => currentFor(given, motorInput(given), given.number('powerFactor')),
      power: motorInput,
    },
  },
  {
    what: 'hydraulic power',
    needs: ['flow', headNeed],
    takes: waterInputs,
    when: isWeighed,
    gives: { power: hydraulic, hydraulicPower: hydraulic },
  },
  {
    what: 'power through an efficiency',
    needs: ['flow', headNeed, 'efficiency'],
    takes: waterInputs,
    when: isWeighed,
    gives: {
      hydraulicPower: hydraulic,
      shaftPower: wireInput,
      power: wireInput,
      energyPerVolume: (given) => energyPerVolume(wireInput(given), given.number('flow')),
    },
  },
];
