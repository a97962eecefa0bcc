import { createHash } from 'node:crypto';
import { test as plainTest } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { pagePaths, pageSource } from './site.ts';

for (const path of pagePaths()) {
  plainTest(`${path} carries a strict policy that names each inline script`, () => {
    const source = pageSource(path);
    const policy = policyOf(source);
    expect(policy.get('default-src')).toEqual(["'self'"]);
    expect(policy.get('object-src')).toEqual(["'none'"]);
    expect(policy.get('base-uri')).toEqual(["'none'"]);
    expect(policy.get('style-src-attr')).toEqual(["'unsafe-inline'"]);
    const scripts = policy.get('script-src') ?? [];
    expect(scripts.filter((entry) => !/^'(self|sha256-[\w+/=]+)'$/.test(entry))).toEqual([]);
    for (const part of ['style-src', 'style-src-elem']) {
      expect(
        policy.get(part)?.filter((entry) => !/^'(self|sha256-[\w+/=]+)'$/.test(entry)),
      ).toEqual([]);
    }
    for (const text of inlineScripts(source)) expect(scripts).toContain(`'sha256-${hash(text)}'`);
  });

  plainTest(`${path} names no other origin to load from`, () => {
    const source = pageSource(path);
    const loads = source.match(/<(?:script|img|iframe|link|source|video|audio)\b[^>]*>/g) ?? [];
    expect(loads.filter((tag) => /(?:src|href)="(?:https?:)?\/\//.test(tag))).toEqual([]);
    expect(source).not.toMatch(/\son\w+="/);
  });
}

test('a script that is not ours does not run', async ({ page, allowMessage }) => {
  allowMessage(/Content Security Policy|policy broken/);
  await page.goto('/');
  const ran = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'document.body.dataset.stranger = "here"';
    document.body.append(script);
    return document.body.dataset['stranger'] ?? 'stopped';
  });
  expect(ran).toBe('stopped');
});

function policyOf(source: string): Map<string, string[]> {
  const content = /http-equiv="content-security-policy" content="([^"]*)"/.exec(source)?.[1] ?? '';
  const parts = content.split(';').map((part) => part.trim().split(/\s+/));
  return new Map(parts.map(([name = '', ...values]) => [name, values]));
}

/** Those that run: a block of data is a script in name only. */
function inlineScripts(source: string): string[] {
  const scripts = source.matchAll(
    /<script(?![^>]*\s(?:src=|type="application\/json"))[^>]*>([\s\S]*?)<\/script>/g,
  );
  return [...scripts].map(([, text = '']) => text);
}

function hash(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}
