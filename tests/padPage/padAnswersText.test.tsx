import renderToString from 'preact-render-to-string';
import { describe, expect, test } from 'vitest';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { emptyPad, newCover, newNeed, newReading } from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import {
  agreementText,
  assumptionTexts,
  contradictionTexts,
  lacks,
  narrowingTexts,
  residualTable,
  widthText,
} from '#padPage/answers/evidenceText.ts';
import { hereAt, limitRows, rungsOf } from '#padPage/answers/figures.ts';
import { createAnswers } from '#padPage/answers/model.ts';
import { readoutsOf } from '#padPage/answers/readouts.ts';
import { type Scene, sceneOf } from '#padPage/answers/scene.ts';
import * as text from '#padPage/answers/text.ts';
import PadAnswers from '#padPage/answers/view.tsx';
import { metric, us } from '#units/choice.ts';
import { commonPad, gpm, nameplatePad } from './padAnswersFixtures.ts';

function sceneIn(pad: Pad): Scene {
  const scene = sceneOf(pad);
  if (scene === null) throw new Error('this pad gives no answers');
  return scene;
}

/** Numbers stand for themselves: the wording is what is checked. */
const shape = (words: string): string =>
  words
    .replaceAll('\u00a0', ' ')
    .replaceAll('\u202f', '')
    .replace(/\d+(\.\d+)?/g, '#');

const liftedPad: Pad = { ...rigPad, plumbing: { ...rigPad.plumbing, staticHead: 3 } };

describe('a band in words', () => {
  const flow = gpm(50);

  test('is said to the last figure of the value', () => {
    const band = { low: gpm(46), high: gpm(54) };
    expect(text.bandText('flow', flow, band, us)).toBe('±\u00a04\u00a0gpm');
  });

  test('is left out where it is small, and given by its ends where it is wide', () => {
    expect(text.bandText('flow', flow, { low: gpm(49.7), high: gpm(50.3) }, us)).toBe('');
    const wide = text.bandText('flow', flow, { low: gpm(30), high: gpm(81) }, us);
    expect(wide).toBe('30 to 81\u00a0gpm');
  });

  test('says how much water might move where none is likely to', () => {
    expect(text.bandText('flow', 0, { low: 0, high: gpm(12) }, us)).toBe(
      'perhaps up to 12\u00a0gpm',
    );
    expect(text.bandText('flow', 0, { low: 0, high: 0 }, us)).toBe('');
  });
});

describe('the finding', () => {
  test('names speed, flow, head, power and turnover', () => {
    const scene = sceneIn(lodgePad);
    expect(shape(text.finding(hereAt(scene, 1500), scene, metric))).toBe(
      'At # rpm the pump moves # m³/h (± # m³/h) at # m and draws # W. ' +
        'That moves the whole pool once in # h.',
    );
  });

  test('says why no water moves, and when it begins to', () => {
    const scene = sceneIn(liftedPad);
    expect(shape(text.finding(hereAt(scene, 700), scene, us))).toBe(
      'At # rpm no water moves, because the pump makes only # ft of head and the water must be ' +
        'lifted # ft. It begins to move above # rpm. It still draws # W.',
    );
  });

  test('stops the reader above the flow marked on a suction cover', () => {
    const { limits } = rigPad;
    const cover = newCover('c', { name: 'Wall', markedFlow: gpm(40) });
    const scene = sceneIn({ ...rigPad, limits: { ...limits, suctionCovers: [cover] } });
    expect(text.finding(hereAt(scene, 3000), scene, us)).toContain(
      ' Stop: this is above the flow marked on the suction covers. Never run at this speed.',
    );
  });

  test('owns up to a guess past the end of the curve', () => {
    const { pump } = rigPad;
    if (pump.knowledge.kind !== 'curve') throw new Error('the rig has a curve');
    const points = pump.knowledge.points.slice(0, 3);
    const short = { ...rigPad, pump: { ...pump, knowledge: { ...pump.knowledge, points } } };
    const scene = sceneIn(short);
    expect(text.finding(hereAt(scene, 3000), scene, us)).toContain('so it is a guess.');
  });
});

describe('a need that no speed serves', () => {
  const why = (need: Partial<Pad['needs'][number]>, pad: Pad = rigPad): string => {
    const scene = sceneIn({ ...pad, needs: [newNeed('n', 'cleaner', { minutes: 60, ...need })] });
    const [rung] = rungsOf(scene);
    if (rung?.kind !== 'unreachable') throw new Error('this need is served');
    return shape(text.unreachableText(rung, scene, us));
  };

  test('is out of reach at top speed', () => {
    const open = { ...rigPad, limits: { ...rigPad.limits, suctionCovers: [] } };
    expect(why({ leastFlow: gpm(200) }, open)).toBe(
      'Out of reach: at its top speed, # rpm, the pump moves # gpm, and this asks for # gpm.',
    );
  });

  test('is not allowed beyond a suction cover', () => {
    expect(why({ leastFlow: gpm(120) })).toBe(
      'Not allowed: the flow marked on the suction covers stops at # gpm through the pump, and ' +
        'this asks for # gpm.',
    );
  });

  test('bears less than the slowest speed gives', () => {
    expect(why({ leastFlow: gpm(2), greatestFlow: gpm(3) })).toBe(
      'Not to be met: even at # rpm the pump moves # gpm, and this bears # gpm at most.',
    );
  });

  test('lies higher than the pump can lift', () => {
    const high = { ...rigPad, plumbing: { ...rigPad.plumbing, staticHead: 25 } };
    expect(why({ leastFlow: gpm(20) }, high)).toBe(
      'Out of reach: the pump lifts the water only above # rpm, and its top speed is # rpm.',
    );
  });
});

describe('a limit in words', () => {
  test('names the cover, what is marked on it, and how many share the flow', () => {
    const [row] = limitRows(sceneIn(ownerPad));
    if (row === undefined) throw new Error('the example has limits');
    expect(text.limitTitle(row.limit, ownerPad)).toBe(
      'Suction cover “Floor cover, left”, marked 112\u00a0gpm; one of 2 taken as blocked',
    );
  });

  test('says at which speed it is crossed, and the speed that surely keeps it', () => {
    const scene = sceneIn(ownerPad);
    const row = limitRows(scene).find(({ limit }) => limit.kind === 'suctionVelocity');
    if (row === undefined) throw new Error('the example limits its suction velocity');
    expect(shape(text.limitText(row, scene, us))).toBe(
      '# gpm through the pump at most: that is # rpm. It is crossed above that. The flow is not ' +
        'known exactly: to be sure, stay at or below # rpm.',
    );
  });

  test('forbids every faster speed where it is a hard stop', () => {
    const cover = newCover('c', { markedFlow: gpm(60) });
    const scene = sceneIn({
      ...rigPad,
      limits: { ...rigPad.limits, suctionCovers: [cover] },
    });
    const [row] = limitRows(scene);
    if (row === undefined) throw new Error('there is a cover');
    expect(shape(text.limitText(row, scene, us))).toBe(
      '# gpm through the pump at most. Never run faster than # rpm: that keeps it even with the filter clean, the valves open and as much flow as the readings leave possible. One cover alone is not enough: a second protection is required by code.',
    );
  });

  test('says so where every speed crosses it', () => {
    const cover = newCover('c', { markedFlow: gpm(1) });
    const scene = sceneIn({
      ...rigPad,
      limits: { ...rigPad.limits, suctionCovers: [cover] },
    });
    const [row] = limitRows(scene);
    if (row === undefined) throw new Error('there is a cover');
    expect(shape(text.limitText(row, scene, us))).toBe(
      '# gpm through the pump at most. Even # rpm may pass it, with the filter clean, the valves open and as much flow as the readings leave possible: do not run this pump. One cover alone is not enough: a second protection is required by code.',
    );
  });
});

describe('how it is known', () => {
  test('names the reading that would narrow a band, where to take it and by how much', () => {
    const scene = sceneIn({ ...commonPad, readings: commonPad.readings.slice(0, 1) });
    const all = narrowingTexts(scene, us);
    expect(all.map(shape)).toContain(
      'Read the watts at # rpm: the band on power would shrink from ± # % to ± # %.',
    );
    // Power read at the highest speed alone says little of the lowest, where the fixed draw rules
    // (common practice, no source).
    expect(all.find((each) => each.startsWith('Read the watts'))).toContain('690\u00a0rpm');
  });

  test('says how wide the bands are, and that a nameplate alone makes them wider', () => {
    const width = (pad: Pad) => Number(/power to ±\u00a0(\d+)/.exec(widthText(sceneIn(pad)))?.[1]);
    expect(width(nameplatePad)).toBeGreaterThan(width(commonPad));
  });

  test('lists what was assumed', () => {
    const all = assumptionTexts(sceneIn(commonPad), us);
    expect(all).toContain('There is no flow meter: the flow is read off the pump’s curve.');
    expect(all.some((each) => each.startsWith('No pipes are described'))).toBe(true);
  });

  test('sets each reading beside what the pad as worked out would show', () => {
    expect(residualTable(sceneIn(nameplatePad), us)).toBeNull();
    const table = residualTable(sceneIn(commonPad), us);
    expect(table?.rows).toHaveLength(4);
    expect(table?.rows[0]?.slice(0, 2)).toEqual(['3450\u00a0rpm', 'Filter gauge']);
    expect(agreementText(sceneIn(nameplatePad))).toContain('There are no readings yet');
    expect(agreementText(sceneIn(ownerPad))).toBe(
      'All 6 figures read agree within what their instruments allow.',
    );
  });

  test('names the readings that cannot be right together', () => {
    const scene = sceneIn({
      ...commonPad,
      readings: [
        newReading('a', { speed: 1725, power: 1400 }),
        newReading('b', { speed: 3450, power: 600 }),
      ],
    });
    expect(contradictionTexts(scene, us)[0]).toMatch(
      /^Reading at 3450\u00a0rpm, watts: .*1725 rpm/,
    );
  });
});

describe('what is missing', () => {
  test('is told once, with every answer that waits for it', () => {
    const { missing } = padModel(commonPad);
    const volume = lacks(missing, us).filter(({ problem }) => problem.code === 'volumeMissing');
    expect(volume).toHaveLength(1);
    expect(volume[0]?.waiting).toBe('For the volume of the pool, turnover and day sheet');
  });

  test('leaves out the figures that it would give, and leads to where it is typed', () => {
    const ids = readoutsOf(createAnswers(commonPad)).map(({ id }) => id);
    expect(ids).not.toContain('turnover');
    expect(ids).not.toContain('money');
    const html = renderToString(<PadAnswers first={commonPad} />);
    expect(html).toContain('What is still missing');
    expect(html).toContain('href="#pad-step-pool"');
  });

  test('on an empty pad leads to the pump', () => {
    expect(renderToString(<PadAnswers first={emptyPad()} />)).toContain('href="#pad-step-pump"');
  });
});

describe('a short time', () => {
  test('is given in minutes', () => {
    expect(text.timeText(780, us)).toBe('13\u00a0min');
    expect(text.timeText(7 * 3600, us)).toMatch(/^7(\.0)?\u00a0h$/);
  });
});
