import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { bestMileageRatio, cubePower, hydraulicPower, wirePower } from '#core/pump/power.ts';
import { affinityFlow, pumpFromThreePoints } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { exampleSetup } from '#explorables/WaterPerKilowattHour/example.ts';
import { asked, bestStep, type Step, stepAt } from '#explorables/WaterPerKilowattHour/mileage.ts';
import { readGiven } from '#units/given.ts';

const law = (given: ValueProps) => ({
  fixed: readGiven('power', given['fixed']),
  cube: readGiven('power', given['cube']),
});

/** The lesson's picture: as it comes, or with another "fixed" or "lift". */
function pictured(given: ValueProps) {
  const fixed =
    given['fixed'] === undefined ? exampleSetup.power.fixed : readGiven('power', given['fixed']);
  return asked(exampleSetup, fixed, readGiven('head', given['lift'] ?? '0 m'));
}

function picturedAt(given: ValueProps): Step {
  return stepAt(pictured(given), readGiven('speed', given['speed']));
}

/** Speed below which a pump does not reach a lift. */
function leastSpeed(given: ValueProps): number {
  const shutoff = readGiven('head', given['shutoff']);
  const curve = pumpFromThreePoints([
    { flow: 0, head: shutoff },
    { flow: 0.004, head: 0.8 * shutoff },
    { flow: 0.008, head: 0.2 * shutoff },
  ]);
  const lift = readGiven('head', given['lift']);
  const still = { suction: [], discharge: [], staticHead: lift, water: water(20) };
  const point = operatingPoint(curve, still, 0.01);
  if (point.kind === 'flowing') return Number.NaN;
  return readGiven('speed', given['top']) * point.leastRatio;
}

/** Where the cube law stops. */
export const makers = {
  bestSpeed: (given) => ({
    quantity: 'speed',
    value: Math.round(readGiven('speed', given['top']) * bestMileageRatio(law(given))),
  }),
  bestPower: (given) => ({
    quantity: 'power',
    value: wirePower(cubePower(law(given)), 0, bestMileageRatio(law(given))),
  }),
  waterForKilowattHour: (given) => ({
    quantity: 'volume',
    value:
      (readGiven('flow', given['flow']) / readGiven('power', given['power'])) *
      joulesPerKilowattHour,
  }),
  /** The same at another speed, flow by the affinity law and power by fixed draw and cube. */
  waterAtSpeed: (given) => {
    const [from, to] = [readGiven('speed', given['from']), readGiven('speed', given['to'])];
    const flow = affinityFlow(readGiven('flow', given['flow']), from, to);
    const power = wirePower(cubePower(law(given)), flow, to / from);
    return { quantity: 'volume', value: (flow / power) * joulesPerKilowattHour };
  },
  speedForLift: (given) => ({ quantity: 'speed', value: Math.round(leastSpeed(given)) }),
  wireToWater: (given) => ({
    quantity: 'share',
    value:
      hydraulicPower(
        water(20).density,
        readGiven('flow', given['flow']),
        readGiven('head', given['head']),
      ) / readGiven('power', given['power']),
  }),
  pictureBest: (given) => {
    const best = bestStep(pictured(given));
    return { quantity: 'speed', value: best === undefined ? Number.NaN : Math.round(best.speed) };
  },
  pictureWater: (given) => ({
    quantity: 'volume',
    value: picturedAt(given).mileage * joulesPerKilowattHour,
  }),
  pictureBestWater: (given) => ({
    quantity: 'volume',
    value: (bestStep(pictured(given))?.mileage ?? Number.NaN) * joulesPerKilowattHour,
  }),
  pictureFlow: (given) => ({ quantity: 'flow', value: picturedAt(given).flow }),
  pictureEfficiency: (given) => ({ quantity: 'share', value: picturedAt(given).efficiency }),
} as const satisfies ValueMakers;
