/** What several files of cases state in the same way. */
import { pipeSize, pipeSizes } from '#core/hydraulics/pipe.ts';
import { liquidDensity, water } from '#core/water/water.ts';
import { fromSI, toSI } from '#units/convert.ts';
import { type Quantity, type UnitOf, unitsOf } from '#units/quantities.ts';
import { agreed, NotInGrammar, number } from '../grammar.ts';
import { fromCanonical, toCanonical } from '../units.ts';

/** A size of pipe by its standard, a bore, or both. */
export const boreInputs = {
  nominal: number('in'),
  schedule: number(),
  outside_diameter: number('mm'),
  pn: number(),
  inside_diameter: number('in', 'm'),
};
type Numbers<T> = { readonly [K in keyof T]?: number | undefined };

/** The size of pipe a case names; undefined where it names none. */
export function sizeOf({ nominal, schedule, outside_diameter, pn }: Numbers<typeof boreInputs>) {
  const outside = nominal ?? outside_diameter;
  const series = nominal === undefined ? pn && `pn${pn}` : schedule && `sch${schedule}`;
  if (outside === undefined && series === undefined) return undefined;
  const found = pipeSizes.find((size) => {
    const inches = size.nominalInches && toCanonical('nominal_in', size.nominalInches);
    const named = inches ?? toCanonical('nominal_mm', size.nominalMillimetres ?? 0);
    return size.series === series && Math.abs(named - (outside ?? 0)) < 1e-6;
  });
  if (found === undefined) throw new NotInGrammar('the size of pipe is not in the table');
  return pipeSize(found.id);
}

/** The bore given, else that of the size of pipe named. */
export const boreOf = (given: Numbers<typeof boreInputs>): number =>
  agreed('inside_diameter', given.inside_diameter, sizeOf(given)?.bore);

export const densityInputs = { temperature: number('c'), density: number('kg_m3') };

/** The density given, else that of water at the temperature given. */
export const densityOf = ({ density, temperature }: Numbers<typeof densityInputs>): number =>
  agreed('density', density, temperature === undefined ? undefined : liquidDensity(temperature));

export const viscosityInputs = {
  temperature: number('c'),
  kinematic_viscosity: number('m2_s'),
};

/** The kinematic viscosity given, else that of water at the temperature given. */
export function viscosityOf(given: Numbers<typeof viscosityInputs>): number {
  const { kinematic_viscosity, temperature } = given;
  const other = temperature === undefined ? undefined : water(temperature).kinematicViscosity;
  return agreed('kinematic_viscosity', kinematic_viscosity, other);
}

/** A unit of the site as a quantity and the spelling in keys. */
type Shown = readonly [quantity: Quantity, key: string];

const spelledOtherwise: Readonly<Record<string, string>> = { degC: 'c', degF: 'f' };

/** The site's unit for a spelling; undefined where it offers none. */
const unitFor = ([quantity, spelling]: Shown) =>
  unitsOf(quantity).find(
    (id) => (spelledOtherwise[id] ?? id.toLowerCase().replace('/', '_')) === spelling,
  ) as UnitOf | undefined;

/** A value in SI, read and written again by `src/units` wherever that offers the unit. */
export function converted(value: number, from: Shown, to: Shown): number {
  const [source, goal] = [unitFor(from), unitFor(to)];
  if (source === undefined && goal === undefined) throw new NotInGrammar('no unit of the site');
  const si = source ? toSI(from[0], fromCanonical(from[1], value), source) : value;
  return goal ? toCanonical(to[1], fromSI(to[0], si, goal)) : si;
}
