/**
 * Equipment known by one point of its label or table: filter, heater, salt cell, check valve.
 */
import { requireBetween } from '#core/base/errors.ts';

/** A piece of equipment, described by one known point and a power of the flow. */
export interface Equipment {
  /** Head lost at the reference flow [m], 0 to 1e6. */
  readonly referenceHead: number;
  /** Flow at which that head was read [m3/s], 1e-9 to 1e6. */
  readonly referenceFlow: number;
  /** Power of the flow [-], 1 to 2.5; 2 unless known otherwise, nearer 1 for clean filter media. */
  readonly exponent: number;
  /** Multiplier for loading [-], 0 to 1000; 1 when clean. */
  readonly factor: number;
}

/** The clean and the dirty end of a filter, both at the same flow. */
export interface FilterEnds {
  /** Head lost when clean [m], greater than 0. */
  readonly cleanHead: number;
  /** Head lost when due for cleaning [m], the clean head or more. */
  readonly dirtyHead: number;
}

function requireEquipment(equipment: Equipment, flow: number): void {
  requireBetween('reference head', equipment.referenceHead, 0, 1e6, 'm');
  requireBetween('reference flow', equipment.referenceFlow, 1e-9, 1e6, 'm3/s');
  requireBetween('exponent', equipment.exponent, 1, 2.5, '');
  requireBetween('factor', equipment.factor, 0, 1000, '');
  requireBetween('flow', flow, 0, 1e6, 'm3/s');
}

/**
 * Head lost in a piece of equipment.
 *
 * Law: h = factor h0 (Q/Q0)^n.
 * @param equipment The equipment [see Equipment], fields as there.
 * @param flow Flow through it [m3/s], 0 to 1e6.
 * @returns Head [m]; 0 at no flow.
 * @throws CoreError when a field or the flow lies outside its range or is not a number.
 * Accuracy: exact at the known point; away from it as good as the exponent.
 * Source: common practice, no source.
 * @example equipmentHead({ referenceHead: 2, referenceFlow: 0.003, exponent: 2, factor: 1 }, 0.0015) // 0.5000
 */
export function equipmentHead(equipment: Equipment, flow: number): number {
  requireEquipment(equipment, flow);
  const ratio = flow / equipment.referenceFlow;
  const power = equipment.exponent === 2 ? ratio * ratio : ratio ** equipment.exponent;
  return equipment.factor * equipment.referenceHead * power;
}

/**
 * Multiplier on a clean filter's head for how loaded it is.
 *
 * Law: factor = 1 + loading (dirty/clean - 1): the head rises in a straight line from clean to dirty.
 * @param ends Clean and dirty head at one flow [see FilterEnds], fields as there.
 * @param loading Share of the way from clean to dirty [-], 0 to 1.
 * @returns Multiplier [-], 1 or more, for the factor of Equipment.
 * @throws CoreError when a head or the loading lies outside its range, is not a number, or the filter would lose more clean than dirty.
 * Accuracy: exact at both ends; the straight line between is a simplification.
 * Source: common practice, no source.
 * @example filterFactor({ cleanHead: 2, dirtyHead: 9 }, 0.5) // 2.750
 */
export function filterFactor(ends: FilterEnds, loading: number): number {
  const clean = requireBetween('clean head', ends.cleanHead, 1e-6, 1e6, 'm');
  const dirty = requireBetween('dirty head', ends.dirtyHead, clean, 1e6, 'm');
  return 1 + requireBetween('loading', loading, 0, 1, '') * (dirty / clean - 1);
}
