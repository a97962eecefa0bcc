import { pressureHead, roundedDynamicHead, totalDynamicHead } from '#core/fit/gauges.ts';
import { liquidDensity } from '#core/water/water.ts';
import { need, number, row } from '../grammar.ts';
import { fromCanonical, toCanonical } from '../units.ts';
import { converted, densityInputs, densityOf } from './shared.ts';

type Water = Parameters<typeof densityOf>[0];
type Factor = { readonly factor: number };

const pressure = number('psi', 'kpa');
const vacuum = number('inhg');

/** The same answer in every unit that the files use. */
const heads = <T>(answer: T) => ({ head_ft: answer, head_m: answer });

/** The exact head of a reading, and the trade's rounded factor, in feet, beside it. */
function readings<K extends 'pressure' | 'vacuum'>(name: K, unit: string) {
  type Reading = Water & Readonly<Record<K, number>>;
  const exact = (given: Reading) => pressureHead(given[name], densityOf(given));
  const rounded = (given: Reading & Factor) =>
    toCanonical('head_ft', fromCanonical(unit, given[name]) * given.factor);
  const error = (given: Reading & Factor) => rounded(given) / exact(given) - 1;
  return { exact: heads(exact), rounded: { ...heads(rounded), error_percent: error } };
}

const byPressure = readings('pressure', 'pressure_psi');
const byVacuum = readings('vacuum', 'vacuum_inhg');

const gauges = {
  discharge: number('psi'),
  vacuum,
};
const around = {
  gauge_height_difference: number('ft'),
  ...densityInputs,
  discharge_bore: number('in'),
  suction_bore: number('in'),
  flow: number('gpm'),
};
type Pair = Readonly<Record<keyof typeof gauges, number>> & {
  readonly [K in keyof typeof around]?: number | undefined;
};
function pairOf(given: Pair) {
  const { flow, discharge_bore: dischargeBore, suction_bore: suctionBore } = given;
  // A flow bears on nothing where no bore is given.
  if ((dischargeBore ?? suctionBore) !== undefined) {
    need(dischargeBore, 'discharge_bore');
    need(suctionBore, 'suction_bore');
    need(flow, 'flow');
  }
  return {
    dischargePressure: given.discharge,
    suctionVacuum: given.vacuum,
    gaugeHeight: given.gauge_height_difference ?? 0,
    density: densityOf(given),
    ...{ flow, dischargeBore, suctionBore },
  };
}

export const hydraulicsConversions = [
  row({ pressure }, densityInputs, byPressure.exact),
  row({ vacuum }, densityInputs, byVacuum.exact),
  row({ pressure: number('psi'), factor: number() }, densityInputs, byPressure.rounded),
  row({ vacuum, factor: number() }, densityInputs, byVacuum.rounded),
  row(
    { pressure: number('psi') },
    {},
    {
      head_ft_at_4_c: (given) => pressureHead(given.pressure, liquidDensity(4)),
      pressure_kpa: (given) => converted(given.pressure, ['pressure', 'psi'], ['pressure', 'kpa']),
      pressure_bar: (given) => converted(given.pressure, ['pressure', 'psi'], ['pressure', 'bar']),
      inhg: (given) => converted(given.pressure, ['pressure', 'psi'], ['vacuum', 'inhg']),
    },
  ),
  row(
    { vacuum },
    {},
    {
      pressure_kpa: (given) => converted(given.vacuum, ['vacuum', 'inhg'], ['vacuum', 'kpa']),
      pressure_bar: (given) => converted(given.vacuum, ['vacuum', 'inhg'], ['pressure', 'bar']),
    },
  ),
  row(gauges, around, {
    total_dynamic_head_ft: (given) => totalDynamicHead(pairOf(given)),
    with_trade_factors_ft: (given) => roundedDynamicHead(pairOf(given)),
  }),
];
