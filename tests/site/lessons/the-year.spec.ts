import { carriedYear } from '#explorables/YearBars/example.ts';
import { createModel } from '#explorables/YearBars/model.ts';
import { placeFrom } from '#explorables/YearBars/place.ts';
import { expect, test } from '../fixture.ts';

const yearPlace = placeFrom(carriedYear);

const path = '/lessons/the-year/';

test('speed and hours by the keys price the year as the core does; reset brings it back', async ({
  page,
}) => {
  await page.goto(path);
  const figure = page.locator('#year-bars');
  await figure.scrollIntoViewIfNeeded();
  await expect(page.locator('astro-island[ssr]:has(#year-bars)')).toHaveCount(0);
  const amount = async (place: number) => {
    const text = (await figure.locator('.readout-value').nth(place).textContent()) ?? '';
    return Number(text.replace(/[^\d.]/g, ''));
  };
  const model = createModel(yearPlace);
  await expect.poll(() => amount(1)).toBe(Math.round(model.variable.value.cost));

  await figure.locator('#year-bars-speed').focus();
  await page.keyboard.press('PageUp');
  model.seasonSpeed.press('PageUp');
  await figure.locator('#year-bars-hours').focus();
  for (const key of ['ArrowDown', 'ArrowDown']) {
    await page.keyboard.press(key);
    model.seasonHours.press(key);
  }
  await expect.poll(() => amount(0)).toBe(Math.round(model.oneSpeed.value.cost));
  await expect.poll(() => amount(1)).toBe(Math.round(model.variable.value.cost));
  await expect.poll(() => amount(3)).toBeCloseTo(model.payback.value ?? 0, 1);

  await figure.getByLabel('Season to the end of').selectOption('October');
  model.lastMonth.value = 10;
  await expect.poll(() => amount(0)).toBe(Math.round(model.oneSpeed.value.cost));
  await expect(page).toHaveURL(/yearbars=last-10_hours-25200_speed-2000/);

  await figure.getByRole('button', { name: 'Reset' }).click();
  model.reset();
  await expect.poll(() => amount(1)).toBe(Math.round(model.variable.value.cost));
  await expect(page).not.toHaveURL(/yearbars=/);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  test('a long formula stands whole, in as many lines as it takes', async ({ page }) => {
    await page.goto('/lessons/the-year/');
    const formula = page.getByRole('group', { name: 'Formula: a year and its payback' });
    const over = await formula.evaluate((each) => each.scrollWidth - each.clientWidth);
    expect(over).toBe(0);
  });

  test('the year fits', async ({ page }) => {
    await page.goto(path);
    await page.locator('#year-bars').scrollIntoViewIfNeeded();
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBe(0);
  });
});
