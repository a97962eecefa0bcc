import type { TableData } from '#ui/charts/Table.tsx';
import { unitFor } from '#units/choice.ts';
import { fromSI } from '#units/convert.ts';
import { type FormatOptions, format, speak } from '#units/format.ts';
import { formatMoney, formatPrice } from '#units/money.ts';
import { type Amperes, amperesAt, type BillModel, costOf, energyOf, type Load } from './model.ts';

const voltAmperes = (apparent: number) => `${Math.round(apparent)}\u00a0VA`;

export const factorText = (factor: number) => factor.toFixed(2);

/** Hours without needless decimals, and quarters of an hour in full. */
function timePlaces({ units, time }: BillModel): FormatOptions {
  const shown = fromSI('duration', time.value.value, unitFor(units.value, 'duration'));
  return { places: Number.isInteger(shown) ? 0 : 2 };
}

/** What the ammeter would make one believe, beside the truth. */
function amperesSentence(model: BillModel, found: Amperes): string {
  const units = model.units.value;
  const { voltage } = model.load.value;
  const shown = `The ammeter shows ${format('current', found.current, units)}; times ${format('voltage', voltage, units)} that is ${voltAmperes(found.apparent)}`;
  const power = format('power', model.power.value.value, units);
  const tail =
    found.factor < 0.5
      ? 'Whoever takes amperes for power is wrong by more than double'
      : 'The bill counts the watts alone';
  return `${shown}, of which ${power} are power: a power factor of ${factorText(found.factor)}. ${tail}.`;
}

/** Why no amperes are shown. */
function noAmperes({ read = [] }: Load): string {
  return read.length === 0
    ? 'Your pad has no reading with both watts and amperes, so the current is not known.'
    : 'Amperes are shown only at the watts you read: a drive follows no simple law between.';
}

export function money(model: BillModel, amount: number): string {
  return formatMoney(amount, model.load.value.currency);
}

/** The finding, in a few sentences. */
export function sentence(model: BillModel): string {
  const units = model.units.value;
  const { power, time, price, energy, cost, load } = model;
  const found = model.amperes.value;
  const amperes = found === undefined ? noAmperes(load.value) : amperesSentence(model, found);
  if (time.value.value === 0) {
    return `The pump does not run: no kilowatt-hour, whatever its watts. ${amperes}`;
  }
  return (
    `${format('power', power.value.value, units)} for ${format('duration', time.value.value, units, timePlaces(model))} is ${format('energy', energy.value, units)}; ` +
    `at ${formatPrice(price.value.value, load.value.currency)} that is ${money(model, cost.value)} a day. ${amperes}`
  );
}

export function spokenPower(model: BillModel): string {
  const units = model.units.value;
  return `${speak('power', model.power.value.value, units)}, ${speak('energy', model.energy.value, units)} a day`;
}

export function spokenTime(model: BillModel): string {
  const units = model.units.value;
  return `${speak('duration', model.time.value.value, units, timePlaces(model))}, ${speak('energy', model.energy.value, units)} a day`;
}

export function spokenPrice(model: BillModel): string {
  return `${formatPrice(model.price.value.value, model.load.value.currency)}, ${money(model, model.cost.value)} a day`;
}

/** The two bars of the ammeter, as shares of its current at the greatest power of the picture. */
export function bars(model: BillModel) {
  const found = model.amperes.value;
  const load = model.load.value;
  const most =
    amperesAt(load, load.greatestPower)?.current ??
    Math.max(...(load.read ?? []).map(({ current }) => current));
  if (found === undefined) return undefined;
  const units = model.units.value;
  return {
    shown: format('current', found.current, units),
    working: format('current', found.working, units),
    shownShare: Math.min(found.current / most, 1),
    workingShare: Math.min(found.working / most, 1),
    factor: factorText(found.factor),
    apparent: voltAmperes(found.apparent),
  };
}

const shares = [0.05, 0.1, 0.2, 0.4, 0.6, 0.8, 1] as const;

/** Watts of the table: even steps, or those that were read. */
function wattsShown({ read = [], greatestPower }: Load): number[] {
  const steps = shares.map((share) => share * greatestPower);
  return [...new Set([...read.map(({ power }) => power), ...steps])].sort((a, b) => a - b);
}

export function table(model: BillModel): TableData {
  const units = model.units.value;
  const { load, time, price } = model;
  const bare = { withUnit: false };
  return {
    caption: `A day of ${format('duration', time.value.value, units, timePlaces(model))}, and the amperes, at different watts`,
    columns: [
      'Wire power, W',
      'Energy, kWh',
      'Price of the day',
      'Current, A',
      'Volts times amperes, VA',
      'Power factor',
    ],
    rows: wattsShown(load.value).map((power) => {
      const energy = energyOf(power, time.value.value);
      const found = amperesAt(load.value, power);
      return [
        String(Math.round(power)),
        format('energy', energy, units, bare),
        money(model, costOf(energy, price.value.value)),
        found === undefined ? 'not known' : format('current', found.current, units, bare),
        found === undefined ? 'not known' : String(Math.round(found.apparent)),
        found === undefined ? 'not known' : factorText(found.factor),
      ];
    }),
  };
}
