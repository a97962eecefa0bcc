import { describe, expect, test } from 'vitest';
import { equipmentHead } from '#core/hydraulics/equipment.ts';
import { water } from '#core/water/water.ts';
import { emptyPad, newEquipment } from '#pad/document/parts.ts';
import type { EquipmentSection } from '#pad/document/schema.ts';
import { assembleCircuit } from '#pad/model/assembleCircuit.ts';
import { filtersIn, withLoading } from '#pad/model/loadedFilters.ts';

// The straight line from clean to dirty is the core's own law, common practice, no source.

function filterOf(given: Partial<Omit<EquipmentSection, 'kind' | 'id' | 'equipment'>>) {
  const section = newEquipment('filter', 'filter', { flow: 0.004, ...given });
  const plumbing = { ...emptyPad().plumbing, discharge: [section] };
  const { circuit, problems } = assembleCircuit(plumbing, water(26));
  const headAt = (loading?: number) => {
    const parts = circuit?.discharge ?? [];
    const [part] =
      loading === undefined ? parts : withLoading(parts, filtersIn([section]), loading);
    if (part?.kind !== 'equipment') throw new Error('the filter is left out');
    return equipmentHead(part, 0.004);
  };
  return { headAt, codes: problems.map(({ code, path }) => `${code} ${path.join('/')}`) };
}

describe('a filter with a dirty head', () => {
  test('and none clean loses its share of the way to the dirty one', () => {
    const { headAt, codes } = filterOf({ head: 0, dirtyHead: 6, loading: 0.5 });
    expect(headAt()).toBeCloseTo(3, 2);
    expect(headAt(0)).toBeCloseTo(0, 1);
    expect(headAt(1)).toBeCloseTo(6, 6);
    expect(codes).toEqual([]);
  });

  test('and no clean one given does the same, and asks for it', () => {
    const { headAt, codes } = filterOf({ head: null, dirtyHead: 6, loading: 0.5 });
    expect(headAt()).toBeCloseTo(3, 2);
    expect(codes).toEqual(['filterClean plumbing/discharge/0/head']);
  });

  test('of which nothing else is known is taken at its dirty end', () => {
    expect(filterOf({ head: null, dirtyHead: 6, loading: null }).headAt()).toBeCloseTo(6, 6);
  });

  test('with both ends stays as it was', () => {
    // 1.5 + 0.5 (6 - 1.5), by hand.
    const { headAt, codes } = filterOf({ head: 1.5, dirtyHead: 6, loading: 0.5 });
    expect(headAt()).toBeCloseTo(3.75, 9);
    expect(codes).toEqual([]);
  });
});
