/** Models of how sure a day is, with their trials and year worked out. */
import { effect } from '@preact/signals';
import { createDayModel } from '#dayPage/day/model.ts';
import { createSureness } from '#dayPage/parts/sure/model.ts';
import type { Pad } from '#pad/document/schema.ts';
import { storeOf } from './daySheetFixtures.ts';

export const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, ' ');
export const sureness = (pad: Pad) => {
  const day = createDayModel(storeOf(pad));
  return { day, model: createSureness(day, day.pad) };
};

/** Runs until the trials and the year have been worked out. */
export async function finished(model: ReturnType<typeof sureness>['model']): Promise<void> {
  const stop = model.follow();
  await new Promise<void>((done) => {
    const end = effect(() => {
      if (model.year.value === null) return;
      setTimeout(() => {
        end();
        done();
      });
    });
  });
  stop();
}

/** One of each pad for the tests that only look: a year of fifteen pads takes its time. */
const kept = new Map<Pad, Promise<ReturnType<typeof sureness>['model']>>();
export function looked(pad: Pad): Promise<ReturnType<typeof sureness>['model']> {
  const { model } = sureness(pad);
  const found = kept.get(pad) ?? finished(model).then(() => model);
  kept.set(pad, found);
  return found;
}
