import { filteredShare, turnoversForShare, turnoversInRun, turnoverTime } from '#core/mixing.ts';
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

const efficiencyInputs = ['filterEfficiency', 'efficiency'];

export const mixingFamily: Family = {
  name: 'mixing',
  quantity: /mixing|turnover|passed the filter/i,
  rules: [
    {
      what: 'share after turnovers',
      needs: ['turnovers'],
      takes: efficiencyInputs,
      gives: { share: (given) => filteredShare(turnovers(given), efficiency(given)) },
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
