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

async function watch(page: Page, problems: string[]): Promise<void> {
  page.on('console', (message) => problems.push(`console ${message.type()}: ${message.text()}`));
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

/** Waits until every part of the page that starts on sight has started. */
export async function wakeAll(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const islands = () => [...document.querySelectorAll('astro-island[ssr]')];
    for (const island of islands()) {
      island.scrollIntoView();
      await new Promise((done) => setTimeout(done, 50));
    }
    scrollTo(0, 0);
  });
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
}

export { expect };
