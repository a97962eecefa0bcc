import { fileURLToPath } from 'node:url';
import { generateSW } from 'workbox-build';

/**
 * After the build, writes a service worker that keeps the whole site for use without a network.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function offlineCopy() {
  return {
    name: 'offline-copy',
    hooks: {
      'astro:build:done': async ({ dir, logger }) => {
        const root = fileURLToPath(dir);
        const { count, size, warnings } = await generateSW({
          globDirectory: root,
          globPatterns: ['**/*.{html,css,js,woff2,svg,json,webmanifest,wasm}'],
          swDest: `${root}service-worker.js`,
          mode: 'production',
          sourcemap: false,
          inlineWorkboxRuntime: true,
          cleanupOutdatedCaches: true,
          // The first visit is kept at once; a later version waits for the reader's word.
          clientsClaim: true,
          skipWaiting: false,
          ignoreURLParametersMatching: [/.*/],
          // Built assets carry a hash in their name and need no second one.
          dontCacheBustURLsMatching: /^_astro\//,
        });
        for (const warning of warnings) logger.warn(warning);
        logger.info(`${count} files, ${Math.round(size / 1024)} KiB kept for offline use`);
      },
    },
  };
}
