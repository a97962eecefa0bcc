/** An invented meter file to try things out: the pump of the pad, and a house made up around it. */
import { randomLcg } from 'd3-random';
import type { PowerOn } from '#core/meter/meterIntervals.ts';
import type { PoweredSpan } from '#core/tariff/pricing.ts';
import { dayNumber } from '#core/time/calendar.ts';
import { piecesOf } from '#core/time/spans.ts';
import { csvText } from '#pad/formats/csvText.ts';
import { dayAt } from '#pad/formats/dateOfMinute.ts';
import { isoDate } from '#pad/formats/yearCsv.ts';

export type SampleOf = 'pump' | 'house';

const days = 28;
const step = 15;
const [year, month, day] = [2027, 6, 1];

function meanPower(spans: readonly PoweredSpan[], from: number): number {
  const watts = (minute: number) =>
    spans.find((span) =>
      piecesOf(span).some((piece) => piece.start <= minute && minute < piece.end),
    )?.power ?? 0;
  let sum = 0;
  for (let minute = from; minute < from + step; minute += 1) sum += watts(minute);
  return sum / step;
}

/** Watts of an invented house: a base, a morning and an evening, and now and then a kettle. */
function houseWatts(minute: number, chance: () => number): number {
  const hour = minute / 60;
  const bump = (at: number, width: number) => Math.exp(-(((hour - at) / width) ** 2));
  const kettle = chance() > 0.98 ? 900 : 0;
  return 240 + 180 * bump(7.5, 1.5) + 420 * bump(19, 2) + 120 * chance() + kettle;
}

/** Four weeks of quarter hours as a table: a pump that draws 6 % more than its model, in a house or alone. */
export function sampleCsv(of: SampleOf, powerOn: PowerOn): string {
  const chance = randomLcg(of === 'pump' ? 0.31 : 0.47);
  const from = dayNumber({ year, month, day });
  const first = (from - 1) * 1440;
  const rows = Array.from({ length: (days * 1440) / step }, (_, index) => {
    const minute = first + index * step;
    const pump =
      1.06 *
      meanPower(powerOn(from + Math.floor((index * step) / 1440)), (index * step) % 1440) *
      (1 + 0.04 * (chance() - 0.5));
    const rest = of === 'pump' ? 0 : houseWatts(minute % 1440, chance);
    const clock = minute % 1440;
    const time = `${String(Math.floor(clock / 60)).padStart(2, '0')}:${String(clock % 60).padStart(2, '0')}`;
    const energy = Math.round(((pump + rest) * step) / 60) / 1000;
    return [`${isoDate(dayAt(minute))} ${time}`, energy];
  });
  return csvText(['Start (invented)', 'Energy (kWh)'], rows);
}
