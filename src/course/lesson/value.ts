import type { Quantity } from '#units/quantities.ts';

/** What a lesson writes: plain texts, a quantity as number and unit ("6 ft/s", "28 degC"). */
export type ValueProps = Readonly<Record<string, string>>;

/** A worked-out value, stored as the core has it; or one of no quantity, with how it is written. */
export type LessonValue =
  | { readonly quantity: Quantity; readonly value: number }
  | { readonly quantity: null; readonly value: number; readonly shown: string };

/** Figures by the name a lesson calls them; each works one out from what the lesson writes. */
export type ValueMakers = Readonly<Record<string, (given: ValueProps) => LessonValue>>;
