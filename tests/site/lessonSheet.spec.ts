import { expect, test } from './fixture.ts';
import { sheetsOf } from './paper.ts';
import { pagePaths } from './site.ts';

const lessons = pagePaths().filter((path) => /^\/lessons\/.+/.test(path));

for (const path of lessons) {
  test(`${path} prints as one sheet with its question, picture, formula and blank checks`, async ({
    page,
  }) => {
    await page.goto(path);
    await page.emulateMedia({ media: 'print' });
    await expect(page.locator('.lesson-question')).toBeVisible();
    await expect(page.locator('.figure').first()).toBeVisible();
    await expect(page.locator('.formula').first()).toBeVisible();
    await expect(page.locator('.in-short')).toBeVisible();
    await expect(page.locator('.check-prompt').first()).toBeVisible();
    await expect(page.locator('.ask-answer').first()).toBeHidden();
    expect(await sheetsOf(page)).toBe(1);
  });
}
