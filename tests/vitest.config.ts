/// <reference types="vitest/config" />
import { getViteConfig } from 'astro/config';

/** Unit, property and structure tests: everything that needs no browser. */
export default getViteConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/site/**', 'node_modules/**'],
    // A loaded machine is no failure: nothing here asserts a time.
    testTimeout: 60_000,
    // On two cores one worker is what would be taken by default.
    maxWorkers: '100%',
    // Loading the modules anew for each file takes longer than all the tests; no test changes a
    // global or a module, so the files of one worker share them.
    pool: 'threads',
    isolate: false,
  },
});
