/** Things several families read from a case in the same way. */
import { type PipeSize, pipeSizes } from '#core/hydraulics/pipe.ts';
import { liquidDensity, liquidSpecificHeat, water } from '#core/water/water.ts';
import { type Given, NotUnderstood } from '../given.ts';

const inch = 0.0254;
const millimetre = 0.001;

/** Two statements of one thing must agree this well, or the case contradicts itself. */
const agreement = 0.01;

/** The value used, after a look at another way the case states the same thing. */
function agreed(used: number, other: number | undefined, what: string): number {
  if (other !== undefined && Math.abs(used - other) > agreement * Math.abs(used)) {
    throw new NotUnderstood(`the case states ${what} in two ways that differ`);
  }
  return used;
}

/** Inputs that fix the density, for a rule's lists. */
export const densityInputs = ['density', 'specificGravity', 'temperature'] as const;

/** The density given, else that of water at the temperature given. */
export function densityOf(given: Given): number {
  const temperature = given.maybe('temperature');
  const fromTemperature = temperature === undefined ? undefined : liquidDensity(temperature);
  const relative = given.maybe('specificGravity');
  const fromRelative = relative === undefined ? undefined : relative * 1000;
  const density = given.maybe('density') ?? fromRelative ?? fromTemperature;
  if (density === undefined) throw new NotUnderstood('neither density nor temperature is given');
  return agreed(density, fromTemperature, 'the density');
}

export function specificHeatOf(given: Given, temperature: number | undefined): number {
  const fromTemperature = temperature === undefined ? undefined : liquidSpecificHeat(temperature);
  const heat = given.maybe('specificHeat') ?? fromTemperature;
  if (heat === undefined) throw new NotUnderstood('neither specific heat nor temperature is given');
  return agreed(heat, fromTemperature, 'the specific heat');
}

export const viscosityInputs = ['kinematicViscosity', 'dynamicViscosity', 'density', 'temperature'];

/** The kinematic viscosity given, else dynamic over density, else that of water. */
export function viscosityOf(given: Given): number {
  const temperature = given.maybe('temperature');
  const fromTemperature =
    temperature === undefined ? undefined : water(temperature).kinematicViscosity;
  const dynamic = given.maybe('dynamicViscosity');
  const viscosity =
    given.maybe('kinematicViscosity') ??
    (dynamic === undefined ? fromTemperature : dynamic / densityOf(given));
  if (viscosity === undefined) throw new NotUnderstood('no viscosity and no temperature is given');
  return agreed(viscosity, fromTemperature, 'the viscosity');
}

export const sizeInputs = ['nominal', 'schedule', 'outsideDiameter', 'pn'] as const;

/** "PN10", "10" and 10 are one pressure class. */
export const seriesOf = (pn: string): string => `pn${pn.replace(/^pn ?/, '')}`;

/** The size of pipe the case names, if it names one. */
export function pipeSizeOf(given: Given): PipeSize | undefined {
  const inches = given.maybe('nominal') ?? given.maybe('outsideDiameter');
  if (inches === undefined || !(given.has('schedule') || given.has('pn'))) return undefined;
  const series = given.has('schedule')
    ? `sch${given.text('schedule')}`
    : seriesOf(given.text('pn'));
  const found = pipeSizes.find((size) => {
    const nominal =
      size.nominalInches === undefined
        ? (size.nominalMillimetres ?? 0) * millimetre
        : size.nominalInches * inch;
    return size.series === series && Math.abs(nominal - inches) < 1e-6;
  });
  if (found === undefined) throw new NotUnderstood('the size of pipe is not in the table');
  return found;
}

export const boreInputs = ['bore', ...sizeInputs] as const;
export const boreNeed = 'bore|nominal|outsideDiameter';

/** The bore given, else that of the size of pipe named. */
export function boreOf(given: Given): number {
  const size = pipeSizeOf(given);
  const bore = given.maybe('bore') ?? size?.bore;
  if (bore === undefined) throw new NotUnderstood('no bore and no size of pipe is given');
  return agreed(bore, size?.bore, 'the bore');
}
