/** The capstone pad, read and worked out once by the core. */
import { type DayReport, dayReport } from '#core/day/dayReport.ts';
import { pressureHead, totalDynamicHead } from '#core/fit/gauges.ts';
import { type CubePower, cubePower, wirePower } from '#core/pump/power.ts';
import { affinityFlow } from '#core/pump/pump.ts';
import type { PoweredSpan } from '#core/tariff/pricing.ts';
import { spanMinutes } from '#core/time/spans.ts';
import type { NumberQuestion } from '#course/Check/question.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import { capstonePad, slowestFor } from './capstonePad.ts';

/** One step: a question, and what it is called in the list. */
export interface CapstoneStep extends NumberQuestion {
  readonly id: string;
  readonly title: string;
  /** The answer as the reader writes it. */
  readonly shown: string;
}

/** A step before its answer is written out. */
export type Asked = Omit<CapstoneStep, 'kind' | 'shown'>;

/** A block of the day as a hand has it: speed [rpm], hours [h], flow by the affinity law, watts by two readings. */
export interface HandBlock extends PoweredSpan {
  readonly speed: number;
  readonly hours: number;
  readonly flow: number;
}

/** All the steps need to know of the pad, read and worked out once. */
export interface Worked {
  readonly pad: Pad;
  readonly model: ReturnType<typeof padModel>;
  readonly full: Pad['readings'][number];
  readonly half: Pad['readings'][number];
  readonly headParts: {
    readonly pressure: number;
    readonly vacuum: number;
    readonly height: number;
  };
  /** Head by the gauges [m], and the flow of the pump's curve there [m3/s]. */
  readonly head: number;
  readonly flow: number;
  readonly report: DayReport<NamedNeed, { id: string; greatestFlow: number }>;
  /** The blocks of the plan and of the day as it was found, with watts as a hand works them out. */
  readonly plan: readonly HandBlock[];
  readonly old: readonly HandBlock[];
  /** Watts that never change, and those that follow the cube at full speed, from the two readings [W]. */
  readonly law: CubePower;
  speedFor(needId: string): number;
  flowOf(needId: string): number;
}

/** What must be there, or the capstone cannot be built. */
export const there = <T>(value: T | null | undefined, what: string): T => {
  if (value === null || value === undefined) throw new RangeError(`The capstone lacks ${what}.`);
  return value;
};

/** The flow at which the pump's curve at full speed has fallen to a head, by halving. */
export function flowAtHead(head: (flow: number) => number, wish: number, greatest: number): number {
  let [low, high] = [0, greatest];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (head(middle) > wish) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Full speed of the readings [rpm]. */
const top = 3450;

/** Half the speed leaves an eighth of the cube part, so the two readings differ by seven eighths of it. */
function twoReadings(full: number, half: number): CubePower {
  const cube = (full - half) / (7 / 8);
  return { fixed: full - cube, cube };
}

export function workCapstone(pad: Pad = capstonePad): Worked {
  const model = padModel(pad);
  const full = there(pad.readings[0], 'a reading at full speed');
  const half = there(pad.readings[1], 'a reading at half speed');
  const { density } = model.water;
  const dischargePressure = there(full.filterPressure, 'a filter pressure');
  const suctionVacuum = there(full.suctionVacuum, 'a vacuum');
  const gaugeHeight = there(full.gaugeHeight, 'the height of the gauge');
  const head = totalDynamicHead({ dischargePressure, suctionVacuum, gaugeHeight, density });
  const { curve } = there(model.running, 'a pump');
  const flow = flowAtHead((wish) => curve.head(wish), head, curve.lastFlow);
  const law = twoReadings(there(full.power, 'watts'), there(half.power, 'watts at half speed'));
  const byHand = (blocks: Pad['day']['blocks']): HandBlock[] =>
    blocks.map(({ start, end, speed }) => ({
      start: start ?? 0,
      end: end ?? 0,
      speed: speed ?? 0,
      hours: spanMinutes({ start: start ?? 0, end: end ?? 0 }) / 60,
      flow: affinityFlow(flow, top, speed ?? 0),
      power: wirePower(cubePower(law), flow, (speed ?? 0) / top),
    }));
  return {
    pad,
    model,
    full,
    half,
    headParts: {
      pressure: pressureHead(dischargePressure, density),
      vacuum: pressureHead(suctionVacuum, density),
      height: gaugeHeight,
    },
    head,
    flow,
    law,
    report: dayReport(there(model.planOf(there(model.blocks, 'a day')), 'a plan')),
    plan: byHand(pad.day.blocks),
    old: byHand(pad.day.oldBlocks),
    speedFor: (needId) => slowestFor(pad, needId),
    flowOf: (needId) =>
      there(pad.needs.find(({ id }) => id === needId)?.leastFlow, `the flow of ${needId}`),
  };
}
