import { standardGravity } from '#core/base/constants.ts';
import {
  craneMultipliers,
  type EndKind,
  type FittingKind,
  fittingK,
  fullyTurbulentFriction,
  minorLoss,
  suddenContraction,
  suddenEnlargement,
} from '#core/hydraulics/fittings.ts';
import {
  bendMultiplier,
  handbookValves,
  mitreMultiplier,
  roundedInletK,
} from '#core/hydraulics/handbookFittings.ts';
import { olderTurbulentFriction } from '#core/hydraulics/olderEditions.ts';
import { meanVelocity, type PipeSize, pipeSizes } from '#core/hydraulics/pipe.ts';
import { isObject } from '../caseFile.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Value } from '../keys.ts';
import type { Family } from '../rule.ts';
import { fittingWords } from './fittingWords.ts';
import { boreInputs, boreNeed, boreOf, densityOf } from './shared.ts';

/** "tee_branch" and "elbow-90" are words too; "r/d" and "three-way" stay. */
const fittingText = (given: Given): string =>
  given
    .text(given.has('fitting') ? 'fitting' : 'name')
    .replaceAll('_', ' ')
    .replace(/(?<=[a-z])-(?=\d)|(?<=\d)-(?=[a-z])/g, ' ')
    .trim();

function kindOf(given: Given): FittingKind | EndKind {
  const text = fittingText(given);
  const found = fittingWords.find(([pattern]) => pattern.test(text));
  if (found === undefined) throw new NotUnderstood(`the fitting "${text}" is not known`);
  return found[1];
}

function isCrane(kind: FittingKind | EndKind): kind is FittingKind {
  return Object.hasOwn(craneMultipliers, kind);
}

/** Rows of the handbook beyond the fittings of the pad; undefined for those. */
function otherMultiplier(text: string): number | undefined {
  const [, radius] = /bend.*r\/d *= *(\d+(?:\.\d+)?)/.exec(text) ?? [];
  if (radius !== undefined) return bendMultiplier(Number(radius));
  const [, angle] = /^(\d+).*(?:mitre|miter)/.exec(text) ?? [];
  if (angle !== undefined) return mitreMultiplier(Number(angle));
  return valveWords.find(([pattern]) => pattern.test(text))?.[1];
}

const valveWords: readonly (readonly [RegExp, number])[] = [
  [/butterfly valve.*\b1[0-4]\b/, handbookValves.largeButterflyValve],
  [/butterfly valve.*\b(1[6-9]|2[0-4])\b/, handbookValves.widestButterflyValve],
  [/foot valve.*poppet/, handbookValves.footValvePoppet],
  [/foot valve.*hinged/, handbookValves.footValveHinged],
  [/lift check.*angle/, handbookValves.liftCheckValveAngle],
  [/lift check/, handbookValves.liftCheckValve],
  [/^(?!.*(three|3).?way).*plug (valve|cock)/, handbookValves.plugValve],
];

/** Equal fittings in a row add up. */
const countOf = (given: Given): number => given.maybe('count') ?? 1;

function fittingCoefficient(given: Given): number {
  return countOf(given) * oneFitting(given);
}

function oneFitting(given: Given): number {
  const [, edge] = /(?:inlet|entrance).*r\/d *= *(\d*\.?\d+)/.exec(fittingText(given)) ?? [];
  if (edge !== undefined) return roundedInletK(Number(edge));
  const other = otherMultiplier(fittingText(given));
  if (other !== undefined) return other * turbulentFrictionFor(given);
  const kind = kindOf(given);
  if (!isCrane(kind)) return fittingK(kind, given.has('bore') ? boreOf(given) : 0.05);
  return craneMultipliers[kind] * turbulentFrictionFor(given);
}

/** As given, else that of the size by the edition named. */
function turbulentFrictionFor(given: Given): number {
  const stated = given.maybe('turbulentFriction');
  if (stated !== undefined) return stated;
  // Crane's sizes are those of Schedule 40, so that a size alone will do.
  const isSizeAlone =
    given.has('nominal') && !['schedule', 'pn', 'bore'].some((id) => given.has(id));
  return given.has('edition') || isSizeAlone
    ? turbulentFriction(given)
    : fullyTurbulentFriction(boreOf(given));
}

/** Crane's figures are for clean commercial steel of Schedule 40. */
function craneSize(given: Given): PipeSize {
  const nominal = given.number('nominal');
  const found = pipeSizes.find(
    ({ series, nominalInches }) =>
      series === 'sch40' && Math.abs((nominalInches ?? 0) * 0.0254 - nominal) < 1e-6,
  );
  if (found === undefined) throw new NotUnderstood('the size is not in the table');
  return found;
}

const steelRoughness = 0.0018 * 0.0254;

/** The present edition prints what its formula gives; older printings a table of their own. */
function isOlderEdition(given: Given): boolean {
  const edition = given.has('edition') ? given.text('edition') : '2009';
  if (!/^(2009|201\d|202\d|older)$/.test(edition)) {
    throw new NotUnderstood(`the edition ${edition} is not known`);
  }
  return edition === 'older';
}

function turbulentFriction(given: Given): number {
  if (isOlderEdition(given)) return olderTurbulentFriction(craneSize(given).nominalInches ?? 0);
  const bore = given.has('bore') ? given.number('bore') : craneSize(given).bore;
  const relative = given.maybe('relativeRoughness');
  if (relative !== undefined && Math.abs((relative * bore) / steelRoughness - 1) > 1e-6) {
    throw new NotUnderstood('the roughness is not that of commercial steel');
  }
  return fullyTurbulentFriction(bore);
}

const first = (given: Given): number => given.maybe('diameter#1') ?? given.number('bore#1');
const second = (given: Given): number => given.maybe('diameter#2') ?? given.number('bore#2');

/** On the velocity in the smaller bore, as both laws are written, unless the case names the larger. */
function changeOfBore(given: Given): number {
  const [before, after] = [first(given), second(given)];
  const k = before < after ? suddenEnlargement(before, after) : suddenContraction(before, after);
  const ratio = Math.max(before, after) / Math.min(before, after);
  return /larger/i.test(given.what) ? k * ratio ** 4 : k;
}

function coefficient(given: Given): number {
  if (given.has('k')) return given.number('k');
  if (given.has('kList')) return sumOfCoefficients(given);
  if (given.has('fittings')) return sumOfFittings(given);
  return fittingCoefficient(given);
}

/** Losses in series add: at a velocity head of 1 m each loss is its own K. */
function sumOfCoefficients(given: Given): number {
  const velocity = Math.sqrt(2 * standardGravity);
  return given.numbers('kList').reduce((sum, k) => sum + minorLoss(k, velocity), 0);
}

/** The multiplier of f_T is the same at any size. */
function diameters(given: Given): number {
  const isSized = ['turbulentFriction', ...boreInputs].some((id) => given.has(id));
  const sized = isSized
    ? given
    : given.inside({ ...given.rawOf(given.ids), f_t: 0.02 }, [...given.ids, 'turbulentFriction']);
  return fittingCoefficient(sized) / turbulentFrictionFor(sized);
}

/** One of a group: words, [words, count] or an object; what they share stands beside the group. */
function fittingIn(given: Given, value: Value): Given {
  const common = given.rawOf(['turbulentFriction', 'edition', ...boreInputs]);
  const [fitting, count] = Array.isArray(value) ? (value as readonly Value[]) : [value, 1];
  const own = isObject(value) ? value : { fitting: fitting ?? null, count: count ?? null };
  const fields = ['fitting', 'name', 'k', 'count', 'turbulentFriction', 'edition', ...boreInputs];
  return given.inside({ ...common, ...own }, fields);
}

/** A group as a list, or as a map of words and counts. */
function group(given: Given): readonly Given[] {
  const value = given.value('fittings');
  const list = isObject(value) ? Object.entries(value) : given.list('fittings');
  return list.map((each) => fittingIn(given, each));
}

const inGroup = (one: Given): number =>
  one.has('k') ? countOf(one) * one.number('k') : fittingCoefficient(one);

/** Losses of a group add. */
const sumOfFittings = (given: Given): number =>
  group(given).reduce((sum, one) => sum + inGroup(one), 0);

/** Length of pipe that loses as much as fittings: K over the friction of the pipe, in bores. */
function lengthAsMuch(given: Given): number {
  const friction = given.maybe('frictionFactor') ?? turbulentFrictionFor(given);
  return (coefficient(given) * boreOf(given)) / friction;
}

function loss(given: Given): number {
  const velocity = given.maybe('velocity') ?? meanVelocity(given.number('flow'), boreOf(given));
  return minorLoss(coefficient(given), velocity);
}

const groupInputs = ['turbulentFriction', 'edition', 'count', ...boreInputs];

export const fittingsFamily: Family = {
  name: 'fittings',
  quantity: /fitting|minor loss|loss coefficient/i,
  rules: [
    {
      what: 'fully turbulent friction of a size',
      needs: ['nominal|bore'],
      takes: ['edition', 'relativeRoughness', 'schedule'],
      gives: { turbulentFriction },
      when: (given) => !given.has('schedule') || given.text('schedule') === '40',
    },
    {
      what: 'coefficient of a fitting',
      needs: ['fitting'],
      takes: ['turbulentFriction', 'edition', 'count', ...boreInputs],
      gives: {
        k: fittingCoefficient,
        diameters,
      },
    },
    {
      what: 'sudden change of bore',
      needs: ['diameter#1|bore#1', 'diameter#2|bore#2'],
      gives: { k: changeOfBore },
    },
    {
      what: 'head lost in a change of bore',
      needs: ['diameter#1|bore#1', 'diameter#2|bore#2', 'velocity'],
      gives: { headLoss: (given) => minorLoss(changeOfBore(given), given.number('velocity')) },
    },
    {
      what: 'length of pipe that loses as much',
      needs: ['k|fitting|fittings', boreNeed],
      takes: ['frictionFactor', ...groupInputs],
      gives: { equivalentLength: lengthAsMuch },
    },
    {
      what: 'length as much by the bores it is long',
      needs: ['diameters', boreNeed],
      takes: ['count', ...boreInputs],
      gives: {
        equivalentLength: (given) => countOf(given) * given.number('diameters') * boreOf(given),
      },
    },
    {
      what: 'coefficient of a group of fittings',
      needs: ['fittings'],
      takes: groupInputs,
      gives: { k: sumOfFittings },
    },
    {
      what: 'sum of coefficients',
      needs: ['kList'],
      takes: ['velocity'],
      gives: { k: sumOfCoefficients },
    },
    {
      what: 'head lost at a velocity',
      needs: ['k|kList|fitting|fittings', 'velocity'],
      takes: ['turbulentFriction', 'edition', 'count', ...boreInputs, 'density', 'temperature'],
      gives: {
        headLoss: loss,
        pressureLoss: (given) => loss(given) * densityOf(given) * standardGravity,
      },
    },
    {
      what: 'head lost at a flow',
      needs: ['k|kList|fitting|fittings', 'flow', boreNeed],
      takes: ['turbulentFriction', 'edition', 'count', ...boreInputs, 'density', 'temperature'],
      gives: {
        headLoss: loss,
        pressureLoss: (given) => loss(given) * densityOf(given) * standardGravity,
      },
    },
  ],
};
