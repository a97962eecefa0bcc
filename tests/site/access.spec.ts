import AxeBuilder from '@axe-core/playwright';
import { expect, test, wakeAll, widthBeyondScreen } from './fixture.ts';
import { pagePaths } from './site.ts';

/** WCAG 2.2 A and AA, plus axe's own good habits of headings and landmarks. */
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

for (const path of pagePaths()) {
  test.describe('every page', () => {
    test.use({ contextOptions: { reducedMotion: 'reduce' } });
    // One visit serves all of these: what wakes a page is the slow part.
    test(`${path} has no barrier that axe can find, by day and by night, and fits small screens and large text`, async ({
      page,
    }) => {
      await page.goto(path);
      await wakeAll(page);
      const byDay = await new AxeBuilder({ page }).withTags(rules).analyze();
      expect(byDay.violations.map(inWords), 'by day').toEqual([]);
      // By night only the colours are others.
      await page.emulateMedia({ colorScheme: 'dark' });
      const byNight = await new AxeBuilder({ page }).withRules(['color-contrast']).analyze();
      expect(byNight.violations.map(inWords), 'by night').toEqual([]);
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await widthBeyondScreen(page), 'on a phone held upright').toBe(0);
      await page.setViewportSize({ width: 640, height: 900 });
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      expect(await widthBeyondScreen(page), 'text at twice its size').toBe(0);
    });
  });
}

test('the projector look has no barrier that axe can find', async ({ page }) => {
  await page.goto('/');
  await page.getByLabel('Look of the page').selectOption('projector');
  const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze();
  expect(violations.map(inWords)).toEqual([]);
});

test('the first stop of the Tab key leads past the masthead', async ({ page }) => {
  await page.goto('/');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('main')).toBeFocused();
});

function inWords(violation: {
  id: string;
  help: string;
  nodes: { html: string; failureSummary?: string }[];
}): string {
  const places = violation.nodes.slice(0, 4).map((node) => `${node.html}\n${node.failureSummary}`);
  return [`${violation.id}: ${violation.help} (${violation.nodes.length})`, ...places].join('\n');
}
