/**
 * An invented pool on the home picture's pump, with invented prices by time of use. It is worked out
 * where the page is built, so that the page carries three running points and not the hydraulics.
 */
import type { RunningPoint } from '#core/dayReport.ts';
import type { DayType, Tariff } from '#core/tariff.ts';
import { gallon, gallonPerMinute } from '#units/factors.ts';
import { poolVolume } from '#widgets/CubeLaw/demo.ts';
import { exampleMachine } from '#widgets/FlowPowerSpeed/example.ts';
import { meetingAt } from '#widgets/kit/machine.ts';
import type { HuntPlace, Setting } from './model.ts';

const hour = (clock: number) => clock * 60;

const weekday = (peak: number, middle: number, night: number): DayType => ({
  id: 'weekday',
  name: 'weekday',
  weekdays: [1, 2, 3, 4, 5],
  bands: [
    { start: hour(0), end: hour(7), name: 'Night', price: night },
    { start: hour(7), end: hour(16), name: 'Day', price: middle },
    { start: hour(16), end: hour(21), name: 'Evening', price: peak },
    { start: hour(21), end: hour(24), name: 'Late', price: middle },
  ],
});

const weekend = (evening: number, rest: number): DayType => ({
  id: 'weekend',
  name: 'weekend',
  weekdays: [0, 6],
  bands: [
    { start: hour(17), end: hour(20), name: 'Evening', price: evening },
    { start: hour(20), end: hour(17), name: 'Rest of the day', price: rest },
  ],
});

/** Two seasons, two kinds of day, three prices; every figure is made up. */
export const exampleTariff: Tariff = {
  currency: '$',
  dailyCharge: 0.35,
  seasons: [
    {
      id: 'summer',
      name: 'Summer',
      from: { month: 6, day: 1 },
      dayTypes: [weekday(0.49, 0.27, 0.18), weekend(0.34, 0.2)],
    },
    {
      id: 'winter',
      name: 'Winter',
      from: { month: 10, day: 1 },
      dayTypes: [weekday(0.31, 0.22, 0.16), weekend(0.25, 0.17)],
    },
  ],
};

function setting(speed: number): Setting {
  const { flow, power } = meetingAt(exampleMachine, speed);
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
