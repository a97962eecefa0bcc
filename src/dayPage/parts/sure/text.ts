/** The words of how sure a day is. */

import type { Limit } from '#core/day/limits.ts';
import type { Instrument } from '#core/fit/padEvidence.ts';
import type { Band } from '#core/numerics/band.ts';
import type { DayAnswer } from '#core/uncertainty/dayBands.ts';
import { rpmText } from '#dayPage/day/text.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { coinOf } from '#units/coin.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import { needName } from '#words/needsAndLimits.ts';
import {
  type Chance,
  drawnTrials,
  type Next,
  type Shown,
  type SurenessModel,
  trialCount,
} from './model.ts';

export const answerNames: Readonly<Record<DayAnswer, string>> = {
  water: 'Water',
  energy: 'Energy',
  cost: 'Money',
};

const verbs: Readonly<Record<DayAnswer, string>> = {
  water: 'moves',
  energy: 'takes',
  cost: 'costs',
};

const instruments: Readonly<Record<Instrument, string>> = {
  flowMeter: 'The flow meter',
  filterGauge: 'The filter gauge',
  vacuumGauge: 'A vacuum gauge before the pump',
  wattMeter: 'The watts',
};

/** Width of a band over its middle [-]. */
const widthOf = ({ low, high }: Band): number =>
  high > low ? (2 * (high - low)) / Math.max(Math.abs(low + high), high - low) : 0;

/** As many figures as tell one end of the band from the other, three at least. */
function figuresFor(band: Band): number {
  const width = widthOf(band);
  return width > 0 ? Math.min(6, Math.max(3, Math.ceil(-Math.log10(width)) + 1)) : 3;
}

type Saying = Pick<SurenessModel, 'units' | 'currency'>;

/** A value of the day, fine enough to be told from the ends of its band. */
export function valueText(
  { units, currency }: Saying,
  of: DayAnswer,
  value: number,
  band: Band,
  withUnit = true,
): string {
  if (of === 'cost') {
    const fine = band.high > band.low && band.high - band.low < 5 * coinOf(currency.value);
    const { places } = currency.value;
    return formatMoney(value, currency.value, { places: fine ? places + 1 : places });
  }
  const quantity = of === 'water' ? 'volume' : 'energy';
  return format(quantity, value, units.value, { digits: figuresFor(band), withUnit });
}

/** "4.20 to 4.57 kWh". */
export function rangeText(model: Saying, of: DayAnswer, band: Band): string {
  const low = valueText(model, of, band.low, band, false);
  return `${low} to ${valueText(model, of, band.high, band)}`;
}

/** Half the width as a share of the middle: "± 4 %". */
export function plusMinus(band: Band): string {
  const half = 50 * widthOf(band);
  return `±${hardSpace}${half < 10 ? Number(half.toPrecision(2)) : Math.round(half)}${hardSpace}%`;
}

/** The finding on what matters to the reader. */
export function findingText(model: SurenessModel): string {
  const focus = model.focus.value;
  if (focus === null && model.day.here.value?.report.runMinutes === 0)
    return 'Nothing runs on the day on your sheet yet, so there is nothing to be sure of. Lay a block first.';
  if (focus === null)
    return 'The pad does not say enough yet for a day: it needs a pump and blocks that can be run.';
  const texts = [
    ...hardTexts(model),
    contradictedText(model),
    bandText(model, focus),
    nothingRead(model),
    nextText(model),
  ];
  return texts.filter((words) => words !== '').join(' ');
}

/** What nothing may cross comes before all else. */
const hardTexts = (model: SurenessModel): readonly string[] =>
  (model.chances.value?.limits ?? [])
    .filter(({ of }) => of.hard)
    .map((chance) => limitText(model, chance));

function bandText(model: SurenessModel, { of, best, told }: Shown): string {
  const low = valueText(model, of, told.low, told, false);
  const high = valueText(model, of, told.high, told);
  const likely = valueText(model, of, best, told, false);
  if (told.high === told.low)
    return `Your day ${verbs[of]} ${valueText(model, of, best, told)}, and nothing of it is in doubt.`;
  return `Your day ${verbs[of]} between ${low} and ${high}, most likely ${likely}.`;
}

/** Where trials and slopes part, what to think of it; nothing where they agree. */
export function partsText(model: SurenessModel): string {
  const apart = model.shown.value.filter(({ parts }) => parts);
  if (apart.length === 0) return '';
  const names = apart.map(({ of }) => answerNames[of].toLowerCase()).join(' and ');
  return `For ${names} the two part: the doubt is too large or too lopsided for straight lines. There the figures told are those of the trial pads.`;
}

/** What one more reading would leave of the width, in words. */
function leavesText(left: number): string {
  if (left <= 0.28) return 'leave a quarter of that or less';
  if (left <= 0.4) return 'leave a third of that';
  if (left <= 0.6) return 'halve that';
  if (left <= 0.8) return 'take about a third off that';
  return 'narrow that a little';
}

export const nextName = ({ instrument, speed }: Next, { units }: Saying): string =>
  `${instruments[instrument]} at ${rpmText(speed, units.value)}`;

function nextText(model: SurenessModel): string {
  const told = model.focus.value?.told;
  if (told === undefined || told.high === told.low) return '';
  const [first] = model.next.value;
  if (first === undefined) return 'No single reading would narrow that much.';
  const { instrument, speed, left } = first;
  const at = rpmText(speed, model.units.value);
  return `${instruments[instrument]}, read at ${at}, would ${leavesText(left)}.`;
}

const contradictedText = ({ isContradicted }: SurenessModel): string =>
  isContradicted.value
    ? 'Some of your readings cannot all be right, as your pad says beside them, so lean on none of this yet.'
    : '';

const nothingRead = (model: SurenessModel): string =>
  model.readings.value === 0
    ? 'You have given no readings yet: all of this rests on typical values.'
    : '';

/** A sum of the year: coins where its band is narrow, else they would say more than is known. */
function yearSum({ currency }: Saying, amount: number, band: Band): string {
  const isNarrow = band.high - band.low < 1000 * coinOf(currency.value);
  return formatMoney(amount, currency.value, isNarrow ? {} : { places: 0 });
}

/** The year in one sentence; nothing until it has been worked out. */
export function yearText(model: SurenessModel): string {
  const year = model.year.value;
  if (year === null) return '';
  const { best, band } = year.cost;
  const say = (amount: number) => yearSum(model, amount, band);
  const byLines = model.shown.value.some(({ of, parts }) => of === 'cost' && parts);
  const how = byLines ? ' by straight lines alone' : '';
  if (band.high === band.low)
    return `The year ${year.number} costs ${say(best)}, and nothing of it is in doubt.`;
  return `The year ${year.number} costs between ${say(band.low)} and ${say(band.high)}${how}, most likely ${say(best)}.`;
}

/** A share in words: "1 of 8", "3 of 10", "all but 1 of 40". */
export function shareText(share: number): string {
  if (share <= 0) return `none of ${trialCount}`;
  if (share >= 1) return 'all';
  if (share > 0.9) return `all but 1 of ${Math.round(1 / (1 - share))}`;
  if (share < 0.1) return `1 of ${Math.round(1 / share)}`;
  const parts = Array.from({ length: 9 }, (_, at) => at + 2).map((of) => {
    const count = Math.min(of - 1, Math.max(1, Math.round(share * of)));
    return { of, count, off: Math.abs(count / of - share) };
  });
  const { of, count } = parts.reduce((one, other) => (other.off < one.off - 1e-9 ? other : one));
  return `${count} of ${of}`;
}

/** How a need fares among the trial pads. */
export function needText({ of, share }: Chance<NamedNeed>): string {
  const name = needName(of);
  if (share <= 0) return `${name}: served in every one of the ${trialCount} pads.`;
  if (share >= 1) return `${name}: short in every one of the ${trialCount} pads.`;
  return share <= 0.5
    ? `${name}: served, but in ${shareText(share)} such pads it would stay short.`
    : `${name}: short, but in ${shareText(1 - share)} such pads it would be served.`;
}

const limitPhrases: Readonly<Record<Limit['kind'], string>> = {
  suctionVelocity: 'the water in the suction pipe is faster than you allow',
  dischargeVelocity: 'the water in the return pipe is faster than you allow',
  filterRate: 'the filter gets more flow than it bears',
  heaterFlow: 'the heater gets more flow than it bears',
  suctionCover: 'the flow passes what the suction covers bear',
  npsh: 'the pump gets less head at its inlet than it requires (NPSH)',
};

/** Which pads are tried. */
const triedPads = ({ readings }: Pick<SurenessModel, 'readings'>): string =>
  readings.value === 0 ? 'pads that fit your description' : 'pads that would give your readings';

/** How a limit fares; nothing for one that no trial pad crosses. */
export function limitText(
  model: Pick<SurenessModel, 'readings'>,
  { of, share }: Chance<Limit>,
): string {
  if (share <= 0) return '';
  const where = `In ${shareText(share)} ${triedPads(model)}, ${limitPhrases[of.kind]}.`;
  return of.hard ? `${where} Nothing may cross this limit: take a slower speed.` : where;
}

export const noLimitCrossed = (model: SurenessModel): boolean =>
  model.chances.value?.limits.every(({ share }) => share <= 0) ?? false;

/** What the bands hold and what they leave out. */
export const boundsText =
  'In these bands: what your readings, their instruments and your description leave open about pipes, filter, pump curve and watts. Errors of different readings count as independent. Not in them: prices, which count as exact, the weather, wear, and how fast the filter loads.';

/** What is drawn. */
export const pictureText = (model: SurenessModel): string =>
  `Each mark is one of ${drawnTrials} trial ${triedPads(model)}. The bar holds 95 % by straight lines about the most likely pad; the two upright strokes hold 95 % of ${trialCount} trial pads.`;

/** Spoken name of the picture of one answer. */
export function pictureTitle(model: SurenessModel, { of, best, band, trial }: Shown): string {
  const trials = trial === null ? '' : ` Trial pads: ${rangeText(model, of, trial)}.`;
  return `${answerNames[of]} of the day: most likely ${valueText(model, of, best, band)}, 95 % from ${rangeText(model, of, band)}.${trials}`;
}

/** The bands as a table. */
export function bandTable(model: SurenessModel): TableData {
  const year = model.year.value;
  return {
    caption: 'The day, as sure as it is',
    columns: ['What', 'Most likely', '95 % by straight lines', `95 % of ${trialCount} trial pads`],
    rows: [
      ...model.shown.value.map(({ of, best, band, trial }) => [
        answerNames[of],
        valueText(model, of, best, band),
        rangeText(model, of, band),
        trial === null ? 'being worked out' : rangeText(model, of, trial),
      ]),
      ...(year === null
        ? []
        : [
            [
              `Money, the year ${year.number}`,
              yearSum(model, year.cost.best, year.cost.band),
              `${yearSum(model, year.cost.band.low, year.cost.band)} to ${yearSum(model, year.cost.band.high, year.cost.band)}`,
              'not asked',
            ],
          ]),
    ],
  };
}
