/** How sure the price of the year is. */

import type { SettledPad } from '#core/fit/padEvidence.ts';
import type { Band } from '#core/numerics/band.ts';
import { daysInYear } from '#core/time/calendar.ts';
import { type AnswerBand, priceLaw } from '#core/uncertainty/dayBands.ts';
import type { Uncertainty } from '#core/uncertainty/uncertainty.ts';
import { yearReport } from '#core/year/year.ts';
import type { FrostOn } from '#dayPage/day/openFrost.ts';
import type { Pad } from '#pad/document/schema.ts';
import type { PadModel } from '#pad/model/assemble.ts';
import { yearPlanOf } from '#pad/model/assembleYear.ts';
import { runningPad } from '#pad/model/runningPad.ts';

/**
 * Price of the year with its band by slopes, one pad a step: a year is a day's work 365 times, so it
 * is asked of as few pads as the slopes need. Gives null while pump, pool or price is not known.
 */
export function* yearBand(
  pad: Pad,
  model: PadModel,
  sureness: Uncertainty,
  when: { readonly year: number; readonly frostOn: FrostOn | undefined },
): Generator<undefined, AnswerBand | null> {
  const costs = new Map<SettledPad, number>();
  for (const settled of sureness.pads) {
    const running = runningPad(settled.circuit, settled.curve, settled.power);
    const plan = yearPlanOf(pad, { ...model, running }, when);
    if (plan === null) return null;
    // Only its price is asked, so nothing else of a day needs to be worked out.
    const plans = plan.plans.map((each) => ({ ...each, needs: [] }));
    costs.set(settled, yearReport({ ...plan, plans, limits: [], quiet: [] }).cost);
    yield;
  }
  const [band] = sureness.bandsOf(
    (settled) => [costs.get(settled) as number],
    priceLaw(model.tariff, daysInYear(when.year)),
  );
  return { best: costs.get(sureness.best) as number, band: band as Band };
}
