import { expect, test } from '@playwright/test';
import type { Browser } from 'puppeteer-core';
import { lodgePad } from '#pad/demos/demos.ts';
import { padFragment } from '#pad/document/link.ts';
import { shelfPrefix } from '#pad/store/shelf.ts';
import { type FirefoxTab, findFirefox, firefoxTab, startFirefox } from './firefox.ts';

/*
 * Ways to lose work, each walked in Firefox: its back button brings a page back as it was left, with
 * all that its scripts held at the time.
 */

const firefox = findFirefox();
test.skip(firefox === undefined, 'Install firefox-esr, or set FIREFOX to the path of a Firefox.');
// One browser is enough for all of them.
test.describe.configure({ mode: 'default' });

let browser: Browser;
test.beforeAll(async () => {
  if (firefox !== undefined) browser = await startFirefox(firefox);
});
test.afterAll(() => browser?.close());

/** Tabs of a browser that has never been here. */
async function tabs(count: number): Promise<readonly FirefoxTab[]> {
  const context = await browser.createBrowserContext();
  const pages = [];
  for (let at = 0; at < count; at += 1) pages.push(firefoxTab(await context.newPage()));
  return pages;
}

async function oneTab(): Promise<FirefoxTab> {
  const [tab] = await tabs(1);
  if (tab === undefined) throw new Error('Firefox opened no tab.');
  return tab;
}

/** An own pad with a name, made on the page itself. */
async function makeOwn(tab: FirefoxTab, name: string): Promise<void> {
  await tab.go('/pad/');
  await tab.press('An empty pad');
  await tab.type('Name of this pad', name);
  await namesOnShelf(tab, [name]);
}

async function namesOnShelf(tab: FirefoxTab, names: readonly string[]): Promise<void> {
  const found = async () =>
    (await tab.kept(shelfPrefix)).map(({ name }) => name ?? 'A pad without a name');
  await expect.poll(found).toEqual(names);
}

async function isOpen(tab: FirefoxTab, name: string): Promise<void> {
  await expect
    .poll(() => tab.text('.form-whose'))
    .toBe(`Open: ${name}. It is kept in this browser.`);
}

test('a page that comes back shows what was changed meanwhile, and writes nothing over it', async () => {
  const tab = await oneTab();
  await makeOwn(tab, 'Mine');
  await tab.go('/day/');
  await expect.poll(() => tab.text('.day-name')).toBe('Mine');
  await tab.press('Metric');
  await expect
    .poll(async () => (await tab.kept(shelfPrefix))[0])
    .toMatchObject({ units: { preset: 'metric' } });
  expect(await tab.back(), 'the page comes back as it was left').toBe(true);
  await tab.type('Name of this pad', 'Mine, later');
  await namesOnShelf(tab, ['Mine, later']);
  expect((await tab.kept(shelfPrefix))[0]).toMatchObject({ units: { preset: 'metric' } });
  expect(tab.complaints).toEqual([]);
});

test('a page that comes back with the example shows the pad made meanwhile', async () => {
  const tab = await oneTab();
  await tab.go('/day/');
  await makeOwn(tab, 'Mine');
  expect(await tab.back()).toBe(true);
  await expect.poll(() => tab.text('.day-name')).toBe('Mine');
  expect(tab.complaints).toEqual([]);
});

test('a page that comes back works on the pad that it shows, whichever was opened meanwhile', async () => {
  const tab = await oneTab();
  await makeOwn(tab, 'Mine');
  await tab.go('/day/');
  await tab.go('/pad/');
  await tab.press('A training rig');
  await isOpen(tab, 'Training rig (invented)');
  expect(await tab.back()).toBe(true);
  // Firefox gives such a page the storage of its tab as that stood when the page was left.
  const shown = await tab.text('.day-name');
  const units = async () =>
    Object.fromEntries(
      (await tab.kept(shelfPrefix)).map(({ name, units }) => [
        name,
        Reflect.get(Object(units), 'preset'),
      ]),
    );
  const before = await units();
  const other = before[shown] === 'us' ? 'metric' : 'us';
  await tab.press(other === 'us' ? 'US' : 'Metric');
  await expect.poll(units).toEqual({ ...before, [shown]: other });
  expect(Object.keys(before)).toEqual(expect.arrayContaining(['Mine', 'Training rig (invented)']));
  expect(tab.complaints).toEqual([]);
});

test('a lesson that comes back keeps what was answered in another meanwhile', async () => {
  const tab = await oneTab();
  const guess = async () => {
    await tab.pressAt('.ask .ask-option');
    await tab.press('Lock in my guess');
  };
  const guesses = async () => {
    const [learning] = await tab.kept('cubelaw-learning');
    return Object.keys((learning?.['guesses'] as Record<string, string> | undefined) ?? {}).length;
  };
  await tab.go('/lessons/flow-power-speed/');
  await tab.go('/lessons/friction/');
  await guess();
  await expect.poll(guesses).toBe(1);
  expect(await tab.back()).toBe(true);
  await guess();
  await expect.poll(guesses).toBe(2);
  expect(tab.complaints).toEqual([]);
});

test('two tabs: a change in one stands in the other, and each may have its own pad open', async () => {
  const [first, second] = (await tabs(2)) as [FirefoxTab, FirefoxTab];
  await makeOwn(first, 'Mine');
  await second.go('/pad/');
  await isOpen(second, 'Mine');
  await second.press('Rename');
  await second.type('Name of this pad', 'Ours');
  await isOpen(first, 'Ours');
  await second.press('A training rig');
  await isOpen(second, 'Training rig (invented)');
  await first.reload();
  await isOpen(first, 'Ours');
  await second.reload();
  await isOpen(second, 'Training rig (invented)');
});

test('a pad deleted in one tab is said to be gone in the other', async () => {
  const [first, second] = (await tabs(2)) as [FirefoxTab, FirefoxTab];
  await makeOwn(first, 'Mine');
  await second.go('/pad/');
  await second.press('Delete Mine');
  await expect.poll(() => first.text('.form-notice')).toContain('was deleted in another tab');
  await second.press('Bring it back');
  await isOpen(first, 'Mine');
});

test('links, an example and an empty pad leave the own pad on the shelf, also after a reload', async () => {
  const tab = await oneTab();
  await makeOwn(tab, 'Mine');
  await tab.go(`/lessons/friction/${padFragment({ ...lodgePad, name: 'From a friend' })}`);
  await tab.go(`/pad/${padFragment({ ...lodgePad, name: 'Another' })}`);
  await isOpen(tab, 'Another');
  await tab.reload();
  await isOpen(tab, 'Another');
  await tab.press('A training rig');
  await isOpen(tab, 'Training rig (invented)');
  await tab.press('An empty pad');
  await isOpen(tab, 'A pad without a name');
  await tab.press('Open Mine');
  await isOpen(tab, 'Mine');
  await namesOnShelf(tab, [
    'Mine',
    'From a friend',
    'Another',
    'Training rig (invented)',
    'A pad without a name',
  ]);
});

test('a browser that is full says so at once', async () => {
  const tab = await oneTab();
  await makeOwn(tab, 'Mine');
  await tab.fill();
  await tab.type('Name of this pad', 'Typed when full');
  await expect.poll(() => tab.text('.form-notice')).toContain('did not keep your last changes');
  await expect
    .poll(() => tab.text('.form-whose'))
    .toBe('Open: Typed when full. This browser is not keeping it: save it as a file.');
  await tab.press('A training rig');
  await namesOnShelf(tab, ['Mine']);
});
