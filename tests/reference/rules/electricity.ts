import { lineCurrent } from '#core/pump/power.ts';
import { dayEnergy, energyPerVolume, type PoweredSpan, priceDays } from '#core/tariff/pricing.ts';
import { flatTariff, type Tariff } from '#core/tariff/tariff.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Family } from '../rule.ts';
import { spanOf } from './clock.ts';
import { blocksInputs, blocksNeed, blocksOf, overBlocks } from './dayBlocks.ts';
import { waterPowerRules } from './waterPower.ts';

const day = 86400;
const dayMinutes = 1440;
const kilowattHour = 3.6e6;

/** Any date will do: the tariffs of these cases hold every day. */
const someDay = { year: 2027, month: 1, day: 1 };

/** Blocks without a place in the day are laid one after the other: at one price it is the same. */
function spans(given: Given): readonly PoweredSpan[] {
  let from = 0;
  return blocksOf(given).flatMap(({ start = from, minutes, power }) => {
    if (power === undefined) throw new NotUnderstood('a block has no power');
    if (minutes === 0) return [];
    if (start + minutes > 2880 || !Number.isInteger(minutes))
      throw new NotUnderstood('the blocks are not whole minutes of one day');
    from = (start + minutes) % dayMinutes;
    return [{ start, end: from === 0 ? dayMinutes : from, power }];
  });
}

/** The hours alone do not tell which price holds. */
const isPlaced = (given: Given): boolean =>
  (given.has('price') && typeof given.value('price') === 'number') ||
  blocksOf(given).every(({ start }) => start !== undefined);

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

const days = (given: Given): number =>
  Math.round((given.maybe('days') ?? given.maybe('time') ?? day) / day);

function priced(given: Given) {
  return priceDays(tariff(given), someDay, days(given), spans(given));
}

/** A steady power for a time, as whole days and a rest of whole minutes. */
function steadyEnergy(given: Given): number {
  const time = given.maybe('runTime') ?? given.number('time');
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

const energyOfDays = (given: Given): number =>
  steadyEnergy(given) * Math.round((given.maybe('days') ?? day) / day);

function pricedFor(given: Given, count: number): number {
  return priceDays(tariff(given), someDay, count, spans(given)).cost;
}

const energyForVolume = (given: Given): number =>
  energyPerVolume(given.number('power'), given.number('flow')) * given.number('volume');

const savedEnergy = (given: Given): number =>
  given.number('power#1') * given.number('time#1') -
  given.number('power#2') * given.number('time#2');

const costOf = (energy: number, given: Given) => (energy / kilowattHour) * given.number('price');

/** Only where the energy is said to be that of a day. */
const costOfDailyEnergy = (count: number) => (given: Given) => {
  if (!/per_day|daily|a_day/.test(given.key('energy')?.raw ?? ''))
    throw new NotUnderstood('how long the energy lasts is not stated');
  return count * costOf(given.number('energy'), given);
};

export const electricityFamily: Family = {
  name: 'electricity',
  quantity: /energy and its price|electric|tariff|price of/i,
  rules: [
    {
      what: 'days priced by a tariff',
      needs: [blocksNeed, 'tariff|price'],
      takes: [...blocksInputs, 'time', 'days', 'dailyCharge'],
      when: isPlaced,
      gives: {
        energy: (given) => priced(given).energy,
        cost: (given) => priced(given).cost,
        costOfDay: (given) => pricedFor(given, 1),
        costOfWeek: (given) => pricedFor(given, 7),
        costOfMonth: (given) => pricedFor(given, 30),
        costOfSeason: (given) => priced(given).cost,
        costOfYear: (given) => pricedFor(given, 365),
        meanPrice: (given) => priced(given).cost / (priced(given).energy / kilowattHour),
      },
    },
    {
      what: 'price of an energy',
      needs: ['energy', 'price'],
      gives: {
        cost: (given) => costOf(given.number('energy'), given),
        costOfWeek: costOfDailyEnergy(7),
        costOfMonth: costOfDailyEnergy(30),
        costOfYear: costOfDailyEnergy(365),
      },
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
      what: 'what a day of blocks does',
      needs: [blocksNeed],
      takes: [...blocksInputs, 'time', 'days'],
      gives: {
        energy: (given) => days(given) * overBlocks(given, 'power'),
        volume: (given) => days(given) * overBlocks(given, 'flow'),
        energyPerVolume: (given) => overBlocks(given, 'power') / overBlocks(given, 'flow'),
        volumePerEnergy: (given) => overBlocks(given, 'flow') / overBlocks(given, 'power'),
      },
    },
    {
      what: 'energy of a steady power',
      needs: ['power', 'time|runTime'],
      takes: ['price', 'days'],
      gives: {
        energy: energyOfDays,
        cost: (given) => costOf(energyOfDays(given), given),
        energyOfWeek: (given) => 7 * steadyEnergy(given),
        energyOfMonth: (given) => 30 * steadyEnergy(given),
        energyOfYear: (given) => 365 * steadyEnergy(given),
        energyOfSeason: energyOfDays,
        costOfDay: (given) => costOf(steadyEnergy(given), given),
        costOfWeek: (given) => costOf(7 * steadyEnergy(given), given),
        costOfMonth: (given) => costOf(30 * steadyEnergy(given), given),
        costOfSeason: (given) => costOf(energyOfDays(given), given),
        costOfYear: (given) => costOf(365 * steadyEnergy(given), given),
      },
    },
    {
      what: 'price of an hour',
      needs: ['power', 'price'],
      gives: { costOfHour: (given) => costOf(given.number('power') * 3600, given) },
    },
    ...waterPowerRules,
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
