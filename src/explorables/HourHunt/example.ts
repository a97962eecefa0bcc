/**
 * An invented pool on the home picture's pump, with invented prices by time of use. It is worked out
 * where the page is built, so that the page carries three running points and not the hydraulics.
 */
import type { RunningPoint } from '#core/day/dayReport.ts';
import { poolVolume } from '#explorables/example/demo.ts';
import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { operatingStateAt } from '#explorables/example/machine.ts';
import { exampleTariff } from '#explorables/example/tariff.ts';
import { gallon, gallonPerMinute } from '#units/factors.ts';
import type { HuntPlace, Setting } from './model.ts';

const hour = (clock: number) => clock * 60;

function setting(speed: number): Setting {
  const { flow, power } = operatingStateAt(exampleMachine, speed);
  // No pipe of the example is judged by velocity here.
  const point: RunningPoint = {
    kind: 'flowing',
    flow,
    power,
    suctionVelocity: 0,
    dischargeVelocity: 0,
  };
  return { speed, ratio: speed / exampleMachine.referenceSpeed, point };
}

const need = (id: string, name: string, gpm: number, hours: number) => ({
  id,
  name,
  leastFlow: gpm * gallonPerMinute,
  minutes: hour(hours),
  windows: [],
  shortestRun: 60,
});

/** The pool the lesson hunts on. */
export const huntPlace: HuntPlace = {
  settings: [1000, 1500, 2200].map(setting),
  needs: [
    { ...need('skim', 'Skimming', 50, 3), windows: [{ start: hour(8), end: hour(18) }] },
    { ...need('heat', 'Heater', 38, 4), windows: [{ start: hour(9), end: hour(16) }] },
    need('salt', 'Salt cell', 24, 8),
  ],
  limits: [],
  quiet: [],
  volume: poolVolume,
  turnovers: (40_000 * gallon) / poolVolume,
  tariff: exampleTariff,
  year: 2027,
};
