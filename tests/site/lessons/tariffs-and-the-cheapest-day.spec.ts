import { huntPlace } from '#explorables/HourHunt/example.ts';
import { usualHours, workHours } from '#explorables/HourHunt/model.ts';
import { expect, test } from '../fixture.ts';

const path = '/lessons/tariffs-and-the-cheapest-day/';
const summerWeekday = { year: 2027, month: 7, day: 14 };

test('hours walked and slowed by the keys cost what the core says; the best is kept', async ({
  page,
}) => {
  await page.goto(path);
  const figure = page.locator('#hour-hunt');
  await figure.scrollIntoViewIfNeeded();
  await expect(page.locator('astro-island[ssr]:has(#hour-hunt)')).toHaveCount(0);
  const amount = async (place: number) =>
    Number((await figure.locator('.readout-value').nth(place).textContent())?.replace('$', ''));
  const before = await amount(0);

  const hours = [...usualHours(huntPlace)];
  await figure.getByRole('spinbutton').first().focus();
  for (let step = 0; step < 16; step += 1) await page.keyboard.press('ArrowRight');
  for (const hour of [16, 17]) {
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    hours[hour] = 0;
    await page.keyboard.press('ArrowRight');
  }
  const evening = figure.getByRole('spinbutton', { name: '16:00 to 17:00' });
  await expect(evening).toHaveAttribute('aria-valuetext', /^off, \$0\.49/);
  const after = workHours(huntPlace, hours, summerWeekday);
  expect(after.sound).toBe(true);
  await expect.poll(() => amount(0)).toBeCloseTo(after.price.energyCost, 2);
  await expect.poll(() => amount(0)).toBeLessThan(before);
  await expect.poll(() => amount(2)).toBe(await amount(0));

  // A tap lays the chosen speed; an unsound day says by how much and does not become the best.
  await figure.getByLabel('Off', { exact: true }).check({ force: true });
  await figure.getByRole('spinbutton', { name: '09:00 to 10:00' }).click();
  await expect(figure.locator('.figure-finding')).toContainText(/Skimming is short by 1.h/);
  await expect.poll(() => amount(2)).toBeCloseTo(after.price.energyCost, 2);
  const found = hours.join('');
  hours[9] = 0;
  await expect(page).toHaveURL(new RegExp(`hourhunt=day-${hours.join('')}_best-${found}`));

  await page.reload();
  await expect(page.locator('astro-island[ssr]:has(#hour-hunt)')).toHaveCount(0);
  await expect(figure.locator('.figure-finding')).toContainText(/Skimming is short by 1.h/);
  // The answer, by the keyboard: the laid day costs what the sentence says, and no more than the hunted one.
  await figure.getByRole('button', { name: 'Show the cheapest day' }).press('Enter');
  const answer = figure.locator('.hunt-cheapest');
  await expect(answer).toContainText('It is proven that no other day');
  const cheapest = await amount(0);
  expect(cheapest).toBeLessThanOrEqual(after.price.energyCost);
  await expect(answer).toContainText(`The cheapest day costs $${cheapest.toFixed(2)}.`);
  await expect(answer).toContainText(`Your own best costs $${after.price.energyCost.toFixed(2)}, `);
  const levels = await figure
    .getByRole('spinbutton')
    .evaluateAll((cells) => cells.map((cell) => Number(cell.getAttribute('aria-valuenow'))));
  const worked = workHours(huntPlace, levels, summerWeekday);
  expect(worked.sound).toBe(true);
  expect(cheapest).toBeCloseTo(worked.price.energyCost, 2);

  await figure.getByRole('button', { name: 'Reset' }).click();
  await expect.poll(() => amount(0)).toBe(before);
  await expect(page).not.toHaveURL(/hourhunt=/);
  await expect(answer).toBeEmpty();
  await expect(figure.getByRole('button', { name: 'Show the cheapest day' })).toHaveCount(0);
});

test.describe('on a phone', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
  test('the hours fit and answer to a thumb', async ({ page }) => {
    await page.goto(path);
    const figure = page.locator('#hour-hunt');
    await figure.scrollIntoViewIfNeeded();
    await expect(page.locator('astro-island[ssr]:has(#hour-hunt)')).toHaveCount(0);
    const hour = figure.getByRole('spinbutton', { name: '10:00 to 11:00' });
    const box = await hour.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
    await hour.tap();
    await expect(hour).toHaveAttribute('aria-valuenow', '1');
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over).toBe(0);
  });
});
