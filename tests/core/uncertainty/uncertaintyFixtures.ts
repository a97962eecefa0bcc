import { expect } from 'vitest';
import type { SettledPad } from '#core/fit/padEvidence.ts';
import { padState } from '#core/fit/padModel.ts';

export const powerAt = (ratio: number) => (pad: SettledPad) => [padState(pad, ratio).power];
export const flowAt = (ratio: number) => (pad: SettledPad) => [padState(pad, ratio).flow];
export const widthOf = ({ low, high }: { low: number; high: number }) => high - low;
export const only = <Item>(items: readonly Item[]): Item => {
  expect(items).toHaveLength(1);
  return items[0] as Item;
};

/** A power that does not hang on the flow, so that it is proportional to one uncertain number alone. */
export const flatPower = { fixed: 1e-9, atReference: () => 1000 };
