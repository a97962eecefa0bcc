import { defineConfig } from 'vitest/config';

/** The tests of the core alone, as `npm run mutate` runs them on the core with a fault put in. */
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/core/**/*.test.ts'],
    setupFiles: ['tests/mutation.setup.ts'],
    // Loaded anew for each file, a module would run before the fault is put in.
    isolate: false,
  },
});
