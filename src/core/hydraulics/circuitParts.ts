/** What a circuit is made of. */
import type { Water } from '#core/water/water.ts';

/** A straight run of pipe. */
export interface PipePart {
  readonly kind: 'pipe';
  /** Name of the part, unique in the circuit. */
  readonly id: string;
  /** Inside diameter [m], 0.005 to 2. */
  readonly bore: number;
  /** Length [m], 0 to 1e5. */
  readonly length: number;
  /** Absolute roughness [m], 0 to a tenth of the bore. */
  readonly roughness: number;
}

/** Fittings that lose K velocity heads. */
export interface FittingPart {
  readonly kind: 'fitting';
  /** Name of the part, unique in the circuit. */
  readonly id: string;
  /** Loss coefficient on the velocity in the bore [-], 0 to 1e6; that of all of them together. */
  readonly k: number;
  /** Inside diameter that the coefficient counts on [m], 0.005 to 2. */
  readonly bore: number;
}

/** Equipment known by one point and a power of the flow. */
export interface EquipmentPart {
  readonly kind: 'equipment';
  /** Name of the part, unique in the circuit. */
  readonly id: string;
  /** Head lost at the reference flow [m], 0 to 1e6. */
  readonly referenceHead: number;
  /** Flow at which that head was read [m3/s], 1e-9 to 1e6. */
  readonly referenceFlow: number;
  /** Power of the flow [-], 1 to 2.5. */
  readonly exponent: number;
  /** Multiplier for loading [-], 0 to 1000; 1 when clean. */
  readonly factor: number;
}

/** One way for the water among several side by side. */
export interface Branch {
  /** Name of the branch, unique in its group. */
  readonly id: string;
  /** Parts in the order the water meets them; may be empty. */
  readonly parts: readonly CircuitPart[];
  /** Height at which the water breaks free above the pool [m], 0 or more; 0 where it returns below. */
  readonly lift: number;
}

/** Ways side by side: they share one head and split the flow. */
export interface ParallelPart {
  readonly kind: 'parallel';
  /** Name of the part, unique in the circuit. */
  readonly id: string;
  /** At least one branch. */
  readonly branches: readonly Branch[];
}

export type CircuitPart = PipePart | FittingPart | EquipmentPart | ParallelPart;

/** Everything between the pool and the pool. */
export interface Circuit {
  /** Parts from the pool to the pump, in the order the water meets them. */
  readonly suction: readonly CircuitPart[];
  /** Parts from the pump back to the pool, in that order. */
  readonly discharge: readonly CircuitPart[];
  /** Height at which all the water breaks free above the pool surface [m], 0 or more. */
  readonly staticHead: number;
  /** The water in it [see Water]. */
  readonly water: Water;
}
