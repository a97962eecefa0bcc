import { joulesPerKilowattHour } from '#core/base/constants.ts';
import type { Block } from '#core/day/day.ts';
import { dayEnergy, type PoweredSpan, priceYear } from '#core/tariff/pricing.ts';
import type { Tariff } from '#core/tariff/tariff.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { exampleLoad } from './example.ts';
import type { BillModel, Load, ReadAmperes } from './model.ts';

/** Puts the reader's own pump, day and price beside the example. */
export function takePad(model: BillModel, pad: Pad): void {
  model.own.value = loadOf(pad);
  model.units.value = pad.units;
}

/** Any year has all seasons, and this one is spelled out so that a page never depends on the clock. */
const year = 2027;

const minutesOf = ({ start, end }: Block) => (end > start ? end - start : end - start + 1440);

/** The pad's planned day as one steady draw, or top speed for the example's hours while none is planned. */
export function loadOf(pad: Pad): Load | undefined {
  const { running, speeds, blocks, tariff } = padModel(pad);
  if (running === null || speeds === null) return undefined;
  const topPower = running.powerAt(speeds.top / speeds.reference);
  const planned = (blocks ?? []).filter(({ ratio }) => ratio > 0);
  const spans = planned.map((block) => ({
    start: block.start,
    end: block.end,
    power: running.powerAt(block.ratio),
  }));
  const time = planned.reduce((sum, block) => sum + minutesOf(block), 0) * 60;
  const price = tariff === null ? undefined : meanPrice(tariff, spans);
  return {
    power: time > 0 ? Math.max(dayEnergy(spans) / time, 20) : topPower,
    greatestPower: 500 * Math.ceil((1.1 * Math.max(topPower, 450)) / 500),
    time: time > 0 ? time : exampleLoad.time,
    price: price ?? exampleLoad.price,
    currency: price === undefined ? exampleLoad.currency : (tariff?.currency ?? ''),
    voltage: pad.pump.voltage || exampleLoad.voltage,
    magnetising: undefined,
    read: readAmperes(pad),
  };
}

/** What a kilowatt-hour costs on average over the year, at the hours the pump runs. */
function meanPrice(tariff: Tariff, spans: readonly PoweredSpan[]): number | undefined {
  const run = spans.length > 0 ? spans : [{ start: 0, end: 1440, power: 1000 }];
  const { energy, energyCost } = priceYear(tariff, year, run);
  const price = energy > 0 ? (energyCost / energy) * joulesPerKilowattHour : 0;
  return price > 0 ? price : undefined;
}

/** The readings with both watts and amperes. A drive draws its current by no law that would tell the rest. */
function readAmperes({ pump, readings }: Pad): readonly ReadAmperes[] {
  if (!((pump.voltage ?? 0) > 0)) return [];
  return readings.flatMap(({ power, current }) =>
    power !== null && current !== null && current > 0 && power > 0 ? [{ power, current }] : [],
  );
}
