/** Meter data in Green Button XML (ESPI, NAESB REQ.21): an Atom feed of interval blocks. */
import { SaxesParser } from 'saxes';
import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { type ClockRules, clockOf } from './localClock.ts';
import { type MeterFile, meterFile } from './meterFile.ts';
import {
  type FileNote,
  type FileProblem,
  minutesTo1970,
  type TimedValue,
  type ToLocal,
  usualStep,
} from './series.ts';

const espi = 'http://naesb.org/espi';

/** What is measured: unit, power of ten and direction. */
interface ReadingType {
  uom: number | null;
  power: number;
  direction: number | null;
}

interface Reading {
  start: number | null;
  duration: number | null;
  value: number | null;
  readonly line: number;
}

/** What an entry of the feed says of itself. */
interface Entry {
  self: string;
  up: string;
  readonly related: string[];
  type: ReadingType | null;
  readonly readings: Reading[];
  clock: {
    tzOffset: number;
    dstOffset: number;
    dstStart: string | null;
    dstEnd: string | null;
  } | null;
}

const newEntry = (): Entry => ({
  self: '',
  up: '',
  related: [],
  type: null,
  readings: [],
  clock: null,
});

/** Codes of ESPI: 72 is Wh, 38 is W, direction 1 is what is taken from the grid, 19 what goes back. */
const [wattHours, watts, reverse] = [72, 38, 19];

/** Leaves whose text is kept. */
const leaves = new Set([
  'start',
  'duration',
  'value',
  'powerOfTenMultiplier',
  'uom',
  'flowDirection',
  'tzOffset',
  'dstOffset',
  'dstStartRule',
  'dstEndRule',
]);

/** Takes the pieces of a file in order; gives its intervals at the end. `ownClock` stands in for a clock the file does not tell. */
export function createGreenButton(ownClock: ToLocal) {
  const parser = new SaxesParser({ xmlns: true });
  const entries: Entry[] = [];
  const path: string[] = [];
  let entry = newEntry();
  let reading: Reading | null = null;
  let text: string | null = null;
  let fault: { line: number; atEnd: boolean } | null = null;
  let [isEspi, isClosing] = [false, false];

  parser.on('error', () => {
    fault ??= { line: parser.line, atEnd: isClosing };
  });
  parser.on('opentag', ({ local, uri, attributes }) => {
    if (uri === espi) isEspi = true;
    path.push(local);
    text = leaves.has(local) ? '' : null;
    if (local === 'entry') entry = newEntry();
    if (local === 'IntervalReading')
      reading = { start: null, duration: null, value: null, line: parser.line };
    if (local === 'ReadingType') entry.type = { uom: null, power: 0, direction: null };
    if (local === 'LocalTimeParameters')
      entry.clock = { tzOffset: 0, dstOffset: 0, dstStart: null, dstEnd: null };
    if (local === 'link') takeLink(attributes['rel']?.value ?? '', attributes['href']?.value ?? '');
  });
  parser.on('text', (piece) => {
    if (text !== null) text += piece;
  });
  parser.on('closetag', ({ local }) => {
    if (text !== null) takeLeaf(local, text.trim());
    text = null;
    path.pop();
    if (local === 'IntervalReading' && reading !== null) {
      entry.readings.push(reading);
      reading = null;
    }
    // Readings may also come without a feed around them.
    if (local === 'entry' || path.length === 0) {
      entries.push(entry);
      entry = newEntry();
    }
  });

  function takeLink(rel: string, href: string): void {
    if (rel === 'self') entry.self = href;
    if (rel === 'up') entry.up = href;
    if (rel === 'related') entry.related.push(href);
  }

  function takeLeaf(name: string, value: string): void {
    const number = value === '' ? Number.NaN : Number(value);
    const { type, clock } = entry;
    if (reading !== null && Number.isFinite(number)) {
      if (name === 'start' || name === 'duration') reading[name] = number;
      // Readings may carry qualities of their own, each with a value of another kind.
      if (name === 'value' && path.at(-2) === 'IntervalReading') reading.value = number;
    } else if (type !== null) {
      if (name === 'uom') type.uom = number;
      if (name === 'powerOfTenMultiplier' && Number.isFinite(number)) type.power = number;
      if (name === 'flowDirection') type.direction = number;
    } else if (clock !== null) {
      if (name === 'tzOffset' || name === 'dstOffset') clock[name] = number || 0;
      if (name === 'dstStartRule') clock.dstStart = value;
      if (name === 'dstEndRule') clock.dstEnd = value;
    }
  }

  function end(): MeterFile | FileProblem {
    isClosing = true;
    if (fault === null) parser.close();
    if (fault !== null && !isEspi)
      return { code: 'notXml', line: (fault as { line: number }).line };
    if (fault !== null) {
      const { line, atEnd } = fault as { line: number; atEnd: boolean };
      return { code: atEnd ? 'cutShort' : 'notXml', line };
    }
    if (!isEspi) return { code: 'noGreenButton' };
    const clock: ClockRules | undefined =
      entries.find((each) => each.clock !== null)?.clock ?? undefined;
    return fileOf(entries, clock === undefined ? ownClock : clockOf(clock), clock === undefined);
  }

  return {
    /** Takes the next piece; a problem stops the reading. */
    push: (piece: string): FileProblem | null => {
      parser.write(piece);
      return fault === null ? null : { code: 'notXml', line: (fault as { line: number }).line };
    },
    end,
  };
}

const withoutTail = (href: string) =>
  href.replace(/\/(?:IntervalBlock|MeterReading|ReadingType)\/?$/, '');

/** What the readings of a block measure: by the links of the feed, or the only type there is. */
function typeOf(block: Entry, entries: readonly Entry[]): ReadingType | null {
  const types = entries.filter(({ type }) => type !== null);
  if (types.length <= 1) return types[0]?.type ?? null;
  const meter = entries.find(
    ({ self, readings }) => self !== '' && readings.length === 0 && self === withoutTail(block.up),
  );
  const wanted = [...(meter?.related ?? []), ...block.related];
  return types.find(({ self }) => wanted.includes(self))?.type ?? null;
}

function fileOf(
  entries: readonly Entry[],
  toLocal: ToLocal,
  isOwnClock: boolean,
): MeterFile | FileProblem {
  const blocks = entries.filter(({ readings }) => readings.length > 0);
  if (blocks.length === 0) return { code: 'noReadings' };
  const groups = new Map<string, { type: ReadingType | null; readings: Reading[] }>();
  for (const block of blocks) {
    const type = typeOf(block, entries);
    const key = JSON.stringify([type, withoutTail(block.up)]);
    const group = groups.get(key) ?? { type, readings: [] };
    // One by one: a block may hold more readings than a call takes arguments.
    for (const reading of block.readings) group.readings.push(reading);
    groups.set(key, group);
  }
  const fit = [...groups.values()].filter(({ type }) => isElectricity(type));
  fit.sort((one, other) => other.readings.length - one.readings.length);
  const [chosen] = fit;
  if (chosen === undefined) {
    return { code: 'otherMeter', unit: String([...groups.values()][0]?.type?.uom ?? '') };
  }
  const { type, readings } = chosen;
  const notes: FileNote[] = [
    ...(isOwnClock ? [{ code: 'ownZone' } as const] : []),
    ...(type === null ? [{ code: 'noReadingType' } as const] : []),
    ...(groups.size > 1 ? [{ code: 'otherSeries', count: groups.size - 1 } as const] : []),
  ];
  const values = readings.flatMap((each) => valueOf(each, toLocal));
  if (values.length === 0) return { code: 'noReadings' };
  const step = values[0]?.duration ?? usualStep(values) ?? 60;
  const scale = 10 ** (type?.power ?? 0);
  const energyOf =
    type?.uom === watts
      ? (value: number, minutes: number) => value * scale * 60 * minutes
      : (value: number) => (value * scale * joulesPerKilowattHour) / 1000;
  return meterFile(values, step, energyOf, notes);
}

const isElectricity = (type: ReadingType | null): boolean =>
  type === null ||
  ((type.uom === null || type.uom === wattHours || type.uom === watts) &&
    type.direction !== reverse);

function valueOf(reading: Reading, toLocal: ToLocal): readonly TimedValue[] {
  const { start, duration, value, line } = reading;
  if (start === null || value === null) return [];
  const minutes = duration === null || duration <= 0 ? undefined : duration / 60;
  const utc = start / 60;
  return [{ local: toLocal(utc), running: utc + minutesTo1970, duration: minutes, value, line }];
}
