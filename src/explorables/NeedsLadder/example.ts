/**
 * Needs and limits of the invented pad behind the home picture. Every figure is made up for teaching;
 * they are of the size that labels commonly state.
 */
import { limitsFor } from '#core/day/limits.ts';
import { demoCircuit, demoCurve, demoPower, speeds } from '#explorables/example/demo.ts';
import { toSI } from '#units/convert.ts';
import { gallonPerMinute } from '#units/factors.ts';
import type { NamedNeed, Scene } from './model.ts';

const need = (id: NamedNeed['kind'], name: string, gpm: number, hours: number): NamedNeed => ({
  id,
  kind: id,
  name,
  leastFlow: gpm * gallonPerMinute,
  minutes: hours * 60,
  windows: [],
  shortestRun: 0,
});

const coverMark = 60 * gallonPerMinute;

export const exampleScene: Scene = {
  curve: demoCurve,
  circuit: demoCircuit,
  power: demoPower,
  needs: [
    need('filtering', 'Filtering', 18, 14),
    need('saltCell', 'Salt cell', 25, 8),
    need('heating', 'Heater', 40, 4),
    need('skimming', 'Skimmer', 48, 3),
    need('cleaner', 'Quick clean', 70, 1),
  ],
  limits: limitsFor({
    circuit: demoCircuit,
    suctionVelocity: toSI('velocity', 6, 'ft/s'),
    dischargeVelocity: toSI('velocity', 8, 'ft/s'),
    filterRate: toSI('filterRate', 20, 'gpm/ft2'),
    filters: [{ area: toSI('area', 2.7, 'ft2') }],
    coversBalanced: true,
    suctionCovers: [
      { id: 'first', markedFlow: coverMark },
      { id: 'second', markedFlow: coverMark },
    ],
  }),
  covers: [coverMark, coverMark],
  referenceSpeed: speeds.rated,
  leastSpeed: speeds.slowest,
  topSpeed: speeds.rated,
  speedStep: speeds.step,
};
