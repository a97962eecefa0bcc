import { type LimitKind, limitsFor } from '#core/day/limits.ts';
import { chlorineMass, saltCellHours } from '#core/water/chlorine.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { exampleScene } from '#explorables/NeedsLadder/example.ts';
import { ladderOf } from '#explorables/NeedsLadder/model.ts';
import { readGiven } from '#units/given.ts';

/** The ladder of the lesson's picture. */
const ladder = ladderOf(exampleScene);

function rungOf(given: ValueProps) {
  const step = ladder.steps.find(({ need }) => need.kind === given['need']);
  if (step?.rung.kind !== 'served') throw new RangeError(`No rung serves "${given['need']}".`);
  return { ...step.rung, speed: step.rung.ratio * exampleScene.referenceSpeed };
}

function ceilingOf(kind: LimitKind) {
  const found = ladder.ceilings.find(({ limit }) => limit.kind === kind);
  if (found?.speed === undefined) throw new RangeError(`The picture has no ceiling "${kind}".`);
  return { flow: found.limit.greatestFlow, speed: found.speed };
}

/** What needs ask for and what limits allow. */
export const makers = {
  rungSpeed: (given) => ({ quantity: 'speed', value: rungOf(given).speed }),
  rungPower: (given) => ({ quantity: 'power', value: rungOf(given).power }),
  stopSpeed: () => ({ quantity: 'speed', value: ladder.fastest }),
  stopFlow: () => ({ quantity: 'flow', value: ceilingOf('suctionCover').flow }),
  ceilingFlow: (given) => ({
    quantity: 'flow',
    value: ceilingOf(given['limit'] as LimitKind).flow,
  }),
  ceilingSpeed: (given) => ({
    quantity: 'speed',
    value: ceilingOf(given['limit'] as LimitKind).speed,
  }),
  /** Equal covers that share the whole flow, one of them taken as blocked. */
  coversBear: (given) => {
    const markedFlow = readGiven('flow', given['marked']);
    const suctionCovers = Array.from({ length: Number(given['covers']) }, (_, place) => ({
      id: `cover ${place + 1}`,
      markedFlow,
    }));
    const [limit] = limitsFor({
      circuit: exampleScene.circuit,
      suctionCovers,
      coversBalanced: true,
    });
    if (limit === undefined) throw new RangeError('Name at least one cover.');
    return { quantity: 'flow', value: limit.greatestFlow };
  },
  filterBears: (given) => {
    const [limit] = limitsFor({
      circuit: exampleScene.circuit,
      filterRate: readGiven('filterRate', given['rate']),
      filters: [{ area: readGiven('area', given['area']) }],
    });
    if (limit === undefined) throw new RangeError('A filter sets a limit.');
    return { quantity: 'flow', value: limit.greatestFlow };
  },
  cellTime: (given) => {
    const mass = chlorineMass(
      readGiven('volume', given['volume']),
      readGiven('concentration', given['use']),
    );
    const hours = saltCellHours(mass, readGiven('massRate', given['output']));
    return { quantity: 'duration', value: hours * 3600 };
  },
} as const satisfies ValueMakers;
