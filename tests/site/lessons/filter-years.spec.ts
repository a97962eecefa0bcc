import type { Ask } from '#explorables/FilterYears/ask.ts';
import { exampleBasis } from '#explorables/FilterYears/basis.ts';
import { solveExample } from '#explorables/FilterYears/example.ts';
import { openingAsk } from '#explorables/FilterYears/model.ts';
import { lodgePad } from '#pad/demos/demos.ts';
import { padFragment } from '#pad/document/link.ts';
import { us } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { expectNoBarrier } from '../barriers.ts';
import { expect, test, wakeAll, widthBeyondScreen } from '../fixture.ts';

const path = '/lessons/the-year/';

/** Energy of the small filter's year by the core, as it is written. */
function energyShown(change: Partial<Ask>): string {
  const { filters } = solveExample({ ...openingAsk(exampleBasis), ...change });
  return format('energy', filters[0].energy, us, { digits: 3 });
}

test('ways and days between cleanings by the keys: the energy is that of the core', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const figure = page.locator('#filter-years');
  const finding = figure.locator('.figure-finding');
  await expect(finding).toContainText(`that takes ${energyShown({ way: 'hours' })}`);
  await figure.locator('#filter-years-way-hours').focus();
  await page.keyboard.press('ArrowRight');
  await expect(finding).toContainText(`that takes ${energyShown({ way: 'speed' })}`);
  await figure.locator('#filter-years-interval-0').focus();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('ArrowLeft');
  const [small, large] = exampleBasis.filters;
  const filters = [{ ...small, interval: 48 }, large] as const;
  await expect(finding).toContainText(`that takes ${energyShown({ way: 'speed', filters })}`);
  await expect(page).toHaveURL(/filteryears=way-speed_small-48/);
  await figure.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toContainText(`that takes ${energyShown({ way: 'hours' })}`);
  await expect(page).not.toHaveURL(/filteryears=/);
});

test('left alone the draw sinks, and the words say that the water gets dearer', async ({
  page,
}) => {
  await page.goto(`${path}?filteryears=way-left`);
  await wakeAll(page);
  await expect(page.locator('#filter-years .figure-finding')).toContainText(
    /The draw sinks too, .* but the same water takes \d+\s% more energy/,
  );
});

test('the reader’s own filter, opened out on a phone by day and by night, has no barrier', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(path + padFragment(lodgePad));
  await wakeAll(page);
  const figure = page.locator('#filter-years');
  await figure.getByText('My pad', { exact: true }).click();
  await expect(figure.locator('.figure-finding')).toContainText('through your filter');
  await figure.getByText('The filters themselves').click();
  expect(await widthBeyondScreen(page)).toBe(0);
  await expectNoBarrier(page, '#filter-years');
});
