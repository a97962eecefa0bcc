import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quantityAt, rangeAt } from '#pad/document/check.ts';
import { ruleAt } from '#pad/document/fieldRule.ts';
import { fieldRules } from '#pad/document/fieldRules.ts';
import type { Path } from '#pad/messages/path.ts';

// Our own behaviour: these checks have no outside source.

const rules = fieldRules();

test('every rule says what the definition says of that path', () => {
  const keys = Object.keys(rules);
  expect(keys.length).toBeGreaterThan(80);
  for (const key of keys) {
    const path: Path = key.split('/').map((step) => (step === '0' ? 0 : step));
    const { quantity = null, ...range } = ruleAt(rules, path);
    expect({ key, quantity, range }).toEqual({
      key,
      quantity: quantityAt(path),
      range: rangeAt(path),
    });
  }
});

test('a part of a branch has the rule of a part of the line, however deep it branches', () => {
  const nested = fc.integer({ min: 0, max: 4 });
  fc.assert(
    fc.property(nested, fc.constantFrom('length', 'bore', 'k', 'head'), (depth, field) => {
      const inside = Array.from({ length: depth }, () => ['branches', 0, 'sections', 0]).flat();
      const path: Path = ['plumbing', 'discharge', 0, ...inside, field];
      expect(ruleAt(rules, path)).toEqual(ruleAt(rules, ['plumbing', 'discharge', 0, field]));
      expect(ruleAt(rules, path).greatest).toBeGreaterThan(0);
    }),
  );
});

test('words and what is no field have an empty rule', () => {
  for (const path of [['name'], ['no', 'such'], []]) expect(ruleAt(rules, path)).toEqual({});
});
