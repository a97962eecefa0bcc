/** Pipes one behind the other and side by side: losses add, or one loss splits the flow. */

import { standardGravity } from '#core/base/constants.ts';
import { branchFlows, systemHead } from '#core/hydraulics/circuit.ts';
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { hazenWilliams } from '#core/hydraulics/hazenWilliams.ts';
import { meanVelocity } from '#core/hydraulics/pipe.ts';
import { isObject, type JsonObject } from '../caseFile.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Key, Value } from '../keys.ts';
import type { Rule } from '../rule.ts';
import { pipeFields, pipeParts, waterOf } from './caseCircuit.ts';
import { boreOf, densityOf, viscosityInputs } from './shared.ts';

const places = [1, 2, 3, 4, 5, 6];

/** How a numbered input of the case is called in a list of pipes; lengths are in SI by then. */
const numbered: Readonly<Record<string, string>> = {
  bore: 'inside_diameter_m',
  nominal: 'nominal_m',
  length: 'length_m',
  k: 'k',
  kFittings: 'k_fittings',
  roughness: 'roughness_m',
  hazenC: 'hazen_williams_c',
};

/** What the pipes of a case may share. */
const shared: Readonly<Record<string, string>> = { ...numbered, schedule: 'schedule', pn: 'pn' };

function inputsNamed(given: Given, names: typeof shared, suffix: string): JsonObject {
  const there = Object.entries(names).filter(([name]) => given.has(name + suffix));
  return Object.fromEntries(there.map(([name, raw]) => [raw, given.value(name + suffix)]));
}

function listOf(given: Given, id: string): readonly Value[] {
  if (given.has(id)) return given.list(id);
  const isSideBySide = /parallel|side by side/i.test(
    given.has('arrangement') ? given.text('arrangement') : given.what,
  );
  if (given.has('series') || given.has('parallel') || isSideBySide !== (id === 'parallel'))
    return [];
  return places
    .filter((place) => given.has(`bore#${place}`) || given.has(`nominal#${place}`))
    .map((place) => inputsNamed(given, numbered, `#${place}`));
}

/** The pipes of a list; `pipes` are side by side where the case says so. */
function pipesOf(given: Given, id: 'series' | 'parallel'): readonly Given[] {
  const isSideBySide = given.has('arrangement') && /parallel|side/.test(given.text('arrangement'));
  if (isSideBySide && given.has('series'))
    return id === 'series' ? [] : pipesIn(given, given.list('series'));
  return pipesIn(given, listOf(given, id));
}

function pipesIn(given: Given, list: readonly Value[]): readonly Given[] {
  const common = inputsNamed(given, shared, '');
  return list.map((each) => {
    if (!isObject(each)) throw new NotUnderstood('a pipe is not an object');
    const own = given.inside(each, [...pipeFields, 'hazenC']);
    const isTold = (raw: string): boolean =>
      Object.entries(shared).some(([name, spelled]) => spelled === raw && own.has(name));
    const rest = Object.entries(common).filter(([raw]) => !isTold(raw));
    return given.inside({ ...Object.fromEntries(rest), ...each }, [...pipeFields, 'hazenC']);
  });
}

function darcyCircuit(given: Given): Circuit {
  if (!viscosityInputs.some((id) => id !== 'density' && given.has(id)))
    throw new NotUnderstood('neither viscosity nor temperature is given');
  const parts = (pipe: Given, id: string): readonly CircuitPart[] =>
    pipeParts(pipe, id, smoothPlasticRoughness);
  const side = pipesOf(given, 'parallel').map((pipe, place) => {
    const id = `branch ${place + 1}`;
    return { id, parts: parts(pipe, id), lift: 0 };
  });
  return {
    suction: [],
    discharge: [
      ...pipesOf(given, 'series').flatMap((pipe, place) => parts(pipe, `pipe ${place + 1}`)),
      ...(side.length === 0 ? [] : [{ kind: 'parallel', id: 'branches', branches: side } as const]),
    ],
    staticHead: 0,
    water: waterOf(given),
  };
}

/** Loss of one pipe by Hazen and Williams; fittings would make it no pure power of the flow. */
function hazenLoss(pipe: Given, flow: number): number {
  if (pipe.has('k') || pipe.has('kFittings')) throw new NotUnderstood('fittings beside this law');
  const c = pipe.number('hazenC');
  return hazenWilliams({ flow, bore: boreOf(pipe), length: pipe.number('length'), c }, 'si');
}

/** Losses are alike, and each is a power of its flow: shares go by the loss at one and the same flow. */
function hazenFlows(given: Given): readonly number[] {
  const flow = given.number('flow');
  const exponent = 1.852;
  const ease = pipesOf(given, 'parallel').map((pipe) => hazenLoss(pipe, flow) ** (-1 / exponent));
  const all = ease.reduce((sum, each) => sum + each, 0);
  return ease.map((each) => (flow * each) / all);
}

const isHazen = (given: Given): boolean =>
  [...pipesOf(given, 'series'), ...pipesOf(given, 'parallel')].every((pipe) => pipe.has('hazenC'));

function flowsSideBySide(given: Given): readonly number[] {
  if (pipesOf(given, 'parallel').length === 0) throw new NotUnderstood('no pipes side by side');
  if (isHazen(given)) return hazenFlows(given);
  return branchFlows(darcyCircuit(given), given.number('flow')).map(({ flow }) => flow);
}

/** Loss of the pipe of the key's number, or of all together. */
function loss(given: Given, { index }: Key): number {
  const flow = given.number('flow');
  const series = pipesOf(given, 'series');
  if (index !== undefined) {
    const pipe = series[index - 1];
    if (pipe === undefined) throw new NotUnderstood(`there is no pipe ${index} in the row`);
    if (isHazen(given)) return hazenLoss(pipe, flow);
    const discharge = pipeParts(pipe, 'pipe', smoothPlasticRoughness);
    return systemHead({ ...darcyCircuit(given), discharge }, flow);
  }
  if (!isHazen(given)) return systemHead(darcyCircuit(given), flow);
  const [first] = pipesOf(given, 'parallel');
  const side = first === undefined ? 0 : hazenLoss(first, hazenFlows(given)[0] ?? 0);
  return series.reduce((sum, pipe) => sum + hazenLoss(pipe, flow), side);
}

function numberedFrom<T>(values: readonly T[], { index }: Key): T {
  const value = index === undefined ? undefined : values[index - 1];
  if (value === undefined) throw new NotUnderstood('which pipe is meant is not stated');
  return value;
}

/** Velocity in the pipe of the key's number. */
function velocity(given: Given, key: Key): number {
  const side = pipesOf(given, 'parallel');
  if (side.length === 0)
    return meanVelocity(given.number('flow'), boreOf(numberedFrom(pipesOf(given, 'series'), key)));
  return meanVelocity(numberedFrom(flowsSideBySide(given), key), boreOf(numberedFrom(side, key)));
}

const shares = (given: Given): readonly number[] =>
  flowsSideBySide(given).map((flow) => flow / given.number('flow'));

const oneFlow = (given: Given, key: Key): number => numberedFrom(flowsSideBySide(given), key);
const oneShare = (given: Given, key: Key): number => numberedFrom(shares(given), key);

export const pipesTogether: Rule = {
  what: 'pipes one behind the other or side by side',
  needs: ['flow', 'series|parallel|bore#1|nominal#1'],
  takes: [
    ...['series', 'parallel', 'arrangement', ...Object.keys(shared), ...viscosityInputs],
    ...Object.keys(numbered).flatMap((name) => places.map((place) => `${name}#${place}`)),
  ],
  gives: {
    headLoss: loss,
    head: loss,
    totalHead: loss,
    pressureLoss: (given, key) => loss(given, key) * densityOf(given) * standardGravity,
    flow: oneFlow,
    branchFlow: oneFlow,
    branchFlows: flowsSideBySide,
    branchShare: oneShare,
    share: oneShare,
    flowRatio: oneShare,
    branchShares: shares,
    velocity,
    branchVelocity: velocity,
  },
};
