import {
  craneFromMemory,
  craneMultipliers,
  endCoefficients,
  type FittingKind,
  fittingK,
  fullyTurbulentFriction,
} from '#core/hydraulics/fittings.ts';
import { olderTurbulentFriction } from '#core/hydraulics/olderEditions.ts';
import { formatIn } from '#units/format.ts';
import { fixed, noValue } from '#units/numerals.ts';
import { fittingNames } from '#words/parts.ts';
import { type PipeFamily, sizesOf } from './pipes.ts';
import type { FigureTable } from './table.ts';

const kinds = Object.keys(craneMultipliers) as FittingKind[];

/** Crane's turbulent friction factor for each size of a family. */
export function turbulentFactors({ series, name }: PipeFamily): FigureTable {
  const hasOlder = series === 'sch40';
  return {
    caption: `${name}: fully turbulent friction factor`,
    headings: [
      { name: 'Size' },
      { name: 'Bore', units: ['in', 'mm'] },
      { name: 'Factor', units: ['–'] },
      ...(hasOlder ? [{ name: 'Older printings', units: ['–'] }] : []),
    ],
    rows: sizesOf(series).map(({ nominal, bore, nominalInches }) => [
      nominal,
      formatIn('diameter', bore, 'in', { withUnit: false, places: 3 }),
      formatIn('diameter', bore, 'mm', { withUnit: false, places: 1 }),
      fixed(fullyTurbulentFriction(bore), 4),
      ...(hasOlder
        ? [nominalInches === undefined ? noValue : fixed(olderTurbulentFriction(nominalInches), 3)]
        : []),
    ]),
  };
}

/** Loss coefficient of each fitting in each size of a family. */
export function coefficients({ series, name }: PipeFamily): FigureTable {
  const sizes = sizesOf(series);
  return {
    caption: `${name}: multiplier n and loss coefficient K of each fitting`,
    headings: [
      { name: 'Fitting' },
      { name: 'n' },
      ...sizes.map(({ nominal }) => ({ name: nominal })),
    ],
    rows: kinds.map((kind) => [
      fittingNames[kind] + (craneFromMemory.includes(kind) ? ' *' : ''),
      String(craneMultipliers[kind]),
      ...sizes.map(({ bore }) => fixed(fittingK(kind, bore), 2)),
    ]),
  };
}

/** An end that the form offers; a bell mouth is in tables alone. */
type EndOfForm = Exclude<keyof typeof endCoefficients, 'bellMouthInlet'>;

/** Pipe ends, the same at every size. */
export const ends: FigureTable = {
  caption: 'Ends of a pipe: K at every size',
  headings: [{ name: 'End' }, { name: 'K' }],
  rows: Object.entries(endCoefficients).map(([kind, k]) => [
    kind === 'bellMouthInlet' ? 'Pipe inlet, bell mouth' : fittingNames[kind as EndOfForm],
    fixed(k, 2),
  ]),
};
