/** The words of the answers: the finding, the readings at a speed, the ladder and the limits. */

import type { Limit } from '#core/day/limits.ts';
import { costPerHour } from '#core/day/needs.ts';
import type { Band } from '#core/numerics/band.ts';
import { energyPerVolume, joulesPerKilowattHour } from '#core/tariff/pricing.ts';
import type { Pad } from '#pad/document/schema.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { type UnitChoice, unitFor } from '#units/choice.ts';
import { fromSI, toSI } from '#units/convert.ts';
import { format, formatIn, speak, symbolFor } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { hardSpace } from '#units/numerals.ts';
import type { Quantity } from '#units/quantities.ts';
import { beyondText } from './beyondText.ts';
import type { Here, LadderRung, LimitRow, Prices } from './figures.ts';
import type { Scene } from './scene.ts';

export const rpm = (speed: number, units: UnitChoice): string =>
  format('speed', speed, units, { places: 0 });

export const percent = (share: number): string => `${Math.round(share * 100)}${hardSpace}%`;

/** Nearer to 1 than this a share filtered would be rounded to a promise of all the water. */
const almostAll = 0.99;
export const filteredText = (share: number): string =>
  share > almostAll ? `over 99${hardSpace}%` : percent(share);

/** A stored value to so many figures in the reader's unit: more would promise too much. */
export function rounded(
  quantity: Quantity,
  si: number,
  units: UnitChoice,
  figures = 3,
  withUnit = true,
): string {
  const unit = unitFor(units, quantity);
  const shown = Number(fromSI(quantity, si, unit).toPrecision(figures));
  return format(quantity, toSI(quantity, shown, unit), units, { digits: figures, withUnit });
}

/** A band narrower than this either way goes without saying. */
const narrow = 0.015;
/** A band wider than this is too lopsided for one number both ways. */
const wide = 0.25;

/** How far a value may be off: "± 4 gpm", or "30 to 70 gpm" where it is wide; nothing where it is small. */
export function bandText(quantity: Quantity, value: number, band: Band, units: UnitChoice): string {
  if (value <= 0) {
    return band.high > 0 ? `perhaps up to ${rounded(quantity, band.high, units, 2)}` : '';
  }
  const reach = (band.high - band.low) / 2;
  if (reach < narrow * value) return '';
  if (reach > wide * value) {
    const low = rounded(quantity, band.low, units, 2, false);
    return `${low} to ${rounded(quantity, band.high, units, 2)}`;
  }
  // To the last figure that the value itself is shown to, and no more than two of a large one.
  const [, decimals = ''] = format(quantity, value, units, { withUnit: false }).split('.');
  const large = fromSI(quantity, reach, unitFor(units, quantity)) >= 100;
  const shown = large
    ? rounded(quantity, reach, units, 2)
    : format(quantity, reach, units, { places: decimals.length });
  return `±${hardSpace}${shown}`;
}

const hour = 3600;

/** A time in hours, or in minutes where it is short. */
export function timeText(seconds: number, units: UnitChoice): string {
  return seconds < hour ? formatIn('duration', seconds, 'min') : format('duration', seconds, units);
}

/** The band of something that goes as the value does, such as a velocity with the flow. */
export function scaledBand(value: number, by: number, band: Band): Band {
  const of = (end: number) => (by > 0 ? (value * end) / by : 0);
  return { low: of(band.low), high: of(band.high) };
}

/** The band of a quotient whose two parts are taken to be off independently. */
export function quotientBand(top: number, topBand: Band, under: number, underBand: Band): Band {
  const half = (value: number, { low, high }: Band) =>
    low > 0 && value > 0 ? Math.log(high / low) / 2 : 0;
  const reach = Math.exp(Math.hypot(half(top, topBand), half(under, underBand)));
  return { low: top / under / reach, high: (top / under) * reach };
}

/** Money for an hour at a power, from the cheapest to the dearest price of the day. */
export function hourText(power: number, { low, high, currency }: Prices): string {
  const [least, most] = [costPerHour(power, low), costPerHour(power, high)];
  const places = Math.abs(most) < 0.1 ? 3 : 2;
  const [from, to] = [least, most].map((sum) => formatMoney(sum, currency, { places }));
  return from === to ? `${to}` : `${from} to ${to}`;
}

/** Water for a kilowatt-hour [m3]. */
export const waterPerEnergy = ({ flow, power }: Here): number =>
  flow > 0 && power > 0 ? joulesPerKilowattHour / energyPerVolume(power, flow) : 0;

/** Why no water moves, in a sentence; nothing where it does. */
export function noFlowText({ point, speed }: Here, scene: Scene, units: UnitChoice): string {
  if (point.kind === 'flowing') return '';
  const at = rpm(speed, units);
  if (point.reason === 'stopped') return `At ${at} the pump stands still.`;
  const starts = rpm(point.leastRatio * scene.speeds.reference, units);
  return (
    `At ${at} no water moves, because the pump makes only ${format('head', point.shutoffHead, units)} ` +
    `of head and the water must be lifted ${format('head', point.staticHead, units)}. ` +
    `It begins to move above ${starts}.`
  );
}

const needTitles: Readonly<Record<NamedNeed['kind'], string>> = {
  skimming: 'Skimming',
  heating: 'Heating',
  saltCell: 'Salt cell',
  cleaner: 'Cleaner',
  solar: 'Solar heating',
  spillway: 'Spillway',
  filtering: 'Filtering',
};
export const needName = ({ name, kind }: NamedNeed): string => name || needTitles[kind];

/** What a limit is called inside a sentence. */
const limitNames: Readonly<Record<Limit['kind'], string>> = {
  suctionVelocity: 'suction velocity',
  dischargeVelocity: 'return velocity',
  filterRate: 'rate through the filter',
  heaterFlow: 'flow through the heater',
  suctionCover: 'flow marked on the suction covers',
  npsh: 'suction head the pump requires',
};
/** The same on the picture, where there is little room. */
const limitShortNames: Readonly<Record<Limit['kind'], string>> = {
  suctionVelocity: 'velocity',
  dischargeVelocity: 'velocity',
  filterRate: 'filter',
  heaterFlow: 'heater',
  suctionCover: 'cover',
  npsh: 'NPSH',
};
export const limitShortName = ({ kind }: Limit): string => limitShortNames[kind];
export const limitName = ({ kind }: Limit): string => limitNames[kind];

export const joined = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

function crossedText({ crossed }: Here): string {
  if (crossed.some(({ hard }) => hard)) {
    return ' Stop: this is above the flow marked on the suction covers. Never run at this speed.';
  }
  if (crossed.length === 0) return '';
  const names = [...new Set(crossed.map(limitName))];
  return ` It crosses the ${names.length === 1 ? 'limit' : 'limits'} on ${joined(names)}.`;
}

/** The finding in a few sentences: caption and spoken text share it. */
export function finding(here: Here, scene: Scene, units: UnitChoice): string {
  if (here.point.kind === 'noFlow') {
    const draws = ` It still draws ${format('power', here.power, units)}.`;
    return noFlowText(here, scene, units) + (here.power > 0 ? draws : '');
  }
  const may = bandText('flow', here.flow, here.band.flow, units);
  const flow = `${format('flow', here.flow, units)}${may === '' ? '' : ` (${may})`}`;
  const turns =
    here.turnover === null
      ? ''
      : ` That moves the whole pool once in ${timeText(here.turnover, units)}.`;
  return (
    `At ${rpm(here.speed, units)} the pump moves ${flow} at ${format('head', here.head, units)} ` +
    `and draws ${format('power', here.power, units)}.${turns}${beyondText(here)}${crossedText(here)}`
  );
}

/** Spoken with the slider. */
export function spoken(here: Here, units: UnitChoice): string {
  const water = here.flow > 0 ? speak('flow', here.flow, units) : 'no flow';
  const speed = speak('speed', here.speed, units, { places: 0 });
  return `${speed}, ${water}, ${speak('power', here.power, units)}`;
}

/** What a rung asks for: "at least 48 gpm, 3 h a day". */
export function needText(need: NamedNeed, units: UnitChoice): string {
  const { leastFlow, greatestFlow } = need.branch ?? need;
  const most = greatestFlow === undefined ? '' : `, at most ${format('flow', greatestFlow, units)}`;
  const hours = format('duration', need.minutes * 60, units);
  const where =
    need.branch === undefined
      ? ''
      : ` through ${need.branch.name || 'its branch'}, which takes ${format('flow', need.leastFlow, units)} through the pump`;
  return `at least ${format('flow', leastFlow, units)}${most}${where}, ${hours} a day`;
}

/** Why no speed serves a need. */
export function unreachableText(
  rung: Extract<LadderRung, { kind: 'unreachable' }>,
  scene: Scene,
  units: UnitChoice,
): string {
  const { reason, need } = rung;
  const asks = format('flow', need.leastFlow, units);
  const most = format('flow', rung.greatestReachableFlow, units);
  const bears = format('flow', need.greatestFlow ?? need.leastFlow, units);
  const { least, top, reference } = scene.speeds;
  switch (reason.kind) {
    case 'leastAboveGreatest':
      return `Not to be met: its greatest flow, ${bears}, is below its least, ${asks}.`;
    case 'tooSlowToLift':
      return `Out of reach: the pump lifts the water only above ${rpm(reason.leastRatio * reference, units)}, and its top speed is ${rpm(top, units)}.`;
    case 'beyondTopSpeed':
      return `Out of reach: at its top speed, ${rpm(top, units)}, the pump moves ${most}, and this asks for ${asks}.`;
    case 'beyondLimit':
      return `Not allowed: the ${limitName(reason.limit)} stops at ${stopWords(reason.limit, reference, units)}, and this asks for ${asks}.`;
    case 'tooMuchAtSlowest':
      return `Not to be met: even at ${rpm(least, units)} the pump moves ${format('flow', reason.flow, units)}, and this bears ${bears} at most.`;
    case 'speedStepTooCoarse':
      return `Not to be met: no speed that can be set gives ${asks} to ${bears}; the next one gives ${format('flow', reason.flow, units)}.`;
  }
}

/** Where a limit stops: by its flow and, where it has one, by its speed. */
function stopWords(
  { greatestFlow, greatestRatio }: Limit,
  reference: number,
  units: UnitChoice,
): string {
  const flow = `${format('flow', greatestFlow, units)} through the pump`;
  if (greatestRatio === undefined) return flow;
  return `${flow}, which is ${rpm(Math.floor(greatestRatio * reference), units)} at worst`;
}

/** A limit as a heading: what it is and where it comes from. */
export function limitTitle({ kind, partId }: Limit, pad: Pad): string {
  const { limits, units } = pad;
  const velocity = (value: number | null) =>
    value === null ? '' : `, at most ${format('velocity', value, units)}`;
  switch (kind) {
    case 'suctionVelocity':
      return `Suction velocity${velocity(limits.suctionVelocity)}`;
    case 'dischargeVelocity':
      return `Return velocity${velocity(limits.dischargeVelocity)}`;
    case 'filterRate':
      return `Filter${limits.filterRate === null ? '' : `, at most ${format('filterRate', limits.filterRate, units)}`}`;
    case 'heaterFlow':
      return 'Greatest flow of the heater';
    case 'suctionCover':
      return coverTitle(partId, pad);
    case 'npsh':
      return `Suction head the pump requires (NPSH)${limits.npshRequired === null ? '' : `, ${format('head', limits.npshRequired, units)}`}`;
  }
}

function coverTitle(coverId: string | undefined, { limits, units }: Pad): string {
  const cover = limits.suctionCovers.find(({ id }) => id === coverId);
  if (cover === undefined || cover.markedFlow === null) return 'Suction covers';
  const count = limits.suctionCovers.length;
  const blocked = count > 1 ? `; one of ${count} taken as blocked` : '';
  const name = cover.name === '' ? 'Suction cover' : `Suction cover “${cover.name}”`;
  return `${name}, marked ${format('flow', cover.markedFlow, units)}${blocked}`;
}

/** When a limit is crossed, in a sentence. */
export function limitText(row: LimitRow, scene: Scene, units: UnitChoice): string {
  const { limit, crossed, keeps, surelyKeeps } = row;
  const most = `${format('flow', limit.greatestFlow, units)} through the pump at most`;
  const { least, top } = scene.speeds;
  if (limit.hard) return stopText(row, most, scene, units);
  if (crossed === 'always') {
    return `${most}. Every speed crosses it, even ${rpm(least, units)}.`;
  }
  if (crossed === 'never') {
    const may = surelyKeeps !== null && surelyKeeps < top;
    return `${most}. No speed up to ${rpm(top, units)} crosses it${may ? ', by the likeliest flow' : ''}.${may ? sureText(surelyKeeps, units) : ''}`;
  }
  const speed = keeps ?? least;
  const sure = surelyKeeps !== null && surelyKeeps < speed ? sureText(surelyKeeps, units) : '';
  return `${most}: that is ${rpm(speed, units)}. It is crossed above that.${sure}`;
}

/** Why the stop of a pad does not move with its filter. */
const worstState =
  'with the filter clean, the valves open and as much flow as the readings leave possible';

function stopText(
  { crossed, keeps }: LimitRow,
  most: string,
  { pad, speeds: { least, top } }: Scene,
  units: UnitChoice,
): string {
  const alone =
    pad.limits.suctionCovers.length === 1
      ? ' One cover alone is not enough: a second protection is required by code.'
      : '';
  if (crossed === 'always')
    return `${most}. Even ${rpm(least, units)} may pass it, ${worstState}: do not run this pump.${alone}`;
  if (crossed === 'never')
    return `${most}. No speed up to ${rpm(top, units)} passes it, even ${worstState}.${alone}`;
  return `${most}. Never run faster than ${rpm(keeps ?? least, units)}: that keeps it even ${worstState}.${alone}`;
}

function sureText(surelyKeeps: number, units: UnitChoice): string {
  return surelyKeeps === 0
    ? ' The flow is not known exactly: even the slowest speed may cross it.'
    : ` The flow is not known exactly: to be sure, stay at or below ${rpm(surelyKeeps, units)}.`;
}

const tableSteps = 8;

/** Speeds from slowest to fastest with what they give. */
export function speedTable(
  scene: Scene,
  at: (speed: number) => Here | null,
  prices: Prices | null,
  units: UnitChoice,
): TableData {
  const { least, top } = scene.speeds;
  const bare = { withUnit: false };
  const speeds = Array.from(
    { length: tableSteps + 1 },
    (_, place) => least + ((top - least) * place) / tableSteps,
  );
  const money = prices === null ? [] : ['Money an hour'];
  const named = (name: string, quantity: Quantity) => `${name}, ${symbolFor(units, quantity)}`;
  return {
    caption: 'What the pad does at speeds from slowest to fastest',
    columns: [
      named('Speed', 'speed'),
      named('Flow', 'flow'),
      named('Head', 'head'),
      named('Wire power', 'power'),
      ...money,
    ],
    rows: speeds.flatMap((speed) => {
      const here = at(speed);
      if (here === null) return [];
      return [
        [
          format('speed', here.speed, units, { ...bare, places: 0 }),
          here.flow > 0 ? format('flow', here.flow, units, bare) : 'no flow',
          format('head', here.head, units, bare),
          format('power', here.power, units, bare),
          ...(prices === null ? [] : [hourText(here.power, prices)]),
        ],
      ];
    }),
  };
}
