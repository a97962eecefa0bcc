import { signal } from '@preact/signals';
import * as fc from 'fast-check';
import renderToString from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { portions } from '#ui/charts/Bars.tsx';
import { Frame } from '#ui/charts/Frame.tsx';
import { placeLabels } from '#ui/charts/labels.ts';
import { Curve, CurveLabel } from '#ui/charts/marks.tsx';
import { bandPath, evenly, linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { blockMinutes, ringPiece, ringPoint, snapMinute, stripPieces } from '#ui/charts/ring.ts';
import { fraction, niceAxis, valueAt } from '#ui/charts/scale.ts';
import { Table } from '#ui/charts/Table.tsx';
import { us } from '#units/choice.ts';

describe('axis', () => {
  it('marks round numbers in the reader’s unit whatever the value is kept in', () => {
    const side = quantitySide('Flow', 'flow', us, { max: 0.005 });
    expect(side.unit).toBe('gpm');
    expect(side.axis.ticks.map((tick) => tick.label)).toEqual(['0', '20', '40', '60', '80']);
  });

  it('keeps its ends when told to', () => {
    const axis = niceAxis({ max: 3450, exact: true, count: 7 });
    expect(axis.max).toBe(3450);
    expect(axis.ticks.at(-1)?.value).toBe(3000);
  });

  it('has marks where its ends are as good as one', () => {
    expect(niceAxis({ max: 1e-200 }).ticks.at(-1)?.label).toBe('1.0');
  });

  it('finds a value again from its place', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (value) => {
        const axis = { min: -100, max: 220 };
        expect(valueAt(axis, fraction(axis, value))).toBeCloseTo(value, 9);
      }),
    );
  });
});

describe('path', () => {
  const axis = { min: 0, max: 10 };

  it('breaks where a value is missing and never draws it at zero', () => {
    const points = [
      { x: 0, y: 5 },
      { x: 2, y: 5 },
      { x: 4, y: undefined },
      { x: 6, y: Number.NaN },
      { x: 8, y: 5 },
      { x: 10, y: 5 },
    ];
    expect(linePath(points, axis, axis)).toBe('M0,500L200,500M800,500L1000,500');
  });

  it('draws a band between two lines', () => {
    const slices = [
      { x: 0, low: 0, high: 10 },
      { x: 10, low: 0, high: 10 },
    ];
    expect(bandPath(slices, axis, axis)).toBe('M0,0L1000,0L1000,1000L0,1000Z');
  });

  it('draws a lone value as a dot and nothing at all as nothing', () => {
    const alone = [
      { x: 0, y: undefined },
      { x: 5, y: 5 },
      { x: 10, y: Number.NaN },
    ];
    expect(linePath(alone, axis, axis)).toBe('M500,500Z');
    expect(linePath([], axis, axis)).toBe('');
  });

  it('spaces values evenly with both ends exact', () => {
    expect(evenly(600, 3450, 4)).toEqual([600, 1550, 2500, 3450]);
  });
});

describe('labels', () => {
  const straight = (rise: number) => evenly(0, 1, 21).map((x) => ({ x, y: 1 - rise * x }));

  it('stay inside the frame', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), (rise) => {
        const [spot] = placeLabels([{ line: straight(rise), width: 0.3, height: 0.08, wish: 1 }]);
        if (spot === undefined) throw new Error('no place found');
        const left = spot.ends ? spot.x - 0.3 : spot.x;
        expect(left).toBeGreaterThanOrEqual(-1e-9);
        expect(left + 0.3).toBeLessThanOrEqual(1 + 1e-9);
      }),
    );
  });

  it('do not cover one another', () => {
    const wish = { line: straight(0.5), width: 0.3, height: 0.08, wish: 0.5 };
    const [first, second] = placeLabels([wish, wish]);
    expect(first).toBeDefined();
    expect(second).not.toEqual(first);
  });
});

describe('ring of a day', () => {
  it('has midnight on top, six to the right, noon below', () => {
    expect(ringPoint(0, 1).y).toBeCloseTo(-1);
    expect(ringPoint(360, 1).x).toBeCloseTo(1);
    expect(ringPoint(720, 1).y).toBeCloseTo(1);
  });

  it('rounds over midnight', () => {
    expect(snapMinute(1438, 5)).toBe(0);
  });

  it('counts a block over midnight, and equal ends as the whole day', () => {
    expect(blockMinutes(1320, 360)).toBe(480);
    expect(blockMinutes(300, 300)).toBe(1440);
  });

  it('cuts a block at midnight for the strip', () => {
    expect(stripPieces(1080, 360)).toEqual([
      { from: 0.75, to: 1 },
      { from: 0, to: 0.25 },
    ]);
    expect(stripPieces(720, 0)).toEqual([{ from: 0.5, to: 1 }]);
    expect(stripPieces(7, 7)).toEqual([{ from: 0, to: 1 }]);
  });

  it('covers as much of the strip as the block lasts', () => {
    const minute = fc.integer({ min: 0, max: 1439 });
    fc.assert(
      fc.property(minute, minute, (start, end) => {
        const covered = stripPieces(start, end).reduce((sum, { from, to }) => sum + to - from, 0);
        expect(covered * 1440).toBeCloseTo(blockMinutes(start, end), 6);
      }),
    );
  });

  it('draws the whole day as two circles', () => {
    expect(ringPiece(0, 0, 80, 100)).toBe(
      'M0,-100A100,100 0 1 1 0,100A100,100 0 1 1 0,-100ZM0,-80A80,80 0 1 0 0,80A80,80 0 1 0 0,-80Z',
    );
  });
});

describe('shares', () => {
  it('add up to the whole, or are all nothing', () => {
    const share = (amount: number) => ({ id: String(amount), label: '', amount, shown: '' });
    expect(portions([share(1), share(3)])).toEqual([0.25, 0.75]);
    expect(portions([share(0), share(0)])).toEqual([0, 0]);
  });
});

describe('rendering on the server', () => {
  const side = { axis: niceAxis({ max: 10, count: 2 }), title: 'Head', unit: 'm' };

  it('names the still picture and keeps handles out of it', () => {
    const html = renderToString(
      <Frame x={side} y={side} title="Two lines" handlesTitle="Set the speed" drawing={<path />}>
        <button type="button">handle</button>
      </Frame>,
    );
    expect(html).toContain('role="img" aria-label="Two lines"');
    const group = html.indexOf('role="group" aria-label="Set the speed"');
    expect(group).toBeGreaterThan(html.indexOf('</svg>'));
    expect(html.indexOf('<button')).toBeGreaterThan(group);
  });

  it('draws a followed line and its words before any script has run', () => {
    const d = signal('M0,0L1,1');
    const at = signal({ x: 0.25, y: 0.5, above: true, ends: false });
    const html = renderToString(
      <>
        <Curve d={d} of="flow" />
        <CurveLabel at={at} of="flow" text={signal('51 gpm')} />
      </>,
    );
    expect(html).toContain('<path class="curve" data-quantity="flow" d="M0,0L1,1">');
    expect(html).toContain('--x:0.2500;--y:0.5000;--chars:6');
    expect(html).toContain('51 gpm');
  });

  it('folds the numbers away in a table with headings both ways', () => {
    const html = renderToString(
      <Table
        data={{ caption: 'Speeds', columns: ['Speed', 'Flow'], rows: [['1750 rpm', '51 gpm']] }}
      />,
    );
    expect(html).toContain('<details');
    expect(html).toContain('<th scope="col">Flow</th>');
    expect(html).toContain('<th scope="row">1750 rpm</th><td>51 gpm</td>');
  });
});
