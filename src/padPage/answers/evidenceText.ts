/** How the answers are known, in words: bands, the reading to take next, residuals, contradictions. */

import type { Instrument, Narrowing, PadResidual, ReadQuantity } from '#core/fit/padEvidence.ts';
import type { Pad } from '#pad/document/schema.ts';
import { assumptionSentence } from '#pad/messages/assumptions.ts';
import { isUnsaid, type Problem, problemSentence } from '#pad/messages/problems.ts';
import { contradictionProblem } from '#pad/model/assembleReadings.ts';
import type { Answer } from '#pad/model/missing.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import type { Quantity } from '#units/quantities.ts';
import { type Scene, settable } from './scene.ts';
import { joined, percent, rpm } from './text.ts';

/** Half the width of a band as a share: "± 12 %". */
const plusMinus = (width: number) => `±\u00a0${percent(width / 2)}`;

type Banded = keyof Scene['fit']['narrowingOf'];

/** How wide the bands are over the whole range of speeds. */
export function widthText({ fit }: Scene): string {
  const width = (of: Banded) => plusMinus(fit.narrowingOf[of].widthBefore);
  return `Over the whole range of speeds the flow is known to about ${width('flow')}, the head to ${width('head')} and the power to ${width('power')}; nineteen times in twenty the truth should lie within.`;
}

const takes: Readonly<Record<Instrument, string>> = {
  flowMeter: 'Read a flow meter',
  filterGauge: 'Read the filter gauge',
  vacuumGauge: 'Read a vacuum gauge before the pump',
  wattMeter: 'Read the watts',
};

/** A reading that narrows a band by less than this share is not worth the walk. */
const worthIt = 0.1;

/** Which reading would narrow each band most, the widest band first. */
export function narrowingTexts(scene: Scene, units: UnitChoice): readonly string[] {
  const { fit, speeds } = scene;
  const all = (['power', 'flow', 'head'] as const)
    .map((of) => ({ of, ...fit.narrowingOf[of] }))
    .filter(({ widthBefore, widthAfter }) => widthAfter < widthBefore * (1 - worthIt))
    .filter(({ widthBefore, widthAfter }) => plusMinus(widthAfter) !== plusMinus(widthBefore))
    .sort((a, b) => b.widthBefore - a.widthBefore);
  const sentence = ({
    of,
    instrument,
    ratio,
    widthBefore,
    widthAfter,
  }: Narrowing & { of: Banded }) => {
    const at = rpm(settable(scene, ratio * speeds.reference - scene.step / 2), units);
    return `${takes[instrument]} at ${at}: the band on ${of} would shrink from ${plusMinus(widthBefore)} to ${plusMinus(widthAfter)}.`;
  };
  return all.map(sentence);
}

/** What was taken for granted, each in a sentence. */
export function assumptionTexts({ known }: Scene, units: UnitChoice): readonly string[] {
  return known.assumptions.map((each) => assumptionSentence(each, units));
}

const fieldNames: Readonly<Record<string, string>> = {
  flow: 'flow meter',
  filterPressure: 'filter gauge',
  suctionVacuum: 'vacuum gauge',
  power: 'watts',
  current: 'amperes',
};

function readingName({ path }: Problem, pad: Pad, units: UnitChoice): string {
  const [, place, field] = path;
  const speed = typeof place === 'number' ? pad.readings[place]?.speed : undefined;
  const named = speed == null ? 'A reading' : `Reading at ${rpm(speed, units)}`;
  const what = fieldNames[field ?? ''];
  return what === undefined ? named : `${named}, ${what}`;
}

/** Readings that cannot be right together, each named by its speed. */
export function contradictionTexts({ fit, pad }: Scene, units: UnitChoice): readonly string[] {
  const all = fit.contradictions.map((found) => {
    const problem = contradictionProblem(found, pad.readings);
    return `${readingName(problem, pad, units)}: ${problemSentence(problem, units)}`;
  });
  return [...new Set(all)];
}

const readNames: Readonly<Record<ReadQuantity, string>> = {
  flow: 'Flow meter',
  dischargePressure: 'Filter gauge',
  suctionVacuum: 'Vacuum gauge',
  power: 'Watts',
  apparentPower: 'Volts times amperes',
};
const readUnits: Readonly<Record<ReadQuantity, Quantity>> = {
  flow: 'flow',
  dischargePressure: 'pressure',
  suctionVacuum: 'vacuum',
  power: 'power',
  apparentPower: 'power',
};

/** Deviations up to which a reading agrees with the fit, and beyond which it is wrong. */
const rare = 2;
const wrong = 3;

function verdict({ deviations }: PadResidual): string {
  const off = Math.abs(deviations);
  if (off <= rare) return 'fits';
  return off <= wrong ? 'a little off' : 'does not fit';
}

/** Watts beside volt-amperes: a unit of its own that no choice offers. */
function readText(quantity: ReadQuantity, value: number, units: UnitChoice): string {
  if (quantity === 'apparentPower') return `${Math.round(value)}\u00a0VA`;
  return format(readUnits[quantity], value, units);
}

/** Every reading beside what the pad as worked out would show. */
export function residualTable({ fit, pad }: Scene, units: UnitChoice): TableData | null {
  if (fit.residuals.length === 0) return null;
  const speedOf = (id: string) => {
    const speed = pad.readings.find((one) => one.id === id)?.speed;
    return speed == null ? id : rpm(speed, units);
  };
  return {
    caption: 'Each reading beside what the pad as worked out would show',
    columns: ['Reading', 'Instrument', 'Read', 'Worked out', 'Difference', 'Verdict'],
    rows: fit.residuals.map((each) => [
      speedOf(each.id),
      readNames[each.quantity],
      readText(each.quantity, each.measured, units),
      readText(each.quantity, each.predicted, units),
      readText(each.quantity, each.residual, units),
      verdict(each),
    ]),
  };
}

/** How well the readings agree, in a sentence. */
export function agreementText({ fit }: Scene): string {
  const count = fit.residuals.length;
  if (count === 0) {
    return 'There are no readings yet, so everything rests on the description and on usual figures. One reading of the watts, or of the filter gauge, already helps.';
  }
  const off = fit.residuals.filter((each) => Math.abs(each.deviations) > rare).length;
  if (off === 0) {
    return count === 1
      ? 'The one figure read is met within what its instrument allows.'
      : `All ${count} figures read agree within what their instruments allow.`;
  }
  return `${off} of ${count} figures read ${off === 1 ? 'is' : 'are'} further off than ${off === 1 ? 'its instrument' : 'their instruments'} should be.`;
}

/** Parts that the answers leave out because they are not fully described. */
export function leftOutText({ known }: Scene): string {
  const parts = known.problems.filter((each) => isUnsaid(each) && each.path[0] === 'plumbing');
  const count = new Set(parts.map(({ path }) => path.slice(0, -1).join('/'))).size;
  if (count === 0) return '';
  return count === 1
    ? 'One part of the plumbing is left out until it is fully described.'
    : `${count} parts of the plumbing are left out until they are fully described.`;
}

const answerNames: Readonly<Record<Answer, string>> = {
  volume: 'volume of the pool',
  running: 'operating points',
  turnover: 'turnover',
  ladder: 'speed ladder',
  price: 'price',
  day: 'day sheet',
};

export const allAnswers = Object.keys(answerNames) as readonly Answer[];

/** One thing the pad lacks, and the answers that wait for it. */
export interface Lack {
  readonly problem: Problem;
  readonly sentence: string;
  /** "For the turnover and the day sheet". */
  readonly waiting: string;
}

/** What is still missing, each thing once. */
export function lacks(
  missing: Readonly<Record<Answer, readonly Problem[]>>,
  units: UnitChoice,
  of: readonly Answer[] = allAnswers,
): readonly Lack[] {
  const found = new Map<string, { problem: Problem; answers: Answer[] }>();
  for (const answer of of) {
    for (const problem of missing[answer]) {
      const key = `${problem.path.join('/')} ${problem.code}`;
      const entry = found.get(key) ?? { problem, answers: [] };
      entry.answers.push(answer);
      found.set(key, entry);
    }
  }
  return [...found.values()].map(({ problem, answers }) => ({
    problem,
    sentence: problemSentence(problem, units),
    waiting: `For the ${joined(answers.map((answer) => answerNames[answer]))}`,
  }));
}
