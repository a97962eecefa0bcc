import type { Page } from '@playwright/test';
import type { Pad } from '#pad/document/schema.ts';
import { padKey } from '#pad/store/padKey.ts';
import {
  collidingPad,
  contradictedPad,
  crowdedPad,
  flatAt,
  freePad,
  longNamedPad,
  restingPad,
  stoppedPad,
  yenPad,
} from '../dayPage/oddPads.ts';
import { expectNoBarrier } from './barriers.ts';
import { expect, test, widthBeyondScreen } from './fixture.ts';

const doors = {
  'Find the cheapest day': '.cheapest .cheapest-finding',
  'Try one thing': '.what-if-finding',
  'See how sure this is': '.day-section:has(h2:text-is("How sure")) .cheapest-finding',
  'Work out the year': '.year-sheet > .cheapest-finding',
} as const;

type Door = keyof typeof doors;

/** The day sheet of a pad that the reader keeps in this browser. */
async function open(page: Page, pad: Pad): Promise<void> {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.addInitScript(([key, text]) => localStorage.setItem(key, text), [
    padKey,
    JSON.stringify(pad),
  ] as const);
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await expect(page.locator('.day-name')).toHaveText(pad.name);
}

/** Opens a part by keys alone and gives its first sentence. */
async function openPart(page: Page, door: Door) {
  const button = page.getByRole('button', { name: door });
  await button.focus();
  await page.keyboard.press('Enter');
  const finding = page.locator(doors[door]);
  await expect(finding).toBeVisible();
  await expect(finding).not.toContainText('Working out');
  return finding;
}

/** What would be wrong with any pad: figures that are none, and words beyond the screen. */
async function expectPlain(page: Page): Promise<void> {
  await expect(page.locator('.day-screen')).not.toContainText(/NaN|Infinity|undefined|\[object/);
  await expect.poll(() => widthBeyondScreen(page)).toBe(0);
}

test('needs that no day can serve: the reason in place of an empty picture, and the way to one', async ({
  page,
}) => {
  await open(page, collidingPad);
  const finding = await openPart(page, 'Try one thing');
  await expect(finding).toContainText('changing this alone brings none');
  await expect(page.locator('.what-if svg')).toHaveCount(0);
  await expect(page.getByLabel('What to change')).toBeVisible();
  await expectNoBarrier(page, '.what-if');
  await page.getByLabel('What to change').selectOption({ label: 'Hours of “Heat pump”' });
  await expect(finding).toContainText('Above');
  await expect(page.locator('.what-if svg')).not.toHaveCount(0);
  await expectPlain(page);
});

test('twenty-four needs: what costs nothing extra is one line', async ({ page }) => {
  await open(page, crowdedPad);
  await openPart(page, 'Find the cheapest day');
  const told = page.locator('.cheapest-worth li', { hasText: 'nothing extra' });
  await expect(told).toHaveCount(1);
  await expect(told).toContainText('Need 20');
  await expectPlain(page);
});

test('covers marked too low: every part says stop before it says a price', async ({ page }) => {
  await open(page, stoppedPad);
  await expect(await openPart(page, 'Find the cheapest day')).toHaveText(
    /^No speed of this pump keeps the limit .*Do not run it: nothing may cross this limit\.$/,
  );
  await expect(await openPart(page, 'See how sure this is')).toHaveText(
    /^In all pads .* Nothing may cross this limit/,
  );
  await expect(await openPart(page, 'Work out the year')).toHaveText(/^Stop: on 365\sdays /);
  await expectPlain(page);
});

test('energy for nothing: no picture without end, none without anything on it', async ({
  page,
}) => {
  await open(page, freePad);
  await openPart(page, 'See how sure this is');
  await expect(page.locator('.sure-picture').last()).toContainText('€0.00');
  const tall = () =>
    page
      .locator('.sure-drawing')
      .evaluateAll((all) => Math.max(...all.map((each) => each.getBoundingClientRect().height)));
  await expect.poll(tall).toBeLessThan(400);
  await openPart(page, 'Work out the year');
  await expect(page.locator('.year-sheet')).toContainText('nothing to draw');
  await openPart(page, 'Try one thing');
  const marks = page.locator('.what-if .plot-tick-y');
  await expect(marks.first()).toBeVisible();
  for (const text of await marks.allInnerTexts()) expect(text.length).toBeLessThanOrEqual(4);
  await expectPlain(page);
});

test('yen have no cents, in any part', async ({ page }) => {
  await open(page, yenPad);
  await expect(page.locator('.day-finding')).toContainText(/¥\d+\./);
  for (const door of ['Find the cheapest day', 'Try one thing', 'Work out the year'] as const) {
    const finding = await openPart(page, door);
    await expect(finding).toContainText('¥');
    await expect(finding).not.toContainText(/¥[\d\u202f]*\.\d/);
  }
  await expectPlain(page);
});

test('nothing on the sheet: nothing is compared with it, and no year is praised', async ({
  page,
}) => {
  await open(page, restingPad);
  await expect(await openPart(page, 'Find the cheapest day')).not.toContainText('on your sheet');
  await expect(await openPart(page, 'See how sure this is')).toHaveText(/^Nothing runs/);
  await expect(await openPart(page, 'Work out the year')).toHaveText(/^Nothing runs in the year/);
  await expect(page.locator('.year-sheet svg')).toHaveCount(0);
  await expectPlain(page);
});

test('readings that contradict are told before any figure', async ({ page }) => {
  await open(page, contradictedPad);
  await expect(await openPart(page, 'See how sure this is')).toHaveText(
    /^Some of your readings cannot all be right/,
  );
  await expectPlain(page);
});

test('a name without a space stays on the screen, and the turnovers of a season in the pad', async ({
  page,
}) => {
  await open(page, longNamedPad);
  await openPart(page, 'Work out the year');
  await page.getByRole('button', { name: 'Use the day on the sheet from then on' }).click();
  const wish = page.locator('.year-season').getByLabel('Water to move');
  await wish.fill('1.4');
  await page.keyboard.press('Tab');
  const kept = () => page.evaluate((key) => JSON.parse(localStorage.getItem(key) ?? '{}'), padKey);
  await expect.poll(async () => (await kept()).year?.plans?.[0]?.turnovers).toBe(1.4);
  await expectPlain(page);
});

test('the code of a currency is not broken in two beside the hours', async ({ page }) => {
  await open(page, { ...yenPad, name: 'By code', tariff: flatAt(-70.5, 'HUF') });
  const lines = () =>
    page.locator('.day-band b').evaluate((price) => {
      const text = price.firstChild as Text;
      const code = document.createRange();
      code.setStart(text, text.data.indexOf('HUF'));
      code.setEnd(text, text.data.indexOf('HUF') + 3);
      return code.getClientRects().length;
    });
  await expect.poll(lines).toBe(1);
});
