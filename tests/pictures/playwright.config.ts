import { defineConfig } from '@playwright/test';
import site from '../site/playwright.config.ts';

/** `npm run pictures`: not tests but pictures of the built site, to be looked at. */
export default defineConfig({ ...site, testDir: '.', testMatch: '*.pictures.ts', retries: 0 });
