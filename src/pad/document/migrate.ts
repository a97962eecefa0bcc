import { onLines, onOneLine } from './oneLine.ts';
import { padFormat, padVersion } from './version.ts';

type Json = Readonly<Record<string, unknown>>;

/** What came of bringing a document up to the present version. */
export type Migrated =
  | { readonly kind: 'present'; readonly document: Json; readonly from: number }
  | { readonly kind: 'notAPad' }
  | { readonly kind: 'newer'; readonly version: number }
  | { readonly kind: 'unknownVersion' };

function isObject(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function listOf(value: unknown): readonly Json[] {
  return Array.isArray(value) ? value.filter(isObject) : [];
}

/** "22:30" as 1350; anything else as it is, for the definition to refuse. */
function minuteFrom(clock: unknown): unknown {
  const match = typeof clock === 'string' ? /^(\d{1,2}):(\d{2})$/.exec(clock) : null;
  return match ? Number(match[1]) * 60 + Number(match[2]) : clock;
}

function without(object: Json, ...names: readonly string[]): Json {
  return Object.fromEntries(Object.entries(object).filter(([name]) => !names.includes(name)));
}

function numbered(prefix: string, items: readonly Json[]): readonly Json[] {
  return items.map((item, place) => ({ ...item, id: `${prefix}${place + 1}` }));
}

function sideOf(parts: readonly Json[], side: string): readonly Json[] {
  const own = parts.filter((part) => part['side'] === side).map((part) => without(part, 'side'));
  return numbered(side === 'suction' ? 's' : 'd', own);
}

function pointFrom(point: unknown): unknown {
  return Array.isArray(point) ? { flow: point[0], head: point[1] } : point;
}

function pumpFrom(pump: Json): Json {
  const points = Array.isArray(pump['points']) ? pump['points'].map(pointFrom) : [];
  return {
    referenceSpeed: pump['fullSpeed'],
    topSpeed: pump['fullSpeed'],
    leastSpeed: pump['slowest'],
    voltage: pump['volts'],
    knowledge: points.length > 0 ? { kind: 'curve', points } : { kind: 'nameplate' },
  };
}

function readingFrom(reading: Json): Json {
  return {
    speed: reading['rpm'],
    filterPressure: reading['pressure'],
    power: reading['watts'],
  };
}

function blockFrom(block: Json): Json {
  return {
    start: minuteFrom(block['from']),
    end: minuteFrom(block['to']),
    speed: block['rpm'],
  };
}

/**
 * Version 0, the first draft: one list of parts with a side each, a bare volume, times as "22:30",
 * the curve as pairs of numbers, and nothing about needs, limits or prices.
 */
function fromDraft(draft: Json): Json {
  const parts = listOf(draft['parts']);
  return {
    format: padFormat,
    name: draft['name'],
    notes: draft['notes'],
    units: { preset: draft['units'] },
    site: { waterTemperature: draft['temperature'] },
    pool: { kind: 'known', volume: draft['volume'] },
    plumbing: {
      suction: sideOf(parts, 'suction'),
      discharge: sideOf(parts, 'discharge'),
      staticHead: draft['lift'],
    },
    pump: pumpFrom(isObject(draft['pump']) ? draft['pump'] : {}),
    readings: numbered('r', listOf(draft['readings']).map(readingFrom)),
    day: { blocks: numbered('b', listOf(draft['day']).map(blockFrom)) },
  };
}

/**
 * Version 1 said of covers without a branch that they share the whole flow; it could not say whether
 * their pipes are balanced, so that is left for the reader to say. Its other new fields begin unknown.
 */
function fromFirst(document: Json): Json {
  return withTextsOnLines(document) as Json;
}

/** Version 1 let control characters into texts; they become spaces, and only notes keep their lines. */
function withTextsOnLines(value: unknown, name = ''): unknown {
  if (typeof value === 'string') return name === 'notes' ? onLines(value) : onOneLine(value);
  if (Array.isArray(value)) return value.map((inner) => withTextsOnLines(inner));
  if (!isObject(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([field, inner]) => [field, withTextsOnLines(inner, field)]),
  );
}

/** The step that leads from each version to the next; each gives a new document. */
const steps: readonly ((document: Json) => Json)[] = [fromDraft, fromFirst];

/** Lets the fields that a step found nothing for fall away, as if they had been left out. */
function withoutUndefined(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutUndefined);
  if (!isObject(value)) return value;
  const kept = Object.entries(value).filter(([, inner]) => inner !== undefined);
  return Object.fromEntries(kept.map(([name, inner]) => [name, withoutUndefined(inner)]));
}

/** Brings a document of any known version up to the present one, one step a version. */
export function migrate(document: unknown): Migrated {
  if (!isObject(document) || document['format'] !== padFormat) return { kind: 'notAPad' };
  const version = document['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    return { kind: 'unknownVersion' };
  }
  if (version > padVersion) return { kind: 'newer', version };
  const present = steps
    .slice(version)
    .reduce((older, step, place) => ({ ...step(older), version: version + place + 1 }), document);
  return { kind: 'present', document: withoutUndefined(present) as Json, from: version };
}
