import { gaugeTolerance } from '#core/fit/gauges.ts';
import { typicalInstruments } from '#core/fit/padEvidence.ts';
import type { ValueMakers, ValueProps } from '#course/lesson/value.ts';
import { examplePad, openingChoice } from '#explorables/ReadingBand/example.ts';
import { exampleFitter } from '#explorables/ReadingBand/exampleFit.ts';
import { type Fitted, halfWidth, type Known } from '#explorables/ReadingBand/pad.ts';
import { readGiven } from '#units/given.ts';

/** "3450 2800": the notes of the example used, by their speeds; gauges unless "without". */
function fitted(given: ValueProps): Fitted {
  const speeds = (given['notes'] ?? '').split(' ').filter((text) => text !== '');
  const ids = speeds.map((speed) => {
    const line = examplePad.lines.find((each) => String(each.speed) === speed);
    if (line === undefined) throw new RangeError(`There is no note at ${speed} rpm.`);
    return line.id;
  });
  return exampleFitter({ ...openingChoice, ids, gauges: given['gauges'] !== 'without' });
}

function slowest(given: ValueProps): Known {
  const [known] = fitted(given).known;
  if (known === undefined) throw new RangeError('Nothing is known here.');
  return known;
}

function foretold(given: ValueProps) {
  const found = fitted(given).foretold;
  if (found === undefined) throw new RangeError('Two notes are needed.');
  return found;
}

/** Readings of the invented pad, and what they make sure. */
export const makers = {
  bandLow: (given) => ({ quantity: 'power', value: slowest(given).power.low }),
  bandHigh: (given) => ({ quantity: 'power', value: slowest(given).power.high }),
  bandHalf: (given) => ({ quantity: 'share', value: halfWidth(slowest(given), 'power') }),
  bandHalfFlow: (given) => ({ quantity: 'share', value: halfWidth(slowest(given), 'flow') }),
  bandForetold: (given) => ({ quantity: 'power', value: foretold(given).said.best }),
  bandMissed: (given) => {
    const { said, measured } = foretold(given);
    return { quantity: 'share', value: Math.abs(said.best / measured - 1) };
  },
  gaugeError: (given) => {
    const { filterGauge } = typicalInstruments;
    const reading = readGiven('pressure', given['reading']);
    return { quantity: 'pressure', value: gaugeTolerance(filterGauge, reading) };
  },
} as const satisfies ValueMakers;
