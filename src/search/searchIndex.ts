import { globSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import MiniSearch from 'minisearch';
import { indexOptions, indexPath, type Place } from './places.ts';
import { readPage } from './readPage.ts';

/** Pages that are searched: every lesson, and the shelf. */
const searched = ['lessons/*/index.html', 'reference/**/index.html'];

/** Every place of a built site. */
export function placesIn(root: string): readonly Place[] {
  const files = globSync(searched, { cwd: root }).sort();
  return files
    .flatMap((file) => {
      const path = `/${file.replace(/index\.html$/, '')}`;
      const { title, sections } = readPage(readFileSync(join(root, file), 'utf8'));
      return sections.map(({ anchor, heading, text }) => ({
        at: anchor === '' ? path : `${path}#${anchor}`,
        page: title,
        heading,
        text,
      }));
    })
    .map((place, id) => ({ id, ...place }));
}

/** After the build, writes the index of all pages, made from what they really say. */
export function searchIndex(): AstroIntegration {
  return {
    name: 'search-index',
    hooks: {
      'astro:build:done': ({ dir, logger }) => {
        const root = fileURLToPath(dir);
        const places = placesIn(root);
        const index = new MiniSearch(indexOptions);
        index.addAll(places);
        writeFileSync(join(root, indexPath), JSON.stringify(index));
        logger.info(`${places.length} places can be found`);
      },
    },
  };
}
