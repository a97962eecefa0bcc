import { z } from 'zod';
import { meanVelocity } from '#core/hydraulics/pipe.ts';
import {
  boosterPoint,
  complianceDate,
  curveCHead,
  curveCPoint,
  energyFactor,
  freezeProtection,
  hydraulicHorsepower,
  leastWef,
  type PumpVariety,
  variableSpeedPoints,
  weightedEnergyFactor,
} from '#core/pump/energyFactor.ts';
import {
  atmosphericPressure,
  geopotentialAltitude,
  npshAvailable,
  npshFromVacuum,
} from '#core/pump/npsh.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { bestMileageRatio, cubePower, wirePower } from '#core/pump/power.ts';
import { affinityFlow, affinityHead, affinityPower } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { choice, formed, NotInGrammar, need, number, row } from '../grammar.ts';
import { toCanonical } from '../units.ts';
import { type CurveUnits, coefficientsOf, evaluate, lossPart, polynomialPump } from './curves.ts';

const usUnits: CurveUnits = { flow: toCanonical('q_gpm', 1), head: toCanonical('h_ft', 1) };
const written = formed(z.string(), 'ft');
const speedRatio = { speed: number('ratio') };

type Law = (value: number, from: number, to: number) => number;
type Scaling = Readonly<Record<'speed_1' | 'speed_2', number>> &
  Partial<Readonly<Record<'flow_1' | 'head_1' | 'power_1', number | undefined>>>;

const scaled = (name: 'flow_1' | 'head_1' | 'power_1', law: Law) => (given: Scaling) =>
  law(need(given[name], name), given.speed_1, given.speed_2);

interface WrittenPair {
  readonly pump_head: string;
  readonly system_head: string;
  readonly static_head?: number | undefined;
}

/** Flow where the written curves meet at a speed; null where no water moves. */
function flowAt(given: WrittenPair, ratio: number): number | null {
  const pump = polynomialPump(coefficientsOf(given.pump_head, usUnits));
  const [staticHead = 0, ...losses] = coefficientsOf(given.system_head, usUnits, given.static_head);
  const discharge = losses.flatMap((k, place) =>
    k === 0 ? [] : [lossPart(`term ${place + 1}`, k, place + 1)],
  );
  // With no pipe in the circuit the properties of the water bear on nothing.
  const circuit = { suction: [], discharge, staticHead, water: water(20) };
  const point = operatingPoint(pump, circuit, ratio);
  return point.kind === 'flowing' ? point.flow : null;
}

/** Asked at a speed too slow to lift any water, the core names the speed that would. */
function leastRatio(shutoffHead: number, staticHead: number): number {
  const pump = polynomialPump([shutoffHead, 0, -shutoffHead * 1e4]);
  const circuit = { suction: [], discharge: [], staticHead, water: water(20) };
  const point = operatingPoint(pump, circuit, 1e-3);
  if (point.kind !== 'noFlow') throw new NotInGrammar('water moves at any speed');
  return point.leastRatio;
}

type Draw = Readonly<Record<'fixed_power' | 'cube_power', number>>;
const lawOf = ({ fixed_power: fixed, cube_power: cube }: Draw) => ({ fixed, cube });
const powerAt = (given: Draw, ratio: number): number =>
  wirePower(cubePower(lawOf(given)), 0.001 * ratio, ratio);
const draw = { fixed_power: number('w'), cube_power: number('w') };

export const affinityLaws = [
  row(
    { speed_1: number('rpm'), speed_2: number('rpm') },
    { flow_1: number('gpm'), head_1: number('ft'), power_1: number('hp', 'w') },
    {
      flow_2_gpm: scaled('flow_1', affinityFlow),
      head_2_ft: scaled('head_1', affinityHead),
      power_2_hp: scaled('power_1', affinityPower),
      power_2_w: scaled('power_1', affinityPower),
    },
  ),
  row(
    { pump_head: written, system_head: written, ...speedRatio },
    { static_head: number('ft') },
    {
      flow_gpm: (given) => flowAt(given, given.speed),
      flow_if_proportional_gpm: (given) => {
        const full = flowAt(given, 1);
        return full === null ? null : affinityFlow(full, 1, given.speed);
      },
    },
  ),
  row(
    { shutoff_head: number('ft'), static_head: number('ft') },
    {},
    {
      speed_ratio: ({ shutoff_head, static_head }) => leastRatio(shutoff_head, static_head),
    },
  ),
  row(
    draw,
    {},
    {
      speed_ratio: (given) => bestMileageRatio(lawOf(given)),
      power_w: (given) => powerAt(given, bestMileageRatio(lawOf(given))),
    },
  ),
  row(
    { ...draw, ...speedRatio },
    {},
    {
      power_w: (given) => powerAt(given, given.speed),
      power_if_cube_w: (given) => affinityPower(powerAt(given, 1), 1, given.speed),
    },
  ),
];

const places = {
  geopotential_altitude: number('m'),
  geometric_altitude: number('m'),
  altitude: number('ft'),
};
type Place = { readonly [K in keyof typeof places]?: number | undefined };

function atmosphere({ geopotential_altitude, geometric_altitude, altitude }: Place): number {
  const geometric =
    geometric_altitude === undefined ? undefined : geopotentialAltitude(geometric_altitude);
  const [height, ...others] = [geopotential_altitude, geometric, altitude].filter(
    (each) => each !== undefined,
  );
  if (others.length > 0) throw new NotInGrammar('the altitude is stated twice');
  return atmosphericPressure(need(height, 'geopotential_altitude'));
}

/** The same answer in every unit that the files use. */
const available = <T>(answer: T) => ({ npsh_available_m: answer, npsh_available_ft: answer });

type Suction = Place & Readonly<Record<'temperature' | 'suction_head' | 'friction', number>>;
const fromSurface = (given: Suction) =>
  npshAvailable({
    atmosphere: atmosphere(given),
    water: water(given.temperature),
    surfaceAbovePump: given.suction_head,
    suctionLoss: given.friction,
  });

type Gauged = Place &
  Readonly<Record<'temperature' | 'vacuum' | 'inside_diameter' | 'flow', number>>;
const fromGauge = (given: Gauged) =>
  npshFromVacuum({
    atmosphere: atmosphere(given),
    water: water(given.temperature),
    suctionVacuum: given.vacuum,
    velocity: meanVelocity(given.flow, given.inside_diameter),
  });

export const npsh = [
  row({}, places, { pressure_pa: atmosphere, pressure_psi: atmosphere }),
  row(
    { temperature: number('c'), suction_head: number('m'), friction: number('m') },
    places,
    available(fromSurface),
  ),
  row(
    {
      temperature: number('c'),
      vacuum: number('inhg'),
      inside_diameter: number('in'),
      flow: number('gpm'),
    },
    places,
    available(fromGauge),
  ),
];

/** The core's rule counts 1000 US gal per kWh, the same number as US gal per Wh. */
const wef = (value: number | null) =>
  value === null ? null : toCanonical('wef_kgal_per_kwh', value);

function top(given: { readonly pump_head: string }) {
  const coefficients = coefficientsOf(given.pump_head, usUnits);
  return curveCPoint((flow) => evaluate(coefficients, flow));
}

type VariableSpeed = { readonly pump_head: string } & Readonly<
  Record<'power_low' | 'power_high', number>
>;
type SingleSpeed = { readonly pump_head: string; readonly power: number };

function rated(given: VariableSpeed) {
  const { flow, hydraulicHorsepower: horsepower } = top(given);
  return variableSpeedPoints(flow, horsepower);
}

const variableWef = (given: VariableSpeed): number =>
  weightedEnergyFactor([
    { ...rated(given).low, power: given.power_low },
    { ...rated(given).high, power: given.power_high },
  ]);

const onePoint = (flow: number, power: number): number =>
  weightedEnergyFactor([{ flow, power, weight: boosterPoint.weight }]);

const singleWef = (given: SingleSpeed): number => onePoint(top(given).flow, given.power);

/** What a pump's curve gives whatever its drive; its class is the common, self-priming one. */
function classed<G extends { readonly pump_head: string }>(factor: (given: G) => number) {
  const least = (given: G) => leastWef('selfPriming', top(given).hydraulicHorsepower);
  return {
    hydraulic_horsepower: (given: G) => top(given).hydraulicHorsepower,
    wef_kgal_per_kwh: (given: G) => wef(factor(given)),
    least_wef_kgal_per_kwh: (given: G) => wef(least(given)),
    passes: (given: G) => {
      const wanted = least(given);
      return wanted === null ? null : factor(given) >= wanted;
    },
  };
}

const varieties: Readonly<Record<string, PumpVariety>> = {
  'self-priming': 'selfPriming',
  'non-self-priming': 'nonSelfPriming',
  'pressure cleaner booster': 'pressureCleanerBooster',
};

const isFreeze = { paragraph: choice({ '431.465(h)': true, '431.465(f)': false }) };
const forFreeze = (value: number) => (given: { readonly paragraph: boolean }) => {
  if (!given.paragraph) throw new NotInGrammar('paragraph (f) is about the date');
  return value;
};

export const energyFactors = [
  row(
    { variety: choice(varieties), hydraulic_horsepower: number() },
    {},
    {
      wef_kgal_per_kwh: ({ variety, hydraulic_horsepower }) =>
        wef(leastWef(variety, hydraulic_horsepower)),
    },
  ),
  row(
    isFreeze,
    {},
    {
      air_temperature_f: forFreeze(toCanonical('air_f', freezeProtection.airTemperatureF)),
      run_time_h: forFreeze(toCanonical('time_h', freezeProtection.runTimeHours)),
      speed_ratio: forFreeze(freezeProtection.speedRatio),
      date: () => complianceDate,
    },
  ),
  row(
    { flow: number('gpm'), power: number('w') },
    {},
    {
      energy_factor_gal_per_wh: ({ flow, power }) => wef(energyFactor(flow, power)),
      wef_kgal_per_kwh: ({ flow, power }) => wef(onePoint(flow, power)),
    },
  ),
  row(
    { flow: number('gpm'), head: number('ft') },
    { divisor: number() },
    {
      hydraulic_horsepower: ({ flow, head, divisor }) => hydraulicHorsepower(flow, head, divisor),
    },
  ),
  row({ flow: number('gpm') }, {}, { head_ft: ({ flow }) => curveCHead(flow) }),
  row(
    { pump_head: written, power: number('w') },
    {},
    {
      flow_gpm: (given) => top(given).flow,
      head_ft: (given) => top(given).head,
      ...classed(singleWef),
    },
  ),
  row(
    { pump_head: written, power_low: number('w'), power_high: number('w') },
    {},
    {
      flow_low_gpm: (given) => rated(given).low.flow,
      head_low_ft: (given) => rated(given).low.head,
      flow_high_gpm: (given) => rated(given).high.flow,
      head_high_ft: (given) => rated(given).high.head,
      ...classed(variableWef),
    },
  ),
];
