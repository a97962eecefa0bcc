import { hydraulicPower, lineCurrent, shaftPower } from '#core/pump/power.ts';
import { water } from '#core/water/water.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { exampleLoad } from '#explorables/BillArea/example.ts';
import { amperesAt, costOf, energyOf } from '#explorables/BillArea/model.ts';
import { factorText } from '#explorables/BillArea/text.ts';
import { readGiven } from '#units/given.ts';
import { formatMoney } from '#units/money.ts';

const used = (given: ValueProps) =>
  energyOf(readGiven('power', given['power']), readGiven('duration', given['time']));

/** The motor of the lesson's picture at some watts. */
function motor(given: ValueProps) {
  const found = amperesAt(exampleLoad, readGiven('power', given['power']));
  if (found === undefined) throw new RangeError('The motor of the picture has no current.');
  return found;
}

function waterPower(given: ValueProps): number {
  const { density } = water(20);
  return hydraulicPower(
    density,
    readGiven('flow', given['flow']),
    readGiven('head', given['head']),
  );
}

/** Water power through one efficiency after the other, back towards the wire. */
function before(given: ValueProps): number {
  const shares = (given['through'] ?? '').split(',').map((text) => readGiven('share', text.trim()));
  return shares.reduce(shaftPower, waterPower(given));
}

/** Watts, amperes, kilowatt-hours. */
export const makers = {
  usedEnergy: (given) => ({ quantity: 'energy', value: used(given) }),
  usedCost: (given) => {
    const value = costOf(used(given), Number(given['price']));
    return { quantity: null, value, shown: formatMoney(value, exampleLoad.currency) };
  },
  currentOf: (given) => ({
    quantity: 'current',
    value: lineCurrent(
      readGiven('power', given['power']),
      readGiven('voltage', given['voltage']),
      Number(given['factor']),
    ),
  }),
  motorAmperes: (given) => ({ quantity: 'current', value: motor(given).current }),
  motorFactor: (given) => {
    const value = motor(given).factor;
    return { quantity: null, value, shown: factorText(value) };
  },
  motorApparent: (given) => {
    const value = motor(given).apparent;
    return { quantity: null, value, shown: `${Math.round(value)}\u00a0VA` };
  },
  powerIs: (given) => ({ quantity: 'power', value: readGiven('power', given['power']) }),
  waterPower: (given) => ({ quantity: 'power', value: waterPower(given) }),
  powerBefore: (given) => ({ quantity: 'power', value: before(given) }),
} as const satisfies ValueMakers;
