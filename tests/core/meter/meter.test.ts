import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { joinedIntervals, meterStretch, pumpCheck } from '#core/meter/meter.ts';
import { houseCheck as checkOf, dayProfile } from '#core/meter/meterHouse.ts';
import type { MeterInterval, PowerOn } from '#core/meter/meterIntervals.ts';
import { straightLine } from '#core/numerics/straightLine.ts';
import type { PoweredSpan } from '#core/tariff/pricing.ts';

const houseCheck = (intervals: readonly MeterInterval[], on: PowerOn) =>
  checkOf(meterStretch(intervals, on), dayProfile(intervals, on));

/** Invented: 200 W by night, 1500 W for three hours of the morning, off in the evening. */
const plan: readonly PoweredSpan[] = [
  { start: 1320, end: 540, power: 200 },
  { start: 540, end: 720, power: 1500 },
  { start: 720, end: 1080, power: 400 },
];
const powerOn = () => plan;
const powerAt = (minute: number) => {
  const at = minute % 1440;
  if (at < 540 || at >= 1320) return 200;
  return at < 720 ? 1500 : at < 1080 ? 400 : 0;
};
const firstDay = 740_000 * 1440;

/** A meter that reads base + share x plan, minute by minute added up: another way than the core's. */
function metered(
  base: number,
  share: number,
  step: number,
  days: number,
): readonly MeterInterval[] {
  return Array.from({ length: (1440 * days) / step }, (_, index) => {
    let energy = 0;
    for (let minute = index * step; minute < (index + 1) * step; minute += 1) {
      energy += 60 * (base + share * powerAt(minute));
    }
    return { start: firstDay + index * step, duration: step, energy };
  });
}

const anyStep = fc.constantFrom(5, 15, 20, 30, 60);
const anyMeter = fc.record({
  base: fc.integer({ min: 0, max: 3000 }),
  share: fc.integer({ min: 0, max: 300 }).map((percent) => percent / 100),
  step: anyStep,
  days: fc.integer({ min: 3, max: 5 }),
});

const close = (got: number | null | undefined, want: number) =>
  expect(Math.abs((got ?? Number.NaN) - want)).toBeLessThanOrEqual(
    1e-9 * Math.max(1, Math.abs(want)),
  );

describe('counted and modelled energy', () => {
  it('of a plan known by hand', () => {
    // Arithmetic: (11 h x 200 + 3 h x 1500 + 6 h x 400) W = 9.1 kWh a day; 1 kWh = 3.6e6 J (NIST SP 811, B.8).
    const {
      modelled,
      metered: counted,
      minutes,
      byDay,
      byHour,
    } = meterStretch(metered(100, 1, 30, 2), powerOn);
    close(modelled, 2 * 9.1 * 3.6e6);
    close(counted, 2 * (9.1 + 2.4) * 3.6e6);
    expect(minutes).toBe(2880);
    expect(byDay.map(({ day }) => day)).toEqual([740_001, 740_002]);
    close(byDay[1]?.modelled, 9.1 * 3.6e6);
    close(byHour[9]?.modelled, 2 * 1.5 * 3.6e6);
    close(byHour[18]?.modelled, 0);
  });

  it('an interval over midnight is shared by time', () => {
    const night = { start: firstDay - 60, duration: 180, energy: 3 * 3.6e6 };
    const { byDay, byHour } = meterStretch([night], powerOn);
    expect(byDay.map(({ metered: counted }) => counted)).toEqual([3.6e6, 7.2e6]);
    close(byHour[23]?.metered, 3.6e6);
    close(byDay[0]?.modelled, 200 * 3600);
  });

  it('days and hours add up to the whole, and the order of the intervals changes nothing', () => {
    fc.assert(
      fc.property(anyMeter, fc.integer(), ({ base, share, step, days }, seed) => {
        const intervals = metered(base, share, step, days);
        const turned = [...intervals.slice(seed % 7), ...intervals.slice(0, seed % 7)].reverse();
        const [one, two] = [meterStretch(intervals, powerOn), meterStretch(turned, powerOn)];
        expect(two.byDay.map(({ day }) => day)).toEqual(one.byDay.map(({ day }) => day));
        for (const name of ['metered', 'modelled', 'minutes'] as const) {
          close(two[name], one[name]);
          close(
            one.byDay.reduce((sum, each) => sum + each[name], 0),
            one[name],
          );
          close(
            one.byHour.reduce((sum, each) => sum + each[name], 0),
            one[name],
          );
        }
        close(
          houseCheck(turned, powerOn).share,
          houseCheck(intervals, powerOn).share ?? Number.NaN,
        );
      }),
      { numRuns: 30 },
    );
  });

  it('an interval split in two with its energy shared by time changes no sum', () => {
    fc.assert(
      fc.property(
        anyMeter,
        fc.integer({ min: 1, max: 99 }),
        ({ base, share, step, days }, percent) => {
          const intervals = metered(base, share, step, days);
          const split = intervals.flatMap(({ start, duration, energy }) => {
            const first = (duration * percent) / 100;
            const part = (energy * percent) / 100;
            return [
              { start, duration: first, energy: part },
              { start: start + first, duration: duration - first, energy: energy - part },
            ];
          });
          const [one, two] = [meterStretch(intervals, powerOn), meterStretch(split, powerOn)];
          for (const name of ['metered', 'modelled'] as const) {
            expect(Math.abs(two[name] - one[name])).toBeLessThanOrEqual(1e-7 * one[name]);
          }
          one.byHour.forEach((hour, index) => {
            expect(two.byHour[index]?.modelled).toBeCloseTo(hour.modelled, -1);
            expect(two.byHour[index]?.minutes).toBeCloseTo(hour.minutes, 5);
          });
        },
      ),
      { numRuns: 30 },
    );
  });

  it('joined to quarters of an hour they add up to the same', () => {
    const fine = metered(50, 1, 5, 3);
    const joined = joinedIntervals(fine);
    expect(joined).toHaveLength(fine.length / 3);
    close(meterStretch(joined, powerOn).metered, meterStretch(fine, powerOn).metered);
    const gap = [fine[0], fine[2]] as MeterInterval[];
    expect(joinedIntervals(gap)).toEqual(gap);
    const hours = metered(0, 1, 60, 1);
    expect(joinedIntervals(hours)).toEqual(hours);
  });
});

describe('a meter on the pump alone', () => {
  it('reads the share it was made with, the same every day', () => {
    fc.assert(
      fc.property(anyMeter, ({ share, step, days }) => {
        const check = pumpCheck(meterStretch(metered(0, share, step, days), powerOn));
        close(check.ratio, share);
        expect(check.spread).toBeLessThan(1e-9);
        expect(check.wholeDays).toBe(days);
      }),
      { numRuns: 30 },
    );
  });

  it('spreads as its days do', () => {
    // By hand: ratios 0.9 and 1.1 have the mean 1 and the sample deviation sqrt(0.02).
    const whole = (day: number, share: number) => ({
      start: firstDay + 1440 * day,
      duration: 1440,
      energy: share * 9.1 * 3.6e6,
    });
    const check = pumpCheck(meterStretch([whole(0, 0.9), whole(1, 1.1)], powerOn));
    close(check.spread, Math.sqrt(0.02));
    close(check.ratio, 1);
    // Of 0.9, 1 and 1.1 it is sqrt(0.02 / 2).
    const three = [whole(0, 0.9), whole(1, 1.1), whole(2, 1)];
    close(pumpCheck(meterStretch(three, powerOn)).spread, 0.1);
  });

  it('a day of 23 hours is whole, as on the day the clocks go forward', () => {
    const two = metered(0, 1, 60, 2);
    const wholeDays = (left: readonly MeterInterval[]) =>
      pumpCheck(meterStretch(left, powerOn)).wholeDays;
    expect([two, two.toSpliced(26, 1), two.toSpliced(26, 2)].map(wholeDays)).toEqual([2, 2, 1]);
  });

  it('a part of a day is no whole day, and a pump that is off has no ratio', () => {
    const part = metered(0, 1, 30, 2).slice(0, 60);
    expect(pumpCheck(meterStretch(part, powerOn))).toMatchObject({ wholeDays: 1, spread: null });
    const off = pumpCheck(meterStretch(metered(100, 1, 30, 2), () => []));
    expect(off).toEqual({ ratio: null, spread: null, wholeDays: 0 });
  });
});

describe('a meter on the whole house', () => {
  it('gives back base and share exactly', () => {
    fc.assert(
      fc.property(anyMeter, ({ base, share, step, days }) => {
        const check = houseCheck(metered(base, share, step, days), powerOn);
        expect(check.kind).toBe('told');
        expect(check.share).toBeCloseTo(share, 9);
        expect(check.base).toBeCloseTo(base, 6);
        expect(check.shareError).toBeLessThan(1e-6);
      }),
      { numRuns: 40 },
    );
  });

  it('has a mean day in slots as long as its intervals, and none of intervals above an hour', () => {
    const slots = dayProfile(metered(100, 1, 30, 3), powerOn);
    expect(slots).toHaveLength(48);
    expect(slots[18]).toMatchObject({ start: 540, minutes: 30 });
    close(slots[18]?.metered, 1600);
    close(slots[18]?.modelled, 1500);
    expect(dayProfile(metered(100, 1, 20, 1), powerOn)).toHaveLength(48);
    expect(dayProfile([{ start: 0, duration: 60, energy: 1 }], powerOn)[1]?.metered).toBeNull();
    expect(dayProfile(metered(100, 1, 90, 3), powerOn)).toEqual([]);
    expect(houseCheck(metered(100, 1, 90, 3), powerOn).kind).toBe('longIntervals');
  });

  it('says nothing of few days, of a pump that runs evenly, and of a house too restless', () => {
    const days = metered(300, 1, 60, 2);
    expect(houseCheck(days, powerOn)).toMatchObject({ kind: 'fewDays', wholeDays: 2, share: null });
    const even = () => [{ start: 0, end: 1440, power: 700 }];
    expect(houseCheck(metered(300, 1, 60, 4), even).kind).toBe('steadyPump');
    // A heater of 9 kW that comes on at any hour hides a pump of a few hundred watts.
    const restless = metered(300, 1, 60, 4).map((each, index) => ({
      ...each,
      energy: each.energy + ((index * 7919) % 13 < 3 ? 9000 * 3600 : 0),
    }));
    expect(houseCheck(restless, powerOn).kind).toBe('noHold');
  });

  it('takes the day that holds: a plan that changes is held against its own days', () => {
    const summer = 740_003;
    const other: readonly PoweredSpan[] = [{ start: 0, end: 720, power: 1000 }];
    const plans = (day: number) => (day < summer ? plan : other);
    const [first, second] = [metered(250, 1, 30, 2), metered(0, 0, 30, 2)];
    const later = second.map(({ start, duration }) => ({
      start: start + 2880,
      duration,
      energy: 60 * duration * (250 + ((start - firstDay) % 1440 < 720 ? 1000 : 0)),
    }));
    const check = houseCheck([...first, ...later], plans);
    expect(check.share).toBeCloseTo(1, 9);
    expect(check.base).toBeCloseTo(250, 6);
  });

  it('refuses what is no interval', () => {
    const [good] = metered(0, 1, 60, 1) as [MeterInterval];
    const bad = [{ start: -1 }, { duration: 0 }, { duration: 50_000 }, { energy: Number.NaN }];
    for (const each of bad) {
      expect(() => meterStretch([{ ...good, ...each }], powerOn)).toThrow(CoreError);
      expect(() => joinedIntervals([{ ...good, ...each }])).toThrow(CoreError);
    }
    expect(() => meterStretch([good], () => [{ start: 0, end: 60, power: -1 }])).toThrow(
      'spans[0].power is -1',
    );
    expect(() => meterStretch([good], () => [{ start: 0.5, end: 60, power: 1 }])).toThrow(
      'spans[0].start is 0.5',
    );
  });

  it('takes an interval as long as a month, and asks the model once a day', () => {
    const month = { start: firstDay, duration: 31 * 1440, energy: 1 };
    const asked: number[] = [];
    const { byDay, minutes } = meterStretch([month, month], (day) => {
      asked.push(day);
      return [...plan];
    });
    expect(minutes).toBe(2 * 31 * 1440);
    expect(asked).toEqual(byDay.map(({ day }) => day));
  });

  it('comes to an end at minutes too far off for a step to show', () => {
    // 2^59: doubles lie 64 to 128 minutes apart there.
    const far = { start: 576_462_401_570_865_200, duration: 100, energy: 1 };
    expect(meterStretch([far], () => []).metered).toBeLessThanOrEqual(1);
  });
});

/** Small numbers that look like chance and are the same every time (Park and Miller, 1988). */
function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

describe('a house with hours of its own', () => {
  const bump = (hour: number, at: number, width: number) => Math.exp(-(((hour - at) / width) ** 2));
  /** Invented: an evening of 900 W just when the pump is off, a morning, and a kettle now and then. */
  function restless(share: number, days: number, seed: number): readonly MeterInterval[] {
    const chance = chances(seed);
    return metered(0, share, 30, days).map((each) => {
      const hour = (each.start % 1440) / 60;
      const house = 250 + 300 * bump(hour, 7.5, 1) + 900 * bump(hour, 19, 2);
      const kettle = chance() > 0.95 ? 1200 : 200 * chance();
      return { ...each, energy: each.energy + 60 * 30 * (house + kettle) };
    });
  }

  it('still shows the pump by its jumps: mostly within two standard errors, whatever the kettle does', () => {
    let [outside, farOutside] = [0, 0];
    for (let seed = 1; seed <= 40; seed += 1) {
      const check = houseCheck(restless(1, 21, 7919 * seed), powerOn);
      expect(check.kind).toBe('told');
      expect(check.shareError).toBeLessThan(0.1);
      const apart = Math.abs((check.share ?? 0) - 1) / (check.shareError ?? 0);
      if (apart > 2) outside += 1;
      if (apart > 3) farOutside += 1;
    }
    // Two standard errors leave out 2 of 40, three none (normal law); 6 and 1 would still be no surprise.
    expect(outside).toBeLessThanOrEqual(6);
    expect(farOutside).toBeLessThanOrEqual(1);
  });

  it('a line through the bare powers would be far off, which is why the rhythm is taken out', () => {
    const levels = restless(1, 21, 12_345).map(({ start, duration, energy }) => ({
      x: (powerAt(start) + powerAt(start + duration - 1)) / 2,
      y: energy / duration / 60,
      weight: 1,
    }));
    expect(straightLine(levels)?.slope).toBeLessThan(0.9);
  });
});
