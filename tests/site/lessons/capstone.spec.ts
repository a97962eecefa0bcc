import { capstoneSteps } from '#course/CapstoneSteps/steps.ts';
import { us } from '#units/choice.ts';
import { fromSI } from '#units/convert.ts';
import { expect, test } from '../fixture.ts';

const path = '/lessons/capstone/';

test('each step takes the number the core gives, names a wrong thought, and the day sheet opens', async ({
  page,
}) => {
  await page.goto(path);
  const list = page.locator('.capstone-steps');
  await list.scrollIntoViewIfNeeded();
  await expect(page.locator('astro-island[ssr]:has(.capstone-steps)')).toHaveCount(0);
  const steps = capstoneSteps(us);
  const first = list.locator('.capstone-step').first();
  await first.getByRole('textbox').fill('50.9');
  await page.keyboard.press('Enter');
  await expect(first.locator('.check-verdict')).toHaveText(/the filter gauge alone/);
  for (const [place, step] of steps.entries()) {
    const unit = {
      head: 'ft',
      flow: 'gpm',
      velocity: 'ft/s',
      speed: 'rpm',
      power: 'W',
      energy: 'kWh',
    };
    const { quantity, answer } = step;
    const shown =
      quantity === null
        ? answer
        : fromSI(quantity, answer, unit[quantity as keyof typeof unit] as never);
    const item = list.locator('.capstone-step').nth(place);
    await item.getByRole('textbox').fill(shown.toFixed(3));
    await page.keyboard.press('Enter');
    await expect(item.locator('.check-verdict')).toHaveAttribute('data-right', 'true');
  }
  await expect(page.locator('.capstone-progress')).toHaveText(/All steps are done/);

  await page.getByRole('link', { name: 'Open the finished day sheet' }).click();
  await expect(page).toHaveURL(/\/day\/#pad=1\./);
  await expect(page.getByText('Capstone pool (invented)').first()).toBeVisible();
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  test('the drawings and steps fit', async ({ page }) => {
    await page.goto(path);
    await page.locator('.capstone-steps').scrollIntoViewIfNeeded();
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBe(0);
  });
});
