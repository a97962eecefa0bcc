import { readFileSync } from 'node:fs';
import { checksIn } from '#course/lesson/checksIn.ts';
import { expect, test } from './fixture.ts';

const lesson = new URL('../../content/lessons/velocity-and-bore.mdx', import.meta.url);
const checks = checksIn(readFileSync(lesson, 'utf8'));
const entry = '.course-entry:has(a[href="/lessons/velocity-and-bore/"])';

/** What the browser remembers of the lessons, before the page opens. */
function remembering(passed: readonly string[]): string {
  const answers = Object.fromEntries(passed.map((check) => [check, true]));
  return JSON.stringify({ guesses: {}, draws: {}, passed: answers });
}

async function open(page: import('@playwright/test').Page, passed: readonly string[]) {
  await page.goto('/404.html');
  await page.evaluate(
    (kept) => localStorage.setItem('cubelaw-learning', kept),
    remembering(passed),
  );
  await page.goto('/lessons/');
}

test('a first visit shows the course, what rests on what, and no progress', async ({ page }) => {
  await page.goto('/lessons/');
  await expect(page.locator(entry)).toContainText('needs no other lesson');
  await expect(page.locator('.course-standing')).toContainText('are marked here');
  await expect(page.getByRole('button', { name: 'Clear my progress' })).toHaveCount(0);
  await page.locator(entry).getByRole('link').click();
  await expect(page.locator('h1')).toHaveText('Velocity and bore');
});

test('a lesson is done once all of its self-checks are', async ({ page }) => {
  await open(page, checks.slice(1));
  await expect(page.locator(entry)).toContainText(
    `${checks.length - 1} of ${checks.length} self-checks`,
  );
  await open(page, checks);
  await expect(page.locator(entry)).toContainText(`done, all ${checks.length} self-checks`);
  await expect(page.locator('.course-standing')).toContainText('and done 1 of');
  await expect(page.locator('.course-standing a')).toBeVisible();
});

test('progress is cleared only on a second word, by keyboard', async ({ page }) => {
  await open(page, checks);
  const clear = page.getByRole('button', { name: 'Clear my progress' });
  await clear.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Keep them' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(clear).toBeVisible();
  await expect(page.locator(entry)).toContainText('done, all');
  await clear.click();
  await page.getByRole('button', { name: 'Forget them' }).click();
  await expect(page.locator(entry)).not.toContainText('done');
  await expect(page.locator('.course-standing p')).toBeFocused();
  await page.reload();
  await expect(page.locator('.course-standing')).toContainText('are marked here');
});

test('lines join the numbers of lessons that rest on each other', async ({ page }) => {
  await page.goto('/lessons/');
  const boxes = await page.evaluate(() => {
    const middle = ({ top, height }: DOMRect) => top + height / 2;
    const numbers = [...document.querySelectorAll('.course-number')];
    const ends = [...document.querySelectorAll('.course-branch')];
    return {
      numbers: numbers.map((number) => middle(number.getBoundingClientRect())),
      ends: ends.map((end) => end.getBoundingClientRect().top),
    };
  });
  expect(boxes.ends.length).toBeGreaterThan(1);
  for (const end of boxes.ends) {
    const nearest = Math.min(...boxes.numbers.map((number) => Math.abs(number - end)));
    expect(nearest).toBeLessThan(3);
  }
});

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false });
  test('the map stands, without progress', async ({ page }) => {
    await page.goto('/lessons/');
    await expect(page.locator(entry)).toBeVisible();
    await expect(page.locator('.course-standing')).toBeHidden();
  });
});
