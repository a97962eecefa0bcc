import { z } from 'zod';
import { standardGravity } from '#core/base/constants.ts';
import {
  craneMultipliers,
  type EndKind,
  endCoefficients,
  type FittingKind,
  fullyTurbulentFriction,
  minorLoss,
  suddenContraction,
  suddenEnlargement,
} from '#core/hydraulics/fittings.ts';
import {
  colebrookWhite,
  darcyWeisbach,
  frictionFactor,
  laminarFriction,
} from '#core/hydraulics/friction.ts';
import { hazenWilliams } from '#core/hydraulics/hazenWilliams.ts';
import { olderTurbulentFriction, olderWall } from '#core/hydraulics/olderEditions.ts';
import {
  flowArea,
  flowAtReynolds,
  flowAtVelocity,
  meanVelocity,
  type PipeSize,
  reynoldsNumber,
} from '#core/hydraulics/pipe.ts';
import {
  greatestFiltrationFlow,
  publishedVelocityLimits,
} from '#core/hydraulics/publishedLimits.ts';
import { agreed, choice, formed, NotInGrammar, number, row } from '../grammar.ts';
import { toCanonical } from '../units.ts';
import { boreInputs, boreOf, sizeOf, viscosityInputs, viscosityOf } from './shared.ts';

type Size = Parameters<typeof sizeOf>[0];

function size(given: Size) {
  const found = sizeOf(given);
  if (found === undefined) throw new NotInGrammar('no size of pipe is named');
  return found;
}

/**
 * Two standards print other walls for the 110 mm pipe under the same keys; what the case says it is
 * tells which one is meant. The grammar has no second place like this.
 */
function wall(given: Size, what: string): number {
  const { wall: present, series, nominalMillimetres } = size(given);
  if (!/to the older standard/.test(what)) return present;
  if (series !== 'pn10' && series !== 'pn16') throw new NotInGrammar('no older standard is known');
  return olderWall(nominalMillimetres ?? 0, series);
}

const bore = (given: Size, what: string) => size(given).outsideDiameter - 2 * wall(given, what);
const area = (given: Size, what: string) => flowArea(bore(given, what));
const outside = (given: Size) => size(given).outsideDiameter;

const { nominal, schedule, outside_diameter, pn } = boreInputs;
const dimensions = {
  outside_diameter_in: outside,
  wall_in: wall,
  wall_mm: wall,
  inside_diameter_in: bore,
  inside_diameter_m: bore,
  area_m2: area,
  volume_l_per_m: area,
  volume_gal_per_100_ft: area,
};

export const pipeDimensions = [
  row({ nominal, schedule }, {}, dimensions),
  row({ outside_diameter, pn }, {}, dimensions),
];

const velocity = number('ft_s', 'm_s');
const flow = number('gpm', 'm3_h', 'm3_s');

/** The same answer in every unit of flow or velocity that the files use. */
const flows = <T>(answer: T) => ({ flow_gpm: answer, flow_m3_h: answer, flow_m3_s: answer });
const velocities = <T>(answer: T) => ({ velocity_ft_s: answer, velocity_m_s: answer });

type At<K extends string> = Size & Readonly<Record<K, number>>;
type Viscosity = Parameters<typeof viscosityOf>[0];

const atVelocity = (given: At<'velocity'>) => flowAtVelocity(given.velocity, boreOf(given));
const atReynolds = (given: At<'reynolds'> & Viscosity) =>
  flowAtReynolds(given.reynolds, boreOf(given), viscosityOf(given));
const meanSpeed = (given: At<'flow'>) => meanVelocity(given.flow, boreOf(given));
const filtrationFlow = (given: { readonly volume: number }) => greatestFiltrationFlow(given.volume);

function publishedLimit(given: Readonly<Record<'document' | 'section' | 'line', string>>): number {
  const found = publishedVelocityLimits.find(
    ({ document, section, line }) =>
      document === given.document && section === given.section && line === given.line,
  );
  if (found === undefined) throw new NotInGrammar('the document or its line is not known');
  return found.velocity;
}

const text = formed(z.string());

export const pipeVelocity = [
  row({ velocity }, boreInputs, flows(atVelocity)),
  row({ reynolds: number() }, { ...boreInputs, ...viscosityInputs }, flows(atReynolds)),
  row({ flow }, boreInputs, velocities(meanSpeed)),
  row({ document: text, section: text, line: text }, {}, velocities(publishedLimit)),
  row({ volume: number('gal') }, {}, flows(filtrationFlow)),
];

export const frictionFactorCases = [
  row(
    {
      law: choice({
        'colebrook-white': colebrookWhite,
        laminar: laminarFriction as typeof colebrookWhite,
        measured: frictionFactor,
      }),
      reynolds: number(),
    },
    { relative_roughness: number() },
    {
      friction_factor: ({ law, reynolds, relative_roughness }) =>
        law(reynolds, relative_roughness ?? 0),
    },
  ),
];

const reynolds = (given: At<'flow'> & Viscosity) =>
  reynoldsNumber(meanSpeed(given), boreOf(given), viscosityOf(given));

export const pipeFrictionLoss = [
  row(
    { flow, roughness: number('m') },
    { ...boreInputs, ...viscosityInputs },
    {
      head_loss_per_100: (given) =>
        darcyWeisbach({
          flow: given.flow,
          bore: boreOf(given),
          length: 1,
          roughness: given.roughness,
          kinematicViscosity: viscosityOf(given),
        }),
      ...velocities(meanSpeed),
      reynolds,
      friction_factor: (given) => frictionFactor(reynolds(given), given.roughness / boreOf(given)),
    },
  ),
  row(
    { flow, hazen_williams_c: number() },
    {
      ...boreInputs,
      form: choice({ rational: 'rational', '0.2083': 'gpm', '10.67': 'si', any: 'si' } as const),
    },
    {
      head_loss_per_100: ({ flow: rate, hazen_williams_c: c, form, ...given }) =>
        hazenWilliams({ flow: rate, bore: boreOf(given), length: 1, c }, form),
    },
  ),
];

const withFriction: Readonly<Record<string, FittingKind>> = {
  'standard 90 deg elbow': 'elbow90',
  'standard 45 deg elbow': 'elbow45',
  'standard tee, flow through run': 'teeRun',
  'standard tee, flow through branch': 'teeBranch',
  'close return bend': 'returnBend',
  '90 deg bend r/D = 1.5': 'elbow90Long',
  '90 deg bend r/D = 3': 'bend90Wide',
  'gate valve, full bore': 'gateValve',
  'ball valve, full bore': 'ballValve',
  'globe valve': 'globeValve',
  'angle valve': 'angleValve',
  'swing check valve, clearway': 'swingCheckValveClearway',
  'swing check valve, conventional': 'swingCheckValve',
  'butterfly valve 2-8 in': 'butterflyValve',
};

const ends: Readonly<Record<string, EndKind>> = {
  'square-edged inlet': 'squareInlet',
  'bell-mouth inlet': 'bellMouthInlet',
  'inward projecting pipe, TP-410': 'projectingInlet',
  'exit into a pool': 'exit',
};

/** Losses in series add: at a velocity head of 1 m each loss is its own K. */
const sum = (list: readonly number[]) =>
  list.reduce((total, each) => total + minorLoss(each, Math.sqrt(2 * standardGravity)), 0);

const editions: Readonly<Record<string, (size: PipeSize) => number>> = {
  '2009': ({ bore: inside }) => fullyTurbulentFriction(inside),
  older: ({ nominalInches = 0 }) => olderTurbulentFriction(nominalInches),
};

/** Crane's figures are for clean commercial steel. */
const steelRoughness = toCanonical('roughness_in', 0.0018);

function turbulentFriction(
  given: Readonly<Record<'inside_diameter' | 'relative_roughness', number>>,
) {
  const { inside_diameter, relative_roughness } = given;
  agreed('relative_roughness', relative_roughness, steelRoughness / inside_diameter);
  return fullyTurbulentFriction(inside_diameter);
}

const loss = ({ k, velocity: at }: { readonly k: number; readonly velocity: number }) =>
  minorLoss(k, at);

export const minorLosses = [
  row(
    { nominal, edition: choice(editions) },
    {},
    {
      // Crane's sizes are those of Schedule 40.
      friction_factor_turbulent: ({ edition, ...given }) =>
        edition(size({ ...given, schedule: 40 })),
    },
  ),
  row(
    { nominal, inside_diameter: number('m'), relative_roughness: number() },
    {},
    {
      friction_factor_turbulent: turbulentFriction,
    },
  ),
  row(
    { fitting: choice(withFriction), friction_factor_turbulent: number() },
    {},
    {
      k: ({ fitting, friction_factor_turbulent }) =>
        craneMultipliers[fitting] * friction_factor_turbulent,
    },
  ),
  row({ fitting: choice(ends) }, {}, { k: ({ fitting }) => endCoefficients[fitting] }),
  row(
    { diameter_1: number('m'), diameter_2: number('m') },
    {},
    {
      k: ({ diameter_1, diameter_2 }) =>
        diameter_1 < diameter_2
          ? suddenEnlargement(diameter_1, diameter_2)
          : suddenContraction(diameter_1, diameter_2),
    },
  ),
  row({ k_list: formed(z.array(z.number())) }, {}, { k: ({ k_list }) => sum(k_list) }),
  row({ k: number(), velocity }, {}, { head_loss_ft: loss, head_loss_m: loss }),
];
