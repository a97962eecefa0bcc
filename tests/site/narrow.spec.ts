import type { Page } from '@playwright/test';
import { expect, test, wakeAll } from './fixture.ts';
import { pagePaths } from './site.ts';

/** Formulas wider than the room they have. */
const cutFormulas = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.katex-display')].flatMap((display) => {
      const room = display.closest('.formula-scroll') ?? display;
      const end = room.getBoundingClientRect().right;
      const reach = Math.max(
        ...[...display.querySelectorAll('.katex-html > .base')].map(
          (base) => base.getBoundingClientRect().right,
        ),
      );
      const tex = display.querySelector('annotation')?.textContent ?? '';
      return reach > end + 1 || room.scrollWidth > room.clientWidth + 1
        ? [`${Math.round(Math.max(reach - end, room.scrollWidth - room.clientWidth))} px: ${tex}`]
        : [];
    }),
  );

test('no formula is cut on a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const cut: string[] = [];
  for (const path of pagePaths()) {
    await page.goto(path);
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });
    cut.push(...(await cutFormulas(page)).map((each) => `${path}: ${each}`));
  }
  expect(cut).toEqual([]);
});

/** Units and words of one short label that stand in more than one line. */
const broken = (page: Page) =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>('.field-unit, button, .curve-label, .day-label b'),
    ].flatMap((each) => {
      const text = each.textContent?.trim() ?? '';
      if (!each.checkVisibility({ visibilityProperty: true }) || text === '') return [];
      const range = document.createRange();
      range.selectNodeContents(each);
      const box = range.getBoundingClientRect();
      const line = Number.parseFloat(getComputedStyle(each).fontSize);
      const isUnit = each.matches('.field-unit');
      const single = isUnit || !text.includes(' ');
      return single && box.height > 2.2 * line ? [`${each.className}: ${text}`] : [];
    }),
  );

for (const width of [390, 768]) {
  test(`no unit and no single word on a button breaks at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: 844 });
    const found: string[] = [];
    for (const path of pagePaths()) {
      await page.goto(path);
      await wakeAll(page);
      found.push(...(await broken(page)).map((each) => `${path}: ${each}`));
    }
    expect(found).toEqual([]);
  });
}
