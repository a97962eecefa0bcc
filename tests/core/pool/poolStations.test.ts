import { describe, expect, it } from 'vitest';
import { CoreError } from '#core/base/errors.ts';
import {
  depthProfileVolume,
  poolVolume,
  type Station,
  thumbCircleGallons,
  thumbKidneyArea,
} from '#core/pool/poolVolume.ts';

const level = (...distances: readonly number[]): readonly Station[] =>
  distances.map((distance) => ({ distance, depth: 1.5 }));
const underRectangle = (length: number, stations: readonly Station[]) =>
  poolVolume({
    outline: { kind: 'rectangle', length, width: 4 },
    depth: { kind: 'stations', stations },
  });

describe('stations under a pool', () => {
  it('may end a rounding of their length short of its end or past it, and water is lost to neither', () => {
    // Plane geometry: length x width x depth. The play is a thousand millionth of the length.
    for (const length of [1, 25, 1000]) {
      for (const play of [-0.9e-9, 0.9e-9]) {
        const volume = underRectangle(length, level(0, length / 3, length * (1 + play)));
        expect(volume / (length * 4 * 1.5)).toBeCloseTo(1, 12);
      }
      for (const play of [-2e-9, 2e-9]) {
        expect(() => underRectangle(length, level(0, length * (1 + play)))).toThrow(
          `it must be the length of the outline, ${length} m.`,
        );
      }
    }
  });

  it('are two at least, the first at the first end', () => {
    const second = 'it must be 0 m, with a second station to follow.';
    for (const stations of [level(), level(0), level(1, 8)]) {
      expect(() => underRectangle(8, stations)).toThrow(second);
    }
    expect(() => depthProfileVolume(4, [])).toThrow(CoreError);
  });

  it('have a depth of water', () => {
    const deep = [...level(0, 4), { distance: 8, depth: 1001 }];
    expect(() => depthProfileVolume(4, deep)).toThrow('stations[2].depth is 1001');
  });
});

describe('rules of thumb', () => {
  it('refuse what is no length', () => {
    expect(() => thumbKidneyArea(0, 4, 9)).toThrow('widthA is 0');
    expect(() => thumbKidneyArea(4, 0, 9)).toThrow('widthB is 0');
    expect(() => thumbKidneyArea(4, 4, 0)).toThrow('length is 0');
    expect(() => thumbCircleGallons(-1, 4)).toThrow('diameterFt is -1');
    expect(() => thumbCircleGallons(18, -1)).toThrow('depthFt is -1');
  });
});
