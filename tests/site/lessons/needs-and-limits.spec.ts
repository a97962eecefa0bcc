import { exampleScene } from '#explorables/NeedsLadder/example.ts';
import { ladderOf } from '#explorables/NeedsLadder/model.ts';
import { expect, test } from '../fixture.ts';

test('the knob lights the rungs and ends at the hard stop', async ({ page }) => {
  const ladder = ladderOf(exampleScene);
  await page.goto('/lessons/needs-and-limits/');
  const figure = page.locator('#needs-ladder');
  await figure.scrollIntoViewIfNeeded();
  await expect(page.locator('astro-island[ssr]:has(#needs-ladder)')).toHaveCount(0);
  const served = figure.locator('.needs-line[data-fate="served"]');
  const finding = figure.locator('.figure-finding');
  const opening = await finding.textContent();

  const knob = figure.getByRole('slider', { name: 'Speed' }).first();
  await knob.focus();
  await page.keyboard.press('Home');
  await expect(served).toHaveCount(0);

  // As many steps as lie between the slowest speed and the first rung.
  const first = Math.min(...ladder.steps.map(({ speed }) => speed ?? Number.POSITIVE_INFINITY));
  const presses = Math.round((first - exampleScene.leastSpeed) / exampleScene.speedStep);
  for (let press = 0; press < presses - 1; press += 1) await page.keyboard.press('ArrowUp');
  await expect(served).toHaveCount(0);
  await page.keyboard.press('ArrowUp');
  await expect(served).toHaveCount(1);

  await page.keyboard.press('End');
  await page.keyboard.press('PageUp');
  await expect(knob).toHaveAttribute('aria-valuenow', String(ladder.stop));
  await expect(finding).toContainText('no speed may pass it.');
  await expect(served).toHaveCount(4);
  await expect(figure.locator('.needs-cover-words').first()).toContainText('passes 60');
  await figure.getByLabel('One cover is blocked').uncheck();
  await expect(figure.locator('.needs-cover-words').first()).toContainText('passes 30');
  await expect(knob).toHaveAttribute('aria-valuemax', String(ladder.stop));

  await figure.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toHaveText(opening ?? '');
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  test('the ladder of speeds fits', async ({ page }) => {
    await page.goto('/lessons/needs-and-limits/');
    await page.locator('#needs-ladder').scrollIntoViewIfNeeded();
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBe(0);
  });
});
