import type { Locator, Page } from '@playwright/test';
import { alive, expect } from './fixture.ts';

/** The hand that fills in the form of a pad, by thumb or by mouse. */
export interface PadHand {
  /** One step of the form. */
  step(id: string): Locator;
  /** A field of a step by its label; of several the one added last. */
  field(step: string, label: string): Locator;
  /** Types into fields of a step by their labels. */
  type(step: string, typed: Readonly<Record<string, string>>): Promise<void>;
  press(target: Locator): Promise<void>;
  /** Presses a button of a step by its name. */
  pressIn(step: string, name: string): Promise<void>;
  /** Goes on to the next step, which opens with its head in sight and in focus. */
  next(step: string, to: string): Promise<void>;
}

export function padHand(page: Page, by: 'thumb' | 'mouse'): PadHand {
  const step = (id: string) => page.locator(`#pad-step-${id}`);
  const field = (id: string, label: string) => step(id).getByLabel(label, { exact: true }).last();
  const press = (target: Locator) => (by === 'thumb' ? target.tap() : target.click());
  const pressIn = (id: string, name: string) =>
    press(step(id).getByRole('button', { name, exact: true }));
  return {
    step,
    field,
    press,
    pressIn,
    type: async (id, typed) => {
      for (const [label, text] of Object.entries(typed)) await field(id, label).fill(text);
    },
    next: async (id, to) => {
      await press(step(id).getByRole('button', { name: /^Next: / }));
      const head = page.locator(`#pad-step-${to}-head`);
      await expect(head).toBeFocused();
      await expect(head).toBeInViewport();
      await expect(step(id)).not.toHaveAttribute('open');
    },
  };
}

/** Opens the form and starts from nothing. */
export async function startEmpty(page: Page, hand: PadHand): Promise<void> {
  await alive(page);
  await hand.press(page.getByRole('button', { name: /^An empty pad/ }));
  await expect(page.locator('#pad-step-place-head')).toBeFocused();
  await expect(page.locator('.form-whose')).toHaveText(
    'Open: A pad without a name. It is kept in this browser.',
  );
}
