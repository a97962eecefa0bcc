import type { Block } from '#core/day/day.ts';
import { minutesAt } from '#core/day/day.ts';
import { dayEnergy } from '#core/tariff/pricing.ts';
import type { LessonValue, ValueMakers, ValueProps } from '#course/lesson/value.ts';
import type { WorkedBlock, WorkedDay } from '#explorables/ThreeBlockDay/bench.ts';
import { exampleBench } from '#explorables/ThreeBlockDay/example.ts';
import { workOut } from '#explorables/ThreeBlockDay/figures.ts';
import { readGiven } from '#units/given.ts';
import { formatMoney } from '#units/money.ts';
import { parseTimeOfDay } from '#units/timeOfDay.ts';

function minute(text: string): number {
  const read = parseTimeOfDay(text);
  if (!read.ok) throw new RangeError(`"${text}" is no time of day.`);
  return read.minute;
}

/** "09:00-12:00@2600 12:00-18:00@1800": from, to and speed [rpm] of each block. */
function blocksOf(given: ValueProps): Block[] {
  return (given['blocks'] ?? '').split(' ').map((text, place) => {
    const match = /^([\d:]+)-([\d:]+)@(\d+)$/.exec(text);
    const [, start = '', end = '', speed = ''] = match ?? [];
    if (match === null) throw new RangeError(`"${text}" is no block: write 09:00-12:00@2600.`);
    return {
      id: String(place + 1),
      start: minute(start),
      end: minute(end),
      ratio: Number(speed) / exampleBench.speeds.reference,
    };
  });
}

const worked = (given: ValueProps): WorkedDay => workOut(exampleBench, blocksOf(given));

/** The block asked for by its place, counted from 1. */
function part(given: ValueProps): WorkedBlock {
  const found = worked(given).parts[Number(given['block'] ?? 1) - 1];
  if (found === undefined) throw new RangeError(`There is no block ${given['block']}.`);
  return found;
}

const dollars = (value: number): LessonValue => ({
  quantity: null,
  value,
  shown: formatMoney(value, exampleBench.tariff.currency),
});

const share = (value: number): LessonValue => ({ quantity: 'share', value });

/** A day of blocks on the invented pump, pool and prices of the lesson that builds one. */
export const makers = {
  dayWater: (given) => ({ quantity: 'volume', value: worked(given).report.volumeMoved }),
  dayEnergy: (given) => ({ quantity: 'energy', value: worked(given).report.energy }),
  dayPrice: (given) => dollars(worked(given).cost),
  dayDearPrice: (given) => dollars(worked(given).dearCost),
  dayTurnovers: (given) => {
    const { turnovers } = worked(given).report;
    return { quantity: null, value: turnovers, shown: turnovers.toFixed(1) };
  },
  dayBlockFlow: (given) => ({ quantity: 'flow', value: part(given).flow }),
  dayBlockPower: (given) => ({ quantity: 'power', value: part(given).power }),
  dayBlockWater: (given) => ({ quantity: 'volume', value: part(given).water }),
  dayBlockEnergy: (given) => ({ quantity: 'energy', value: part(given).energy }),
  dayBlockPrice: (given) => dollars(part(given).cost),
  dayBlockWaterShare: (given) => share(part(given).water / worked(given).report.volumeMoved),
  dayBlockPriceShare: (given) => share(part(given).cost / worked(given).cost),
  dayOffTime: (given) => ({
    quantity: 'duration',
    value: minutesAt(blocksOf(given), 0) * 60,
  }),
  blockEnergy: (given) => ({
    quantity: 'energy',
    value: dayEnergy([
      {
        start: minute(given['from'] ?? ''),
        end: minute(given['to'] ?? ''),
        power: readGiven('power', given['power']),
      },
    ]),
  }),
} as const satisfies ValueMakers;
