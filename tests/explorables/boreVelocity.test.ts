import { describe, expect, test } from 'vitest';
import { createModel } from '#explorables/BoreVelocity/model.ts';
import { takePad } from '#explorables/BoreVelocity/own.ts';
import { note, sentence, table } from '#explorables/BoreVelocity/text.ts';
import { padPipes } from '#explorables/example/padPipes.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { metric } from '#units/choice.ts';
import { readGiven } from '#units/given.ts';

const gpm = (231 * 0.0254 ** 3) / 60;
const foot = 0.3048;

const model = () =>
  createModel({
    pipes: ['sch40-2', 'sch80-2'],
    flow: 45 * gpm,
    limit: readGiven('velocity', '6 ft/s'),
    temperature: 27,
  });

describe('velocity and bore on the reader’s own pad', () => {
  test('shows each bore of either side once, with the share of the flow that goes through it', () => {
    const found = padPipes(ownerPad);
    expect(found?.pipes.map(({ label }) => label.replace(/\d+\u00a0%/, 'part'))).toEqual([
      // The skimmer and the floor line share the flow; the run to the pump carries it all.
      'Suction 2 in Schedule 40 (part)',
      'Suction 2-1/2 in Schedule 40',
      'Return 2 in Schedule 40',
      // Three wall returns share the flow.
      'Return 1-1/2 in Schedule 40 (part)',
    ]);
    const skimmer = found?.pipes[0]?.share ?? 0;
    // The shorter line takes more than half; conservation of mass leaves less than all.
    expect(skimmer).toBeGreaterThan(0.5);
    expect(skimmer).toBeLessThan(0.65);
  });

  test('velocity follows the whole flow through the pump: 60 gpm in 2-1/2 in pipe is 4.02 ft/s', () => {
    // Arithmetic: 0.4085 x 60 / 2.469^2, bore of ASTM D1785 2.875 - 2 x 0.203 in.
    const one = model();
    takePad(one, ownerPad);
    one.source.value = 'mine';
    one.choosePipe('suction-run');
    one.flow.apply(60 * gpm);
    expect(one.here.value.velocity / foot).toBeCloseTo(4.02, 2);
    // 6 ft/s: 2.448 x 6 x 2.469^2 = 89.5 gpm.
    expect(one.flowAtLimit.value / gpm).toBeCloseTo(89.5, 1);
    expect(sentence(one)).toMatch(/^With 60\sgpm through your pump, the water in “Suction 2-1\/2/);
    expect(sentence(one)).toMatch(/Your pump gives from .* to .*\.$/);
    expect(note(one)).toMatch(/usual one is drawn/);
  });

  test('a flow that the reader’s pump does not reach is brought back to its greatest', () => {
    const one = model();
    one.flow.apply(100 * gpm);
    takePad(one, ownerPad);
    one.source.value = 'mine';
    expect(one.flow.value.value).toBeLessThanOrEqual(one.scene.value.greatestFlow);
    one.reset();
    expect(one.scene.value.pipes.map(({ id }) => id)).toEqual(['sch40-2', 'sch80-2']);
    expect(one.flow.value.value / gpm).toBeCloseTo(45, 9);
  });

  test('a limit of the pad’s own replaces the usual 6 and 8 ft/s', () => {
    // ANSI/APSP/ICC-15, read second-hand: 6 ft/s in suction, 8 ft/s in return pipe.
    const none = { ...ownerPad.limits, suctionVelocity: null, dischargeVelocity: null };
    const usual = padPipes({ ...ownerPad, limits: none })?.pipes.map(({ limit }) => limit / foot);
    expect(usual).toEqual([6, 6, 8, 8]);
    const own = padPipes({ ...ownerPad, limits: { ...none, suctionVelocity: 1.2 } });
    expect(own?.pipes[0]?.limit).toBe(1.2);
  });

  test('a pad that does not say enough leaves the switch away', () => {
    const one = model();
    takePad(one, emptyPad('metric'));
    expect(one.own.value).toBeUndefined();
    expect(one.units.value).toEqual(metric);
    const noPipes = { ...ownerPad, plumbing: { ...ownerPad.plumbing, suction: [], discharge: [] } };
    expect(padPipes(noPipes)).toBeUndefined();
  });

  test('every row of the table follows from the flow it prints', () => {
    const [rows, bore] = [table(model()).rows, 2.067];
    expect(rows.length).toBeGreaterThan(6);
    for (const [flow, velocity] of rows) {
      // V = 0.4085 Q/d² (Hydraulic Institute data tool, eq. 3.E.7), bore of ASTM D1785.
      const exact = (0.40852 * Number(flow)) / bore ** 2;
      expect(Math.abs(Number(velocity) - exact)).toBeLessThan(0.0051);
    }
  });
});
