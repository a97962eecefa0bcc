/** The later steps: from speeds to hours, water, energy and money. */
import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { cubePower, wirePower } from '#core/pump/power.ts';
import { priceDay } from '#core/tariff/pricing.ts';
import { asPrinted } from '#course/Check/printed.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import { type Asked, type HandBlock, there, type Worked } from './worked.ts';

export function powerStep(units: UnitChoice, { full, half, law, speedFor }: Worked): Asked {
  const speed = speedFor('skim');
  const ratio = speed / 3450;
  const answer = wirePower(cubePower(law), 0, ratio);
  const [top, low] = [there(full.power, 'watts'), there(half.power, 'watts at half speed')];
  const { fixed, cube } = law;
  const shown = (value: number) => format('power', value, units, { digits: 3 });
  return {
    id: 'power',
    title: 'Power',
    prompt: `The meter shows ${shown(top)} at 3450 rpm and ${shown(low)} at 1725. What does the pump draw at the skimmer’s speed?`,
    quantity: 'power',
    answer,
    near: 0.03,
    slips: [
      {
        value: top * ratio ** 3,
        says: 'That is the plain cube. Part of the draw stays whatever the speed: the half-speed reading tells it.',
      },
      {
        value: top * ratio,
        says: 'Power does not follow the speed; it falls nearly with its cube.',
      },
      { value: top * ratio ** 2, says: 'That is the square, the rule for head.' },
      {
        value: low + ((top - low) * (speed - 1725)) / 1725,
        says: 'That draws a straight line between the readings. Between them power follows the cube.',
      },
    ],
    working: [
      `Half speed leaves an eighth of the cube part, so ${shown(top)} − ${shown(low)} = ${shown(top - low)} are seven eighths of it.`,
      `The cube part: ${shown(top - low)} / (7 / 8) = ${shown(cube)}. What stays: ${shown(top)} − ${shown(cube)} = ${shown(fixed)}.`,
      `At ${speed} rpm: ${shown(fixed)} + ${shown(cube)} × (${speed} / 3450)³ = ${shown(answer)}.`,
    ],
  };
}

const hoursOf = ({ pad }: Worked, needId: string) =>
  (pad.needs.find(({ id }) => id === needId)?.minutes ?? 0) / 60;

export function hoursStep(worked: Worked): Asked {
  const [skim, heat, filter] = ['skim', 'heat', 'filter'].map((id) => hoursOf(worked, id));
  const [s, h, f] = [skim ?? 0, heat ?? 0, filter ?? 0];
  return {
    id: 'hours',
    title: 'Hours',
    prompt: `The skimmer wants ${s} h, the heater ${h} h, the filter ${f} h. Let them share hours. How many hours are left for the filter’s own speed?`,
    quantity: null,
    unit: 'h',
    answer: f - h,
    near: 0.02,
    slips: [
      { value: f, says: 'While the faster ones run, the filter has its flow too.' },
      {
        value: f - s - h,
        says: 'The skimmer’s speed serves the heater as well: its hours lie inside the heater’s.',
      },
      { value: f - s, says: 'The heater’s last hour serves the filter too.' },
    ],
    working: [
      `The skimmer’s ${s} h also heat. One more hour at the heater’s speed makes ${h} h.`,
      `${f} − ${h} = ${f - h} h.`,
    ],
  };
}

const laid =
  'Plan: filter 23:00–09:00, heater 12:00–13:00, skimmer 13:00–16:00, each at its own speed.';

export function waterStep(units: UnitChoice, { report, model, flow, plan }: Worked): Asked {
  const volume = there(model.volume, 'the volume');
  const flows = plan.map((block) => asPrinted('flow', block.flow, units, { digits: 3 }));
  const moved = asPrinted(
    'volume',
    plan.reduce((sum, { hours }, at) => sum + hours * 3600 * (flows[at]?.value ?? 0), 0),
    units,
  );
  const answer = plan.reduce((sum, block) => sum + block.hours * 3600 * block.flow, 0) / volume;
  return {
    id: 'turnovers',
    title: 'Turnovers',
    prompt: `${laid} How many times does it turn over the pool of ${format('volume', volume, units)}?`,
    quantity: null,
    unit: 'turnovers',
    answer,
    near: 0.03,
    slips: [
      {
        value: (flow * report.runMinutes * 60) / volume,
        says: 'That takes the flow of full speed for all hours. Each block has its own flow.',
      },
      {
        value: answer / 60,
        says: 'A flow per minute runs for 60 minutes an hour.',
      },
    ],
    working: [
      `Flow times time of each block: ${units.preset === 'us' ? '60 min × ' : ''}(${plan.map(({ hours }, at) => `${hours} h × ${flows[at]?.text}`).join(' + ')}) = ${moved.text}.`,
      `${moved.text} / ${format('volume', volume, units)} = ${(moved.value / volume).toFixed(2)}.`,
    ],
  };
}

/** Energy of blocks [J], watts as they stand or as they are printed. */
const energyOf = (blocks: readonly HandBlock[], power: (block: HandBlock) => number) =>
  blocks.reduce((sum, block) => sum + power(block) * block.hours * 3600, 0);

export function energyStep(units: UnitChoice, worked: Worked): Asked {
  const { report, full, plan } = worked;
  const powers = plan.map(({ power }) => power);
  const answer = energyOf(plan, ({ power }) => power);
  const printed = ({ power }: HandBlock) => asPrinted('power', power, units, { digits: 3 });
  const mean = powers.reduce((sum, power) => sum + power, 0) / powers.length;
  return {
    id: 'energy',
    title: 'Energy',
    prompt: 'How much energy does that day take?',
    quantity: 'energy',
    answer,
    near: 0.03,
    slips: [
      {
        value: mean * report.runMinutes * 60,
        says: 'That takes the mean of the powers. The slow block runs longest and counts most.',
      },
      {
        value: (full.power ?? 0) * report.runMinutes * 60,
        says: 'That runs all hours at full power.',
      },
      {
        value: answer * 1000,
        says: 'Those are watt-hours. A kilowatt-hour is a thousand of them.',
      },
    ],
    working: [
      `${plan.map((block) => `${block.hours} h × ${printed(block).text}`).join(' + ')} = ${format(
        'energy',
        energyOf(plan, (block) => printed(block).value),
        units,
        { digits: 3 },
      )}.`,
    ],
  };
}

const dateOf = ({ pad }: Worked) => there(pad.day.date, 'a date');

/** The greatest and the least price of the tariff. */
function twoPrices({ model }: Worked): { readonly dear: number; readonly cheap: number } {
  const bands = model.tariff?.seasons.flatMap(({ dayTypes }) => dayTypes.flatMap((d) => d.bands));
  const prices = (bands ?? []).map(({ price }) => price);
  return { dear: Math.max(...prices), cheap: Math.min(...prices) };
}

export function oldPriceStep(worked: Worked): Asked {
  const tariff = there(worked.model.tariff, 'a tariff');
  const { energyCost, energy, byBand } = priceDay(tariff, dateOf(worked), worked.old);
  const parts = byBand.filter(({ cost }) => cost > 0);
  const kilowattHours = energy / joulesPerKilowattHour;
  const [block] = worked.pad.day.oldBlocks;
  const { start, end } = there(block, 'the old day');
  const { dear, cheap } = twoPrices(worked);
  const money = (value: number) => formatMoney(value, tariff.currency);
  return {
    id: 'old-price',
    title: 'The old day',
    prompt: `Before, the pump ran at full speed from ${clock(start)} to ${clock(end)}. What did the energy of that day cost, daily charge left out?`,
    quantity: null,
    unit: tariff.currency,
    answer: energyCost,
    near: 0.015,
    slips: [
      {
        value: kilowattHours * cheap,
        says: 'The last hour lies in the evening band. Cut the run at 16:00.',
      },
      { value: kilowattHours * dear, says: 'Only the last hour has the evening price.' },
      {
        value: (kilowattHours * (dear + cheap)) / 2,
        says: 'The mean of the two prices would be right if half of the run lay in the evening. It is one hour of eight.',
      },
    ],
    working: [
      parts
        .map(
          ({ band, energy: part, cost }) =>
            `${(part / joulesPerKilowattHour).toFixed(2)} kWh × ${money(band.price)} = ${money(cost)}`,
        )
        .join('; '),
      `${parts.map(({ cost }) => money(cost)).join(' + ')} = ${money(energyCost)}.`,
    ],
  };
}

export function priceStep(worked: Worked): Asked {
  const tariff = there(worked.model.tariff, 'a tariff');
  const price = priceDay(tariff, dateOf(worked), worked.plan);
  const kilowattHours = price.energy / joulesPerKilowattHour;
  const money = (value: number) => formatMoney(value, tariff.currency);
  return {
    id: 'price',
    title: 'The new day',
    prompt: 'And your day, daily charge included?',
    quantity: null,
    unit: tariff.currency,
    answer: price.cost,
    near: 0.02,
    slips: [
      { value: price.energyCost, says: 'That is the energy. The daily charge is on the bill too.' },
      {
        value: (price.energy / joulesPerKilowattHour) * twoPrices(worked).dear + price.dailyCharge,
        says: 'Your plan doesn’t run in the evening band: it begins at 16:00.',
      },
    ],
    working: [
      `Energy: ${kilowattHours.toFixed(2)} kWh × ${money(twoPrices(worked).cheap)} = ${money(Number(kilowattHours.toFixed(2)) * twoPrices(worked).cheap)}.`,
      `With the daily charge: ${money(price.energyCost)} + ${money(price.dailyCharge)} = ${money(price.cost)}.`,
    ],
  };
}
