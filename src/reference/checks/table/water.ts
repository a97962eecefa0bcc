import {
  chlorineMass,
  productMass,
  productVolume,
  saltCellHours,
  thumbChlorinePounds,
  tradePercentConcentration,
} from '#core/water/chlorine.ts';
import {
  heaterHours,
  heatingEnergy,
  thumbHeatBtu,
  thumbHeaterBtuPerHour,
} from '#core/water/heating.ts';
import {
  filteredShare,
  turnoversForShare,
  turnoversInRun,
  turnoverTime,
} from '#core/water/mixing.ts';
import {
  liquidDensity,
  liquidSpecificHeat,
  liquidViscosity,
  vapourPressure,
} from '#core/water/water.ts';
import { agreed, need, number, row } from '../grammar.ts';
import { fromCanonical, toCanonical } from '../units.ts';
import { densityOf } from './shared.ts';

export const waterProperties = [
  row(
    { temperature: number('c', 'f') },
    {},
    {
      density_kg_m3: ({ temperature }) => liquidDensity(temperature),
      dynamic_viscosity_pa_s: ({ temperature }) => liquidViscosity(temperature),
      // As in `water`, whose own range is narrower than that of the printed values.
      kinematic_viscosity_m2_s: ({ temperature }) =>
        liquidViscosity(temperature) / liquidDensity(temperature),
      vapour_pressure_pa: ({ temperature }) => vapourPressure(temperature),
      vapour_pressure_psi: ({ temperature }) => vapourPressure(temperature),
    },
  ),
];

const run = { volume: number('m3', 'gal'), flow: number('m3_h', 'gpm') };
const filter = { filter_efficiency: number() };

export const mixing = [
  row({ turnovers: number() }, filter, {
    share: ({ turnovers, filter_efficiency }) => filteredShare(turnovers, filter_efficiency),
  }),
  row({ ...run, share: number() }, filter, {
    hours: ({ volume, flow, share, filter_efficiency }) =>
      turnoversForShare(share, filter_efficiency) * turnoverTime(volume, flow),
  }),
  row({ ...run, hours: number() }, filter, {
    turnovers: ({ volume, flow, hours }) => turnoversInRun(volume, flow, hours),
    share: ({ volume, flow, hours, filter_efficiency }) =>
      filteredShare(turnoversInRun(volume, flow, hours), filter_efficiency),
  }),
];

const dose = { volume: number('gal', 'm3'), rise: number('mg_l') };
type Dose = { readonly volume: number; readonly rise: number };
const chlorine = ({ volume, rise }: Dose) => chlorineMass(volume, rise);

const thumbChlorine = ({ volume, rise, factor }: Dose & { readonly factor: number }) => {
  const [gallons, ppm] = [fromCanonical('volume_gal', volume), fromCanonical('rise_mg_l', rise)];
  return toCanonical('mass_lb', thumbChlorinePounds(gallons, ppm, factor));
};

const liquid = (given: Dose & { readonly trade_percent: number }) =>
  productVolume(chlorine(given), tradePercentConcentration(given.trade_percent * 100));

const warmed = {
  heater: number('kw', 'btu_per_h'),
  efficiency: number(),
  density: number('kg_m3'),
  specific_heat: number('j_kg_k'),
};

interface Warming {
  readonly volume: number;
  readonly temperature_rise?: number | undefined;
  readonly temperature?: number | undefined;
  readonly target?: number | undefined;
  readonly heater?: number | undefined;
  readonly efficiency?: number | undefined;
  readonly density?: number | undefined;
  readonly specific_heat?: number | undefined;
}

const riseOf = ({ temperature_rise, temperature, target }: Warming): number =>
  temperature_rise ?? need(target, 'target') - need(temperature, 'temperature');

/** Properties stand for the whole warming, so they count at its middle. */
function heat(given: Warming): number {
  const { volume, temperature: start, density, specific_heat } = given;
  const middle = start === undefined ? undefined : start + riseOf(given) / 2;
  const usual = middle === undefined ? undefined : liquidSpecificHeat(middle);
  return heatingEnergy(volume, riseOf(given), {
    density: densityOf({ density, temperature: middle }),
    specificHeat: agreed('specific_heat', specific_heat, usual),
  });
}

const thumbHeat = (given: Warming): number => {
  const rise = fromCanonical('temperature_rise_f', riseOf(given));
  const gallons = fromCanonical('volume_gal', given.volume);
  return toCanonical('heat_btu', thumbHeatBtu(gallons, rise));
};

const heated = {
  energy_kwh: heat,
  energy_btu: heat,
  hours: (given: Warming) =>
    toCanonical(
      'time_h',
      heaterHours(heat(given), need(given.heater, 'heater'), given.efficiency ?? 1),
    ),
  trade_8_34_btu: thumbHeat,
  trade_error_percent: (given: Warming) => thumbHeat(given) / heat(given) - 1,
};

const { volume } = dose;

export const chlorineAndHeat = [
  row(dose, {}, { mass_g: chlorine, mass_lb: chlorine }),
  row(
    { ...dose, factor: number() },
    {},
    {
      mass_g: thumbChlorine,
      mass_lb: thumbChlorine,
      error_percent: (given) => thumbChlorine(given) / chlorine(given) - 1,
    },
  ),
  row(
    { ...dose, available_chlorine: number('share') },
    {},
    {
      product_g: (given) => productMass(chlorine(given), given.available_chlorine),
    },
  ),
  row(
    { ...dose, trade: number('percent') },
    {},
    {
      product_l: ({ trade, ...given }) => liquid({ ...given, trade_percent: trade }),
      product_gal: ({ trade, ...given }) => liquid({ ...given, trade_percent: trade }),
    },
  ),
  row(
    { ...dose, cell: number('g_per_h') },
    { output: number('share') },
    {
      hours: (given) =>
        toCanonical('time_h', saltCellHours(chlorine(given), given.cell, given.output ?? 1)),
    },
  ),
  row({ volume, temperature: number('c'), target: number('c') }, warmed, heated),
  row({ volume, temperature_rise: number('c', 'f') }, warmed, heated),
  row(
    { area: number('ft2'), temperature_rise: number('c', 'f') },
    {},
    {
      heater_btu_per_h: ({ area, temperature_rise }) => {
        const degrees = fromCanonical('temperature_rise_f', temperature_rise);
        const size = thumbHeaterBtuPerHour(fromCanonical('area_ft2', area), degrees);
        return toCanonical('heater_btu_per_h', size);
      },
    },
  ),
];
