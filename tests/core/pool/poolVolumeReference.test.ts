import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Vertex } from '#core/pool/polygon.ts';
import type { Outline } from '#core/pool/poolOutline.ts';
import {
  type Depth,
  depthProfileVolume,
  poolVolume,
  thumbCircleGallons,
  thumbKidneyArea,
} from '#core/pool/poolVolume.ts';

const foot = 0.3048; // exact, NIST SP 811
const gallon = 231 * 0.0254 ** 3; // exact, NIST SP 811

interface VolumeCase {
  readonly what: string;
  readonly inputs: Readonly<Record<string, unknown>> & { readonly shape?: string };
  readonly expected: { readonly volume_gal: number; readonly volume_m3?: number };
  readonly tolerance: { readonly relative: number };
}

// Reference file pool-volume: plane geometry on exact unit definitions.
const file = new URL('../../reference/cases/pool-volume.json', import.meta.url);
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: VolumeCase[] }).cases;

describe('volumes of the reference file', () => {
  for (const { what, inputs, expected, tolerance } of cases.filter((each) => each.inputs.shape)) {
    it(`${what} ${JSON.stringify(inputs)}`, () => {
      const gallons = gallonsOf(inputs);
      expect(Math.abs(gallons / expected.volume_gal - 1)).toBeLessThanOrEqual(tolerance.relative);
    });
  }

  function gallonsOf(inputs: VolumeCase['inputs']): number {
    const metres = (name: string) =>
      inputs[`${name}_m`] === undefined
        ? (inputs[`${name}_ft`] as number) * foot
        : (inputs[`${name}_m`] as number);
    if (inputs.shape === 'circle, trade factor') {
      return thumbCircleGallons(inputs['diameter_ft'] as number, inputs['depth_ft'] as number);
    }
    if (inputs.shape === 'kidney, approximate') {
      const area = thumbKidneyArea(metres('width_a'), metres('width_b'), metres('length'));
      return (area * metres('depth')) / gallon;
    }
    if (inputs['stations']) {
      const stations = (inputs['stations'] as [number, number][]).map(([distance, depth]) => ({
        distance: distance * foot,
        depth: depth * foot,
      }));
      return depthProfileVolume(metres('width'), stations) / gallon;
    }
    const depth: Depth =
      inputs['depth_1_ft'] === undefined
        ? { kind: 'uniform', depth: metres('depth') }
        : { kind: 'sloped', first: metres('depth_1'), second: metres('depth_2') };
    return poolVolume({ outline: outlineOf(inputs, metres), depth }) / gallon;
  }

  function outlineOf(inputs: VolumeCase['inputs'], metres: (name: string) => number): Outline {
    if (inputs.shape === 'circle') return { kind: 'circle', diameter: metres('diameter') };
    if (inputs.shape === 'polygon') {
      const vertices = (inputs['vertices_ft'] as [number, number][]).map(
        ([x, y]): Vertex => [x * foot, y * foot],
      );
      return { kind: 'polygon', vertices };
    }
    const kind = inputs.shape as 'rectangle' | 'ellipse' | 'stadium';
    return { kind, length: metres('length'), width: metres('width') };
  }
});
