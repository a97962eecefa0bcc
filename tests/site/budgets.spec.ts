import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { fileOf, pagePaths, pageSource, travelSize } from './site.ts';

/** Greatest sizes in KiB as they travel. Source: the project's own performance targets. */
interface Budget {
  html: number;
  script: number;
  styles: number;
  fonts: number;
}

const budgets: readonly { pages: RegExp; budget: Budget }[] = [
  { pages: /^\/reference\//, budget: { html: 60, script: 0, styles: 20, fonts: 90 } },
  { pages: /^\/(pad|day)\//, budget: { html: 60, script: 110, styles: 20, fonts: 90 } },
  { pages: /./, budget: { html: 30, script: 50, styles: 20, fonts: 90 } },
];

for (const path of pagePaths()) {
  const { budget } = budgets.find(({ pages }) => pages.test(path)) ?? {};
  if (budget === undefined) throw new Error(`no budget for ${path}`);

  for (const part of ['html', 'script', 'styles', 'fonts'] as const) {
    test(`${path} keeps its ${part} within budget`, () => {
      expect(measure(path)[part], `${part} [KiB]`).toBeLessThanOrEqual(budget[part]);
    });
  }
}

test('only modern font files ship', () => {
  const styles = pagePaths().flatMap((path) => stylesheetsOf(pageSource(path)));
  for (const sheet of new Set(styles)) {
    expect(readFileSync(fileOf(sheet) ?? '', 'utf8')).not.toMatch(/\.(woff|ttf|eot)\b/);
  }
});

function measure(path: string): Budget {
  const source = pageSource(path);
  const fonts = [...source.matchAll(/<link rel="preload" href="([^"]+\.woff2)"/g)];
  return {
    html: travelSize(path),
    script: total(scriptsOf(source)),
    styles: total(stylesheetsOf(source)),
    fonts: total(fonts.map(([, href = '']) => href)),
  };
}

function stylesheetsOf(source: string): string[] {
  return [...source.matchAll(/<link rel="stylesheet" href="([^"]+)"/g)].map(
    ([, href = '']) => href,
  );
}

/** Every script a page fetches untouched: its own tags, its islands, and all these import at once. */
function scriptsOf(source: string): Set<string> {
  const entries = source.matchAll(
    /(?:<script[^>]*\ssrc|component-url|renderer-url|before-hydration-url)="([^"]+\.m?js)"/g,
  );
  const found = new Set<string>();
  const waiting = [...entries].map(([, href = '']) => href);
  for (let script = waiting.pop(); script !== undefined; script = waiting.pop()) {
    if (found.has(script)) continue;
    found.add(script);
    waiting.push(...importsOf(script));
  }
  return found;
}

/** Static imports only: what waits for a touch may be as large as it needs to be. */
function importsOf(script: string): string[] {
  const text = readFileSync(fileOf(script) ?? '', 'utf8');
  const imports = text.matchAll(
    /(?:import|export)\s*(?:[\w${}\s,*]+?from\s*)?["']([^"']+\.m?js)["']/g,
  );
  return [...imports].map(([, href = '']) => new URL(href, `http://x${script}`).pathname);
}

function total(files: Iterable<string>): number {
  const kib = [...files].reduce((sum, file) => sum + travelSize(file), 0);
  return Math.round(kib * 10) / 10;
}
