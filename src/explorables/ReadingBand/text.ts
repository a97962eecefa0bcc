import type { Instrument, ReadQuantity } from '#core/fit/padEvidence.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { format, symbolFor } from '#units/format.ts';
import type { Quantity } from '#units/quantities.ts';
import type { ReadingBandModel } from './model.ts';
import { type Answer, halfWidth, type Known, type NoteLine, type Residual } from './pad.ts';

const rpm = (speed: number, model: ReadingBandModel) =>
  format('speed', Math.round(speed / 10) * 10, model.units.value);

/** Half the width of a band as a share: "± 12 %". */
const plusMinus = (width: number) => `±\u00a0${Math.round(50 * width)}\u00a0%`;

const wide = (known: Known, answer: Answer) => plusMinus(2 * halfWidth(known, answer));

/** "no notes", "2 of 4 notes". */
function counted(model: ReadingBandModel): string {
  const used = model.used.value.length;
  if (used === 0) return 'With no notes, from the description and usual figures alone,';
  return `With ${used} of ${model.pad.value.lines.length} notes`;
}

/** How well the answer is known, slow and fast. */
function known(model: ReadingBandModel): string {
  const answer = model.answer.value;
  const [slow] = model.fitted.value.known;
  const fast = model.fitted.value.known.at(-1);
  if (slow === undefined || fast === undefined) return '';
  const { low, high } = slow[answer];
  const units = model.units.value;
  const between = `${format(answer, low, units)} to ${format(answer, high, units)}`;
  const told = (one: Known) => `${format(answer, one[answer].best, units)} ${wide(one, answer)}`;
  return `${counted(model)} the ${answer} at ${rpm(slow.speed, model)} is somewhere from ${between} (${told(slow)}), and at ${rpm(fast.speed, model)} it is ${told(fast)}.`;
}

/** What the slowest note changed. */
function surprise(model: ReadingBandModel): string {
  const { foretold } = model.fitted.value;
  if (foretold === undefined || model.answer.value !== 'power') return '';
  const { said, measured, speed } = foretold;
  const off = Math.round(100 * (said.best / measured - 1));
  if (off === 0) return '';
  const units = model.units.value;
  return ` Without its slowest note the fit would have said ${format('power', said.best, units)} at ${rpm(speed, model)}, where the display shows ${format('power', measured, units)}: ${Math.abs(off)}\u00a0% too ${off < 0 ? 'little' : 'much'}.`;
}

const instruments: Readonly<Record<Instrument, string>> = {
  flowMeter: 'a flow meter',
  filterGauge: 'the filter gauge',
  vacuumGauge: 'a vacuum gauge before the pump',
  wattMeter: 'the watts',
};

/** A reading that narrows a band by less than this share is not worth the walk. */
const worthIt = 0.1;

function next(model: ReadingBandModel): string {
  const { instrument, speed, before, after } = model.fitted.value.next[model.answer.value];
  if (after > before * (1 - worthIt)) {
    return ' No single reading would narrow it much further.';
  }
  return ` To narrow it most, read ${instruments[instrument]} at ${rpm(speed, model)}: on average the band would go from ${plusMinus(before)} of the ${model.answer.value} to ${plusMinus(after)}.`;
}

/** The finding. */
export function sentence(model: ReadingBandModel): string {
  const wrong = model.fitted.value.contradictions;
  if (wrong.length > 0) {
    return `These notes cannot all be right. ${wrong.join(' ')} Look at the notes again before you believe any band.`;
  }
  return `${known(model)}${surprise(model)}${next(model)}`;
}

/** One line of the notebook, as it is ticked. */
export function lineText({ speed, power, pressure }: NoteLine, model: ReadingBandModel): string {
  const units = model.units.value;
  const parts = [
    ...(power === undefined ? [] : [format('power', power, units)]),
    ...(pressure === undefined || !model.gauges.value
      ? []
      : [`filter gauge ${format('pressure', pressure, units)}`]),
  ];
  return `${rpm(speed, model)}: ${parts.length === 0 ? 'no watts or gauge' : parts.join(', ')}`;
}

const readNames: Readonly<Record<ReadQuantity, string>> = {
  flow: 'flow meter',
  dischargePressure: 'filter gauge',
  suctionVacuum: 'vacuum gauge',
  power: 'watts',
  apparentPower: 'volts × amperes',
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
const wrongFrom = 3;

/** Whether a reading goes with the rest. */
export function verdict({ deviations }: Residual): string {
  const off = Math.abs(deviations);
  if (off <= rare) return 'fits';
  return off <= wrongFrom ? 'a little off' : 'does not fit';
}

export function table(model: ReadingBandModel): TableData {
  const units = model.units.value;
  const { residuals, known: all } = model.fitted.value;
  if (residuals.length === 0) {
    const answer = model.answer.value;
    return {
      caption: 'What is known without any reading',
      columns: ['Speed', `From, ${symbolFor(units, answer)}`, `To, ${symbolFor(units, answer)}`],
      rows: all
        .filter((_, at) => at % 4 === 0)
        .map((each) => [
          rpm(each.speed, model),
          format(answer, each[answer].low, units, { withUnit: false }),
          format(answer, each[answer].high, units, { withUnit: false }),
        ]),
    };
  }
  return {
    caption: 'Each reading beside what the fit makes of it: the residuals',
    columns: ['Speed', 'Instrument', 'Read', 'Fit', 'Residual', 'Verdict'],
    rows: residuals.map((each) => [
      rpm(each.speed, model),
      readNames[each.quantity],
      format(readUnits[each.quantity], each.measured, units),
      format(readUnits[each.quantity], each.predicted, units),
      format(readUnits[each.quantity], each.measured - each.predicted, units),
      verdict(each),
    ]),
  };
}
