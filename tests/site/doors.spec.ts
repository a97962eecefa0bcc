import type { Page } from '@playwright/test';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { padFragment } from '#pad/document/link.ts';
import { expect, test, widthBeyondScreen } from './fixture.ts';

/** The parts of the day sheet that are fetched when asked for: the word on the button, the head above it. */
const parts = [
  ['Find the cheapest day', 'The cheapest day'],
  ['Try one thing', 'What if'],
  ['See how sure this is', 'How sure'],
  ['Work out the year', 'The whole year'],
  ['Choose a file', 'Take it with you'],
  ['Open a meter file', 'Check it against the meter'],
] as const;

const section = (page: Page, head: string) =>
  page.locator('.day-section').filter({ has: page.getByRole('heading', { name: head, level: 2 }) });

async function press(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).focus();
  await page.keyboard.press('Enter');
}

test('a part that opens takes the focus to its head, and what goes away when used leaves it nearby', async ({
  page,
}) => {
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  for (const [word, head] of parts) {
    await press(page, word);
    await expect(page.getByRole('heading', { name: head, level: 2 })).toBeFocused();
  }
  await press(page, 'Begin with an invented year');
  await expect(page.getByRole('group', { name: 'Water and frost, month by month' })).toBeFocused();
  await press(page, 'Clear the months');
  await expect(page.getByRole('group', { name: 'Water and frost, month by month' })).toBeFocused();
  await page.locator('.what-if .drag-handle').focus();
  await page.keyboard.press('PageUp');
  await press(page, 'Back to what the pad has');
  await expect(page.locator('.what-if-value')).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(section(page, 'What if').locator(':focus')).toHaveCount(1);
});

test('a part that cannot be fetched says so, and leaves the focus where it was', async ({
  page,
  allowMessage,
}) => {
  allowMessage(/Failed to load resource|modulepreload|preload/i);
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await page.context().setOffline(true);
  await press(page, 'Try one thing');
  await expect(page.getByRole('alert')).toContainText('could not be fetched');
  await expect(page.getByRole('button', { name: 'Try one thing' })).toBeFocused();
});

test('on the narrowest phone nothing scrolls sideways with every part open, however long its names', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 800 });
  const name = 'Donaudampfschifffahrtselektrizitaetenhauptbetriebswerkbauunterbeamte';
  const needs = ownerPad.needs.map((need) => ({ ...need, name }));
  for (const pad of [lodgePad, { ...ownerPad, needs }]) {
    await page.goto('about:blank');
    await page.goto(`/day/${padFragment(pad)}`);
    await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
    for (const [word] of parts) await press(page, word);
    await expect(page.locator('.meter-check')).toBeVisible();
    await expect(page.locator('.what-if-finding')).toContainText('the cheapest day takes');
    expect(await widthBeyondScreen(page), pad.name).toBe(0);
  }
});
