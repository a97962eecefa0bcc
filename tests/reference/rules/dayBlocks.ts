/** The blocks of a day as cases write them: objects, [start, end, speed], [hours, speed], hours by speed. */
import { cubePower, wirePower } from '#core/pump/power.ts';
import { affinityFlow, affinityPower } from '#core/pump/pump.ts';
import { isObject } from '../caseFile.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Value } from '../keys.ts';
import { minutesIn, spanOf } from './clock.ts';
import { speedFields } from './optimumInputs.ts';

const day = 1440;

export interface CaseBlock {
  /** Minutes after midnight; undefined where only the hours are stated. */
  readonly start?: number;
  readonly minutes: number;
  /** Undefined where the case does not tell. */
  readonly power: number | undefined;
  readonly flow: number | undefined;
}

type When = Pick<CaseBlock, 'start' | 'minutes'>;

const blocksNames = ['blocks', 'schedule', 'plan', 'hoursPerSpeed'] as const;
export const blocksNeed = blocksNames.join('|');
export const blocksInputs = [
  ...blocksNames,
  ...['speeds', 'referenceSpeed', 'fixedPower', 'cubePower', 'power', 'flow'],
];

function between(start: number, end: number): When {
  return { start: start % day, minutes: (((end - start) % day) + day) % day || day };
}

const isClock = (text: string): boolean => /^\d{1,2}(:\d{2})?$/.test(text.trim());

/** Hours as a number; "22:00-06:00" or [22, 6] where the clock is meant. */
function whenOf(value: Value): When {
  if (typeof value === 'number') return { minutes: value * 60 };
  const ends = Array.isArray(value)
    ? (value as readonly Value[])
    : String(value).split(/\s*(?:-|–|to|until)\s*/);
  const [start, end, ...more] = ends;
  const isSpan = ends.every((each) => typeof each === 'number' || isClock(String(each)));
  if (start === undefined || end === undefined || more.length > 0 || !isSpan)
    throw new NotUnderstood('the hours of a block are not understood');
  return between(minutesIn(start), minutesIn(end));
}

/** What the pump does at a speed: by the list of speeds, the fixed draw and the cube, or affinity. */
function atSpeed(given: Given, speed: Value): Pick<CaseBlock, 'power' | 'flow'> {
  if (speed === null || speed === 0 || speed === 'off') return { power: 0, flow: 0 };
  if (given.has('speeds')) return rowAt(given, speed);
  const unit = given.key(idOf(given))?.unit.dimension;
  if (!given.has('referenceSpeed') && unit === 'power')
    return { power: Number(speed), flow: undefined };
  const ratio = Number(speed) / given.number('referenceSpeed');
  const flow = given.has('flow') ? affinityFlow(given.number('flow'), 1, ratio) : undefined;
  if (given.has('power')) return { power: affinityPower(given.number('power'), 1, ratio), flow };
  if (!given.has('cubePower')) return { power: undefined, flow };
  const law = cubePower({ fixed: given.number('fixedPower'), cube: given.number('cubePower') });
  return { power: wirePower(law, 0.001 * ratio, ratio), flow };
}

/** The row of the list of speeds by its name, else by its speed. */
function rowAt(given: Given, speed: Value): Pick<CaseBlock, 'power' | 'flow'> {
  const rows = given.list('speeds').map((each) => given.inside(each, speedFields));
  const nameOf = (row: Given): string => (row.has('name') ? String(row.value('name')).trim() : '');
  const speedOf = (row: Given): number =>
    row.maybe('speed') ?? row.maybe('speedRatio') ?? Number(nameOf(row) || Number.NaN);
  const row =
    rows.find((each) => nameOf(each) === String(speed).trim()) ??
    rows.find((each) => speedOf(each) === Number(speed));
  if (row === undefined) throw new NotUnderstood(`no speed is called ${String(speed)}`);
  return { power: row.maybe('power'), flow: row.maybe('flow') };
}

const fields = ['name', 'start', 'end', 'time', 'runTime', 'power', 'speed', 'flow'];

function fromObject(given: Given, value: Value): CaseBlock {
  const inner = given.inside(value, fields);
  const clock = inner.has('start') ? spanOf(inner) : undefined;
  const seconds = inner.maybe('time') ?? inner.maybe('runTime');
  if (clock === undefined && seconds === undefined)
    throw new NotUnderstood('a block says neither when nor how long');
  const when = clock ? between(clock.start, clock.end) : { minutes: (seconds ?? 0) / 60 };
  const isSpeedEnough = inner.has('speed') && (given.has('speeds') || given.has('referenceSpeed'));
  const known = isSpeedEnough ? atSpeed(given, inner.value('speed')) : undefined;
  return {
    ...when,
    power: inner.maybe('power') ?? known?.power,
    flow: inner.maybe('flow') ?? known?.flow,
  };
}

function fromList(given: Given, value: readonly Value[]): CaseBlock {
  const [first, second, third] = value;
  if (value.length === 3 && first !== undefined && second !== undefined)
    return { ...whenOf([first, second]), ...atSpeed(given, third ?? null) };
  if (value.length === 2 && first !== undefined)
    return { ...whenOf(first), ...atSpeed(given, second ?? null) };
  throw new NotUnderstood('a block is neither a pair nor a triple');
}

function idOf(given: Given): string {
  const id = blocksNames.find((name) => given.has(name));
  if (id === undefined) throw new NotUnderstood('no blocks are given');
  return id;
}

export function blocksOf(given: Given): readonly CaseBlock[] {
  const value = given.value(idOf(given));
  if (isObject(value))
    return Object.entries(value).map(([speed, hours]) => ({
      ...whenOf(hours),
      ...atSpeed(given, speed),
    }));
  return given
    .list(idOf(given))
    .map((each) =>
      Array.isArray(each) ? fromList(given, each as readonly Value[]) : fromObject(given, each),
    );
}

/** A sum over the blocks of something that each must state, by the minute. */
export function overBlocks(given: Given, what: 'flow' | 'power'): number {
  return blocksOf(given).reduce((sum, block) => {
    const each = block[what];
    if (each === undefined) throw new NotUnderstood(`a block has no ${what}`);
    return sum + each * block.minutes * 60;
  }, 0);
}
