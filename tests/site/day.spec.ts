import type { Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { sheetsOf } from './paper.ts';

/** Start and end of every block in the list, by the clock. */
const blocksOf = (page: Page): Promise<string[]> =>
  page
    .locator('.day-row')
    .evaluateAll((rows) =>
      rows.map((row) =>
        Array.from(
          row.querySelectorAll<HTMLInputElement>('input[type=time]'),
          ({ value }) => value,
        ).join('–'),
      ),
    );

async function open(page: Page): Promise<void> {
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await expect.poll(() => blocksOf(page)).toEqual(asItCame);
}

const asItCame = ['09:00–12:00', '12:00–16:00', '16:00–21:00', '21:00–09:00'];
const endOfHeater = 'Block 2, Heater: end';

/** Middle of a grip, and how far an hour is along the strip. */
async function gripOf(page: Page, name: string) {
  const grip = page.getByRole('slider', { name });
  await grip.scrollIntoViewIfNeeded();
  const [box, strip] = [await grip.boundingBox(), await page.locator('.day-strip').boundingBox()];
  if (box === null || strip === null) throw new Error('nothing to take hold of');
  const hour = Math.max(strip.width, strip.height) / 24;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2, hour };
}

test('a block is stretched with the mouse and its neighbour gives way', async ({ page }) => {
  await open(page);
  const { x, y, hour } = await gripOf(page, endOfHeater);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 1.5 * hour, y, { steps: 8 });
  await page.mouse.up();
  await expect
    .poll(() => blocksOf(page))
    .toEqual(['09:00–12:00', '12:00–17:30', '17:30–21:00', '21:00–09:00']);
  await expect(page.locator('.day-said')).toHaveText(
    'The block 16:00–21:00 gave way and now starts at 17:30.',
  );
});

test('a key goes on from where a drag ended, for an end and for a whole block', async ({
  page,
}) => {
  await open(page);
  const end = await gripOf(page, endOfHeater);
  await page.mouse.move(end.x, end.y);
  await page.mouse.down();
  await page.mouse.move(end.x - 1.5 * end.hour, end.y, { steps: 8 });
  await page.mouse.up();
  await expect.poll(() => blocksOf(page)).toContain('12:00–14:30');
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => blocksOf(page)).toContain('12:00–14:35');
  const body = await gripOf(page, 'Block 2, Heater: move it');
  await page.mouse.move(body.x, body.y);
  await page.mouse.down();
  await page.mouse.move(body.x + body.hour, body.y, { steps: 8 });
  await page.mouse.up();
  await expect.poll(() => blocksOf(page)).toContain('13:00–15:35');
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => blocksOf(page)).toContain('12:55–15:30');
});

test('every grip answers to the keys, and undo takes the change back', async ({ page }) => {
  await open(page);
  await page.getByRole('slider', { name: endOfHeater }).focus();
  for (const key of ['ArrowLeft', 'PageDown', 'ArrowLeft']) await page.keyboard.press(key);
  await expect.poll(() => blocksOf(page)).toContain('12:00–14:50');
  await expect(
    page.getByRole('button', { name: 'Off 14:50–16:00: add a block here' }),
  ).toBeVisible();
  await page.getByRole('slider', { name: 'Block 1, Skims, and heats: move it' }).focus();
  await page.keyboard.press('PageDown');
  await expect.poll(() => blocksOf(page)).toContain('08:00–11:00');
  const undo = page.getByRole('button', { name: /^Undo/ });
  while ((await undo.getAttribute('aria-disabled')) === 'false') await undo.click();
  await expect.poll(() => blocksOf(page)).toEqual(asItCame);
});

test('a time that cannot be stays in its field with the reason until the field is left', async ({
  page,
}) => {
  await open(page);
  const start = page.locator('.day-row').nth(1).locator('input[type=time]').first();
  await start.fill('07:00');
  await expect(start).toHaveValue('07:00');
  await expect(page.locator('.field-error')).toContainText(
    'this block would run over the whole of 09:00–12:00, so it stays at 12:00.',
  );
  await start.blur();
  await expect(start).toHaveValue('12:00');
  await expect.poll(() => blocksOf(page)).toEqual(asItCame);
});

test('the finding is spoken once the hand rests', async ({ page }) => {
  await open(page);
  await page.getByRole('button', { name: /^Remove block 3/ }).click();
  await expect(page.locator('.day [role=status]')).toContainText('Filter is short by 1 h.');
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  /** One finger down, along, and up again. */
  async function swipe(page: Page, from: { x: number; y: number }, down: number): Promise<void> {
    const session = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', y: number) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x: from.x, y }],
      });
    await touch('touchStart', from.y);
    for (let step = 1; step <= 10; step += 1) await touch('touchMove', from.y + (down * step) / 10);
    await touch('touchEnd', from.y + down);
  }

  test('a thumb scrolls over a block, and moves or stretches one by its grips', async ({
    page,
  }) => {
    await open(page);
    const { x, y } = await gripOf(page, 'Block 2, Heater: move it');
    await page.touchscreen.tap(x - 60, y);
    const before = await page.evaluate(() => scrollY);
    await swipe(page, { x: x - 60, y }, -120);
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(before);
    await expect.poll(() => blocksOf(page)).toEqual(asItCame);

    const grip = await page.locator('.day-move').boundingBox();
    if (grip === null) throw new Error('no grip');
    const { hour } = await gripOf(page, endOfHeater);
    const box = (await page.locator('.day-move').boundingBox()) ?? grip;
    await swipe(page, { x: box.x + box.width / 2, y: box.y + box.height / 2 }, hour);
    await expect.poll(() => blocksOf(page)).toContain('13:00–17:00');

    const end = await gripOf(page, endOfHeater);
    await swipe(page, end, hour);
    await expect.poll(() => blocksOf(page)).toContain('13:00–18:00');
  });
});

test('one page is printed, with the blocks and the cautions and nothing of the screen', async ({
  page,
}) => {
  await open(page);
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.print-sheet')).toBeVisible();
  await expect(page.locator('.day-screen')).toBeHidden();
  await expect(page.locator('.print-blocks tbody tr')).toHaveCount(4);
  await expect(page.locator('.print-made')).toContainText(
    /Worked out with Cubelaw on \d+ \w+ \d{4}\./,
  );
  await expect(page.locator('.print-sheet')).toContainText('Example data, invented.');
  // Five that stand on every sheet, and the heater's, since this day slows the pump.
  await expect(page.locator('.print-cautions p')).toHaveCount(6);
  expect(await sheetsOf(page)).toBe(1);
});

test('the fullest day a pad file holds is still one page', async ({ page }) => {
  await open(page);
  const add = page.getByRole('button', { name: 'Add block' });
  for (let blocks = 4; blocks < 48; blocks += 1) await add.click();
  await expect(page.locator('.day-row')).toHaveCount(48);
  await add.click();
  await expect(page.locator('.day-said')).toHaveText(
    'A day holds at most 48 blocks. Remove one first.',
  );
  expect(await sheetsOf(page)).toBe(1);
});
