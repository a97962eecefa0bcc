/** An invented pool, its needs and its two prices, on the pump of the home picture. All made up. */
import { usualThreeBlockDay } from '#core/day/day.ts';
import type { RunningPoint } from '#core/day/dayReport.ts';
import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { operatingStateAt } from '#explorables/example/machine.ts';
import { gallon, gallonPerMinute } from '#units/factors.ts';
import type { Bench, Setting, Worker } from './bench.ts';
import { workOut } from './figures.ts';

const hour = 60;
const { referenceSpeed, leastSpeed, topSpeed } = exampleMachine;

/** Velocities are left at 0: no limit of this example looks at them. */
function pointAt(ratio: number): RunningPoint {
  const { flow, power } = operatingStateAt(exampleMachine, ratio * referenceSpeed);
  if (flow === 0) return { kind: 'noFlow', power };
  return { kind: 'flowing', flow, power, suctionVelocity: 0, dischargeVelocity: 0 };
}

/** Prices by the clock [per kWh]. */
const dear = 0.46;
const cheap = 0.22;

const currency = '$';

export const exampleBench: Bench = {
  currency,
  speeds: { reference: referenceSpeed, least: leastSpeed, top: topSpeed },
  pointAt,
  volume: 24_000 * gallon,
  needs: [
    {
      id: 'skim',
      name: 'Skim the surface',
      leastFlow: 50 * gallonPerMinute,
      minutes: 3 * hour,
      windows: [{ start: 8 * hour, end: 18 * hour }],
      shortestRun: hour,
    },
    {
      id: 'heat',
      name: 'Heater',
      leastFlow: 40 * gallonPerMinute,
      minutes: 5 * hour,
      windows: [{ start: 9 * hour, end: 17 * hour }],
      shortestRun: hour / 2,
    },
    {
      id: 'salt',
      name: 'Salt cell',
      leastFlow: 25 * gallonPerMinute,
      minutes: 14 * hour,
      windows: [],
      shortestRun: hour / 2,
    },
  ],
  limits: [],
  quiet: [],
  tariff: {
    currency,
    dailyCharge: 0,
    seasons: [
      {
        id: 'year',
        name: 'All year',
        from: { month: 1, day: 1 },
        dayTypes: [
          {
            id: 'every-day',
            name: 'Every day',
            weekdays: [0, 1, 2, 3, 4, 5, 6],
            bands: [
              { start: 0, end: 16 * hour, price: cheap },
              { start: 16 * hour, end: 21 * hour, price: dear },
              { start: 21 * hour, end: 24 * hour, price: cheap },
            ],
          },
        ],
      },
    ],
  },
  date: { year: 2027, month: 7, day: 14 },
};

/** Speeds the day opens with [rpm]. */
const openingSpeeds = { high: 2600, middle: 1800, low: 1200 } as const;

/** The usual day of the trade, at those speeds. */
export const openingBlocks = usualThreeBlockDay({
  high: openingSpeeds.high / referenceSpeed,
  middle: openingSpeeds.middle / referenceSpeed,
  low: openingSpeeds.low / referenceSpeed,
});

export const exampleWorker: Worker = (blocks) => workOut(exampleBench, blocks);

/** What the page carries of the example. */
export const exampleSetting: Setting = {
  speeds: exampleBench.speeds,
  needs: exampleBench.needs,
  currency,
};
