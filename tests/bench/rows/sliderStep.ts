import { headShares } from '#core/hydraulics/circuit.ts';
import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { compiledHead } from '#core/hydraulics/compiledHead.ts';
import { operatingPoint, speedSweep } from '#core/pump/operatingPoint.ts';
import { pumpFromThreePoints, pumpHead } from '#core/pump/pump.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { createAnswers } from '#padPage/answers/model.ts';
import { movingOf, plotOf } from '#padPage/answers/plot.ts';
import { evenly } from '#ui/charts/path.ts';
import { us } from '#units/choice.ts';
import { branched, pumpPoints } from '../../oracle/circuits.ts';
import type { Row, RowMaker } from '../row.ts';

const steps = 64;
const within = { units: 1, millis: 1 };

/** Two curves of 100 points, 25 operating points and where the head goes, all anew at each step. */
async function fullestStep(): Promise<Row> {
  const curve = pumpFromThreePoints(pumpPoints);
  const flows = evenly(0, 0.008, 100);
  const speeds = evenly(0.3, 1, 25);
  const step = (ratio: number): number => {
    const circuit = compileCircuit(branched);
    const heads = flows.map((flow) => pumpHead(curve, flow, ratio) + compiledHead(circuit, flow));
    const points = speedSweep(curve, circuit, speeds);
    const here = operatingPoint(curve, circuit, ratio);
    const flow = here.kind === 'flowing' ? here.flow : 0;
    const shares = headShares(branched, flow).map(({ head }) => head);
    return [...heads, ...shares].reduce((sum, head) => sum + head, points.length);
  };
  return {
    name: 'one slider step, two curves, 25 operating points, shares of the head: numbers alone',
    unit: 'steps',
    within,
    ways: [
      {
        name: 'core',
        units: steps,
        run: () => evenly(0.35, 1, steps).reduce((sum, ratio) => sum + step(ratio), 0),
      },
    ],
  };
}

/** The answers to a whole pad follow the speed: all that the page binds to, but not the binding. */
async function answersStep(): Promise<Row> {
  const model = createAnswers(ownerPad);
  const scene = model.scene.value;
  if (scene === null) throw new Error('the example pad says too little');
  const plot = plotOf(scene, model.rungs.value, us);
  const speeds = evenly(scene.speeds.least, scene.speeds.top, steps);
  const step = (speed: number): number => {
    model.speed.apply(speed);
    const here = model.here.value;
    if (here === null) throw new Error('no answer');
    return movingOf(plot, here).spot.x + model.pieces.value.length + here.power;
  };
  return {
    name: "one slider step of the owner's pad: answers, picture, shares of the head",
    unit: 'steps',
    within,
    ways: [
      {
        name: 'model',
        units: steps,
        run: () => speeds.reduce((sum, speed) => sum + step(speed), 0),
      },
    ],
  };
}

export const rows: readonly RowMaker[] = [fullestStep, answersStep];
