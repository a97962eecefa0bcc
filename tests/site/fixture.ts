import { test as base, expect, type Page } from '@playwright/test';
import { siteAddress } from './site.ts';

interface Watch {
  /** Messages a test expects, by pattern; anything else on the console fails it. */
  allowMessage: (pattern: RegExp) => void;
}

/**
 * Playwright's test with two watches on every page: a console message, an error or a broken
 * policy fails the test, and so does any request to another origin.
 */
export const test = base.extend<Watch>({
  allowMessage: [
    async ({ page }, use) => {
      const allowed: RegExp[] = [];
      const problems: string[] = [];
      await watch(page, problems);
      await use((pattern) => allowed.push(pattern));
      const unexpected = problems.filter((text) => !allowed.some((pattern) => pattern.test(text)));
      expect(unexpected, 'messages, errors and requests to elsewhere').toEqual([]);
    },
    { auto: true },
  ],
});

/** The one message that comes from keeping the service worker out, not from the site. */
const ofTheTestItself = /Service Worker registration blocked by Playwright/;

async function watch(page: Page, problems: string[]): Promise<void> {
  page.on('console', (message) => {
    const text = `console ${message.type()}: ${message.text()}`;
    if (!ofTheTestItself.test(text)) problems.push(text);
  });
  page.on('pageerror', (error) => problems.push(`error: ${error.message}`));
  page.on('request', (request) => {
    const url = request.url();
    const own = url.startsWith(`${siteAddress}/`) || /^(data|blob|about):/.test(url);
    if (!own) problems.push(`request to elsewhere: ${url}`);
  });
  await page.exposeFunction('tellBreach', (text: string) => problems.push(text));
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
      Reflect.get(window, 'tellBreach')(`policy broken: ${violatedDirective} ${blockedURI}`);
    });
  });
}

/** Waits until the page that was gone to stands and all its parts have come to life. */
export async function alive(page: Page): Promise<void> {
  // Before it stands there is no part yet that could be asleep.
  await page.waitForLoadState('load');
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
}

/** Scrolls through the page until every part that starts on sight has started. */
export async function wakeAll(page: Page): Promise<void> {
  const asleep = page.locator('astro-island[ssr]');
  await expect(async () => {
    await page.evaluate(async () => {
      for (const island of document.querySelectorAll('astro-island[ssr]')) {
        // An island has no box of its own; its first child has.
        island.firstElementChild?.scrollIntoView({ behavior: 'instant' });
        await new Promise((done) => setTimeout(done, 40));
      }
    });
    await expect(asleep).toHaveCount(0, { timeout: 500 });
  }).toPass({ timeout: 20_000 });
  await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
}

/** Opens every part of the day sheet that stands behind a button, one after another. */
export async function openDoors(page: Page): Promise<void> {
  const sections = page.locator('.day-section');
  for (let at = 0; at < (await sections.count()); at += 1) {
    const section = sections.nth(at);
    const buttons = section.locator('button.button');
    if ((await section.locator('.figure, .field').count()) > 0 || (await buttons.count()) !== 1) {
      continue;
    }
    await buttons.click();
    await expect(section.locator('.figure, .field, select, input').first()).toBeVisible();
  }
  const meter = sections.filter({ hasText: 'Check it against the meter' });
  await meter.getByRole('button', { name: 'Try it with an invented meter file' }).click();
  await expect(meter.getByRole('img').first()).toBeVisible();
}

/** How far the page reaches beyond the screen [CSS px]; 0 when nothing scrolls sideways. */
export function widthBeyondScreen(page: Page): Promise<number> {
  return page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth - clientWidth;
  });
}

export { expect };
