/** Invented meter files, written here by hand so that nothing of ours writes what ours reads. */

import { type CsvChoice, lookAtCsv } from '#pad/formats/csvLook.ts';
import { isProblem } from '#pad/formats/csvSeries.ts';
import { createGreenButton } from '#pad/formats/greenButton.ts';
import { createIntervalsCsv } from '#pad/formats/intervalsCsv.ts';
import type { MeterFile } from '#pad/formats/meterFile.ts';
import { type FileProblem, minutesTo1970, type ToLocal } from '#pad/formats/series.ts';

/** A clock in UTC. */
export const utc: ToLocal = (minute) => minute + minutesTo1970;

/** Minutes from the beginning of year 1 to a moment on a clock. */
export const at = (iso: string): number => Date.parse(`${iso}Z`) / 60_000 + minutesTo1970;

export interface Reading {
  /** Seconds since 1970, UTC. */
  readonly start: number;
  readonly duration?: number;
  readonly value: number;
}

interface FeedWish {
  readonly uom?: number;
  readonly power?: number;
  readonly direction?: number;
  readonly clock?: string;
}

/**
 * A feed as the open standard lays it out (NAESB REQ.21, ESPI): entries linked by self, up and related.
 * From memory of the published schema.
 */
export function feed(readings: readonly Reading[], wish: FeedWish = {}): string {
  const { uom = 72, power = 0, direction = 1, clock = '' } = wish;
  return `<?xml version="1.0" encoding="UTF-8"?>
<feed xmlns="http://www.w3.org/2005/Atom">
<title>Invented</title>
${clock}
<entry><link rel="self" href="/x/UsagePoint/1/MeterReading/1"/><link rel="related" href="/x/ReadingType/7"/>
<content><MeterReading xmlns="http://naesb.org/espi"/></content></entry>
<entry><link rel="self" href="/x/ReadingType/7"/><content>
<espi:ReadingType xmlns:espi="http://naesb.org/espi"><espi:flowDirection>${direction}</espi:flowDirection>
<espi:powerOfTenMultiplier>${power}</espi:powerOfTenMultiplier><espi:uom>${uom}</espi:uom></espi:ReadingType>
</content></entry>
<entry><link rel="up" href="/x/UsagePoint/1/MeterReading/1/IntervalBlock"/><content>
<IntervalBlock xmlns="http://naesb.org/espi"><interval><duration>86400</duration><start>0</start></interval>
${readings
  .map(
    ({ start, duration = 3600, value }) =>
      `<IntervalReading><timePeriod><duration>${duration}</duration><start>${start}</start></timePeriod><value>${value}</value></IntervalReading>`,
  )
  .join('\n')}
</IntervalBlock></content></entry></feed>`;
}

/** Fed in pieces of an odd length, as a large file would be. */
export function pieces(text: string, length = 61): readonly string[] {
  const found: string[] = [];
  for (let from = 0; from < text.length; from += length)
    found.push(text.slice(from, from + length));
  return found;
}

export function readXml(text: string, clock: ToLocal = utc, length = 61): MeterFile | FileProblem {
  const reader = createGreenButton(clock);
  for (const piece of pieces(text, length)) {
    const problem = reader.push(piece);
    if (problem !== null) return problem;
  }
  return reader.end();
}

/** Reads a table as first guessed, or as changed. */
export function readCsv(text: string, change: Partial<CsvChoice> = {}): MeterFile | FileProblem {
  const look = lookAtCsv(text, true, 'meter');
  if ('code' in look) return look;
  const reader = createIntervalsCsv({ ...look.guess, ...change }, utc);
  for (const piece of pieces(text)) {
    const problem = reader.push(piece);
    if (problem !== null) return problem;
  }
  return reader.end();
}

export function taken(result: MeterFile | FileProblem): MeterFile {
  if (isProblem(result)) throw new Error(`refused: ${JSON.stringify(result)}`);
  return result;
}
