/** The line that says, for each step, what the pad holds. */

import type { Pad, PadTariff, Section } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { format } from '#units/format.ts';
import { formatPrice } from '#units/money.ts';
import type { StepId } from './steps.ts';

const nothing = 'Nothing yet';

/** "1 reading", "3 readings". */
export function count(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}

/** Parts at any depth; a place where the flow divides is no part itself. */
export function countParts(sections: readonly Section[]): number {
  return sections.reduce(
    (sum, section) =>
      sum +
      (section.kind === 'parallel'
        ? section.branches.reduce((inner, branch) => inner + countParts(branch.sections), 0)
        : 1),
    0,
  );
}

/** The volume of the pool, or the words for not knowing it. */
export function volumeText(pad: Pad, unknown = 'Volume not known yet'): string {
  const { volume } = padModel(pad);
  return volume === null ? unknown : format('volume', volume, pad.units);
}

function placeText({ site, name, units }: Pad): string {
  const system = units.preset === 'us' ? 'US units' : 'Metric units';
  const water =
    site.waterTemperature === null
      ? ''
      : `, water ${format('temperature', site.waterTemperature, units)}`;
  return `${name === '' ? 'No name yet' : name}; ${system}${water}`;
}

function pipesText({ plumbing }: Pad): string {
  const { suction, discharge } = plumbing;
  if (suction.length + discharge.length === 0) return nothing;
  return `${count(countParts(suction), 'part')} before the pump, ${countParts(discharge)} after`;
}

/** Where the curve of the pump comes from. */
function knowledgeText({ pump: { knowledge }, readings }: Pad): string {
  if (knowledge.kind === 'curve') return 'points of its curve';
  if (knowledge.kind === 'powerLaw') return 'three points';
  const { power, flow, head } = knowledge;
  if (power !== null || (flow !== null && head !== null)) return 'nameplate only';
  return readings.some((reading) => reading.power !== null) ? 'by its readings' : 'no curve yet';
}

function pumpText(pad: Pad): string {
  const { pump, units } = pad;
  const { referenceSpeed, topSpeed } = pump;
  const speed = topSpeed ?? referenceSpeed;
  if (speed === null) return nothing;
  return `${format('speed', speed, units)} at most, ${knowledgeText(pad)}`;
}

function limitsText({ limits, quiet }: Pad): string {
  const {
    sources: _sources,
    suctionCovers,
    coversBalanced: _balanced,
    npshMargin: _margin,
    ...single
  } = limits;
  const given = Object.values(single).filter((value) => value !== null).length;
  const all = given + suctionCovers.length;
  if (all + quiet.length === 0) return nothing;
  return `${count(all, 'limit')}, ${count(quiet.length, 'quiet time')}`;
}

/** Every price of a tariff that has been given. */
export function prices({ seasons }: PadTariff): readonly number[] {
  return seasons.flatMap(({ dayTypes }) =>
    dayTypes.flatMap(({ bands }) => bands.flatMap(({ price }) => price ?? [])),
  );
}

function tariffText({ tariff }: Pad): string {
  const all = prices(tariff);
  const [least, greatest] = [Math.min(...all), Math.max(...all)];
  if (all.length === 0) return nothing;
  if (least === greatest) return formatPrice(least, tariff.currency);
  return `${formatPrice(least, tariff.currency)} to ${formatPrice(greatest, tariff.currency)}`;
}

/** What a step holds, in one line. */
export function stepSummary(id: StepId, pad: Pad): string {
  switch (id) {
    case 'place':
      return placeText(pad);
    case 'pool':
      return volumeText(pad);
    case 'pipes':
      return pipesText(pad);
    case 'pump':
      return pumpText(pad);
    case 'readings':
      return pad.readings.length === 0 ? nothing : count(pad.readings.length, 'reading');
    case 'needs':
      return pad.needs.length === 0 ? nothing : count(pad.needs.length, 'need');
    case 'limits':
      return limitsText(pad);
    case 'tariff':
      return tariffText(pad);
    case 'keep':
      return 'In this browser, as a file, as a link';
  }
}
