/** One number in, the same quantity in other units out: a check of `src/units`. */
import { fromSI, toSI } from '#units/convert.ts';
import { type Quantity, quantityNames, type UnitOf, unitsOf } from '#units/quantities.ts';
import { NotUnderstood } from '../given.ts';
import { fromCanonical, type Key, toCanonical } from '../keys.ts';
import { type KeyUnit, keyUnits } from '../keyUnits.ts';
import type { Answer, Family, Rule } from '../rule.ts';

interface Ours {
  readonly quantity: Quantity;
  readonly id: string;
  readonly unit: KeyUnit;
}

/** Where a key would not spell a unit just as `src/units` does. */
const spelledOtherwise: Readonly<Record<string, string>> = {
  degC: 'c',
  degF: 'f',
  'gpm/ft2': 'gpm_ft2',
  '%': 'percent',
};

/** Every unit the site offers, with its independent twin from the table of keys. */
const offered: readonly Ours[] = quantityNames.flatMap((quantity) =>
  unitsOf(quantity).flatMap((id) => {
    const unit = keyUnits.get(spelledOtherwise[id] ?? id.toLowerCase().replace('/', '_'));
    return unit === undefined ? [] : [{ quantity, id, unit }];
  }),
);

/** The site's unit for a unit of a key, if it offers one. */
function oursFor(wanted: KeyUnit): Ours | undefined {
  const isDifference = wanted.dimension === 'temperatureDifference';
  const dimension = isDifference ? 'temperature' : wanted.dimension;
  return offered.find(
    ({ quantity, unit }) =>
      unit.dimension === dimension &&
      unit.factor === wanted.factor &&
      (isDifference || unit.zero === wanted.zero) &&
      (quantity === 'temperatureDifference') === isDifference,
  );
}

function convert(value: number, from: Key, to: Key): number {
  const [source, goal] = [oursFor(from.unit), oursFor(to.unit)];
  if (source === undefined && goal === undefined) {
    throw new NotUnderstood('neither unit is one the site offers');
  }
  const shown = fromCanonical(value, from.unit);
  const si =
    source === undefined
      ? toCanonical(shown, from.unit)
      : toSI(source.quantity, shown, source.id as UnitOf);
  if (goal === undefined) return si;
  return toCanonical(fromSI(goal.quantity, si, goal.id as UnitOf), to.unit);
}

/** Names that may stand for each other when only the unit changes. */
const sameThing: readonly (readonly string[])[] = [
  ['pressure', 'vacuum', 'atmosphere', 'vapourPressure'],
  ['power', 'shaftPower', 'hydraulicPower', 'heater'],
  ['length', 'head', 'depth', 'width', 'altitude', 'diameter', 'bore', 'roughness', 'wall'],
  ['flow'],
  ['volume', 'productVolume'],
  ['area'],
  ['velocity'],
  ['temperature'],
  ['temperatureRise'],
  ['chlorine', 'product'],
  ['energy'],
  ['time', 'runTime'],
  ['cell'],
];

function ruleFor(names: readonly string[]): readonly Rule[] {
  return names.map((name) => {
    const answer: Answer = (given, key) => {
      const from = given.key(name);
      if (from === undefined || from.unit.dimension !== key.unit.dimension) {
        throw new NotUnderstood('the two units are not of one quantity');
      }
      return convert(given.number(name), from, key);
    };
    return {
      what: `conversion of ${name}`,
      needs: [name],
      gives: Object.fromEntries(names.map((other) => [other, answer])),
    };
  });
}

export const conversionsFamily: Family = {
  name: 'conversions',
  quantity: /conver/i,
  rules: sameThing.flatMap(ruleFor),
};
