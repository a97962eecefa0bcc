import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { limitName, needName } from '#words/needsAndLimits.ts';
import type { HourHuntModel, HuntPlace } from './model.ts';

/** Puts the reader's own pad beside the example. */
export function takePad(model: HourHuntModel, pad: Pad): void {
  model.own.value = placeOf(pad);
  model.units.value = pad.units;
}

/** The pad as a place to hunt on, or nothing while it does not say enough. */
export function placeOf(pad: Pad): HuntPlace | undefined {
  const { running, speeds, volume, ladder, needs, limits, quiet, tariff, standbyPower } =
    padModel(pad);
  if (running === null || speeds === null || volume === null || tariff === null) return undefined;
  const rungs = (ladder ?? []).flatMap((rung) => (rung.kind === 'served' ? [rung.ratio] : []));
  const ratios = threeOf([...new Set(rungs)].sort((a, b) => a - b));
  if (ratios.length === 0) return undefined;
  return {
    settings: ratios.map((ratio) => ({
      speed: Math.round(ratio * speeds.reference),
      ratio,
      point: running.runningAt(ratio),
    })),
    needs: needs.map((need) => ({ ...need, name: needName(need) })),
    limits: limits.map((limit) => ({ ...limit, name: limitName(limit) })),
    quiet,
    volume,
    turnovers: pad.turnoverTarget,
    tariff,
    year: pad.day.date?.year ?? 2027,
    standbyPower,
  };
}

/** The slowest, one in the middle and the fastest of the speeds the needs ask for. */
function threeOf(ratios: readonly number[]): readonly number[] {
  if (ratios.length <= 3) return ratios;
  const middle = ratios[Math.floor(ratios.length / 2)];
  return [ratios[0], middle, ratios.at(-1)].filter((ratio) => ratio !== undefined);
}
