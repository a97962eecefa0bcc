import {
  filteredShare,
  sharePassed,
  turnoversForShare,
  turnoversInRun,
  turnoverTime,
} from '#core/mixing.ts';
import type { Given } from '../given.ts';
import type { Family } from '../rule.ts';

function efficiency(given: Given): number {
  return given.maybe('filterEfficiency') ?? given.maybe('efficiency') ?? 1;
}

function turnovers(given: Given): number {
  return (
    given.maybe('turnovers') ??
    turnoversInRun(given.number('volume'), given.number('flow'), given.number('time'))
  );
}

function turnoversInBlocks(given: Given): number {
  const volume = given.number('volume');
  return given.list('blocks').reduce<number>((sum, each) => {
    const inner = given.inside(each, ['name', 'flow', 'time']);
    return sum + turnoversInRun(volume, inner.number('flow'), inner.number('time'));
  }, 0);
}

function sharePassedAtLeast(given: Given): number {
  const fewer = Array.from({ length: given.number('times') }, (_, times) => times);
  return fewer.reduce((sum, times) => sum - sharePassed(given.number('turnovers'), times), 1);
}

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
      needs: ['volume', 'blocks'],
      takes: efficiencyInputs,
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
      needs: ['volume', 'flow', 'time'],
      takes: efficiencyInputs,
      gives: {
        turnovers,
        share: (given) => filteredShare(turnovers(given), efficiency(given)),
        shareLeft: (given) => 1 - filteredShare(turnovers(given), efficiency(given)),
      },
    },
    {
      what: 'time of one turnover',
      needs: ['volume', 'flow'],
      takes: ['turnovers'],
      gives: {
        time: (given) =>
          turnoverTime(given.number('volume'), given.number('flow')) *
          (given.maybe('turnovers') ?? 1),
      },
    },
  ],
};
