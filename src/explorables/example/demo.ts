/**
 * The invented pump and pipes behind the home picture: a family pool whose water returns to the
 * surface it left, so nothing has to be lifted. Every figure here is made up for teaching.
 */
import type { Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { pipeSize } from '#core/hydraulics/pipe.ts';
import { cubePower, type PumpPower } from '#core/pump/power.ts';
import { type PumpCurve, pumpFromThreePoints } from '#core/pump/pump.ts';
import { water } from '#core/water/water.ts';
import { gallon } from '#units/factors.ts';

/** Speeds of the invented pump [rpm]. */
export const speeds = { rated: 3450, slowest: 600, opening: 1730, step: 10 } as const;

/** Volume of the invented pool [m3]: 16 000 gal. */
export const poolVolume = 16_000 * gallon;

/** Invented price of energy, in the currency named [per kWh]. */
export const energyPrice = 0.29;
export const currency = '$';

/** Wire power: a fixed draw for fan and electronics, and a part that follows the cube [W]. */
export const fixedDraw = 52;
export const cubeDraw = 1640;

const suctionBore = pipeSize('sch40-2.5').bore;
const returnBore = pipeSize('sch40-2').bore;

function pipe(id: string, bore: number, length: number): CircuitPart {
  return { kind: 'pipe', id, bore, length, roughness: smoothPlasticRoughness };
}

export const demoCircuit: Circuit = {
  suction: [
    pipe('suction', suctionBore, 11),
    { kind: 'fitting', id: 'suction-bends', k: 3.4, bore: suctionBore },
  ],
  discharge: [
    {
      kind: 'equipment',
      id: 'filter',
      referenceHead: 3.1,
      referenceFlow: 0.004,
      exponent: 2,
      factor: 1,
    },
    {
      kind: 'equipment',
      id: 'heater',
      referenceHead: 1.6,
      referenceFlow: 0.004,
      exponent: 2,
      factor: 1,
    },
    pipe('return', returnBore, 24),
    { kind: 'fitting', id: 'return-bends', k: 7.2, bore: returnBore },
  ],
  staticHead: 0,
  water: water(27),
};

/** The sheet of the invented pump at its rated speed [m3/s, m]. */
export const demoPoints = [
  { flow: 0, head: 25.5 },
  { flow: 0.004, head: 21.2 },
  { flow: 0.0068, head: 12.4 },
] as const;

export const demoCurve: PumpCurve = pumpFromThreePoints(demoPoints);

export const demoPower: PumpPower = cubePower({ fixed: fixedDraw, cube: cubeDraw });
