import renderToString from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { createDayModel } from '#dayPage/day/model.ts';
import View from '#dayPage/view.tsx';
import { defaultPad, lodgePad, rigPad } from '#pad/demos/demos.ts';
import { emptyPad } from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { block, storeOf } from './daySheetFixtures.ts';

const caution = (title: string) => ({ title, text: 'It does.' });
const cautions = {
  always: [caution('Local code comes first')],
  stop: caution('Do not run'),
  oneCover: caution('A second protection'),
  noFlow: caution('No feeder without flow'),
  heater: caution('Heater off first'),
};
const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
const render = (pad: Pad) =>
  plain(renderToString(<View id="day" cautions={cautions} store={storeOf(pad)} padHref="/pad/" />));

/** Cubic metres in a gallon: 231 in³ of (0.0254 m)³ (NIST SP 811, B.8). */
const gallon = 231 * 0.0254 ** 3;

/** Hours and price per kWh at which each block of the example runs on 14 July 2027, read off the pad. */
const exampleHours = [
  { speed: 1150, hours: { 0.18: 7, 0.27: 3 + 2 } },
  { speed: 2000, hours: { 0.27: 3 } },
  { speed: 1700, hours: { 0.27: 4 } },
  { speed: 850, hours: { 0.49: 5 } },
];

/** The example's day summed by hand from its operating points. */
function byHand() {
  const model = padModel(defaultPad);
  let [water, kilowattHours, money] = [0, 0, 0.35];
  for (const { speed, hours } of exampleHours) {
    const point = model.running?.runningAt(model.ratioOf(speed));
    if (point?.kind !== 'flowing') throw new Error('the example does not flow');
    for (const [price, time] of Object.entries(hours)) {
      water += point.flow * time * 3600;
      kilowattHours += (point.power / 1000) * time;
      money += (point.power / 1000) * time * Number(price);
    }
  }
  return { water: water / gallon, kilowattHours, money, turnovers: water / (model.volume ?? 0) };
}

describe('the page as it is served', () => {
  const html = render(defaultPad);

  it('is laid out by the hours this test sums', () => {
    expect(defaultPad.day.blocks.map(({ start, end, speed }) => [start, end, speed])).toEqual([
      [1260, 540, 1150],
      [540, 720, 2000],
      [720, 960, 1700],
      [960, 1260, 850],
    ]);
  });

  it('already shows water, turnovers, energy and price of the example', () => {
    const { water, kilowattHours, money, turnovers } = byHand();
    const grouped = String(Math.round(water)).replace(/(\d{3})$/, ' $1');
    expect(html).toContain(
      `This day moves ${grouped} gal, ${turnovers.toFixed(2)} turnovers (${Math.round(100 * (1 - Math.exp(-turnovers)))} % of the water filtered), for ${kilowattHours.toFixed(2)} kWh and $${money.toFixed(2)}.`,
    );
  });

  it('names its blocks as sliders with times, speed, flow and watts', () => {
    expect(html).toContain('aria-label="Block 1, Skims, and heats: move it"');
    expect(html).toMatch(/09:00 to 12:00, 2000 revolutions per minute, \d+ gallons per minute/);
    expect(html).toContain('aria-label="Block 4, Slow and cheap: salt cell and filter: end"');
  });

  it('shows the season and the kind of day of its date', () => {
    expect(html).toContain('Wednesday, priced as “Weekday” in “Summer”');
  });

  it('carries the sheet for the printer, marked as invented, without a date no clock has told', () => {
    expect(html).toContain('class="print-sheet"');
    expect(html).toContain('Example data, invented.');
    expect(html).toContain('Worked out with Cubelaw.');
    expect(html).toContain('Local code comes first');
  });

  it('says nothing aloud when it opens', () => {
    expect(html).toContain('<p class="visually-hidden" role="status"></p>');
  });

  it('shows every example pad without a fault', () => {
    for (const pad of [lodgePad, rigPad]) {
      const other = render(pad);
      expect(other).toContain('This day moves');
      expect(other).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  it('says what an empty pad lacks and where to describe it', () => {
    const empty = render(emptyPad());
    expect(empty).toContain('This day cannot be worked out yet.');
    expect(empty).toContain('Nothing is known about the pump yet');
    expect(empty).toContain('<a href="/pad/">Describe your pad</a>');
    expect(empty).not.toContain('class="print-sheet"');
  });

  it('cuts back blocks that overlap and says so', () => {
    const day = { ...defaultPad.day, blocks: [block('a', 540, 720), block('b', 600, 800)] };
    expect(render({ ...defaultPad, day })).toContain(
      'the one listed first keeps them. Move or shorten one.',
    );
  });

  it('tells a pump too slow to lift the water apart from one that is off', () => {
    const plumbing = { ...defaultPad.plumbing, staticHead: 8 };
    const slow = { ...defaultPad.day, blocks: [block('a', 540, 720, 600)] };
    expect(render({ ...defaultPad, plumbing, day: slow })).toContain(
      'but no flow: 600 rpm is too slow to lift the water',
    );
  });
});

describe('changing the day', () => {
  const start = () => createDayModel(storeOf(defaultPad));
  const spans = (model: ReturnType<typeof start>) =>
    model.blocks.value.map(({ id, start: from, end }) => `${id} ${from}-${end}`);

  it('a drag that comes back leaves the day as it was', () => {
    const model = start();
    const before = spans(model);
    const hold = model.hold('heat', 'end');
    hold.take();
    hold.drag(200);
    expect(spans(model)).not.toEqual(before);
    hold.drag(0);
    expect(spans(model)).toEqual(before);
    expect(model.said.value).toBeNull();
  });

  it('keys that come back leave the day as it was', () => {
    const model = start();
    const before = spans(model);
    const hold = model.hold('skim', 'body');
    for (const by of [5, 60, -60, -5]) hold.nudge(by);
    expect(spans(model)).toEqual(before);
    hold.toEnd(1);
    hold.nudge(-5);
    hold.toEnd(-1);
    expect(model.blocks.value).toHaveLength(4);
  });

  it('what is half typed does no lasting harm', () => {
    const model = start();
    model.typeEdge('heat', 'start', 60);
    expect(model.refused.value).toMatchObject({ id: 'heat', minute: 60 });
    model.typeEdge('heat', 'start', 630);
    expect(model.refused.value).toBeNull();
    expect(spans(model)).toContain('skim 540-630');
    model.typeEdge('heat', 'start', 720);
    expect(spans(model)).toContain('skim 540-720');
  });

  it('undo takes one change back and redo brings it again', () => {
    const model = start();
    model.remove('skim');
    expect(model.store.undoLabel.value).toBe('removing a block');
    model.store.undo();
    expect(model.blocks.value).toHaveLength(4);
    model.store.redo();
    expect(model.blocks.value).toHaveLength(3);
  });

  it('the numbers follow: a faster block takes more', () => {
    const model = start();
    const before = model.here.value?.report.energy ?? 0;
    model.describe('heat', { speed: 2500 });
    expect(model.here.value?.report.energy).toBeGreaterThan(before);
  });

  it('keeps this day as the old one and compares with it', () => {
    const model = start();
    model.compare('usual');
    model.keepAsOld();
    expect(model.compareWith.value).toBe('old');
    expect(model.other.value?.report.energy).toBe(model.here.value?.report.energy);
  });

  it('flat out moves the water of this day, to the minute', () => {
    const model = start();
    model.compare('oneSpeed');
    const [mine, flatOut] = [model.here.value?.report, model.other.value?.report];
    const minute = (flatOut?.segments.find(({ kind }) => kind === 'flowing')?.flow ?? 0) * 60;
    const more = (flatOut?.volumeMoved ?? 0) - (mine?.volumeMoved ?? 0);
    expect(more).toBeGreaterThanOrEqual(0);
    expect(more).toBeLessThanOrEqual(minute);
  });

  it('units change what is shown and nothing that is stored', () => {
    const model = start();
    const before = model.pad.value.day;
    model.setUnits('metric');
    expect(model.pad.value.day).toBe(before);
    expect(model.units.value.preset).toBe('metric');
  });

  it('another date asks for another season', () => {
    const model = start();
    model.setDate({ year: 2027, month: 12, day: 25 });
    expect(model.here.value?.prices?.day.dayType.id).toBe('weekend');
    expect(model.here.value?.prices?.day.season.id).toBe('winter');
  });
});
