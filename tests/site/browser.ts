import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from '@playwright/test';

const usualPaths = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/**
 * Finds a Chromium to test with, fetching Playwright's own only when the machine has none.
 *
 * @returns Path of the browser.
 * @throws Error in one sentence that says what to install.
 */
export function findChromium(): string {
  const named = process.env['CHROMIUM'];
  if (named) return requireThere(named);
  const own = chromium.executablePath();
  const found = [...usualPaths, own].find((path) => existsSync(path));
  return found ?? fetchOwn(own);
}

function requireThere(path: string): string {
  if (existsSync(path)) return path;
  throw new Error(`CHROMIUM names ${path}, but no file is there.`);
}

function fetchOwn(path: string): string {
  try {
    execFileSync('npx', ['playwright', 'install', 'chromium'], { stdio: 'inherit' });
  } catch {
    // The sentence below says what to do.
  }
  if (existsSync(path)) return path;
  throw new Error(
    'The browser tests need Chromium: install your system\'s "chromium" package, or set CHROMIUM to the path of one.',
  );
}
