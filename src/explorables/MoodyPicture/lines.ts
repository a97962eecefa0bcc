/** The lines of the chart, as logarithms: friction factor against Reynolds number. */

import { frictionFactor, laminarLimit, turbulentLimit } from '#core/hydraulics/friction.ts';
import { hazenWilliamsFactor } from '#core/hydraulics/hazenWilliams.ts';
import { evenly, type Point } from '#ui/charts/path.ts';
import { leastReynolds, type MoodyModel, plasticC } from './model.ts';

export const greatestReynolds = 1e6;
export const factorRange = [0.01, 0.12] as const;

const pointsOnLine = 40;

function between(from: number, to: number, factor: (reynolds: number) => number): Point[] {
  return evenly(Math.log10(from), Math.log10(to), pointsOnLine).map((x) => {
    const y = factor(10 ** x);
    return { x, y: y < factorRange[0] ? undefined : Math.log10(y) };
  });
}

/** Below the region where flow may do either: one line for every wall. */
export const layeredLine = between(leastReynolds, laminarLimit, (reynolds) =>
  frictionFactor(reynolds, 0),
);

/** Across that region, which is only a bridge. */
export function bridgeLine(relativeRoughness: number): Point[] {
  return between(laminarLimit, turbulentLimit, (reynolds) =>
    frictionFactor(reynolds, relativeRoughness),
  );
}

export function turbulentLine(relativeRoughness: number): Point[] {
  return between(turbulentLimit, greatestReynolds, (reynolds) =>
    frictionFactor(reynolds, relativeRoughness),
  );
}

/** What Hazen–Williams amounts to in the pipe that is looked at, from the first drop of it up. */
export function hazenLine(model: MoodyModel): Point[] {
  const { bore, share } = model.chosen.value;
  return between(leastReynolds, greatestReynolds, (reynolds) =>
    hazenWilliamsFactor(model.flowAt(reynolds) * share, bore, plasticC),
  );
}
