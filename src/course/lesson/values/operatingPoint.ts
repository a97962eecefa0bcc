import { joulesPerKilowattHour } from '#core/base/constants.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { equipmentHead } from '#core/hydraulics/equipment.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { type PumpCurve, pumpFromPoints, pumpFromThreePoints } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { fixedDraw } from '#explorables/example/demo.ts';
import { driveEfficiency } from '#explorables/example/demoPump.ts';
import { type Walk, walkAt } from '#explorables/example/rig.ts';
import { exampleRig } from '#explorables/example/valve.ts';
import { readGiven } from '#units/given.ts';

/** One setting of the lesson's picture: pump "a" or "b", "20 %" open, "0 %" of the way to dirty. */
function walk(given: ValueProps): Walk {
  const pump = exampleRig.pumps.find(({ id }) => id === (given['pump'] ?? 'a'));
  if (pump === undefined) throw new RangeError(`pump "${given['pump']}" is not in the picture.`);
  const share = (text: string | undefined, usual: string) => readGiven('share', text ?? usual);
  return walkAt(exampleRig, pump, share(given['dirt'], '0 %'), share(given['open'], '100 %'));
}

/** How much more one setting has than pump A with all open and clean, in percent. */
function more(given: ValueProps, figure: 'flow' | 'power') {
  const value = walk(given)[figure] / walk({})[figure] - 1;
  return { quantity: null, value, shown: `${Math.round(value * 100)}\u00a0%` };
}

/** "0 90, 20 88" with the units beside it, as the points of a sheet. */
function sheet(given: ValueProps): PumpCurve {
  const points = (given['points'] ?? '').split(',').map((pair) => {
    const [flow, head] = pair.trim().split(' ');
    return {
      flow: readGiven('flow', `${flow} ${given['flowIn']}`),
      head: readGiven('head', `${head} ${given['headIn']}`),
    };
  });
  return given['law'] === 'three' ? pumpFromThreePoints(points) : pumpFromPoints(points);
}

/** Pipes whose loss goes as the flow squared, from one known point. */
function pipes(given: ValueProps) {
  return {
    referenceHead: readGiven('head', given['pipesHead']),
    referenceFlow: readGiven('flow', given['pipesFlow']),
    exponent: 2,
    factor: 1,
  };
}

function meeting(given: ValueProps) {
  const loop = { kind: 'equipment', id: 'loop', ...pipes(given) } as const;
  const circuit = compileCircuit({
    suction: [],
    discharge: [loop],
    staticHead: 0,
    water: water(20),
  });
  const point = operatingPoint(sheet(given), circuit, 1);
  return point.kind === 'flowing' ? point : { flow: Number.NaN, head: Number.NaN };
}

/** Pump curve and operating point. */
export const makers = {
  walkFlow: (given) => ({ quantity: 'flow', value: walk(given).flow }),
  walkHead: (given) => ({ quantity: 'head', value: walk(given).head }),
  walkValveHead: (given) => ({ quantity: 'head', value: walk(given).valveHead }),
  walkPower: (given) => ({ quantity: 'power', value: walk(given).power }),
  /** What of the watts reaches the wheel: without the fixed draw, less what drive and motor keep. */
  walkShaft: (given) => ({
    quantity: 'power',
    value: (walk(given).power - fixedDraw) * driveEfficiency,
  }),
  walkEfficiency: (given) => ({ quantity: 'share', value: walk(given).efficiency }),
  walkMoreFlow: (given) => more(given, 'flow'),
  walkMorePower: (given) => more(given, 'power'),
  walkPerKilowattHour: (given) => ({
    quantity: 'volume',
    value: walk(given).mileage * joulesPerKilowattHour,
  }),
  pipesHead: (given) => ({
    quantity: 'head',
    value: equipmentHead(pipes(given), readGiven('flow', given['flow'])),
  }),
  sheetHead: (given) => ({
    quantity: 'head',
    value: sheet(given).head(readGiven('flow', given['flow'])),
  }),
  meetingFlow: (given) => ({ quantity: 'flow', value: meeting(given).flow }),
  meetingHead: (given) => ({ quantity: 'head', value: meeting(given).head }),
} as const satisfies ValueMakers;
