import { darcyWeisbach, smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import {
  flowAtVelocity,
  type PipeSeries,
  type PipeSize,
  pipeSizes,
} from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import { usualVelocities } from '#padPage/form/usual.ts';
import type { Preset } from '#units/choice.ts';
import { formatIn } from '#units/format.ts';
import type { FigureTable } from './table.ts';

/** A family of pipe as the shelf shows it. */
export interface PipeFamily {
  readonly series: PipeSeries;
  readonly name: string;
  readonly standard: string;
  /** Limits are stated in the round numbers of the system the pipe belongs to. */
  readonly preset: Preset;
}

export const pipeFamilies: readonly PipeFamily[] = [
  { series: 'sch40', name: 'Schedule 40', standard: 'ASTM D1785', preset: 'us' },
  { series: 'sch80', name: 'Schedule 80', standard: 'ASTM D1785', preset: 'us' },
  { series: 'pn10', name: 'PN10', standard: 'EN ISO 1452-2', preset: 'metric' },
  { series: 'pn16', name: 'PN16', standard: 'EN ISO 1452-2', preset: 'metric' },
];

/** Temperature the losses are stated at [degC]. */
export const tableTemperature = 20;

const bare = { withUnit: false } as const;

export const sizesOf = (series: PipeSeries): readonly PipeSize[] =>
  pipeSizes.filter((size) => size.series === series);

const diameters = (value: number): string[] => [
  formatIn('diameter', value, 'in', { ...bare, places: 3 }),
  formatIn('diameter', value, 'mm', { ...bare, places: 1 }),
];

const flows = (value: number): string[] => [
  formatIn('flow', value, 'gpm', { ...bare, places: 1 }),
  formatIn('flow', value, 'm3/h', { ...bare, places: 2 }),
];

/** Head lost over a length, as a share of that length [-]. */
function lossShare({ bore }: PipeSize, flow: number): number {
  return darcyWeisbach({
    flow,
    bore,
    length: 1,
    roughness: smoothPlasticRoughness,
    kinematicViscosity: water(tableTemperature).kinematicViscosity,
  });
}

const percent = (share: number): string => formatIn('share', share, '%', { ...bare, places: 1 });

/** A velocity limit in words, in the system it is round in. */
export function limitText(velocity: number, preset: Preset): string {
  return formatIn('velocity', velocity, preset === 'us' ? 'ft/s' : 'm/s');
}

/** Dimensions of one family. */
export function dimensions({ series, name }: PipeFamily): FigureTable {
  return {
    caption: `${name}: outside diameter, least wall and bore`,
    headings: [
      { name: 'Size' },
      { name: 'Outside', units: ['in', 'mm'] },
      { name: 'Least wall', units: ['in', 'mm'] },
      { name: 'Bore', units: ['in', 'mm'] },
    ],
    rows: sizesOf(series).map((size) => [
      size.nominal,
      ...diameters(size.outsideDiameter),
      ...diameters(size.wall),
      ...diameters(size.bore),
    ]),
  };
}

/** What each size of a family carries at the usual limits, and what that takes. */
export function carries({ series, name, preset }: PipeFamily): FigureTable {
  const { suction, discharge } = usualVelocities(preset);
  const [slow, fast] = [limitText(suction, preset), limitText(discharge, preset)];
  const per100 = ['ft in 100 ft, m in 100 m'];
  return {
    caption: `${name}: flow at ${slow} and at ${fast}, and the head lost at it`,
    headings: [
      { name: 'Size' },
      { name: `Flow at ${slow}`, units: ['gpm', 'm³/h'] },
      { name: `Loss at ${slow}`, units: per100 },
      { name: `Flow at ${fast}`, units: ['gpm', 'm³/h'] },
      { name: `Loss at ${fast}`, units: per100 },
    ],
    rows: sizesOf(series).map((size) => [
      size.nominal,
      ...[suction, discharge].flatMap((velocity) => {
        const flow = flowAtVelocity(velocity, size.bore);
        return [...flows(flow), percent(lossShare(size, flow))];
      }),
    ]),
  };
}
