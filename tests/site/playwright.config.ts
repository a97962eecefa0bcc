import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';
import { findChromium } from './browser.ts';
import { distFolder, siteAddress, sitePort } from './site.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Browser tests against the built site; `npm run build` comes first. */
export default defineConfig({
  testDir: '.',
  outputDir: `${root}/node_modules/.cache/site-tests`,
  fullyParallel: true,
  forbidOnly: Boolean(process.env['CI']),
  // What fails once and then passes is listed as flaky, to be mended; it refuses no good work.
  retries: process.env['CI'] ? 1 : 0,
  workers: 2,
  // A loaded machine is no failure: nothing here asserts a time.
  timeout: 180_000,
  expect: { timeout: 20_000 },
  reporter: [['list']],
  use: {
    baseURL: siteAddress,
    launchOptions: { executablePath: findChromium(), args: ['--no-sandbox'] },
    // Only the offline tests let the worker in, so that no other test sees a kept copy.
    serviceWorkers: 'block',
  },
  webServer: {
    command: `npx astro preview --ignore-lock --port ${sitePort}`,
    cwd: root,
    env: { SITE_DIST: distFolder, ASTRO_TELEMETRY_DISABLED: '1' },
    url: siteAddress,
    reuseExistingServer: false,
    timeout: 60_000,
  },
});
