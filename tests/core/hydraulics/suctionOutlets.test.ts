import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import { branchFlows } from '#core/hydraulics/circuit.ts';
import type { Branch, Circuit, CircuitPart } from '#core/hydraulics/circuitParts.ts';
import { type SuctionCover, suctionStop } from '#core/hydraulics/suctionOutlets.ts';
import { circuit } from '../fit/padFixtures.ts';

const gpm = 3.785_411_784 / 60_000; // exact, NIST SP 811
const foot = 0.3048; // exact, NIST SP 811

const way = (
  id: string,
  feet: number,
  bore = 0.0525,
  parts: readonly CircuitPart[] = [],
): Branch => ({
  id,
  lift: 0,
  parts: [
    { kind: 'pipe', id: `${id} pipe`, bore, length: feet * foot, roughness: 1.5e-6 },
    ...parts,
  ],
});
const on = (...branches: readonly Branch[]): Circuit => ({
  ...circuit,
  suction: [{ kind: 'parallel', id: 'outlets', branches }],
});
const cover = (id: string, marked: number, branchId?: string): SuctionCover => ({
  id,
  markedFlow: marked * gpm,
  ...(branchId === undefined ? {} : { branchId }),
});
const stop = (
  covers: readonly SuctionCover[],
  more: { circuit?: Circuit; balanced?: boolean; valved?: readonly string[] } = {},
) => {
  const found = suctionStop({ circuit, balanced: false, ...more, covers });
  if (found === undefined) throw new Error('a stop was expected');
  return { ...found, gpm: found.greatestFlow / gpm };
};

// One cover taken as blocked: ANSI/APSP/ICC-7 and state codes, from memory. Flows worked by hand.
describe('what the suction outlets bear', () => {
  it('is nothing to say of where there is no cover', () => {
    expect(suctionStop({ circuit, covers: [], balanced: false })).toBeUndefined();
  });

  it('is the mark of a cover that stands alone', () => {
    expect(stop([cover('a', 60)])).toMatchObject({ coverId: 'a' });
    expect(stop([cover('a', 60)]).gpm).toBeCloseTo(60, 10);
  });

  it('is no more for a cover beside a skimmer line, because the skimmer can be shut', () => {
    const lines = on(way('floor', 30), way('skimmer', 30));
    expect(stop([cover('a', 60, 'floor')], { circuit: lines }).gpm).toBeCloseTo(60, 10);
  });

  it('is the weakest mark where one cover lies on a branch and another in the line of the pump', () => {
    const lines = on(way('floor', 30), way('skimmer', 30));
    const mixed = [cover('line', 60), cover('branch', 90, 'floor')];
    expect(stop(mixed, { circuit: lines })).toMatchObject({ coverId: 'line' });
    expect(stop(mixed, { circuit: lines }).gpm).toBeCloseTo(60, 10);
  });

  it('counts the covers behind a valve as shut with it, however deep they lie', () => {
    const inner = {
      kind: 'parallel' as const,
      id: 'inner',
      branches: [way('a', 20), way('b', 20)],
    };
    const lines = on(way('left', 30), way('outer', 10, 0.0525, [inner]));
    const covers = [cover('left', 60, 'left'), cover('a', 60, 'a'), cover('b', 60, 'b')];
    expect(stop(covers, { circuit: lines, valved: ['outer'] }).gpm).toBeCloseTo(60, 10);
    expect(stop(covers, { circuit: lines }).gpm).toBeGreaterThan(75);
  });

  it('of two covers on ways of their own is one mark, because the other may be blocked', () => {
    const equal = on(way('left', 30), way('right', 30));
    const covers = [cover('a', 60, 'left'), cover('b', 60, 'right')];
    expect(stop(covers, { circuit: equal }).gpm).toBeCloseTo(60, 10);
    const unequal = on(way('left', 80), way('right', 20));
    expect(stop(covers, { circuit: unequal }).gpm).toBeCloseTo(60, 10);
  });

  it('of covers on a balanced tee is one mark less than all of them', () => {
    const three = [cover('a', 80), cover('b', 70), cover('c', 90)];
    expect(stop(three.slice(0, 2), { balanced: true }).gpm).toBeCloseTo(70, 10);
    expect(stop(three, { balanced: true })).toMatchObject({ coverId: 'b' });
    expect(stop(three, { balanced: true }).gpm).toBeCloseTo(140, 10);
  });

  it('is the least mark where pipes are not known', () => {
    expect(stop([cover('a', 80), cover('b', 70), cover('c', 90)]).gpm).toBeCloseTo(70, 10);
    const lines = on(way('left', 30), way('right', 30));
    const mixed = [cover('a', 80, 'left'), cover('b', 85, 'right'), cover('c', 90)];
    expect(stop(mixed, { circuit: lines, balanced: true }).gpm).toBeCloseTo(80, 10);
  });

  it('of three ways is found from the two left open, whichever is blocked', () => {
    const lines = on(way('left', 20), way('middle', 40), way('right', 80));
    const covers = [cover('a', 60, 'left'), cover('b', 60, 'middle'), cover('c', 60, 'right')];
    const found = stop(covers, { circuit: lines });
    // The shortest way carries most of it when the middle one is blocked.
    expect(found.coverId).toBe('a');
    const open = on(way('left', 20), way('right', 80));
    const [left] = branchFlows(open, found.greatestFlow);
    expect((left?.flow ?? 0) / gpm).toBeCloseTo(60, 8);
    // Pipe loss goes about as flow^1.75, so lengths of 20 and 80 ft divide as 4^(1/1.75) to 1 (Blasius).
    const share = 4 ** (1 / 1.75) / (1 + 4 ** (1 / 1.75));
    expect(found.gpm).toBeGreaterThan(60 / share - 1.5);
    expect(found.gpm).toBeLessThan(60 / share + 1.5);
  });

  it('counts no cover that a valve can shut', () => {
    const lines = on(way('left', 30), way('middle', 30), way('right', 30));
    const covers = [cover('a', 60, 'left'), cover('b', 60, 'middle'), cover('c', 60, 'right')];
    expect(stop(covers, { circuit: lines }).gpm).toBeCloseTo(120, 8);
    const valved = ['left', 'middle', 'right'];
    expect(stop(covers, { circuit: lines, valved }).gpm).toBeCloseTo(60, 8);
  });

  it('follows covers into branches of a branch', () => {
    const inner: CircuitPart = {
      kind: 'parallel',
      id: 'floor outlets',
      branches: [way('left', 6), way('middle', 6), way('right', 6)],
    };
    const lines = on(way('floor', 40, 0.0525, [inner]), way('skimmer', 30));
    const covers = [cover('a', 60, 'left'), cover('b', 60, 'middle'), cover('c', 60, 'right')];
    expect(stop(covers, { circuit: lines }).gpm).toBeCloseTo(120, 8);
    expect(stop(covers, { circuit: lines, valved: ['floor'] }).gpm).toBeCloseTo(120, 8);
  });

  it('lets covers on one branch share it only when they are balanced', () => {
    const lines = on(way('floor', 40), way('skimmer', 30));
    const covers = ['a', 'b', 'c'].map((id) => cover(id, 60, 'floor'));
    expect(stop(covers, { circuit: lines }).gpm).toBeCloseTo(60, 8);
    expect(stop(covers, { circuit: lines, balanced: true }).gpm).toBeCloseTo(120, 8);
  });

  it('refuses a mark of 0 and a branch that is not there', () => {
    expect(() => stop([cover('a', 0)])).toThrow(CoreError);
    expect(() => stop([cover('a', 60, 'nowhere'), cover('b', 60)])).toThrow(CoreError);
  });
});

describe('whatever is added to the suction side', () => {
  const feet = fc.integer({ min: 3, max: 120 });
  const marks = fc.integer({ min: 20, max: 150 });
  const bores: fc.Arbitrary<number> = fc.constantFrom(0.0409, 0.0525, 0.0627);
  const line = fc.record({ feet, bore: bores, mark: fc.option(marks, { nil: null }) });
  const pad = fc.record({
    lines: fc.array(line, { minLength: 1, maxLength: 5 }),
    valves: fc.subarray([0, 1, 2, 3, 4]),
    balanced: fc.boolean(),
  });
  type Pad = typeof pad extends fc.Arbitrary<infer T> ? T : never;
  const named = (at: number) => `way ${at}`;
  const stopOf = ({ lines, valves, balanced }: Pad) => {
    const covers = lines.flatMap(({ mark }, at) =>
      mark === null ? [] : [cover(`cover ${at}`, mark, named(at))],
    );
    return suctionStop({
      circuit: on(...lines.map((each, at) => way(named(at), each.feet, each.bore))),
      covers,
      balanced,
      valved: valves.map(named),
    });
  };
  const marksOf = ({ lines }: Pad) => lines.flatMap(({ mark }) => (mark === null ? [] : [mark]));

  it('a line without a cover changes nothing', () => {
    fc.assert(
      fc.property(pad, feet, (before, length) => {
        const after = {
          ...before,
          lines: [...before.lines, { feet: length, bore: 0.0525, mark: null as number | null }],
        };
        const [was, is] = [stopOf(before), stopOf(after)];
        if (was === undefined) expect(is).toBeUndefined();
        else expect((is?.greatestFlow ?? 0) / was.greatestFlow).toBeCloseTo(1, 9);
      }),
    );
  });

  it('never lets the pump draw more than the other covers are marked for, any one of them blocked', () => {
    fc.assert(
      fc.property(pad, (each) => {
        const marked = marksOf(each);
        const found = stopOf(each);
        if (found === undefined || marked.length === 0) return;
        const all = marked.reduce((sum, mark) => sum + mark, 0);
        const left = marked.length === 1 ? all : all - Math.max(...marked);
        expect(found.greatestFlow / gpm).toBeLessThanOrEqual(left * (1 + 1e-9));
      }),
    );
  });

  it('a second cover never raises the stop of one, and a valve never raises any', () => {
    fc.assert(
      fc.property(pad, fc.nat(4), (each, place) => {
        const marked = marksOf(each);
        const found = stopOf(each);
        if (found === undefined) return;
        if (marked.length === 2)
          expect(found.greatestFlow / gpm).toBeLessThanOrEqual(Math.min(...marked) * (1 + 1e-9));
        const valved = stopOf({ ...each, valves: [...new Set([...each.valves, place])] });
        expect(valved?.greatestFlow).toBeLessThanOrEqual(found.greatestFlow * (1 + 1e-9));
      }),
    );
  });

  it('leaves every cover at or below its mark, whichever other one is blocked', () => {
    fc.assert(
      fc.property(pad, (each) => {
        const found = stopOf(each);
        if (found === undefined || marksOf(each).length < 2) return;
        const covered = [...each.lines.keys()].filter((at) => each.lines[at]?.mark !== null);
        for (const blocked of covered) {
          const open = covered.filter((at) => at !== blocked);
          const left = on(
            ...open.map((at) => way(named(at), each.lines[at]?.feet ?? 1, each.lines[at]?.bore)),
          );
          for (const { branchId, flow } of branchFlows(left, found.greatestFlow)) {
            const mark = each.lines[Number(branchId.slice(4))]?.mark ?? 0;
            expect(flow / gpm).toBeLessThanOrEqual(mark * (1 + 1e-9));
          }
        }
      }),
    );
  });
});
