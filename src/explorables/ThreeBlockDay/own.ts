import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { pricedDate } from '#pad/model/someDay.ts';
import type { Bench } from './bench.ts';
import { workOut } from './figures.ts';
import type { ThreeBlockModel } from './model.ts';

/** The reader's pad to lay a day on, or nothing while it does not say enough. */
export function benchOf(pad: Pad): Bench | undefined {
  const { planOf, tariff, speeds } = padModel(pad);
  const plan = planOf([]);
  if (plan === null || tariff === null || speeds === null) return undefined;
  const { pointAt, volume, needs, limits, quiet, standbyPower, priming } = plan;
  return {
    speeds,
    pointAt,
    volume,
    needs: needs.map((need) => ({ ...need, name: need.name === '' ? need.kind : need.name })),
    limits,
    quiet,
    tariff,
    currency: tariff.currency,
    date: pricedDate(pad.day.date),
    standbyPower,
    priming,
  };
}

/** Puts the reader's own pad and units beside the example. */
export function takePad(model: ThreeBlockModel, pad: Pad): void {
  const bench = benchOf(pad);
  model.own.value =
    bench === undefined
      ? undefined
      : { setting: bench, worker: (blocks) => workOut(bench, blocks) };
  model.units.value = pad.units;
}
