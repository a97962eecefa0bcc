import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { evenly } from '#ui/charts/path.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import { openingHead, startSpeed, sweep } from './mileage.ts';
import type { WaterModel } from './model.ts';

/** Water for a kilowatt-hour [m3], as the reader sees it. */
export function water(model: WaterModel, mileage: number): string {
  return format('volume', mileage * joulesPerKilowattHour, model.units.value);
}

const percent = (share: number) => `${Math.round(share * 100)}\u00a0%`;

/** What the best speed is, and why it is there. */
function bestSentence(model: WaterModel): string {
  const units = model.units.value;
  const best = model.best.value;
  const { leastSpeed } = model.setup.value;
  if (best === undefined) return 'No speed of this pump moves water over that height.';
  const where = `${format('speed', Math.round(best.speed), units)}, with ${water(model, best.mileage)}`;
  if (best.speed <= leastSpeed * 1.001) {
    return model.fixed.value.value === 0 && openingHead(model.asked.value) === 0
      ? `Without fixed draw and lift slower is always better; the slowest it can turn is ${where}.`
      : `The best it can do is its slowest speed, ${where}.`;
  }
  return `The best speed is ${where}; slower than that, each ${volumeWord(model)} costs more again.`;
}

function volumeWord(model: WaterModel): string {
  return symbolFor(model.units.value, 'volume') === 'gal' ? 'gallon' : 'litre';
}

/** The finding, in a few sentences. */
export function sentence(model: WaterModel): string {
  const units = model.units.value;
  const here = model.here.value;
  const speed = format('speed', here.speed, units);
  if (here.flow === 0) {
    return (
      `At ${speed} no water moves: the pump makes ${format('head', here.head, units)} of head, the water must be lifted ${format('head', openingHead(model.asked.value), units)}. ` +
      `It draws ${format('power', here.power, units)} for nothing. ${bestSentence(model)}`
    );
  }
  return (
    `At ${speed} the pump moves ${format('flow', here.flow, units)} and draws ${format('power', here.power, units)}: ${water(model, here.mileage)} for a kilowatt-hour. ` +
    `The plain cube would promise ${water(model, model.plain.value.mileageAt(here.speed))}. ${bestSentence(model)}` +
    (here.extrapolated ? ' This flow lies past the end of the pump’s curve, so it is a guess.' : '')
  );
}

export function spokenSpeed(model: WaterModel): string {
  const units = model.units.value;
  const { speed, mileage } = model.here.value;
  return `${speak('speed', speed, units)}, ${speak('volume', mileage * joulesPerKilowattHour, units)} for a kilowatt-hour`;
}

export function spokenFixed(model: WaterModel): string {
  return speak('power', model.fixed.value.value, model.units.value);
}

export function spokenLift(model: WaterModel): string {
  const units = model.units.value;
  const start = startSpeed(model.asked.value);
  const from = start > 0 ? `, water moves from ${speak('speed', Math.ceil(start), units)}` : '';
  return `${speak('head', model.lift.value.value, units)}${from}`;
}

/** The figures beside the picture. */
export function readings(model: WaterModel) {
  const units = model.units.value;
  const { here, best, lift, fixed, plain } = model;
  const found = best.value;
  const formula = plain.value.bestSpeed(fixed.value.value);
  const loop = lift.value.value === 0 && formula > model.setup.value.leastSpeed;
  return {
    flow: format('flow', here.value.flow, units),
    power: format('power', here.value.power, units),
    efficiency: percent(here.value.efficiency),
    mileage: here.value.flow > 0 ? water(model, here.value.mileage) : 'none',
    best: found === undefined ? 'none' : format('speed', Math.round(found.speed), units),
    formula: loop ? `by the formula ${format('speed', Math.round(formula), units)}` : '',
  };
}

export function table(model: WaterModel): TableData {
  const units = model.units.value;
  const bare = { withUnit: false };
  const { leastSpeed, topSpeed } = model.setup.value;
  const volume = symbolFor(units, 'volume');
  return {
    caption: 'Water for a kilowatt-hour, from the slowest speed to the fastest',
    columns: [
      `Speed, ${symbolFor(units, 'speed')}`,
      `Flow, ${symbolFor(units, 'flow')}`,
      `Wire power, ${symbolFor(units, 'power')}`,
      'Wire to water, %',
      `Water for a kWh, ${volume}`,
      `By the plain cube, ${volume}`,
    ],
    rows: sweep(model.asked.value, evenly(leastSpeed, topSpeed, 10)).map((step) => [
      format('speed', Math.round(step.speed), units, bare),
      format('flow', step.flow, units, bare),
      format('power', step.power, units, bare),
      String(Math.round(step.efficiency * 100)),
      format('volume', step.mileage * joulesPerKilowattHour, units, bare),
      format(
        'volume',
        model.plain.value.mileageAt(step.speed) * joulesPerKilowattHour,
        units,
        bare,
      ),
    ]),
  };
}
