import type { Locator } from '@playwright/test';
import { openDoors, test, wakeAll } from '../site/fixture.ts';
import { pagePaths } from '../site/site.ts';

/** Where the pictures go. */
const folder = 'node_modules/.cache/pictures';

const screens = [
  { name: 'phone', width: 390, height: 844 },
  { name: 'desk', width: 1280, height: 900 },
] as const;

/** A short name for a file. */
const plainName = (text: string) =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40) || 'home';

async function nameOf(part: Locator): Promise<string> {
  const head = part.locator('h2, h3, figcaption, legend').first();
  return plainName((await head.count()) > 0 ? ((await head.textContent()) ?? '') : '');
}

for (const screen of screens) {
  for (const colorScheme of ['light', 'dark'] as const) {
    test.describe(`${screen.name} ${colorScheme}`, () => {
      test.use({ viewport: screen, colorScheme });
      for (const path of pagePaths()) {
        test(path, async ({ page }) => {
          await page.goto(path);
          await wakeAll(page);
          if (path === '/day/') await openDoors(page);
          const stem = `${folder}/${plainName(path)}-${screen.name}-${colorScheme}`;
          await page.screenshot({ path: `${stem}.png`, fullPage: true });
          for (const part of await page.locator('.day-section, .figure, .ask').all()) {
            if (!(await part.isVisible())) continue;
            await part.screenshot({ path: `${stem}-${await nameOf(part)}.png` });
          }
        });
      }
    });
  }
}
