import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findOverlaps } from '#core/day/day.ts';
import {
  addBlock,
  type Grip,
  gapsOf,
  mostBlocks,
  reachOf,
  removeBlock,
  shift,
  shortestBlock,
  typeEdge,
} from '#dayPage/day/edit.ts';
import { onGrid } from '#dayPage/day/grip.ts';
import type { PadBlock } from '#pad/document/schema.ts';
import { withoutOverlap } from '#pad/model/assembleDay.ts';
import { blockMinutes, wrapMinute } from '#ui/charts/ring.ts';

const block = (id: string, start: number, end: number): PadBlock => ({
  id,
  start,
  end,
  speed: 1000,
  reason: '',
});

/** A day of up to six blocks that do not overlap: lengths and gaps laid round the ring from any minute. */
const days = fc
  .tuple(
    fc.array(fc.tuple(fc.integer({ min: 15, max: 400 }), fc.constantFrom(0, 0, 1, 40, 200)), {
      minLength: 1,
      maxLength: 6,
    }),
    fc.integer({ min: 0, max: 1439 }),
  )
  .map(([pieces, from]) => {
    let at = 0;
    const blocks: PadBlock[] = [];
    for (const [length, gap] of pieces) {
      if (at + length > 1440) break;
      blocks.push(
        block(`b${blocks.length}`, wrapMinute(from + at), wrapMinute(from + at + length)),
      );
      at += length + gap;
    }
    return blocks;
  });

const grips = fc.constantFrom<Grip>('start', 'end', 'body');
const ways = fc.integer({ min: -1440, max: 1440 });
const places = fc.nat(5);

const total = (blocks: readonly PadBlock[]) =>
  blocks.reduce((sum, { start, end }) => sum + blockMinutes(start, end), 0);
const overlaps = (blocks: readonly PadBlock[]) =>
  findOverlaps(blocks.map((each) => ({ ...each, ratio: (each.speed ?? 0) / 3450 })));
const turned = (blocks: readonly PadBlock[], by: number) =>
  blocks.map((each) => ({
    ...each,
    start: wrapMinute(each.start + by),
    end: wrapMinute(each.end + by),
  }));

/** A day, one of its blocks, a grip and a way: any one change. */
const changes = fc
  .tuple(days, places, grips, ways, fc.boolean())
  .map(([blocks, place, grip, by, strict]) => ({
    blocks,
    id: blocks[place % blocks.length]?.id ?? '',
    grip,
    by,
    strict,
  }));

describe('any change of a block', () => {
  it('leaves no minute to two blocks', () => {
    fc.assert(
      fc.property(changes, ({ blocks, id, grip, by, strict }) => {
        expect(overlaps(shift(blocks, id, grip, by, strict).blocks)).toEqual([]);
      }),
    );
  });

  it('keeps every block, and none of them below the shortest', () => {
    fc.assert(
      fc.property(changes, ({ blocks, id, grip, by, strict }) => {
        const after = shift(blocks, id, grip, by, strict).blocks;
        expect(after.map((each) => each.id)).toEqual(blocks.map((each) => each.id));
        for (const each of after) {
          expect(blockMinutes(each.start, each.end)).toBeGreaterThanOrEqual(shortestBlock);
        }
      }),
    );
  });

  it('keeps the minutes of a block that is moved', () => {
    fc.assert(
      fc.property(changes, ({ blocks, id, by }) => {
        const length = (day: readonly PadBlock[]) => total(day.filter((each) => each.id === id));
        expect(length(shift(blocks, id, 'body', by).blocks)).toBe(length(blocks));
      }),
    );
  });

  it('takes from a neighbour no more than it gains itself', () => {
    fc.assert(
      fc.property(changes, ({ blocks, id, grip, by }) => {
        const after = shift(blocks, id, grip, by).blocks;
        const others = (day: readonly PadBlock[]) => total(day.filter((each) => each.id !== id));
        const lost = others(blocks) - others(after);
        expect(lost).toBeGreaterThanOrEqual(0);
        expect(lost).toBeLessThanOrEqual(Math.abs(by));
        expect(total(after)).toBeLessThanOrEqual(1440);
      }),
    );
  });

  it('does not care where on the clock the day begins', () => {
    fc.assert(
      fc.property(changes, fc.integer({ min: 0, max: 1439 }), (change, turn) => {
        const { blocks, id, grip, by, strict } = change;
        const here = shift(blocks, id, grip, by, strict).blocks;
        const there = shift(turned(blocks, turn), id, grip, by, strict).blocks;
        expect(there).toEqual(turned(here, turn));
      }),
    );
  });

  it('goes as wished within its reach and says nothing of being stopped', () => {
    fc.assert(
      fc.property(changes, fc.double({ min: 0, max: 1, noNaN: true }), (change, part) => {
        const { blocks, id, grip } = change;
        const { least, most } = reachOf(blocks, id, grip);
        const by = Math.round(least + part * (most - least));
        const { said } = shift(blocks, id, grip, by, true);
        expect([null, 'gaveWay']).toContain(said === null ? null : said.kind);
      }),
    );
  });

  it('changes nothing at all when it is typed and cannot be', () => {
    fc.assert(
      fc.property(changes, ({ blocks, id, grip, by }) => {
        const { blocks: after, said } = shift(blocks, id, grip, by, true);
        if (said?.kind === 'wouldCover' || said?.kind === 'tooShort') expect(after).toBe(blocks);
      }),
    );
  });
});

describe('an end of a block', () => {
  const noon = [block('a', 540, 720), block('b', 720, 960)];

  it('makes the neighbour give way and tells it', () => {
    const { blocks, said } = shift(noon, 'a', 'end', 60);
    expect(blocks[1]).toMatchObject({ start: 780, end: 960 });
    expect(said).toMatchObject({ kind: 'gaveWay', edge: 'start', minute: 780 });
  });

  it('leaves the pump off behind it when it draws back', () => {
    const { blocks, said } = shift(noon, 'a', 'end', -60);
    expect(blocks[1]).toBe(noon[1]);
    expect(gapsOf(blocks)).toContainEqual({ start: 660, end: 720 });
    expect(said).toBeNull();
  });

  it('stops where the neighbour has its shortest length', () => {
    const { blocks, said } = shift(noon, 'a', 'end', 600);
    expect(blocks[0]?.end).toBe(945);
    expect(said).toMatchObject({ kind: 'neighbourShort', minute: 945 });
  });

  it('crosses midnight like any other minute', () => {
    const { blocks } = shift([block('late', 1320, 1410)], 'late', 'end', 60);
    expect(blocks[0]).toMatchObject({ start: 1320, end: 30 });
  });

  it('may come round to the start of a block that stands alone: the whole day', () => {
    const { blocks } = shift([block('only', 480, 960)], 'only', 'end', 5000);
    expect(blocks[0]).toMatchObject({ start: 480, end: 480 });
    expect(gapsOf(blocks)).toEqual([]);
  });

  it('is typed to the minute', () => {
    expect(typeEdge(noon, 'b', 'end', 1001).blocks[1]?.end).toBe(1001);
    expect(typeEdge(noon, 'a', 'start', 541).blocks[0]?.start).toBe(541);
  });

  it('refuses a typed minute that would run over a whole block', () => {
    expect(typeEdge(noon, 'a', 'end', 1020)).toMatchObject({
      blocks: noon,
      said: { kind: 'wouldCover', wish: 1020, stays: 720, minute: 945 },
    });
  });

  it('lands on quarter hours when it is dragged', () => {
    expect(onGrid(727, 20)).toBe(23);
    expect(onGrid(1435, 3)).toBe(5);
    expect(onGrid(5, -10)).toBe(-5);
  });
});

describe('adding and removing', () => {
  const given = { id: 'new', speed: 1200 };

  it('leaves no minute to two blocks', () => {
    fc.assert(
      fc.property(days, (blocks) => {
        const added = addBlock(blocks, given).blocks;
        expect(overlaps(added)).toEqual([]);
        expect(total(added)).toBeGreaterThanOrEqual(total(blocks));
        const full = added.length === blocks.length;
        if (!full) expect(removeBlock(added, 'new').length).toBe(blocks.length);
      }),
    );
  });

  it('halves the longest block of a full day, so that no minute is won or lost', () => {
    const full = [block('a', 0, 480), block('b', 480, 0)];
    const { blocks, said } = addBlock(full, given);
    expect(total(blocks)).toBe(1440);
    expect(blocks[1]).toMatchObject({ start: 480, end: 960 });
    expect(blocks[2]).toMatchObject({ id: 'new', start: 960, end: 0, speed: 1200 });
    expect(said).toMatchObject({ kind: 'splitOff' });
  });

  it('stops at as many blocks as a pad file holds', () => {
    const many = Array.from({ length: mostBlocks }, (_, at) =>
      block(`b${at}`, at * 30, at * 30 + 20),
    );
    expect(addBlock(many, given)).toEqual({ blocks: many, said: { kind: 'tooMany' } });
  });
});

describe('a day whose blocks overlap', () => {
  it('keeps the first claim and cuts the later one back', () => {
    const kept = withoutOverlap([block('a', 540, 720), block('b', 660, 900), block('c', 600, 630)]);
    expect(kept).toEqual([block('a', 540, 720), block('b', 720, 900)]);
  });

  it('comes out without overlap whatever it was', () => {
    const minute = fc.integer({ min: 0, max: 1439 });
    const wild = fc.array(fc.tuple(minute, minute), { maxLength: 8 });
    fc.assert(
      fc.property(wild, (spans) => {
        const blocks = spans.map(([start, end], at) => block(`b${at}`, start, end));
        expect(overlaps(withoutOverlap(blocks))).toEqual([]);
      }),
    );
  });

  it('is left as it is when nothing overlaps', () => {
    fc.assert(
      fc.property(days, (blocks) => {
        expect(withoutOverlap(blocks)).toBe(blocks);
      }),
    );
  });
});
