import { defineConfig } from 'vitest/config';

/** The tests of the core alone, as `npm run mutate` runs them on the core with a fault put in. */
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/core/**/*.test.ts'],
    // Anew for each file, the fault would not be there yet while a module loads.
    isolate: false,
  },
});
