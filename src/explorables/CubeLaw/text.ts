import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { currency, energyPrice, poolVolume } from '#explorables/example/demo.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';
import { format, speak } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { type CubeLaw, full, pointAt, type SpeedPoint, thriftiestSpeed } from './model.ts';

export const speedText = (point: SpeedPoint, units: UnitChoice) =>
  format('speed', point.speed, units, { places: 0 });
export const flowText = (point: SpeedPoint, units: UnitChoice) => format('flow', point.flow, units);
export const powerText = (point: SpeedPoint, units: UnitChoice) =>
  format('power', point.power, units, { digits: 3 });
export const costText = (point: SpeedPoint) => formatMoney(point.cost, currency);
export const hoursText = (point: SpeedPoint, units: UnitChoice) =>
  format('duration', point.turnover, units);
export const shareText = (share: number) => `${Math.round(share * 100)}\u00a0%`;

/** A stored volume in the reader's unit to three figures: more would promise too much. */
function roundVolume(volume: number, units: UnitChoice): string {
  const unit = unitFor(units, 'volume');
  const shown = Number(fromSI('volume', volume, unit).toPrecision(3));
  return format('volume', toSI('volume', shown, unit), units);
}

/** Water per kilowatt-hour: "8910 gal", "33.7 m³". */
export const mileageText = (point: SpeedPoint, units: UnitChoice) =>
  roundVolume(point.mileage * joulesPerKilowattHour, units);

/** The nearest ten below or above that a pump would be set to. */
export const thriftiestText = (units: UnitChoice) =>
  format('speed', Math.round(thriftiestSpeed / 10) * 10, units, { places: 0 });

/** The finding in words: caption, spoken text and print share it. */
export function sentence(model: CubeLaw): string {
  const units = model.units.value;
  const here = model.here.value;
  if (here.speed === full.speed) {
    return `At full speed, ${speedText(full, units)}, the pump moves ${flowText(full, units)} and draws ${powerText(full, units)}. Slow it down and see which of the two falls faster.`;
  }
  const gives = `At ${speedText(here, units)}, ${shareText(here.ratio)} of full speed, the pump moves ${shareText(model.waterShare.value)} of the water for ${shareText(model.powerShare.value)} of the power.`;
  const costs = `Moving the whole pool once takes ${hoursText(here, units)} and ${costText(here)}; at full speed it takes ${hoursText(full, units)} and ${costText(full)}.`;
  const slow = `This is too slow to save: below about ${thriftiestText(units)} what the drive itself draws makes every gallon more expensive again.`;
  return here.speed < thriftiestSpeed - 5
    ? `${gives} ${costs} ${units.preset === 'us' ? slow : slow.replace('gallon', 'litre')}`
    : `${gives} ${costs}`;
}

/** The speed as a slider speaks it. */
export function spoken(model: CubeLaw): string {
  const units = model.units.value;
  const here = model.here.value;
  const rpm = speak('speed', here.speed, units, { places: 0 });
  return `${rpm}, ${speak('flow', here.flow, units)}, ${speak('power', here.power, units, { digits: 3 })}`;
}

const tableSpeeds = [600, 900, 1200, 1500, 1730, 2000, 2500, 3000, 3450];

/** The same numbers as a table. */
export function table(units: UnitChoice): TableData {
  const volume = roundVolume(poolVolume, units);
  return {
    caption: `The example pump at nine speeds; the pool holds ${volume} and a kWh costs ${formatMoney(energyPrice, currency)}.`,
    columns: ['Speed', 'Flow', 'Power', 'Water per kWh', 'Time for the whole pool', 'Cost of that'],
    rows: tableSpeeds
      .map(pointAt)
      .map((point) => [
        speedText(point, units),
        flowText(point, units),
        powerText(point, units),
        mileageText(point, units),
        hoursText(point, units),
        costText(point),
      ]),
  };
}

/** Says what the picture is drawn from. */
export function note(units: UnitChoice): string {
  const volume = roundVolume(poolVolume, units);
  return `An invented pump on invented pipes: a loop that lifts no water, a pool of ${volume}, energy at ${formatMoney(energyPrice, currency)} a kWh. Your own will differ in the numbers, hardly in the shape.`;
}
