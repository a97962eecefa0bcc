/** The later steps: from speeds to hours, water, energy and money. */
import { joulesPerKilowattHour } from '#core/constants.ts';
import { priceDay } from '#core/pricing.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import { type Asked, there, type Worked } from './worked.ts';

export function powerStep(units: UnitChoice, { model, full, half, speedFor }: Worked): Asked {
  const running = there(model.running, 'a pump');
  const speed = speedFor('skim');
  const ratio = speed / 3450;
  const answer = running.powerAt(model.ratioOf(speed));
  const [top, low] = [there(full.power, 'watts'), there(half.power, 'watts at half speed')];
  const cube = (top - low) / (7 / 8);
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
      `Half speed leaves an eighth of the cube part: ${shown(top)} − ${shown(low)} is ⅞ of it. So it is ${shown(cube)}, and ${shown(top - cube)} stay.`,
      `${shown(top - cube)} + ${shown(cube)} × (${speed} / 3450)³, about ${shown(answer)}.`,
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
    prompt: `The skimmer wants ${s} h, the heater ${h} h, the filter ${f} h. Lay them over each other. How many hours are left for the filter’s own speed?`,
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

export function waterStep(units: UnitChoice, { report, model, flow }: Worked): Asked {
  const volume = there(model.volume, 'the volume');
  return {
    id: 'turnovers',
    title: 'Turnovers',
    prompt: `${laid} How many times does it turn over the pool of ${format('volume', volume, units)}?`,
    quantity: null,
    unit: 'turnovers',
    answer: report.turnovers,
    near: 0.03,
    slips: [
      {
        value: (flow * report.runMinutes * 60) / volume,
        says: 'That takes the flow of full speed for all hours. Each block has its own flow.',
      },
      {
        value: report.turnovers / 60,
        says: 'A flow per minute runs for 60 minutes an hour.',
      },
    ],
    working: [
      `Flow times time of each block, together ${format('volume', report.volumeMoved, units)}.`,
      `Over ${format('volume', volume, units)}: ${report.turnovers.toFixed(2)}.`,
    ],
  };
}

/** Blocks of the plan with hours, power and kWh, longest first. */
function blockLines(units: UnitChoice, { report }: Worked): string[] {
  const blocks = new Map<string, { hours: number; power: number }>();
  for (const { blockId, start, end, power } of report.segments) {
    if (blockId === null) continue;
    const before = blocks.get(blockId)?.hours ?? 0;
    blocks.set(blockId, { hours: before + (end - start) / 60, power });
  }
  return [...blocks.values()].map(
    ({ hours, power }) => `${hours} h × ${format('power', power, units, { digits: 3 })}`,
  );
}

export function energyStep(units: UnitChoice, worked: Worked): Asked {
  const { report, full } = worked;
  const powers = [...new Set(report.segments.map(({ power }) => power))].filter((p) => p > 0);
  const mean = powers.reduce((sum, power) => sum + power, 0) / powers.length;
  return {
    id: 'energy',
    title: 'Energy',
    prompt: 'How much energy does that day take?',
    quantity: 'energy',
    answer: report.energy,
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
        value: report.energy * 1000,
        says: 'Those are watt-hours. A kilowatt-hour is a thousand of them.',
      },
    ],
    working: [
      `${blockLines(units, worked).join(', ')}: together ${format('energy', report.energy, units, { digits: 3 })}.`,
    ],
  };
}

const dateOf = ({ pad }: Worked) => there(pad.day.date, 'a date');

/** The dear and the cheap price of the tariff. */
function twoPrices({ model }: Worked): { readonly dear: number; readonly cheap: number } {
  const bands = model.tariff?.seasons.flatMap(({ dayTypes }) => dayTypes.flatMap((d) => d.bands));
  const prices = (bands ?? []).map(({ price }) => price);
  return { dear: Math.max(...prices), cheap: Math.min(...prices) };
}

export function oldPriceStep(worked: Worked): Asked {
  const tariff = there(worked.model.tariff, 'a tariff');
  const { energyCost, energy, byBand } = priceDay(tariff, dateOf(worked), worked.old);
  const kilowattHours = energy / joulesPerKilowattHour;
  const [block] = worked.pad.day.oldBlocks;
  const { start, end } = there(block, 'the old day');
  const { dear, cheap } = twoPrices(worked);
  const money = (value: number) => formatMoney(value, tariff.currency);
  return {
    id: 'old-price',
    title: 'The old day',
    prompt: `Before, the pump ran flat out from ${clock(start)} to ${clock(end)}. What did the energy of that day cost, daily charge left out?`,
    quantity: null,
    unit: tariff.currency,
    answer: energyCost,
    near: 0.015,
    slips: [
      {
        value: kilowattHours * cheap,
        says: 'The last hour lies in the evening band. Cut the run at 16:00.',
      },
      { value: kilowattHours * dear, says: 'Only the last hour is dear.' },
      {
        value: (kilowattHours * (dear + cheap)) / 2,
        says: 'The mean of the two prices would hold if half of the run were dear. It is one hour of eight.',
      },
    ],
    working: [
      byBand
        .filter(({ cost }) => cost > 0)
        .map(
          ({ band, energy: part, cost }) =>
            `${(part / joulesPerKilowattHour).toFixed(2)} kWh × ${money(band.price)} = ${money(cost)}`,
        )
        .join('; '),
    ],
  };
}

export function priceStep(worked: Worked): Asked {
  const tariff = there(worked.model.tariff, 'a tariff');
  const price = priceDay(tariff, dateOf(worked), worked.report.segments);
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
        says: 'Your plan runs in no dear hour: the evening band begins at 16:00.',
      },
    ],
    working: [
      `${money(price.energyCost)} for energy and ${money(price.dailyCharge)} daily charge: ${money(price.cost)}.`,
    ],
  };
}
