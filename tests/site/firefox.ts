import { existsSync } from 'node:fs';
import { type Browser, type ElementHandle, launch, type Page } from 'puppeteer-core';
import { siteAddress } from './site.ts';

const usualPaths = [
  '/usr/bin/firefox-esr',
  '/usr/bin/firefox',
  '/snap/bin/firefox',
  '/Applications/Firefox.app/Contents/MacOS/firefox',
];

/** A Firefox of this machine, or undefined where there is none. */
export function findFirefox(): string | undefined {
  const named = process.env['FIREFOX'];
  if (named) return named;
  return usualPaths.find((path) => existsSync(path));
}

/** Starts a stock Firefox: Playwright drives only its own, this one speaks WebDriver BiDi. */
export function startFirefox(path: string): Promise<Browser> {
  return launch({
    browser: 'firefox',
    executablePath: path,
    headless: true,
    // A worker that takes a page over while it is kept for the back button throws it away.
    extraPrefsFirefox: { 'dom.serviceWorkers.enabled': false },
  });
}

/** One tab of Firefox, and what a reader does in it. */
export interface FirefoxTab {
  /** What the page said on the console or threw. */
  readonly complaints: readonly string[];
  /** Goes to a page of the site by its path. */
  go(path: string): Promise<void>;
  /** Goes back; tells whether the page came back as it was left. */
  back(): Promise<boolean>;
  reload(): Promise<void>;
  /** Presses the first button whose name begins so. */
  press(name: string): Promise<void>;
  /** Presses the first part that matches a selector. */
  pressAt(selector: string): Promise<void>;
  /** Types into the field of a label, in the place of what stands there. */
  type(label: string, text: string): Promise<void>;
  /** Text of the first element that matches, in one line. */
  text(selector: string): Promise<string>;
  /** What the browser keeps under the keys that begin so. */
  kept(prefix: string): Promise<readonly Record<string, unknown>[]>;
  /** From now on the browser has no room for anything more. */
  fill(): Promise<void>;
}

/** Waits until the page stands and all its parts, each brought into sight, have come to life. */
async function alive(page: Page): Promise<void> {
  await page.waitForFunction(
    () => {
      const asleep = document.querySelector('astro-island[ssr]');
      asleep?.firstElementChild?.scrollIntoView({ behavior: 'instant' });
      const isWaiting = document.documentElement.dataset['padComes'] !== undefined;
      return document.readyState === 'complete' && asleep === null && !isWaiting;
    },
    { polling: 50 },
  );
  await page.evaluate(() => scrollTo({ top: 0, behavior: 'instant' }));
}

export function firefoxTab(page: Page): FirefoxTab {
  const complaints: string[] = [];
  page.on('console', (message) => complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(String(error)));

  return {
    complaints,
    go: async (path) => {
      await page.bringToFront();
      await page.goto(siteAddress + path);
      await alive(page);
      await page.evaluate(() => {
        document.documentElement.dataset['wasHere'] = '';
      });
    },
    back: async () => {
      const from = page.url();
      await page.evaluate(() => setTimeout(() => history.back()));
      await page.waitForFunction((left) => location.href !== left, { polling: 50 }, from);
      await alive(page);
      return page.evaluate(() => document.documentElement.dataset['wasHere'] === '');
    },
    reload: async () => {
      await page.bringToFront();
      await page.reload();
      await alive(page);
    },
    press: async (name) => {
      await page.bringToFront();
      const button = await page.waitForFunction(
        (wanted) => {
          const nameOf = (each: Element) =>
            each.getAttribute('aria-label') ?? each.textContent?.replace(/\s+/g, ' ').trim() ?? '';
          const found = [...document.querySelectorAll('button, label')]
            .filter((each) => each.checkVisibility({ visibilityProperty: true }))
            .find((each) => nameOf(each).startsWith(wanted));
          return found ?? null;
        },
        { polling: 50 },
        name,
      );
      const found = button.asElement();
      if (found !== null) await (found as ElementHandle<Element>).click();
    },
    pressAt: async (selector) => {
      const part = await page.waitForSelector(selector, { visible: true });
      await part?.evaluate((each) => each.scrollIntoView({ block: 'center', behavior: 'instant' }));
      await part?.click();
    },
    type: async (label, text) => {
      await page.bringToFront();
      const field = await page.waitForFunction(
        (wanted) => {
          const found = [...document.querySelectorAll('label')]
            .filter((each) => each.checkVisibility())
            .find((each) => each.textContent?.trim() === wanted)?.control;
          return found instanceof HTMLInputElement ? found : null;
        },
        { polling: 50 },
        label,
      );
      const input = field.asElement() as ElementHandle<HTMLInputElement>;
      await input.evaluate((each) => each.select());
      await input.type(text);
      await input.evaluate((each) => each.blur());
    },
    text: (selector) =>
      page.evaluate(
        (wanted) => document.querySelector(wanted)?.textContent?.replace(/\s+/g, ' ').trim() ?? '',
        selector,
      ),
    kept: (prefix) =>
      page.evaluate(
        (begins) =>
          Object.keys(localStorage)
            .filter((key) => key.startsWith(begins))
            .sort()
            .map((key) => JSON.parse(localStorage.getItem(key) ?? 'null')),
        prefix,
      ),
    fill: () =>
      page.evaluate(() => {
        Storage.prototype.setItem = () => {
          throw new DOMException('full', 'QuotaExceededError');
        };
      }),
  };
}
