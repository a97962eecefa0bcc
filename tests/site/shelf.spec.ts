import type { Page } from '@playwright/test';
import { lodgePad } from '#pad/demos/demos.ts';
import { padFragment } from '#pad/document/link.ts';
import { padKey } from '#pad/store/padKey.ts';
import { alive, expect, test, wakeAll } from './fixture.ts';

/* Ways to lose a pad, each walked in a browser: none may lose a word that was typed. */

const shelfNames = (page: Page) =>
  page.locator('.form-shelf-name').evaluateAll((all) => all.map(({ textContent }) => textContent));

/** An own pad with a name, made on the page itself. */
async function makeOwn(page: Page, name: string): Promise<void> {
  await page.goto('/pad/');
  await alive(page);
  await page.getByRole('button', { name: /^An empty pad/ }).click();
  const field = page.getByLabel('Name of this pad');
  await field.fill(name);
  await field.blur();
  await expect.poll(() => shelfNames(page)).toContain(name);
}

test('an example and an empty pad open beside the own pad, also after a reload', async ({
  page,
}) => {
  await makeOwn(page, 'Mine');
  await page.reload();
  await alive(page);
  await page.getByRole('button', { name: /^A training rig/ }).click();
  await page.getByRole('button', { name: /^An empty pad/ }).click();
  await expect.poll(() => shelfNames(page)).toContain('Mine');
  await page.getByRole('button', { name: 'Open Mine' }).click();
  await expect(page.locator('.form-whose')).toHaveText('Open: Mine. It is kept in this browser.');
  await page.getByRole('button', { name: 'Delete Mine' }).click();
  await expect.poll(() => shelfNames(page)).not.toContain('Mine');
  await page.getByRole('button', { name: 'Bring it back' }).click();
  await expect(page.locator('.form-whose')).toHaveText('Open: Mine. It is kept in this browser.');
});

test('a second link and a link to a lesson leave the own pad on the shelf', async ({ page }) => {
  await makeOwn(page, 'Mine');
  const link = padFragment({ ...lodgePad, name: 'From a friend' });
  await page.goto(`/lessons/friction/${link}`);
  await page.goto(`/pad/${padFragment({ ...lodgePad, name: 'Another' })}`);
  await alive(page);
  await expect(page.locator('.form-notice').first()).toContainText('was opened beside yours');
  await expect.poll(() => shelfNames(page)).toEqual(expect.arrayContaining(['Mine', 'Another']));
  await page.getByRole('button', { name: 'Open Mine' }).click();
  await expect(page.locator('.form-whose')).toContainText('Open: Mine.');
});

test('two tabs: a change in one stands in the other, and both may have another pad open', async ({
  page,
  context,
}) => {
  await makeOwn(page, 'Mine');
  const other = await context.newPage();
  await other.goto('/pad/');
  await alive(other);
  await expect(other.locator('.form-whose')).toContainText('Open: Mine.');
  const field = other.getByLabel('Name of this pad');
  await other.getByRole('button', { name: 'Rename' }).click();
  await field.fill('Ours');
  await field.blur();
  await expect(page.locator('.form-whose')).toContainText('Open: Ours.');
  await other.getByRole('button', { name: /^A training rig/ }).click();
  await expect(page.locator('.form-whose')).toContainText('Open: Ours.');
  await page.reload();
  await alive(page);
  await expect(page.locator('.form-whose')).toContainText('Open: Ours.');
});

test('a browser that is full says so at once, and the pad can be saved as a file', async ({
  page,
}) => {
  await makeOwn(page, 'Mine');
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await page.getByRole('button', { name: 'Rename' }).click();
  const field = page.getByLabel('Name of this pad');
  await field.fill('Typed when full');
  await field.blur();
  await expect(page.locator('.form-notice').first()).toContainText(
    'did not keep your last changes',
  );
  await expect(page.locator('.form-whose')).toHaveText(
    'Open: Typed when full. This browser is not keeping it: save it as a file.',
  );
});

test('while the own pad is on its way nothing of the example is seen or printed', async ({
  page,
}) => {
  await page.addInitScript(([key, text]) => localStorage.setItem(key, text), [
    padKey,
    JSON.stringify({ ...lodgePad, name: 'Mine' }),
  ] as const);
  let letGo: () => void = () => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.route(/\.js$/, async (route) => {
    await held;
    await route.continue();
  });
  for (const [path, own] of [
    ['/day/', '.day-name'],
    ['/pad/', '.form-whose'],
  ] as const) {
    await page.goto(path, { waitUntil: 'commit' });
    await expect(page.locator(own)).toBeAttached();
    await expect(page.locator(own)).toBeHidden();
  }
  letGo();
  await alive(page);
  await expect(page.locator('.form-whose')).toContainText('Open: Mine.');
  await expect(page.locator('.form-whose')).toBeVisible();
});

test('lessons: an answer given in one tab is not written over by the other', async ({
  page,
  context,
}) => {
  const other = await context.newPage();
  for (const tab of [page, other]) {
    await tab.goto('/lessons/friction/');
    await wakeAll(tab);
  }
  const lock = (tab: Page) => tab.getByRole('button', { name: 'Lock in my guess' }).first();
  await page.locator('.ask input[type=radio]').first().check();
  await lock(page).click();
  await page.goto('/lessons/');
  // The first page comes back as it was left; the second has answered meanwhile.
  await other.evaluate(() => {
    const key = 'cubelaw-learning';
    const now = JSON.parse(localStorage.getItem(key) ?? '{}');
    localStorage.setItem(
      key,
      JSON.stringify({ ...now, passed: { ...now.passed, elsewhere: true } }),
    );
  });
  await page.goBack();
  await wakeAll(page);
  const check = page.locator('.check').first();
  await check.scrollIntoViewIfNeeded();
  const kept = () =>
    page.evaluate(() => JSON.parse(localStorage.getItem('cubelaw-learning') ?? '{}'));
  await expect.poll(async () => Object.keys((await kept()).passed)).toContain('elsewhere');
  await expect.poll(async () => Object.keys((await kept()).guesses).length).toBe(1);
});

test('by keys alone a pad is opened, deleted and brought back, and the focus is never lost', async ({
  page,
}) => {
  await makeOwn(page, 'Mine');
  await page.getByRole('button', { name: /^A training rig/ }).press('Enter');
  await page.getByRole('button', { name: 'Open Mine' }).press('Enter');
  const whose = page.locator('.form-whose');
  await expect(whose).toHaveText('Open: Mine. It is kept in this browser.');
  await expect(whose).toBeFocused();
  await page.getByRole('button', { name: 'Delete Mine' }).press('Enter');
  const back = page.getByRole('button', { name: 'Bring it back' });
  await expect(back).toBeFocused();
  await back.press('Enter');
  await expect(whose).toHaveText('Open: Mine. It is kept in this browser.');
  await expect(whose).toBeFocused();
});

test('where storage is shut off nothing says that the pad is kept', async ({ page }) => {
  await page.addInitScript(() => {
    for (const name of ['localStorage', 'sessionStorage']) {
      Object.defineProperty(window, name, {
        get: () => {
          throw new DOMException('denied', 'SecurityError');
        },
      });
    }
  });
  await page.goto('/pad/');
  await alive(page);
  await page.locator('#pad-step-keep-head').click();
  const keep = page.locator('#pad-step-keep');
  await expect(keep).toContainText('This browser is not keeping your changes');
  await page.getByRole('button', { name: /^An empty pad/ }).click();
  await expect(page.locator('.form-notice').first()).toContainText('does not keep the pad');
  await expect(page.locator('.form-whose')).toContainText('This browser is not keeping it');
  await expect(page.locator('main')).not.toContainText(/(is|are) kept in this browser/);
});

test('a part that is fetched late prints nothing of the example under the own pad', async ({
  page,
}) => {
  await page.addInitScript(([key, text]) => localStorage.setItem(key, text), [
    padKey,
    JSON.stringify({ ...lodgePad, name: 'Mine' }),
  ] as const);
  let letGo: () => void = () => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  let isAsked = false;
  await page.route(/PrintSheet\.[^/]*\.js$/, async (route) => {
    isAsked = true;
    await held;
    await route.continue();
  });
  await page.goto('/day/');
  await expect.poll(() => isAsked).toBe(true);
  // Everything else is there by then.
  await page.waitForTimeout(2000);
  await page.emulateMedia({ media: 'print' });
  const sheet = page.locator('[data-first-pad] > .later').last();
  await expect(sheet).toBeHidden();
  letGo();
  await expect(sheet).toBeVisible();
  await expect(sheet).toContainText('Mine');
});
