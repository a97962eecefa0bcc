import { describe, expect, test } from 'vitest';
import { benchOf as sheetBench } from '#dayPage/day/bench.ts';
import { workOut } from '#dayPage/day/figures.ts';
import { workHours } from '#explorables/HourHunt/model.ts';
import { placeOf } from '#explorables/HourHunt/own.ts';
import { workOut as workThree } from '#explorables/ThreeBlockDay/figures.ts';
import { benchOf as threeBench } from '#explorables/ThreeBlockDay/own.ts';
import { planYear, type YearPlace } from '#explorables/YearBars/model.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import type { Pad } from '#pad/document/schema.ts';

// A figure in two places is the same: held against the day sheet, and against watts times hours.

const standbyPower = 12;
const primed: Pad = {
  ...ownerPad,
  pump: { ...ownerPad.pump, standbyPower, primingSpeed: 3000, primingMinutes: 5 },
};
const date = { year: 2027, month: 7, day: 1 };
const dated: Pad = { ...primed, day: { ...primed.day, date } };
const ratio = 1500 / 3450;

function known<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error('the pad does not say enough');
  return value;
}

describe('a pump that draws power while it is stopped, and primes', () => {
  test('takes and costs the same on the three blocks as on the day sheet', () => {
    const blocks = [{ id: 'high', start: 540, end: 900, ratio }];
    const speed = ratio * known(sheetBench(dated).bench).speeds.reference;
    const sheet = workOut(
      known(sheetBench(dated).bench),
      [{ id: 'high', start: 540, end: 900, speed, reason: '' }],
      date,
    );
    const three = workThree(known(threeBench(dated)), blocks);
    expect(three.report.energy).toBeCloseTo(sheet.report.energy, 3);
    expect(three.cost).toBeCloseTo(known(sheet.prices).day.energyCost, 9);
    const [part] = three.parts;
    expect(known(part).energy + three.standby.energy).toBeCloseTo(three.report.energy, 3);
    expect(known(part).cost + three.standby.cost).toBeCloseTo(three.cost, 9);
    expect(known(part).water).toBeCloseTo(three.report.volumeMoved, 9);
    expect(three.standby.energy).toBeCloseTo(standbyPower * 18 * 3600, 6);
  });

  test('costs its standby in the hunt for hours', () => {
    const place = known(placeOf(dated));
    const off = workHours(place, new Array(24).fill(0), date);
    expect(off.report.energy).toBeCloseTo(standbyPower * 86_400, 6);
  });

  test('costs its standby in the year of a stopped pump', () => {
    const place: YearPlace = {
      runningAt: (speed) => ({ speed, flow: 0.001, power: 200 }),
      leastSpeed: 600,
      topSpeed: 3450,
      tariff: known(sheetBench(dated).bench?.tariff),
      year: 2027,
      standbyPower,
    };
    const rest = { at: place.runningAt(1000), minutes: 0, wanted: 0 };
    const { energy } = planYear(
      place,
      { season: rest, rest, frostSpeed: 0 },
      new Array(12).fill(true),
      new Array(12).fill(0),
    );
    expect(energy).toBeCloseTo(standbyPower * 365 * 86_400, 3);
  });
});
