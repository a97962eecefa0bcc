import { padModel } from '#pad/assemble.ts';
import { ownerPad } from '#pad/demoOwner.ts';
import { pricedDate } from '#pad/someDay.ts';
import { benchOf } from './bench.ts';
import { workOut } from './figures.ts';

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
