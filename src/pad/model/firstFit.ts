/** What a page does before its parts come to life, so that no single piece of work holds it up. */

import { ownerPad } from '#pad/demos/demoOwner.ts';
import { carryFit } from './assemble.ts';

/** The element that carries the fit of the pad a page is built with. */
export const firstFitId = 'first-fit';

function takeFirstFit(): void {
  const text = document.getElementById(firstFitId)?.textContent;
  if (text) carryFit(ownerPad, JSON.parse(text));
}

/**
 * Works out what the first picture in the browser will ask for, a step at a time, and lets the page
 * answer its reader between the steps. What a step works out is kept by whoever worked it out.
 */
export async function prepare(steps: readonly (() => unknown)[]): Promise<void> {
  for (const step of [takeFirstFit, ...steps]) {
    step();
    await new Promise((done) => setTimeout(done));
  }
}
