import { hydraulicPower, lineCurrent, powerFactor, shaftPower } from '#core/power.ts';
import { dayEnergy, energyPerVolume, type PoweredSpan, priceDays } from '#core/pricing.ts';
import { flatTariff, type Tariff } from '#core/tariff.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Family } from '../rule.ts';
import { spanOf } from './clock.ts';
import { densityInputs, densityOf } from './shared.ts';

const day = 86400;
const kilowattHour = 3.6e6;

/** Any date will do: the tariffs of these cases hold every day. */
const someDay = { year: 2027, month: 1, day: 1 };

function spans(given: Given): readonly PoweredSpan[] {
  return given.list('blocks').map((each) => {
    const inner = given.inside(each, ['name', 'start', 'end', 'power', 'speed', 'flow']);
    return { ...spanOf(inner), power: inner.number('power') };
  });
}

/** 24 prices, hour 0 first. */
function hourlyBands(prices: readonly number[]) {
  if (prices.length !== 24) throw new NotUnderstood('the prices are not one for each hour');
  return prices.map((price, hour) => ({ start: hour * 60, end: hour * 60 + 60, price }));
}

function bands(given: Given) {
  if (!given.has('tariff')) return hourlyBands(given.numbers('price'));
  return given.list('tariff').map((each) => {
    const inner = given.inside(each, ['name', 'start', 'end', 'price']);
    return { ...spanOf(inner), price: inner.number('price') };
  });
}

function tariff(given: Given): Tariff {
  const dailyCharge = given.maybe('dailyCharge') ?? 0;
  if (given.has('price') && typeof given.value('price') === 'number') {
    return flatTariff(given.number('price'), dailyCharge);
  }
  const dayType = { id: 'all', name: 'all', weekdays: [0, 1, 2, 3, 4, 5, 6], bands: bands(given) };
  const season = { id: 'all', name: 'all', from: { month: 1, day: 1 }, dayTypes: [dayType] };
  return { currency: '', dailyCharge, seasons: [season] };
}

const days = (given: Given): number => Math.round((given.maybe('time') ?? day) / day);

function priced(given: Given) {
  return priceDays(tariff(given), someDay, days(given), spans(given));
}

/** A steady power for a time, as whole days and a rest of whole minutes. */
function steadyEnergy(given: Given): number {
  const time = given.number('time');
  const whole = Math.floor(time / day);
  const minutes = (time - whole * day) / 60;
  if (Math.abs(minutes - Math.round(minutes)) > 1e-6) {
    throw new NotUnderstood('the time is not in whole minutes');
  }
  const power = given.number('power');
  const rest = Math.round(minutes);
  const restEnergy = rest === 0 ? 0 : dayEnergy([{ start: 0, end: rest, power }]);
  return whole * dayEnergy([{ start: 0, end: 1440, power }]) + restEnergy;
}

/** The core counts one phase; a case of three is not for it. */
const isSinglePhase = (given: Given): boolean => !/three.?phase|3.?phase|sqrt ?3/i.test(given.what);

const energyOfDays = (given: Given): number =>
  steadyEnergy(given) * Math.round((given.maybe('days') ?? day) / day);

const behindEfficiency = (given: Given): number =>
  shaftPower(
    given.number('hydraulicPower'),
    given.maybe('efficiency') ?? given.number('pumpEfficiency'),
  );

function pricedFor(given: Given, count: number): number {
  return priceDays(tariff(given), someDay, count, spans(given)).cost;
}

const energyForVolume = (given: Given): number =>
  energyPerVolume(given.number('power'), given.number('flow')) * given.number('volume');

const savedEnergy = (given: Given): number =>
  given.number('power#1') * given.number('time#1') -
  given.number('power#2') * given.number('time#2');

const allEfficiencies = (given: Given): number =>
  ['pumpEfficiency', 'motorEfficiency', 'driveEfficiency'].reduce(
    (product, id) => product * (given.maybe(id) ?? 1),
    1,
  );

const costOf = (energy: number, given: Given) => (energy / kilowattHour) * given.number('price');

function hydraulic(given: Given): number {
  return hydraulicPower(densityOf(given), given.number('flow'), given.number('head'));
}

export const electricityFamily: Family = {
  name: 'electricity',
  quantity: /energy and its price|electric|tariff|price of/i,
  rules: [
    {
      what: 'days priced by a tariff',
      needs: ['blocks', 'tariff|price'],
      takes: ['time', 'dailyCharge'],
      gives: {
        energy: (given) => priced(given).energy,
        cost: (given) => priced(given).cost,
        costOfDay: (given) => pricedFor(given, 1),
        costOfMonth: (given) => pricedFor(given, 30),
        costOfYear: (given) => pricedFor(given, 365),
        meanPrice: (given) => priced(given).cost / (priced(given).energy / kilowattHour),
      },
    },
    {
      what: 'price of an energy',
      needs: ['energy', 'price'],
      gives: { cost: (given) => costOf(given.number('energy'), given) },
    },
    {
      what: 'two ways to run beside each other',
      needs: ['power#1', 'power#2', 'time#1', 'time#2'],
      takes: ['price'],
      gives: {
        energySaved: savedEnergy,
        saved: (given) => costOf(savedEnergy(given), given),
      },
    },
    {
      what: 'price of moving a volume',
      needs: ['flow', 'power', 'volume'],
      takes: ['price'],
      gives: {
        energy: energyForVolume,
        cost: (given) => costOf(energyForVolume(given), given),
        time: (given) => given.number('volume') / given.number('flow'),
      },
    },
    {
      what: 'apparent power',
      needs: ['voltage', 'current'],
      gives: {
        apparentPower: (given) =>
          (1 / lineCurrent(1, given.number('voltage'), 1)) * given.number('current'),
      },
    },
    {
      what: 'power behind an efficiency',
      needs: ['hydraulicPower', 'efficiency|pumpEfficiency'],
      gives: { shaftPower: behindEfficiency, power: behindEfficiency },
    },
    {
      what: 'wire to water',
      needs: ['flow', 'head', 'density|temperature', 'power'],
      takes: densityInputs,
      gives: {
        efficiency: (given) => hydraulic(given) / given.number('power'),
        hydraulicPower: hydraulic,
      },
    },
    {
      what: 'power through pump, motor and drive',
      needs: ['flow', 'head', 'density|temperature', 'pumpEfficiency|motorEfficiency'],
      takes: [...densityInputs, 'driveEfficiency', 'motorEfficiency', 'pumpEfficiency'],
      gives: {
        hydraulicPower: hydraulic,
        shaftPower: (given) => shaftPower(hydraulic(given), given.maybe('pumpEfficiency') ?? 1),
        power: (given) => shaftPower(hydraulic(given), allEfficiencies(given)),
        efficiency: allEfficiencies,
      },
    },
    {
      what: 'energy of a day',
      needs: ['blocks'],
      takes: ['time'],
      gives: { energy: (given) => days(given) * dayEnergy(spans(given)) },
    },
    {
      what: 'energy of a steady power',
      needs: ['power', 'time'],
      takes: ['price', 'days'],
      gives: {
        energy: energyOfDays,
        cost: (given) => costOf(energyOfDays(given), given),
      },
    },
    {
      what: 'power from voltage, current and power factor',
      needs: ['voltage', 'current', 'powerFactor'],
      when: isSinglePhase,
      gives: {
        power: (given) =>
          given.number('current') /
          lineCurrent(1, given.number('voltage'), given.number('powerFactor')),
      },
    },
    {
      what: 'current from power',
      needs: ['voltage', 'power', 'powerFactor'],
      when: isSinglePhase,
      gives: {
        current: (given) =>
          lineCurrent(given.number('power'), given.number('voltage'), given.number('powerFactor')),
      },
    },
    {
      what: 'power factor',
      needs: ['voltage', 'power', 'current'],
      when: isSinglePhase,
      gives: {
        powerFactor: (given) =>
          powerFactor(given.number('power'), given.number('voltage'), given.number('current')),
      },
    },
    {
      what: 'wire power of a motor',
      needs: ['shaftPower', 'efficiency|motorEfficiency'],
      gives: {
        power: (given) =>
          shaftPower(
            given.number('shaftPower'),
            given.maybe('efficiency') ?? given.number('motorEfficiency'),
          ),
      },
    },
    {
      what: 'hydraulic power',
      needs: ['flow', 'head', 'density|temperature'],
      takes: densityInputs,
      gives: { power: hydraulic, hydraulicPower: hydraulic },
    },
    {
      what: 'power through an efficiency',
      needs: ['flow', 'head', 'density|temperature', 'efficiency'],
      takes: densityInputs,
      gives: {
        hydraulicPower: hydraulic,
        shaftPower: (given) => shaftPower(hydraulic(given), given.number('efficiency')),
        power: (given) => shaftPower(hydraulic(given), given.number('efficiency')),
      },
    },
    {
      what: 'price of moving water',
      needs: ['flow', 'power'],
      takes: ['price'],
      gives: {
        energyPerVolume: (given) => energyPerVolume(given.number('power'), given.number('flow')),
        volumePerEnergy: (given) =>
          1 / energyPerVolume(given.number('power'), given.number('flow')),
        costPerVolume: (given) =>
          costOf(energyPerVolume(given.number('power'), given.number('flow')), given),
      },
    },
  ],
};
