import AxeBuilder from '@axe-core/playwright';
import { expect, test, wakeAll } from './fixture.ts';
import { pagePaths } from './site.ts';

/** WCAG 2.2 A and AA, plus axe's own good habits of headings and landmarks. */
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

for (const scheme of ['light', 'dark'] as const) {
  test.describe(`by ${scheme}`, () => {
    test.use({ colorScheme: scheme, contextOptions: { reducedMotion: 'reduce' } });
    for (const path of pagePaths()) {
      test(`${path} has no barrier that axe can find`, async ({ page }) => {
        await page.goto(path);
        await wakeAll(page);
        const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze();
        expect(violations.map(inWords)).toEqual([]);
      });
    }
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
