import { ownerPad } from '#pad/demos/demoOwner.ts';
import { padModel } from '#pad/model/assemble.ts';
import { pricedDate } from '#pad/model/someDay.ts';
import { benchOf } from './day/bench.ts';
import { workOut } from './day/figures.ts';

const running = () => padModel(ownerPad).running;

/** What the first picture of the day asks for, in steps that each are short. */
export const firstSteps: readonly (() => unknown)[] = [
  () => padModel(ownerPad),
  running,
  ...ownerPad.day.blocks.map(({ speed }) => () => {
    const { ratioOf } = padModel(ownerPad);
    return running()?.runningAt(ratioOf(speed ?? 0));
  }),
  () => padModel(ownerPad).limits,
  () => {
    const { bench } = benchOf(ownerPad);
    const { blocks, date } = ownerPad.day;
    return bench && workOut(bench, blocks, pricedDate(date));
  },
];
