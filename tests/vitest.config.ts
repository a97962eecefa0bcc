/// <reference types="vitest/config" />
import { getViteConfig } from 'astro/config';

/** Unit, property and structure tests: everything that needs no browser. */
export default getViteConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/site/**', 'node_modules/**'],
  },
});
