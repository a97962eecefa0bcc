import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad, newFitting, newParallel, newPipe } from '#pad/document/parts.ts';
import type { PadTariff } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { knowledgeAs, noPoint, pastedPoints } from '#padPage/form/curvePoints.ts';
import { inserted, moved, without } from '#padPage/form/lists.ts';
import { chosenSize, freshPartIds, lastSize, sizeChoices, withSize } from '#padPage/form/parts.ts';
import { elementId, pathTo, valueAtSpot } from '#padPage/form/spot.ts';
import {
  firstPrice,
  flatTariff,
  isFlat,
  spanLength,
  withDayType,
  withEdge,
  withOneMore,
  withoutBand,
  withoutDayType,
  withSeason,
  withWeekday,
} from '#padPage/form/tariffEdits.ts';
import {
  assumedNote,
  isUsualEquipment,
  isUsualNeed,
  usualNeed,
  usualNeeds,
  withUsualPlumbing,
} from '#padPage/form/usual.ts';
import { minutesEntry } from '#ui/controls/minutesEntry.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { metric, us } from '#units/choice.ts';
import { partText } from '#words/parts.ts';

describe('a spot', () => {
  it('follows an entry by its id', () => {
    const list = { needs: [{ id: 'a' }, { id: 'b', flow: 3 }] };
    expect(pathTo(list, ['needs', '@b', 'flow'])).toEqual(['needs', 1, 'flow']);
    expect(valueAtSpot(list, ['needs', '@b', 'flow'])).toBe(3);
    expect(pathTo(list, ['needs', '@gone', 'flow'])).toBeNull();
  });

  it('names its element by the id, not by the place', () => {
    expect(elementId(['needs', '@b', 'flow'])).toBe('form-needs-b-flow');
  });
});

describe('a list', () => {
  it('keeps all entries when one moves, and stays itself when it cannot', () => {
    const list = ['a', 'b', 'c'];
    expect(moved(list, 0, 1)).toEqual(['b', 'a', 'c']);
    expect(moved(list, 2, -1)).toEqual(['a', 'c', 'b']);
    expect(moved(list, 0, -1)).toBe(list);
    expect(moved(list, 2, 1)).toBe(list);
    expect(without(inserted(list, 1, 'x'), 1)).toEqual(list);
  });
});

describe('numbers without a unit', () => {
  const entry = plainEntry('exponent', { least: 1, greatest: 2.5 });

  it('say what is wrong and what would be right', () => {
    const problem = (text: string) => {
      const parsed = entry.parse(text);
      return parsed.ok ? undefined : parsed.problem;
    };
    expect(problem('two')).toBe('“two” is not a number. Enter the exponent as a number.');
    expect(problem('3')).toBe('3 is too much. The exponent must be from 1 to 2.5.');
    expect(problem('0')).toBe('0 is too little. The exponent must be from 1 to 2.5.');
    expect(problem('1,8')).toBeUndefined();
  });

  it('read back as what is shown', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 2.5, noNaN: true }), (value) => {
        const back = entry.parse(entry.format(value));
        expect(back.ok && back.value).toBeCloseTo(value, 10);
      }),
    );
  });

  it('may have to be whole', () => {
    expect(plainEntry('count', {}, true).parse('1.5')).toEqual({
      ok: false,
      problem: 'The count must be a whole number.',
    });
  });

  it('of minutes are typed as a time', () => {
    const entry = minutesEntry('time a day', us);
    expect(entry.format(90)).toBe('1.5');
    expect(entry.parse('90 min')).toEqual({ ok: true, value: 90 });
    expect(entry.parse('25')).toMatchObject({ ok: false });
  });
});

describe('parts', () => {
  it('say what they are in one line, in the reader’s units', () => {
    const pipe = newPipe('p', { sizeId: 'sch40-2', length: 3.048 });
    expect(partText(pipe, us)).toBe('Pipe, 10.0\u00a0ft of 2 in Schedule 40');
    expect(partText(pipe, metric)).toBe('Pipe, 3.05\u00a0m of 2 in Schedule 40');
    expect(partText(newFitting('f', 'elbow90', { count: 3 }), us)).toBe(
      '3 × Elbow 90°, no size yet',
    );
    expect(partText(newParallel('d', { branches: [] }), us)).toBe('0 ways side by side');
  });

  it('list the sizes of the reader’s own system first', () => {
    expect(sizeChoices('us')[1]?.id).toBe('sch40-0.75');
    expect(sizeChoices('metric')[1]?.id).toBe('pn10-50');
    expect(sizeChoices('us')).toHaveLength(sizeChoices('metric').length);
  });

  it('start a typed bore from that of the size before', () => {
    const own = withSize(newPipe('p', { sizeId: 'sch40-2' }), 'own');
    // 2.375 in − 2 × 0.154 in = 2.067 in (ASTM D1785).
    expect(own.bore).toBeCloseTo(2.067 * 0.0254, 12);
    expect(chosenSize(own)).toBe('own');
    expect(withSize(own, 'pn10-63')).toMatchObject({ sizeId: 'pn10-63', bore: null });
  });

  it('take over the size of the last part that has one', () => {
    const list = [newPipe('a', { sizeId: 'sch40-2' }), newParallel('b')];
    expect(lastSize(list)).toEqual({ sizeId: 'sch40-2', bore: null });
    expect(lastSize([])).toEqual({ sizeId: null, bore: null });
  });

  it('get ids that nothing in the plumbing has', () => {
    const { plumbing } = ownerPad;
    const taken = JSON.stringify(plumbing);
    const ids = freshPartIds(plumbing, 3);
    expect(new Set(ids).size).toBe(3);
    for (const id of ids) expect(taken).not.toContain(`"${id}"`);
  });
});

describe('usual figures', () => {
  it('are known again for what they are, and no longer once changed', () => {
    for (const kind of Object.keys(usualNeeds) as (keyof typeof usualNeeds)[]) {
      const need = usualNeed('n', kind, 'metric');
      expect(isUsualNeed(need)).toBe(true);
      expect(isUsualNeed({ ...need, leastFlow: 0.00123 })).toBe(false);
    }
  });

  it('fill a pad that can be worked out, and leave a note that it is an assumption', () => {
    for (const preset of ['us', 'metric'] as const) {
      const pad = withUsualPlumbing(emptyPad(preset));
      expect(pad.notes).toBe(assumedNote);
      expect(padModel(pad).described).not.toBeNull();
      expect(padModel(pad).problems.filter(({ path }) => path[0] === 'plumbing')).toEqual([]);
      const equipment = [...pad.plumbing.suction, ...pad.plumbing.discharge].filter(
        (part) => part.kind === 'equipment',
      );
      for (const part of equipment) expect(isUsualEquipment(part)).toBe(true);
      expect(withUsualPlumbing(pad).notes).toBe(assumedNote);
    }
  });
});

describe('pasted points', () => {
  // 20 gpm = 20 × 231 in³/min (NIST SP 811); 84.5 ft = 25.7556 m.
  const second = { flow: (20 * 231 * 0.0254 ** 3) / 60, head: 25.7556, power: null };

  it('are read from tabs, blanks, commas or semicolons, headings passed over', () => {
    for (const line of ['20\t84.5', '20 84.5', '20, 84.5', '20;84.5', '20,84.5']) {
      const pasted = pastedPoints(`Flow Head\n0\t86\n${line}\n`, us);
      expect(pasted.ok && pasted.points[1]?.flow).toBeCloseTo(second.flow, 12);
      expect(pasted.ok && pasted.points[1]?.head).toBeCloseTo(second.head, 12);
    }
  });

  it('may carry watts', () => {
    const pasted = pastedPoints('10 15 900\n12 13 950', metric);
    expect(pasted.ok && pasted.points.map(({ power }) => power)).toEqual([900, 950]);
  });

  it('are refused as a whole, with the line at fault', () => {
    expect(pastedPoints('0 86\n20', us)).toEqual({
      ok: false,
      problem: 'Line 2: It needs two columns: flow, then head.',
    });
    expect(pastedPoints('0 86\n20 x9', us)).toMatchObject({ ok: false });
    expect(pastedPoints('', us)).toMatchObject({ ok: false });
    const many = Array.from({ length: 61 }, (_, place) => `${place} 80`).join('\n');
    expect(pastedPoints(many, us)).toMatchObject({ ok: false });
  });
});

describe('another way of knowing the pump', () => {
  it('keeps what it can of the points', () => {
    const { knowledge } = ownerPad.pump;
    const three = knowledgeAs('powerLaw', knowledge);
    if (three.kind !== 'powerLaw' || knowledge.kind !== 'curve') throw new Error('wrong kind');
    expect(three.points).toEqual([0, 3, 6].map((place) => knowledge.points[place]));
    const plate = knowledgeAs('nameplate', three);
    expect(plate).toMatchObject({ kind: 'nameplate', flow: three.points[1]?.flow });
    expect(knowledgeAs('curve', plate)).toMatchObject({ points: [{}, noPoint, noPoint] });
    expect(knowledgeAs('curve', knowledge)).toBe(knowledge);
  });
});

const empty: PadTariff = emptyPad('us').tariff;
const allDay = flatTariff(empty, 0.2).seasons[0]?.dayTypes ?? [];

/** Whether bands price each minute of a day just once. */
const covered = (bands: readonly { start: number; end: number }[]) =>
  bands.reduce((sum, { start, end }) => sum + spanLength(start, end), 0) === 1440 &&
  bands.every(({ end }) => bands.some(({ start }) => start === end));

describe('a tariff', () => {
  it('of one price is one field', () => {
    const flat = flatTariff(empty, 0.2);
    expect(isFlat(empty)).toBe(true);
    expect(isFlat(flat)).toBe(true);
    expect(firstPrice(flat)).toBe(0.2);
    expect(isFlat(ownerPad.tariff)).toBe(false);
    const pad = { ...ownerPad, tariff: { ...flat, currency: '$' } };
    expect(padModel(pad).tariff).not.toBeNull();
  });

  it('keeps every minute priced once while bands are cut, joined and moved', () => {
    const change = fc.constantFrom('cut', 'join', 'start', 'end');
    fc.assert(
      fc.property(fc.array(fc.tuple(change, fc.nat(5), fc.nat(20)), { maxLength: 12 }), (all) => {
        let bands = allDay[0]?.bands ?? [];
        for (const [what, at, slack] of all) {
          const place = at % bands.length;
          const band = bands[place];
          if (band === undefined) continue;
          if (what === 'cut') bands = [...withOneMore(bands)];
          if (what === 'join' && bands.length > 1) bands = [...withoutBand(bands, place)];
          // A few minutes later, well within the shortest band there can be.
          if (what === 'start' || what === 'end') {
            const room = Math.min(...bands.map(({ start, end }) => spanLength(start, end))) - 1;
            const minute = (band[what] + Math.min(slack, room)) % 1440;
            bands = [...withEdge(bands, place, what, minute)];
          }
          expect(covered(bands)).toBe(true);
        }
      }),
    );
  });

  it('gives each day of the week to one kind of day only', () => {
    const two = withDayType(allDay, 'weekend');
    expect(two.map(({ weekdays }) => weekdays)).toEqual([
      [1, 2, 3, 4, 5],
      [0, 6],
    ]);
    const friday = withWeekday(two, 1, 5);
    expect(friday.map(({ weekdays }) => weekdays)).toEqual([
      [1, 2, 3, 4],
      [0, 5, 6],
    ]);
    expect(withoutDayType(friday, 1)[0]?.weekdays).toEqual([0, 1, 2, 3, 4, 5, 6]);
  });

  it('with one more season still prices every day of the year', () => {
    const flat = flatTariff({ ...empty, currency: '$' }, 0.2);
    const seasons = [...withSeason(flat.seasons, 'winter')];
    expect(seasons[1]?.from).toEqual({ month: 7, day: 1 });
    expect(padModel({ ...ownerPad, tariff: { ...flat, seasons } }).tariff).not.toBeNull();
  });
});
