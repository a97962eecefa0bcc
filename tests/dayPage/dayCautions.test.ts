import { describe, expect, it } from 'vitest';
import { hardCautions, type SheetCautions } from '#dayPage/day/dayCautions.ts';
import { type Bench, workOut } from '#dayPage/day/figures.ts';
import { defaultPad } from '#pad/demos/demos.ts';
import { emptyPad, newCover, newEquipment } from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { block, handBench, limit } from './daySheetFixtures.ts';

const caution = (title: string) => ({ title, text: '' });
const bare = emptyPad('us');
const cautions: SheetCautions = {
  always: [],
  stop: caution('stop'),
  oneCover: caution('one cover'),
  noFlow: caution('no flow'),
  heater: caution('heater'),
};
const date = { year: 2027, month: 7, day: 14 };

const shown = (pad: Pad, blocks = [block('a', 0, 0, 1500)], bench: Bench = handBench) =>
  hardCautions(workOut(bench, blocks, date).report, pad, cautions).map(({ title }) => title);

const heated = (): Pad => ({
  ...bare,
  plumbing: { ...bare.plumbing, discharge: [newEquipment('h', 'heater')] },
});

describe('what a day must say before it hangs by the pump', () => {
  it('a pump that never stops and never slows asks for nothing', () => {
    expect(shown(heated())).toEqual([]);
  });

  it('hours without flow: feeders, and the heater where there is one', () => {
    const half = [block('a', 0, 720, 1500)];
    expect(shown(bare, half)).toEqual(['no flow']);
    expect(shown(heated(), half)).toEqual(['no flow', 'heater']);
  });

  it('a pump that turns too slowly to move water leaves feeders without flow too', () => {
    const still: Bench = { ...handBench, pointAt: () => ({ kind: 'noFlow', power: 90 }) };
    expect(shown(bare, undefined, still)).toEqual(['no flow']);
  });

  it('two speeds are a slow-down', () => {
    const two = [block('a', 0, 720, 1500), block('b', 720, 0, 900)];
    expect(shown(bare, two)).toEqual([]);
    expect(shown(heated(), two)).toEqual(['heater']);
    expect(shown({ ...bare, needs: defaultPad.needs }, two)).toEqual(['heater']);
  });

  it('one suction cover asks for a second protection; two do not', () => {
    const covers = (...ids: string[]): Pad => ({
      ...bare,
      limits: { ...bare.limits, suctionCovers: ids.map((id) => newCover(id)) },
    });
    expect(shown(covers('a'))).toEqual(['one cover']);
    expect(shown(covers('a', 'b'))).toEqual([]);
  });

  it('a speed past the stop comes first', () => {
    const past = { ...handBench, limits: [limit({ greatestFlow: 0.001 })] };
    expect(shown(bare, [block('a', 0, 720, 3000)], past)).toEqual(['stop', 'no flow']);
  });
});
