import type { Page } from '@playwright/test';
import { cheapestDay } from '#core/planner/cheapestDay.ts';
import { benchOf } from '#dayPage/day/bench.ts';
import { plannerInputsOf, rowsOf } from '#dayPage/planning/plannerInputs.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { formatMoney } from '#units/money.ts';
import { expect, test } from './fixture.ts';

const finding = (page: Page) => page.locator('.cheapest-finding');

async function open(page: Page): Promise<void> {
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Find the cheapest day' }).click();
  await expect(finding(page)).toContainText('The cheapest day takes');
}

/** The price by the core, for the example pad on the page's own date. */
function priceOf(turnovers: number): string {
  const { bench } = benchOf(ownerPad);
  const { date } = ownerPad.day;
  if (bench === null || date === null) throw new Error('the example has no day');
  const wishes = { minutes: {}, turnovers, mayStop: true, mostChanges: null };
  const asked = plannerInputsOf(bench, rowsOf(bench), date, wishes);
  const found = asked === null ? null : cheapestDay(asked);
  if (found?.kind !== 'found') throw new Error('no day was found');
  return formatMoney(found.cost, ownerPad.tariff.currency);
}

test('the cheapest day follows the keys, says what the core says, and can be laid on the sheet', async ({
  page,
}) => {
  await open(page);
  const target = ownerPad.turnoverTarget ?? 1;
  await expect(finding(page)).toContainText(`takes ${priceOf(target)} of energy`);
  await page.getByLabel('Water to move', { exact: true }).focus();
  for (let step = 0; step < 3; step += 1) await page.keyboard.press('ArrowLeft');
  await expect(finding(page)).toContainText(`takes ${priceOf(target - 0.3)} of energy`);
  await page.keyboard.press('End');
  await expect(finding(page)).toContainText('cannot be had together');
  await page.getByRole('button', { name: 'Back to what the pad asks' }).click();
  await expect(finding(page)).toContainText(`takes ${priceOf(target)} of energy`);
  await page.getByRole('button', { name: 'Lay this day on the sheet' }).click();
  await expect(finding(page)).toContainText('as much as the day on your sheet');
  await page.getByRole('button', { name: 'Undo the cheapest day' }).click();
  await expect(finding(page)).toContainText('less than the day on your sheet');
});

test('with few changes it is searched for beside the page, and says how near it is', async ({
  page,
}) => {
  await open(page);
  await page.getByLabel('Changes of speed in a day').selectOption('4');
  // Either the way there is told, or, on a fast machine, the end is there at once.
  const isSearched = async () => {
    const words = (await finding(page).textContent()) ?? '';
    if (/at most [\d.]+\s% above the cheapest there can be/.test(words)) return true;
    const rows = await page.locator('.cheapest tbody tr').count();
    return words.startsWith('The cheapest day takes') && rows <= 4;
  };
  await expect.poll(isSearched, { timeout: 60_000 }).toBe(true);
});

test('a search under way is told and can be called off', async ({ page }) => {
  // The worker is kept back, so that there is time to call it off however fast the machine.
  await page.route(/worker/, async (route) => {
    await new Promise((go) => setTimeout(go, 3000));
    await route.continue().catch(() => {});
  });
  await open(page);
  await page.getByLabel('Changes of speed in a day').selectOption('6');
  await page.getByRole('button', { name: 'Call off' }).click();
  await expect(finding(page)).toContainText('called off');
  await page.getByLabel('Changes of speed in a day').selectOption('any');
  await expect(finding(page)).toContainText('The cheapest day takes');
});

test('at 390 px nothing of it goes beyond the page', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page);
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBe(0);
});
