import { joulesPerKilowattHour } from '#core/base/constants.ts';
import {
  classEndHorsepower,
  freezeProtection,
  leastWef,
  variableSpeedPoints,
  weightedEnergyFactor,
} from '#core/pump/energyFactor.ts';
import { ratioForFlow } from '#core/pump/operatingPoint.ts';
import { cubePower, wirePower } from '#core/pump/power.ts';
import { paybackYears } from '#core/tariff/payback.ts';
import {
  dayEnergy,
  energyPerVolume,
  priceDay,
  priceSeason,
  priceYear,
} from '#core/tariff/pricing.ts';
import type { CalendarDate } from '#core/time/calendar.ts';
import type { LessonValue, ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { operatingStateAt } from '#explorables/example/machine.ts';
import { exampleTariff } from '#explorables/example/tariff.ts';
import { toSI } from '#units/convert.ts';
import { readGiven } from '#units/given.ts';
import { formatMoney } from '#units/money.ts';
import { parseTimeOfDay } from '#units/timeOfDay.ts';

/** One date of each kind of day in the lessons' invented tariff. */
const days: Readonly<Record<string, CalendarDate>> = {
  'summer weekday': { year: 2027, month: 7, day: 14 },
  'summer weekend': { year: 2027, month: 7, day: 17 },
  'winter weekday': { year: 2027, month: 1, day: 13 },
  'winter weekend': { year: 2027, month: 1, day: 16 },
};

/** The year whose calendar the lessons count on. */
const year = 2027;

function money(value: number, given: ValueProps): LessonValue {
  const places = Number(given['places'] ?? 2);
  return { quantity: null, value, shown: formatMoney(value, exampleTariff.currency, { places }) };
}

function plain(value: number, given: ValueProps): LessonValue {
  return { quantity: null, value, shown: value.toFixed(Number(given['places'] ?? 2)) };
}

function minute(text: string | undefined): number {
  const read = parseTimeOfDay(text ?? '');
  if (!read.ok) throw new RangeError(`"${text}" is no time of day.`);
  return read.minute;
}

const spanOf = (given: ValueProps) => ({
  start: minute(given['from']),
  end: minute(given['to']),
  power: readGiven('power', given['power']),
});

function dateOf(given: ValueProps): CalendarDate {
  const date = days[given['day'] ?? ''];
  if (date === undefined) throw new RangeError(`"${given['day']}" is no kind of day.`);
  return date;
}

/** Meeting point of the lessons' pump at a speed, or nothing at all when it stands. */
function running(text: string | undefined) {
  if (text === undefined) return { flow: 0, power: 0 };
  return operatingStateAt(exampleMachine, readGiven('speed', text));
}

/** Energy that the lessons' pump takes to move a volume in so many hours [J]. */
function moving(given: ValueProps): number {
  const seconds = readGiven('duration', given['in-time']);
  const flow = readGiven('volume', given['volume']) / seconds;
  const { curve, circuit, referenceSpeed } = exampleMachine;
  const found = ratioForFlow(curve, circuit, flow, { min: 0.05, max: 1 });
  if (found.kind !== 'found')
    throw new RangeError(`The pump does not move ${given['volume']} so fast.`);
  return operatingStateAt(exampleMachine, found.ratio * referenceSpeed).power * seconds;
}

const dollars = (energy: number, given: ValueProps) =>
  (energy / joulesPerKilowattHour) * Number(given['price']);

/** Days of a season, or only those of one kind of day. */
function daysOf(given: ValueProps): number {
  const season = priceSeason(exampleTariff, year, given['season'] ?? '', []);
  const kinds = season.byDayType.filter(
    ({ day }) => given['kind'] === undefined || day.dayType.id === given['kind'],
  );
  return kinds.reduce((sum, { days: count }) => sum + count, 0);
}

/** Energy of so many hours of frost at a speed [J]. */
function frostDraw(given: ValueProps): number {
  const fixed = readGiven('power', given['fixed']);
  const cube = readGiven('power', given['cube']);
  const ratio = readGiven('speed', given['to']) / readGiven('speed', given['from']);
  return wirePower(cubePower({ fixed, cube }), 0, ratio) * readGiven('duration', given['time']);
}

function loadPoints(given: ValueProps) {
  const topFlow = readGiven('flow', given['top-flow']);
  return variableSpeedPoints(topFlow, Number(given['horsepower']));
}

function rated(given: ValueProps): number {
  const { low, high } = loadPoints(given);
  return weightedEnergyFactor([
    { ...low, power: readGiven('power', given['low-power']) },
    { ...high, power: readGiven('power', given['high-power']) },
  ]);
}

/** Tariffs, the day, the year and the label. */
export const makers = {
  runEnergy: (given) => ({ quantity: 'energy', value: dayEnergy([spanOf(given)]) }),
  runPrice: (given) =>
    money(priceDay(exampleTariff, dateOf(given), [spanOf(given)]).energyCost, given),
  movingEnergy: (given) => ({ quantity: 'energy', value: moving(given) }),
  movingPrice: (given) => money(dollars(moving(given), given), given),
  waterPrice: (given) => {
    const [slow, fast] = [running(given['from']), running(given['to'])];
    const perVolume = energyPerVolume(fast.power - slow.power, fast.flow - slow.flow);
    return money(dollars(perVolume * toSI('volume', 1000, 'gal'), given), given);
  },
  speedForPrice: (given) => plain(1 / Math.sqrt(Number(given['ratio'])), given),
  seasonPrice: (given) =>
    money(
      priceSeason(exampleTariff, year, given['season'] ?? '', [spanOf(given)]).energyCost,
      given,
    ),
  seasonDays: (given) => plain(daysOf(given), { places: '0' }),
  yearPrice: (given) => money(priceYear(exampleTariff, year, [spanOf(given)]).energyCost, given),
  frostEnergy: (given) => ({ quantity: 'energy', value: frostDraw(given) }),
  frostPrice: (given) => money(dollars(frostDraw(given), given), given),
  payback: (given) => {
    const yearlySaving = Number(given['before']) - Number(given['after']);
    const years = paybackYears({ outlay: Number(given['outlay']), yearlySaving });
    if (years === null) throw new RangeError('Nothing is saved, so nothing is paid back.');
    return plain(years, { places: '1' });
  },
  energyFactor: (given) =>
    plain(
      weightedEnergyFactor([
        {
          flow: readGiven('flow', given['flow']),
          power: readGiven('power', given['power']),
          weight: 1,
        },
      ]),
      given,
    ),
  frostStart: () => ({
    quantity: 'temperature',
    value: toSI('temperature', freezeProtection.airTemperatureF, 'degF'),
  }),
  weightedEnergyFactor: (given) => plain(rated(given), given),
  leastEnergyFactor: (given) => {
    const least = leastWef('selfPriming', Number(given['horsepower']));
    if (least === null) throw new RangeError(`The table ends below ${classEndHorsepower} hp.`);
    return plain(least, given);
  },
  ratedLowFlow: (given) => ({ quantity: 'flow', value: loadPoints(given).low.flow }),
  ratedHighFlow: (given) => ({ quantity: 'flow', value: loadPoints(given).high.flow }),
} as const satisfies ValueMakers;
