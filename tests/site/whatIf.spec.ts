import type { Page } from '@playwright/test';
import { cheapestDay } from '#core/planner/cheapestDay.ts';
import { benchOf } from '#dayPage/day/bench.ts';
import { plannerInputsOf, rowsOf } from '#dayPage/planning/plannerInputs.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { formatMoney } from '#units/money.ts';
import { expectNoBarrier } from './barriers.ts';
import { expect, test, widthBeyondScreen } from './fixture.ts';

const finding = (page: Page) => page.locator('.what-if-finding');
const plan = (page: Page) => page.locator('.what-if-plan');

async function open(page: Page): Promise<void> {
  await page.goto('/day/');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await page.getByRole('button', { name: 'Try one thing' }).click();
  await expect(finding(page)).toContainText('As the pad is, the cheapest day takes');
}

async function choose(page: Page, label: string): Promise<void> {
  await page.getByLabel('What to change').selectOption({ label });
  await expect(finding(page)).toContainText('As the pad is, the cheapest day takes');
}

/** The price by the core, for the example pad on the page's own date unless another is given. */
function priceOf(
  turnovers: number,
  minutes: Readonly<Record<string, number>> = {},
  date = ownerPad.day.date,
): string {
  const { bench } = benchOf(ownerPad);
  if (bench === null || date === null) throw new Error('the example has no day');
  const wishes = { minutes, turnovers, mayStop: true, mostChanges: null };
  const asked = plannerInputsOf(bench, rowsOf(bench), date, wishes);
  const found = asked === null ? null : cheapestDay(asked);
  if (found?.kind !== 'found') throw new Error('no day was found');
  return formatMoney(found.cost, ownerPad.tariff.currency);
}

test('the handle follows the keys, and the plan below it says what the core says', async ({
  page,
}) => {
  await open(page);
  const target = ownerPad.turnoverTarget ?? 1;
  await expect(finding(page)).toContainText(`takes ${priceOf(target)}.`);
  const handle = page.locator('.what-if .drag-handle');
  await handle.focus();
  await page.keyboard.press('PageUp');
  await page.keyboard.press('ArrowLeft');
  await expect(plan(page)).toContainText(`2.4 turnovers: ${priceOf(2.4)} a day.`);
  await expect(handle).toHaveAttribute('aria-valuetext', `2.4 turnovers, ${priceOf(2.4)} a day`);
  await expect(plan(page).getByRole('img', { name: /^Speeds over the day: .* rpm/ })).toBeVisible();
  await page.getByRole('button', { name: 'Back to what the pad has' }).click();
  await expect(plan(page)).toContainText(`2 turnovers: ${priceOf(target)} a day.`);
  await choose(page, 'Hours of “Skim the surface”');
  await page.getByLabel(/^Hours of “Skim the surface”, h/).fill('5');
  await expect(plan(page)).toContainText(`5 h: ${priceOf(target, { skim: 300 })} a day.`);
});

test('pipes go in steps; where no day is, the picture and a sentence say so', async ({ page }) => {
  await open(page);
  await choose(page, 'Size of the suction pipes');
  await expect(finding(page)).toContainText('Below 1-1/2 in pipe no day keeps all you ask.');
  await expect(page.locator('.what-if-notes')).toContainText('cannot be had together');
  await expect(
    page.locator('.what-if-flag-words', { hasText: 'no day before here' }),
  ).toBeVisible();
  const slider = page.getByRole('slider', { name: 'Size of the suction pipes' }).last();
  await slider.focus();
  await page.keyboard.press('Home');
  await expect(plan(page)).toContainText('1-1/4 in pipe: no day.');
  await page.keyboard.press('ArrowRight');
  await expect(plan(page)).toContainText(/1-1\/2 in pipe: \$\d/);
});

test('the handle is dragged along the picture', async ({ page }) => {
  await open(page);
  await choose(page, 'Loading of the filter');
  const handle = page.locator('.what-if .drag-handle');
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  const field = await page.locator('.what-if .plot-body').boundingBox();
  if (box === null || field === null) throw new Error('nothing to drag');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(field.x + 0.8 * field.width, box.y + box.height / 2, { steps: 6 });
  await page.mouse.up();
  await expect(plan(page)).toContainText(/80\s%\sloaded: \$/);
});

test('the pad changed elsewhere on the page is swept anew, and the table has every value', async ({
  page,
}) => {
  await open(page);
  await page.getByText('The range as a table').click();
  const table = page.locator('.what-if table');
  await expect(table.locator('tbody tr')).toHaveCount(41);
  await expect(table.getByRole('row', { name: /^2 turnovers/ })).toContainText(priceOf(2));
  await page.getByLabel('Date').fill('2027-01-13');
  const price = priceOf(2, {}, { year: 2027, month: 1, day: 13 });
  await expect(finding(page)).toContainText(`takes ${price}.`);
});

test('on the smallest phone no word stands on another, and every number is on one line', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 800 });
  await open(page);
  const boxes = await page
    .locator('.what-if-flag-words, .what-if .curve-label.is-strong')
    .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().toJSON()));
  expect(boxes.length).toBeGreaterThan(3);
  expect(await widthBeyondScreen(page)).toBe(0);
  for (const [at, one] of boxes.entries()) {
    for (const other of boxes.slice(at + 1)) {
      const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
      const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      expect(Math.min(high, wide), JSON.stringify([one, other])).toBeLessThan(4);
    }
  }
  const heights = await page
    .locator('.what-if-block > b:visible')
    .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
  expect(Math.max(...heights)).toBeLessThan(30);
});

test('by day, by night and on a phone it has no barrier that axe can find', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open(page);
  await choose(page, 'Size of the return pipes');
  await page.getByText('The range as a table').click();
  await expectNoBarrier(page, '.what-if');
  await page.setViewportSize({ width: 390, height: 844 });
  for (const label of [
    'Turnovers asked for',
    'Hours of “Skim the surface”',
    'The dear price alone',
    'Loading of the filter',
  ]) {
    await choose(page, label);
    expect(await widthBeyondScreen(page), label).toBe(0);
  }
});
