import type { Locator, Page } from '@playwright/test';
import { shelfPrefix } from '#pad/store/shelf.ts';
import { expect, test, wakeAll } from './fixture.ts';
import { pagePaths, pageSource } from './site.ts';

/*
 * A fault is put into the page: no number can be written any more. Where a part works out something
 * new, a sentence must stand in place of its figures; the old ones must not stay. Once the fault is
 * gone the part comes back, and what the reader entered is kept.
 */

const fault = 'a fault of the test';

async function breakNumbers(page: Page): Promise<void> {
  await page.evaluate((message) => {
    Reflect.set(window, 'soundToFixed', Number.prototype.toFixed);
    Number.prototype.toFixed = () => {
      throw new Error(message);
    };
  }, fault);
}

async function mendNumbers(page: Page): Promise<void> {
  await page.evaluate(() => {
    Number.prototype.toFixed = Reflect.get(window, 'soundToFixed');
  });
}

/** Moves a part's first handle or slider until the part has failed. */
async function failsAtItsSlider(part: Locator): Promise<void> {
  const slider = part.locator('[role="slider"]:visible, input[type="range"]:visible').first();
  const failed = part.locator('.failed');
  await expect(async () => {
    for (const key of ['ArrowRight', 'ArrowLeft', 'ArrowLeft']) {
      if ((await failed.count()) === 0) await slider.press(key, { timeout: 1000 });
    }
    await expect(failed.first()).toBeVisible({ timeout: 1000 });
  }).toPass({ timeout: 10_000 });
}

const withSliders = 'astro-island:has([role="slider"], input[type="range"])';
const slid = pagePaths().filter((path) => /role="slider"|type="range"/.test(pageSource(path)));

for (const path of slid) {
  test(`no figure of before stays on ${path} where a part fails`, async ({
    page,
    allowMessage,
  }) => {
    allowMessage(new RegExp(fault));
    await page.goto(path);
    await wakeAll(page);
    const parts = page.locator(withSliders);
    const marks = await parts.evaluateAll((islands) =>
      islands.map((island, at) => {
        island.setAttribute('data-tested', String(at));
        return at;
      }),
    );
    expect(marks.length).toBeGreaterThan(0);
    for (const mark of marks) {
      const part = page.locator(`[data-tested="${mark}"]`);
      await breakNumbers(page);
      await failsAtItsSlider(part);
      await mendNumbers(page);
      const again = part.getByRole('button', { name: 'Try again' });
      while ((await again.count()) > 0) await again.first().click();
      await expect(part.locator('.failed')).toHaveCount(0);
      await expect(part.locator('[role="slider"], input[type="range"]').first()).toBeAttached();
    }
  });
}

test('what was entered is kept while no answer can be given', async ({ page, allowMessage }) => {
  allowMessage(new RegExp(fault));
  await page.goto('/day/');
  await wakeAll(page);
  await page.locator('.day-block').first().focus();
  await breakNumbers(page);
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('.failed').first()).toBeVisible();
  const kept = () =>
    page.evaluate(
      (key) => Object.entries(localStorage).filter(([name]) => name.startsWith(key)),
      shelfPrefix,
    );
  await expect.poll(async () => (await kept()).length).toBeGreaterThan(0);
  await mendNumbers(page);
  await page.getByRole('button', { name: 'Undo the last change' }).click();
  await expect(page.locator('.failed')).toHaveCount(0);
  await expect(page.locator('.day-block').first()).toBeVisible();
});
