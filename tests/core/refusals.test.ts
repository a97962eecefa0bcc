import { describe, expect, test } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { crossedLimits, type LimitInputs, limitsFor } from '#core/day/limits.ts';
import { costPerHour, type LadderInputs, speedLadder } from '#core/day/needs.ts';
import {
  columnPressure,
  gaugeTolerance,
  pressureHead,
  roundedDynamicHead,
  totalDynamicHead,
} from '#core/fit/gauges.ts';
import {
  curveCHead,
  curveCPoint,
  energyFactor,
  hydraulicHorsepower,
  variableSpeedPoints,
  weightedEnergyFactor,
} from '#core/pump/energyFactor.ts';
import {
  atmosphericPressure,
  geopotentialAltitude,
  npshAvailable,
  npshFromVacuum,
  npshMargin,
} from '#core/pump/npsh.ts';
import { cubePower } from '#core/pump/power.ts';
import { dayNumber, dayOfYear, daysInMonth, isLeapYear, nextDay } from '#core/time/calendar.ts';
import {
  chlorineMass,
  productMass,
  productVolume,
  saltCellHours,
  thumbChlorinePounds,
  tradePercentConcentration,
} from '#core/water/chlorine.ts';
import {
  heaterHours,
  heatingEnergy,
  thumbHeatBtu,
  thumbHeaterBtuPerHour,
} from '#core/water/heating.ts';
import {
  filteredShare,
  turnoversForShare,
  turnoversInRun,
  turnoverTime,
} from '#core/water/mixing.ts';
import { water } from '#core/water/water.ts';
import { circuit, curve } from './fit/padFixtures.ts';

// Contracts of our own: a number that the law does not hold for is named, with its field.
type Refusal = readonly [field: string, call: () => unknown];

const pair = { dischargePressure: 1e5, suctionVacuum: 2e4, gaugeHeight: 0.3, density: 998 };
const tapped = { ...pair, flow: 0.004, dischargeBore: 0.04, suctionBore: 0.05 };
const suction = {
  atmosphere: 101_325,
  water: { density: 998, vapourPressure: 2000 },
  surfaceAbovePump: 0,
  suctionLoss: 1,
};
const gauge = { ...suction, suctionVacuum: 2e4, velocity: 2 };
const npsh = { atmosphere: 101_325, surfaceAbovePump: 0, required: () => 1, margin: 0.5 };
const limits = (more: Omit<LimitInputs, 'circuit'>) => limitsFor({ circuit, ...more });
const ladder = (more: Partial<LadderInputs>) =>
  speedLadder({
    needs: [],
    curve,
    circuit,
    power: cubePower({ fixed: 45, cube: 1100 }),
    limits: [],
    minRatio: 0.2,
    maxRatio: 1,
    ...more,
  });
const need = {
  id: 'skim',
  kind: 'skimming',
  leastFlow: 0.001,
  minutes: 60,
  windows: [],
  shortestRun: 0,
} as const;

const refusals: Readonly<Record<string, readonly Refusal[]>> = {
  calendar: [
    ['year', () => isLeapYear(0)],
    ['year', () => isLeapYear(10_000)],
    ['year', () => isLeapYear(2027.5)],
    ['month', () => daysInMonth(2027, 0)],
    ['month', () => daysInMonth(2027, 13)],
    ['month', () => daysInMonth(2027, 1.5)],
    ['year', () => daysInMonth(0, 1)],
    ['year', () => daysInMonth(0, 2)],
    ['day', () => dayOfYear({ year: 2027, month: 4, day: 31 })],
    ['day', () => dayOfYear({ year: 2027, month: 4, day: 0 })],
    ['day', () => dayNumber({ year: 2027, month: 2, day: 29 })],
    ['day', () => nextDay({ year: 2027, month: 4, day: 1.5 })],
    ['year', () => nextDay({ year: 9999, month: 12, day: 31 })],
  ],
  gauges: [
    ['pressure', () => pressureHead(3e6, 998)],
    ['density', () => pressureHead(1e5, 100)],
    ['head', () => columnPressure(1001, 998)],
    ['density', () => columnPressure(1, 100)],
    ['dischargePressure', () => roundedDynamicHead({ ...pair, dischargePressure: -2e5 })],
    ['suctionVacuum', () => roundedDynamicHead({ ...pair, suctionVacuum: 150_000 })],
    ['gaugeHeight', () => roundedDynamicHead({ ...pair, gaugeHeight: 60 })],
    ['dischargePressure', () => totalDynamicHead({ ...pair, dischargePressure: -2e5 })],
    ['suctionVacuum', () => totalDynamicHead({ ...pair, suctionVacuum: 150_000 })],
    ['gaugeHeight', () => totalDynamicHead({ ...pair, gaugeHeight: 60 })],
    ['flow', () => totalDynamicHead({ ...tapped, flow: -1 })],
    ['bore', () => totalDynamicHead({ ...tapped, dischargeBore: 0 })],
    ['span', () => gaugeTolerance({ grade: 'B', span: 0 }, 1)],
    ['reading', () => gaugeTolerance({ grade: 'B', span: 1 }, Number.NaN)],
  ],
  heat: [
    ['volume', () => heatingEnergy(-1, 1, water(26))],
    ['rise', () => heatingEnergy(1, 101, water(26))],
    ['density', () => heatingEnergy(1, 1, { density: 0, specificHeat: 4184 })],
    ['specificHeat', () => heatingEnergy(1, 1, { density: 998, specificHeat: 0 })],
    ['energy', () => heaterHours(-1, 1)],
    ['power', () => heaterHours(1, 0)],
    ['efficiency', () => heaterHours(1, 1, 0)],
    ['efficiency', () => heaterHours(1, 1, 1.01)],
    ['volumeGal', () => thumbHeatBtu(-1, 1)],
    ['riseF', () => thumbHeatBtu(1, -1)],
    ['areaFt2', () => thumbHeaterBtuPerHour(-1, 1)],
    ['riseF', () => thumbHeaterBtuPerHour(1, -1)],
  ],
  mixing: [
    ['volume', () => turnoverTime(0, 1)],
    ['flow', () => turnoverTime(1, 0)],
    ['flow', () => turnoversInRun(1, -1, 1)],
    ['time', () => turnoversInRun(1, 1, -1)],
    ['turnovers', () => filteredShare(-1)],
    ['efficiency', () => filteredShare(1, 1.01)],
    ['share', () => turnoversForShare(-0.1)],
    ['efficiency', () => turnoversForShare(0.5, 0)],
  ],
  npsh: [
    ['geometric', () => geopotentialAltitude(-2001)],
    ['altitude', () => atmosphericPressure(-2001)],
    ['surfaceAbovePump', () => npshAvailable({ ...suction, surfaceAbovePump: 51 })],
    ['suctionLoss', () => npshAvailable({ ...suction, suctionLoss: -1 })],
    ['atmosphere', () => npshAvailable({ ...suction, atmosphere: -1 })],
    ['density', () => npshAvailable({ ...suction, water: { density: 1, vapourPressure: 0 } })],
    [
      'vapourPressure',
      () => npshAvailable({ ...suction, water: { density: 998, vapourPressure: -1 } }),
    ],
    ['suctionVacuum', () => npshFromVacuum({ ...gauge, suctionVacuum: 120_000 })],
    ['velocity', () => npshFromVacuum({ ...gauge, velocity: 31 })],
    ['gaugeAbovePump', () => npshFromVacuum({ ...gauge, gaugeAbovePump: 51 })],
    ['available', () => npshMargin(101, 1)],
    ['required', () => npshMargin(1, -1)],
  ],
  chlorine: [
    ['volume', () => chlorineMass(-1, 1)],
    ['rise', () => chlorineMass(1, -1)],
    ['chlorine', () => productMass(-1, 0.5)],
    ['availableShare', () => productMass(1, 0)],
    ['tradePercent', () => tradePercentConcentration(0)],
    ['tradePercent', () => tradePercentConcentration(101)],
    ['chlorine', () => productVolume(-1, 1)],
    ['concentration', () => productVolume(1, 0)],
    ['chlorine', () => saltCellHours(-1, 1)],
    ['cellRate', () => saltCellHours(1, 0)],
    ['outputShare', () => saltCellHours(1, 1, 0)],
    ['volumeGal', () => thumbChlorinePounds(-1, 1)],
    ['riseMgL', () => thumbChlorinePounds(1, -1)],
    ['factor', () => thumbChlorinePounds(1, 1, 0)],
  ],
  'energy factor': [
    ['flow', () => energyFactor(-1, 1)],
    ['power', () => energyFactor(1, 0)],
    ['flow', () => hydraulicHorsepower(-1, 1)],
    ['head', () => hydraulicHorsepower(1, -1)],
    ['divisor', () => hydraulicHorsepower(1, 1, 0)],
    ['flow', () => curveCHead(-1)],
    ['greatestFlow', () => curveCPoint(() => 10, 2)],
    ['greatestFlow', () => curveCPoint(() => 10, 1e-6)],
    ['pumpHead', () => curveCPoint(() => 0)],
    ['topFlow', () => variableSpeedPoints(0, 1)],
    ['topHorsepower', () => variableSpeedPoints(0.01, 0)],
    ['weight', () => weightedEnergyFactor([{ flow: 1, power: 1, weight: 0 }])],
    ['flow', () => weightedEnergyFactor([{ flow: 0, power: 1, weight: 1 }])],
    ['power', () => weightedEnergyFactor([{ flow: 1, power: 0, weight: 1 }])],
    ['weights', () => weightedEnergyFactor([{ flow: 1, power: 1, weight: 1.1 }])],
  ],
  limits: [
    ['suctionVelocity', () => limits({ suctionVelocity: 0 })],
    ['dischargeVelocity', () => limits({ dischargeVelocity: -1 })],
    ['filter area', () => limits({ filterRate: 1, filters: [{ area: 0 }] })],
    ['filter rate', () => limits({ filterRate: 0, filters: [{ area: 1 }] })],
    ['heater flow', () => limits({ heaters: [{ greatestFlow: 0 }] })],
    ['branchId', () => limits({ heaters: [{ greatestFlow: 1, branchId: 'nowhere' }] })],
    ['markedFlow', () => limits({ suctionCovers: [{ id: 'a', markedFlow: 0 }] })],
    ['margin', () => limits({ npsh: { ...npsh, margin: 21 } })],
    ['flow', () => crossedLimits([], -1)],
  ],
  needs: [
    ['minRatio', () => ladder({ minRatio: 0 })],
    ['maxRatio', () => ladder({ maxRatio: 0.1 })],
    ['ratioStep', () => ladder({ ratioStep: 1.1 })],
    ['leastFlow', () => ladder({ needs: [{ ...need, leastFlow: -1 }] })],
    ['greatestFlow', () => ladder({ needs: [{ ...need, greatestFlow: 11 }] })],
    ['power', () => costPerHour(-1, 1)],
    ['price', () => costPerHour(1, Number.POSITIVE_INFINITY)],
  ],
};

describe.each(Object.entries(refusals))('%s', (_subject, list) => {
  test.each(list)('a wrong %s is refused by name', (field, call) => {
    expect(call).toThrow(CoreError);
    expect(call).toThrow(new RegExp(`^${field} is `));
  });
});
