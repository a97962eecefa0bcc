import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { bestMileageRatio, cubePower, wirePower } from '#core/pump/power.ts';
import { affinityFlow, affinityHead, affinityPower } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { type Given, NotUnderstood } from '../given.ts';
import type { Key, Value } from '../keys.ts';
import type { Family } from '../rule.ts';
import { curveText, polynomialPump, systemParts } from './pumpText.ts';

interface Speeds {
  readonly from: number;
  readonly to: number;
}

/** A speed by its index, in rpm or as a ratio to the reference speed. */
function speedAt(given: Given, index: number): number {
  return given.maybe(`speed#${index}`) ?? given.number(`speedRatio#${index}`);
}

/** The speed the value is given at, and the one it is wanted at. */
function speedsFor(given: Given, index: number | undefined, base: number): Speeds {
  if (given.has('speedRatio')) return { from: 1, to: given.number('speedRatio') };
  if (index === undefined) throw new NotUnderstood('which speed the value is at is not stated');
  const isRatio = given.has(`speedRatio#${index}`) && !given.has(`speedRatio#${base}`);
  return { from: isRatio ? 1 : speedAt(given, base), to: speedAt(given, index) };
}

type Law = (value: number, from: number, to: number) => number;

function scaled(name: string, law: Law) {
  return (given: Given, key: Key): number => {
    const known = [1, 2, 3, 4, 5, 6].find((index) => given.has(`${name}#${index}`));
    // Without an index it is what the pump does at full speed.
    if (known === undefined && given.has(name) && key.index !== undefined)
      return law(given.number(name), 1, given.number('speedRatio'));
    if (known === undefined) throw new NotUnderstood(`no ${name} at a stated speed is given`);
    const { from, to } = speedsFor(given, key.index, known);
    return law(given.number(`${name}#${known}`), from, to);
  };
}

/** Inputs for a value that the case asks about: `flow` at the ratio, beside `flow#1` at full speed. */
const scaledRule = {
  what: 'affinity laws',
  takes: ['speed', 'flow', 'head', 'power', 'speedRatio'],
  gives: {
    flow: scaled('flow', affinityFlow),
    head: scaled('head', affinityHead),
    power: scaled('power', affinityPower),
    shaftPower: scaled('power', affinityPower),
  },
};

/** Plain water of 20 degC; with no pipe in the circuit its properties bear on nothing. */
const anyWater = water(20);

function flowAt(given: Given, ratio: number): number | null {
  const { parts, staticHead } = systemParts(given);
  const curve = polynomialPump(curveText(given, 'pumpHead'));
  const circuit = { suction: [], discharge: parts, staticHead, water: anyWater };
  const point = operatingPoint(curve, circuit, ratio);
  return point.kind === 'flowing' ? point.flow : null;
}

function headAt(given: Given, ratio: number): number | null {
  const { parts, staticHead } = systemParts(given);
  const curve = polynomialPump(curveText(given, 'pumpHead'));
  const circuit = { suction: [], discharge: parts, staticHead, water: anyWater };
  const point = operatingPoint(curve, circuit, ratio);
  return point.kind === 'flowing' ? point.head : null;
}

function ratioOf(given: Given): number {
  if (given.has('speedRatio')) return given.number('speedRatio');
  return given.has('speed') ? given.number('speed') / given.number('referenceSpeed') : 1;
}

function leastRatio(given: Given): number {
  const shutoff = given.number('shutoffHead');
  const staticHead = given.number('staticHead');
  const curve = polynomialPump([shutoff, 0, -shutoff * 1e4]);
  const circuit = { suction: [], discharge: [], staticHead, water: anyWater };
  // Asked at a speed too slow to lift any water, the core names the speed that would.
  const point = operatingPoint(curve, circuit, 1e-3);
  if (point.kind !== 'noFlow') throw new NotUnderstood('water moves at any speed');
  return point.leastRatio;
}

function cube(given: Given) {
  return { fixed: given.number('fixedPower'), cube: given.number('cubePower') };
}

function powerAt(given: Given, ratio: number): number {
  return wirePower(cubePower(cube(given)), 0.001 * ratio, ratio);
}

const proportional = (given: Given): Value => {
  const full = flowAt(given, 1);
  return full === null ? null : affinityFlow(full, 1, ratioOf(given));
};

export const affinityFamily: Family = {
  name: 'affinity',
  quantity: /another speed|affinity|pump behaviou?r/i,
  rules: [
    {
      ...scaledRule,
      needs: ['speed#1|speedRatio#1', 'speed#2|speedRatio#2', 'flow#1|head#1|power#1'],
    },
    { ...scaledRule, needs: ['speedRatio|speedRatio#2', 'flow#1|head#1|power#1'] },
    { ...scaledRule, needs: ['speedRatio', 'flow|head|power'] },
    {
      what: 'affinity from full speed',
      needs: ['referenceSpeed', 'speed', 'flow|head|power'],
      takes: ['flow', 'head', 'power'],
      gives: {
        flow: (given) => affinityFlow(given.number('flow'), 1, ratioOf(given)),
        head: (given) => affinityHead(given.number('head'), 1, ratioOf(given)),
        power: (given) => affinityPower(given.number('power'), 1, ratioOf(given)),
      },
    },
    {
      what: 'ratios of two speeds',
      needs: ['speed#1|speedRatio#1', 'speed#2|speedRatio#2'],
      takes: ['power#1'],
      gives: {
        flowRatio: (given) => affinityFlow(1, speedAt(given, 1), speedAt(given, 2)),
        headRatio: (given) => affinityHead(1, speedAt(given, 1), speedAt(given, 2)),
        powerRatio: (given) => affinityPower(1, speedAt(given, 1), speedAt(given, 2)),
        saving: (given) => 1 - affinityPower(1, speedAt(given, 1), speedAt(given, 2)),
        speedRatio: (given) => speedAt(given, 2) / speedAt(given, 1),
      },
    },
    {
      what: 'ratios at a ratio of speeds',
      needs: ['speedRatio'],
      gives: {
        flowRatio: (given) => affinityFlow(1, 1, given.number('speedRatio')),
        headRatio: (given) => affinityHead(1, 1, given.number('speedRatio')),
        powerRatio: (given) => affinityPower(1, 1, given.number('speedRatio')),
        saving: (given) => 1 - affinityPower(1, 1, given.number('speedRatio')),
      },
    },
    {
      what: 'written curves at a speed',
      needs: ['pumpHead', 'systemHead'],
      takes: ['staticHead', 'speedRatio', 'speed', 'referenceSpeed'],
      gives: {
        flow: (given) => flowAt(given, ratioOf(given)),
        head: (given) => headAt(given, ratioOf(given)),
        proportionalFlow: proportional,
        error: (given) => {
          const [guess, flow] = [proportional(given), flowAt(given, ratioOf(given))];
          return typeof guess === 'number' && flow !== null ? guess / flow - 1 : null;
        },
      },
    },
    {
      what: 'least speed that moves water',
      needs: ['shutoffHead', 'staticHead'],
      takes: ['referenceSpeed'],
      gives: {
        speedRatio: leastRatio,
        speed: (given) => leastRatio(given) * given.number('referenceSpeed'),
      },
    },
    {
      what: 'best mileage',
      needs: ['fixedPower', 'cubePower'],
      takes: ['referenceSpeed'],
      gives: {
        speedRatio: (given) => bestMileageRatio(cube(given)),
        speed: (given) => bestMileageRatio(cube(given)) * given.number('referenceSpeed'),
        power: (given) => powerAt(given, bestMileageRatio(cube(given))),
      },
    },
    {
      what: 'wire power with a fixed draw',
      needs: ['fixedPower', 'cubePower', 'speedRatio|speed'],
      takes: ['referenceSpeed'],
      gives: {
        power: (given) => powerAt(given, ratioOf(given)),
        cubePowerOnly: (given) => affinityPower(powerAt(given, 1), 1, ratioOf(given)),
      },
    },
  ],
};
