import { expect, test } from '@playwright/test';
import { fileOf, pagePaths, pageSource, siteAddress } from './site.ts';

for (const path of pagePaths()) {
  test(`${path} links only to what is there`, () => {
    const broken = linksOf(path).filter((link) => !leadsSomewhere(link));
    expect(broken.map(({ pathname, hash }) => pathname + hash)).toEqual([]);
  });

  test(`${path} uses each id once`, () => {
    const ids = idsOf(path);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
}

function linksOf(path: string): URL[] {
  const links = pageSource(path).matchAll(/<(?:a|link)\b[^>]*?\shref="([^"]*)"/g);
  const from = new URL(path, siteAddress);
  return [...links]
    .map(([, href = '']) => new URL(href.replaceAll('&amp;', '&'), from))
    .filter((link) => link.origin === siteAddress);
}

function leadsSomewhere({ pathname, hash }: URL): boolean {
  if (fileOf(pathname) === undefined) return false;
  // A long fragment carries a pad, not the name of a place.
  if (hash === '' || hash.includes('=')) return true;
  return idsOf(pathname).includes(decodeURIComponent(hash.slice(1)));
}

function idsOf(path: string): string[] {
  return [...pageSource(path).matchAll(/\sid="([^"]*)"/g)].map(([, id = '']) => id);
}
