import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayReport } from '#core/day/dayReport.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { ownerPad, rigPad } from '#pad/demos/demos.ts';
import {
  newBranch,
  newCover,
  newEquipment,
  newNeed,
  newParallel,
  newPipe,
} from '#pad/document/parts.ts';
import type { Pad, Section } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { toSI } from '#units/convert.ts';

const gpm = (value: number) => toSI('flow', value, 'gpm');

/** The owner's pad with one cover of 80 gpm and its filter loaded so far. */
function loaded(loading: number, marked = 80): Pad {
  const turn = (section: Section): Section =>
    section.kind === 'equipment' && section.equipment === 'filter'
      ? { ...section, loading }
      : section;
  return {
    ...ownerPad,
    readings: [],
    plumbing: { ...ownerPad.plumbing, discharge: ownerPad.plumbing.discharge.map(turn) },
    limits: {
      ...ownerPad.limits,
      suctionCovers: [newCover('cover', { markedFlow: gpm(marked) })],
      coversBalanced: false,
    },
  };
}

const stopOf = (pad: Pad) => {
  const stop = padModel(pad).limits.find(({ hard }) => hard);
  if (stop?.greatestRatio === undefined) throw new Error('a stop was expected');
  return { ...stop, greatestRatio: stop.greatestRatio };
};

describe('the speed of a hard stop', () => {
  test('does not move as the filter loads', () => {
    const clean = stopOf(loaded(0)).greatestRatio;
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (loading) => {
        expect(stopOf(loaded(loading)).greatestRatio).toBeCloseTo(clean, 6);
      }),
      { numRuns: 12 },
    );
  });

  test('is where the upper end of the flow band of the clean pad comes to the mark', () => {
    const { fit } = padModel(loaded(0));
    const { greatestRatio, greatestFlow } = stopOf(loaded(0));
    expect(fit?.bandAt(greatestRatio).flow.high).toBeCloseTo(greatestFlow, 7);
  });

  test('counts a throttling valve as open', () => {
    const valve = newEquipment('valve', 'valve', { head: 6, flow: gpm(60) });
    const pad = loaded(0);
    const shut: Pad = {
      ...pad,
      plumbing: { ...pad.plumbing, discharge: [...pad.plumbing.discharge, valve] },
    };
    const { running } = padModel(shut);
    const { greatestRatio, greatestFlow } = stopOf(shut);
    const today = running?.pointAt(greatestRatio);
    // With the valve as it is the pad moves far less than the mark at that speed.
    expect(today?.kind === 'flowing' && today.flow < 0.8 * greatestFlow).toBe(true);
  });

  test('is refused by the ladder and flagged by the day, even where the flow today is below the mark', () => {
    const dirty = loaded(1);
    const model = padModel(dirty);
    const { greatestRatio, greatestFlow, id } = stopOf(dirty);
    const { running, speeds } = model;
    if (running === null || speeds === null) throw new Error('a pump was expected');
    const fast = (greatestRatio * 1.02 * 3450) / 3450;
    const point = operatingPoint(running.curve, running.circuit, fast);
    if (point.kind !== 'flowing') throw new Error('flow was expected');
    expect(point.flow).toBeLessThan(greatestFlow);
    const plan = model.planOf([{ id: 'a', start: 0, end: 60, ratio: fast }]);
    if (plan === null) throw new Error('a plan was expected');
    expect(dayReport(plan).crossings.map(({ limit }) => limit.id)).toContain(id);
    const need = newNeed('much', 'cleaner', { leastFlow: point.flow, minutes: 60 });
    const [rung] = padModel({ ...dirty, needs: [need] }).ladder ?? [];
    expect(rung).toMatchObject({ kind: 'unreachable', reason: { kind: 'beyondLimit' } });
  });

  test('is asked of priming, override and freeze speeds too', () => {
    const pad = loaded(0);
    const stop = Math.floor(stopOf(pad).greatestRatio * 3450);
    const codes = (speed: number) =>
      padModel({
        ...pad,
        pump: { ...pad.pump, primingSpeed: speed, primingMinutes: 5, overrideSpeed: speed },
        year: { ...pad.year, frostSpeed: speed },
      }).problems.flatMap(({ code }) => (code.endsWith('TooFast') ? [code] : []));
    expect(codes(stop)).toEqual([]);
    expect(codes(stop + 2)).toEqual(['primingTooFast', 'overrideTooFast', 'frostTooFast']);
  });
});

describe('filters and heaters of a pad', () => {
  const filter = (id: string, area: number) =>
    newEquipment(id, 'filter', { head: 1, flow: gpm(60), area });
  const heater = (id: string) => newEquipment(id, 'heater', { head: 1, flow: gpm(60) });
  const pipe = (id: string, length = 5) => newPipe(id, { sizeId: 'sch40-2', length });
  const limitOf = (kind: string, discharge: readonly Section[], limits: Partial<Pad['limits']>) => {
    const pad: Pad = {
      ...rigPad,
      plumbing: { suction: [pipe('suction')], discharge, staticHead: 0 },
      limits: { ...rigPad.limits, ...limits },
    };
    const found = padModel(pad).limits.find((limit) => limit.kind === kind);
    if (found === undefined) throw new Error('a limit was expected');
    return found;
  };

  test('in series bind at the least of them', () => {
    // Worked by hand: 0.3 m2 x 0.0125 m/s = 0.00375 m3/s = 59.4 gpm.
    const both = [pipe('a'), filter('one', 0.3), filter('two', 0.4)];
    expect(limitOf('filterRate', both, { filterRate: 0.0125 }).greatestFlow).toBeCloseTo(
      gpm(59.44),
      5,
    );
    const heaters = [pipe('a'), heater('one'), heater('two')];
    const most = { heaterGreatestFlow: gpm(46.5) };
    expect(limitOf('heaterFlow', heaters, most).greatestFlow).toBeCloseTo(gpm(46.5), 10);
  });

  test('side by side bind each by its own flow', () => {
    const ways = newParallel('ways', {
      branches: [
        newBranch('short', { sections: [pipe('p1', 3), filter('one', 0.3)] }),
        newBranch('long', { sections: [pipe('p2', 30), filter('two', 0.3)] }),
      ],
    });
    const limit = limitOf('filterRate', [ways], { filterRate: 0.0125 });
    expect(limit.partId).toBe('one');
    expect(limit.greatestFlow).toBeLessThan(2 * 0.3 * 0.0125);
    expect(limit.greatestFlow).toBeGreaterThan(0.3 * 0.0125);
  });

  test('a heater on the suction side counts too', () => {
    const pad: Pad = {
      ...rigPad,
      plumbing: { suction: [pipe('s'), heater('odd')], discharge: [pipe('d')], staticHead: 0 },
      limits: { ...rigPad.limits, heaterGreatestFlow: gpm(40) },
    };
    const limit = padModel(pad).limits.find(({ kind }) => kind === 'heaterFlow');
    expect(limit?.greatestFlow).toBeCloseTo(gpm(40), 10);
  });
});

describe('a need that names a branch', () => {
  const skim = newNeed('skim', 'skimming', {
    leastFlow: gpm(25),
    minutes: 60,
    branchId: 'skimmer',
  });

  test('is served once that branch carries its flow, and not when the pump does', () => {
    const model = padModel({ ...ownerPad, needs: [skim] });
    const [rung] = model.ladder ?? [];
    if (rung?.kind !== 'served') throw new Error('a rung was expected');
    expect(rung.flow).toBeGreaterThan(gpm(25) * 1.3);
    const share = model.running?.sharesAt(rung.ratio).find(({ path }) => path.includes('skimmer'));
    expect(share?.flow).toBeGreaterThanOrEqual(gpm(25) * (1 - 1e-6));
    expect(model.needs[0]?.branch).toMatchObject({ name: 'Skimmer line', leastFlow: gpm(25) });
  });

  test('that is not there says so, and asks it of the whole flow', () => {
    const model = padModel({ ...ownerPad, needs: [{ ...skim, branchId: 'gone' }] });
    expect(model.problems.map(({ code }) => code)).toContain('needBranch');
    expect(model.needs[0]?.leastFlow).toBe(gpm(25));
  });
});
