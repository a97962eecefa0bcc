import type { Outline } from '#core/pool/poolOutline.ts';
import { poolVolume } from '#core/pool/poolVolume.ts';
import { ratioForFlow } from '#core/pump/operatingPoint.ts';
import { wirePower } from '#core/pump/power.ts';
import {
  filteredShare,
  turnoversForShare,
  turnoversInRun,
  turnoverTime,
} from '#core/water/mixing.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { readGiven } from '#units/given.ts';

function outlineOf(given: ValueProps): Outline {
  const length = readGiven('length', given['length']);
  switch (given['shape']) {
    case 'rectangle':
    case 'ellipse':
    case 'stadium':
      return { kind: given['shape'], length, width: readGiven('length', given['width']) };
    case 'circle':
      return { kind: 'circle', diameter: length };
    default:
      throw new RangeError(
        `No shape is called "${given['shape']}"; there are rectangle, ellipse, stadium, circle.`,
      );
  }
}

const volumeOf = (given: ValueProps) => readGiven('volume', given['volume']);
const shareOf = (given: ValueProps) => readGiven('share', given['share']);
const plain = (value: number, places: number) => ({
  quantity: null,
  value,
  shown: value.toFixed(places),
});

/** Turnovers of a volume within a time, by the invented pump of the home picture. */
function turning(given: ValueProps) {
  const time = readGiven('duration', given['time']);
  const flow = (volumeOf(given) * Number(given['turnovers'])) / time;
  const { curve, circuit, power, referenceSpeed } = exampleMachine;
  const found = ratioForFlow(curve, circuit, flow);
  if (found.kind !== 'found') throw new RangeError('The example pump does not move so much.');
  const drawn = wirePower(power, flow, found.ratio);
  return { flow, speed: found.ratio * referenceSpeed, power: drawn, energy: drawn * time };
}

/** The water in a pool, how long it takes to go round, and how much of it has. */
export const makers = {
  poolVolume: (given) => ({
    quantity: 'volume',
    value: poolVolume({
      outline: outlineOf(given),
      depth: {
        kind: 'sloped',
        first: readGiven('length', given['shallow'] ?? given['depth']),
        second: readGiven('length', given['deep'] ?? given['depth']),
      },
    }),
  }),
  turnoverTime: (given) => ({
    quantity: 'duration',
    value: turnoverTime(volumeOf(given), readGiven('flow', given['flow'])),
  }),
  turnovers: (given) =>
    plain(
      turnoversInRun(
        volumeOf(given),
        readGiven('flow', given['flow']),
        readGiven('duration', given['time']),
      ),
      2,
    ),
  filteredShare: (given) => ({
    quantity: 'share',
    value: filteredShare(
      Number(given['turnovers']),
      given['efficiency'] === undefined ? 1 : readGiven('share', given['efficiency']),
    ),
  }),
  turnoversForShare: (given) => plain(turnoversForShare(shareOf(given)), 1),
  timeForShare: (given) => ({
    quantity: 'duration',
    value:
      turnoversForShare(shareOf(given)) *
      turnoverTime(volumeOf(given), readGiven('flow', given['flow'])),
  }),
  turningFlow: (given) => ({ quantity: 'flow', value: turning(given).flow }),
  turningSpeed: (given) => ({ quantity: 'speed', value: turning(given).speed }),
  turningPower: (given) => ({ quantity: 'power', value: turning(given).power }),
  turningEnergy: (given) => ({ quantity: 'energy', value: turning(given).energy }),
} as const satisfies ValueMakers;
