import {
  filteredShare,
  sharePassed,
  turnoversForShare,
  turnoversInRun,
  turnoverTime,
} from '#core/water/mixing.ts';
import type { Given } from '../given.ts';
import type { Family } from '../rule.ts';
import { blocksInputs, blocksNeed, overBlocks } from './dayBlocks.ts';

function efficiency(given: Given): number {
  return given.maybe('filterEfficiency') ?? given.maybe('efficiency') ?? 1;
}

function turnovers(given: Given): number {
  return (
    given.maybe('turnovers') ??
    turnoversInRun(given.number('volume'), given.number('flow'), runTime(given))
  );
}

const timeOfTurnovers = (given: Given): number =>
  turnoverTime(given.number('volume'), given.number('flow')) *
  (given.maybe('turnovers') ?? given.maybe('leastTurnovers') ?? 1);

/** A run against the time of one turnover, as if the pool were that much flow. */
const turnoversOfTime = (given: Given): number =>
  turnoversInRun(given.number('turnoverTime'), 1, runTime(given));

function runTime(given: Given): number {
  const days = Math.round((given.maybe('days') ?? day) / day);
  return days * (given.maybe('runTime') ?? given.number('time'));
}

const timeByTurnover = (given: Given): number =>
  given.number('turnoverTime') *
  (given.maybe('turnovers') ?? turnoversForShare(given.number('share'), efficiency(given)));

const turnoversInBlocks = (given: Given): number =>
  turnoversInRun(given.number('volume'), overBlocks(given, 'flow'), 1);

function sharePassedAtLeast(given: Given): number {
  const fewer = Array.from({ length: given.number('times') }, (_, times) => times);
  return fewer.reduce((sum, times) => sum - sharePassed(given.number('turnovers'), times), 1);
}

const day = 86_400;

const efficiencyInputs = ['filterEfficiency', 'efficiency'];

export const mixingFamily: Family = {
  name: 'mixing',
  quantity: /mixing|turnover|passed the filter/i,
  rules: [
    {
      what: 'share after turnovers',
      needs: ['turnovers'],
      takes: efficiencyInputs,
      gives: {
        share: (given) => filteredShare(turnovers(given), efficiency(given)),
        shareLeft: (given) => 1 - filteredShare(turnovers(given), efficiency(given)),
      },
    },
    {
      what: 'share that passed so many times at least',
      needs: ['turnovers', 'times'],
      gives: { share: sharePassedAtLeast },
    },
    {
      what: 'turnovers in blocks',
      needs: ['volume', blocksNeed],
      takes: [...efficiencyInputs, ...blocksInputs],
      gives: {
        turnovers: turnoversInBlocks,
        share: (given) => filteredShare(turnoversInBlocks(given), efficiency(given)),
        shareLeft: (given) => 1 - filteredShare(turnoversInBlocks(given), efficiency(given)),
      },
    },
    {
      what: 'water moved in a run',
      needs: ['flow', 'time'],
      gives: { volume: (given) => given.number('flow') * given.number('time') },
      ownFamilyOnly: true,
    },
    {
      what: 'turnovers for a share',
      needs: ['share'],
      takes: efficiencyInputs,
      gives: { turnovers: (given) => turnoversForShare(given.number('share'), efficiency(given)) },
    },
    {
      what: 'hours to a share',
      needs: ['volume', 'flow', 'share'],
      takes: efficiencyInputs,
      gives: {
        time: (given) =>
          turnoversForShare(given.number('share'), efficiency(given)) *
          turnoverTime(given.number('volume'), given.number('flow')),
        turnovers: (given) => turnoversForShare(given.number('share'), efficiency(given)),
      },
    },
    {
      what: 'turnovers in a run',
      needs: ['volume', 'flow', 'time|runTime'],
      takes: [...efficiencyInputs, 'days'],
      gives: {
        turnovers,
        leastTurnovers: turnovers,
        share: (given) => filteredShare(turnovers(given), efficiency(given)),
        shareLeft: (given) => 1 - filteredShare(turnovers(given), efficiency(given)),
      },
    },
    {
      what: 'turnovers of a run by the time of one',
      needs: ['turnoverTime', 'time|runTime'],
      takes: [...efficiencyInputs, 'days'],
      gives: {
        turnovers: turnoversOfTime,
        leastTurnovers: turnoversOfTime,
        share: (given) => filteredShare(turnoversOfTime(given), efficiency(given)),
        shareLeft: (given) => 1 - filteredShare(turnoversOfTime(given), efficiency(given)),
      },
    },
    {
      what: 'time of one turnover by how many a day',
      needs: ['leastTurnovers'],
      gives: {
        turnoverTime: (given) => turnoverTime(given.number('leastTurnovers') ** -1, 1 / day),
      },
      ownFamilyOnly: true,
    },
    {
      what: 'time of so many turnovers by the time of one',
      needs: ['turnoverTime', 'turnovers|share'],
      takes: efficiencyInputs,
      gives: { time: timeByTurnover, runTime: timeByTurnover },
    },
    {
      what: 'flow that turns the pool over so often in a time',
      needs: ['volume', 'turnovers', 'time|runTime'],
      gives: {
        flow: (given) => (given.number('volume') * given.number('turnovers')) / runTime(given),
      },
    },
    {
      what: 'time of one turnover',
      needs: ['volume', 'flow'],
      takes: ['turnovers', 'leastTurnovers'],
      gives: {
        time: timeOfTurnovers,
        turnoverTime: (given) => turnoverTime(given.number('volume'), given.number('flow')),
        runTime: timeOfTurnovers,
      },
    },
  ],
};
