import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sourceIds } from '#content/sources.ts';
import { pipeSizes } from '#core/hydraulics/pipe.ts';
import { checkedFamilies, tally } from '#reference/checks/cases.ts';
import { differenceText, readable, shownSource, unitSymbol } from '#reference/checks/words.ts';
import { coefficients } from '#reference/fittings.ts';
import { subjects } from '#reference/formulas/subjects.ts';
import { carries, dimensions, pipeFamilies } from '#reference/pipes.ts';
import { shelf } from '#reference/shelf.ts';
import { checkFolder } from '../reference/check.ts';

const root = new URL('../..', import.meta.url).pathname;
const rowOf = (rows: readonly (readonly string[])[], name: string) =>
  rows.find(([heading]) => heading === name)?.slice(1);

describe('the shelf', () => {
  it('every page it names is there', () => {
    const missing = shelf.filter(
      ({ path }) => !existsSync(`${root}src/pages${path.slice(0, -1)}.astro`),
    );
    expect(missing).toEqual([]);
  });
});

describe('pipe tables', () => {
  const [sch40, sch80, pn10] = pipeFamilies;
  if (!sch40 || !sch80 || !pn10) throw new Error('no families');

  it('hold every size the core holds', () => {
    const rows = pipeFamilies.flatMap((family) => dimensions(family).rows);
    expect(rows.length).toBe(pipeSizes.length);
  });

  it('2 in Schedule 40: 2.375 in outside, 0.154 in wall, 2.067 in bore', () => {
    // Source: ASTM D1785 tables 1 and 2; the bore is outside less two walls.
    expect(rowOf(dimensions(sch40).rows, '2 in')).toEqual([
      '2.375',
      '60.3',
      '0.154',
      '3.9',
      '2.067',
      '52.5',
    ]);
  });

  it('63 gpm at 6 ft/s in 2 in Schedule 40, 55 in Schedule 80', () => {
    // Source: V = 0.4085 Q/d² (Hydraulic Institute data tool, eq. 3.E.7) with the bores of ASTM
    // D1785: 6 × 2.067²/0.4085 = 62.8 and 6 × 1.939²/0.4085 = 55.2.
    expect(rowOf(carries(sch40).rows, '2 in')?.[0]).toBe('62.8');
    expect(rowOf(carries(sch80).rows, '2 in')?.[0]).toBe('55.2');
  });

  it('63 mm PN10 at 1.8 m/s carries 16.5 m³/h', () => {
    // Source: bore 57 mm (DIN 8062: 63 less twice 3.0); π/4 × 0.057² × 1.8 × 3600 = 16.54.
    expect(rowOf(carries(pn10).rows, '63 mm')?.[1]).toBe('16.54');
  });

  it('every row has a cell for every column', () => {
    for (const table of pipeFamilies.flatMap((family) => [
      dimensions(family),
      carries(family),
      coefficients(family),
    ])) {
      const columns = table.headings.reduce((all, { units = [] }) => all + (units.length || 1), 0);
      expect(new Set(table.rows.map((row) => row.length))).toEqual(new Set([columns]));
    }
  });
});

describe('fittings', () => {
  it('a gate valve in 2 in Schedule 40 has K of 8 f_T, 0.15', () => {
    const [family] = pipeFamilies;
    if (!family) throw new Error('no family');
    const table = coefficients(family);
    const column = table.headings.findIndex(({ name }) => name === '2 in');
    const row = table.rows.find(([name]) => name?.startsWith('Gate valve')) ?? [];
    // Source: Crane TP-410: n = 8, f_T = 0.019 in 2 in.
    expect(row[1]).toBe('8');
    expect(Number(row[column])).toBeCloseTo(8 * 0.019, 2);
  });
});

describe('formulas', () => {
  const laws = subjects.flatMap((subject) => subject.laws);

  it('each names its symbols, their units and a source that is in the bibliography', () => {
    expect(laws.length).toBeGreaterThan(35);
    const odd = laws.filter(
      ({ symbols, sources }) =>
        symbols.length === 0 ||
        symbols.some(([symbol, means, unit]) => /^$|[\\{}]/.test(symbol) || !means || !unit) ||
        sources.length === 0 ||
        sources.some((id) => !sourceIds.includes(id)),
    );
    expect(odd.map(({ name }) => name)).toEqual([]);
  });

  it('no two have one name, so each has a place of its own', () => {
    const names = laws.map(({ name }) => name.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
  });
});

describe('how the numbers are checked', () => {
  const shown = checkedFamilies.flatMap(({ sources }) => sources.flatMap(({ cases }) => cases));

  it('shows every case that the reference check runs, each value within its tolerance', () => {
    const results = checkFolder(`${root}tests/reference/cases`);
    expect(shown.length).toBe(results.length);
    expect(results.every(({ outcome }) => outcome.kind === 'passed')).toBe(true);
    for (const { values, agree } of checkedFamilies.map(tally)) expect(agree).toBe(values);
  });

  it('the ten-times handbook example stands there as printed', () => {
    // Source: Hydraulic Institute data tool, pump curves, example 1: 1600 gpm at 147 ft and 1740 rpm
    // become 1440 gpm at 119 ft at 1566 rpm.
    const example = shown.find(
      ({ given }) => given.includes('flow 1 = 1600 gpm') && given.includes('speed 2 = 1566 rpm'),
    );
    expect(example?.values.map(({ published }) => published)).toEqual(['1440 gpm', '119 ft']);
    expect(example?.values[1]?.ours).toMatch(/^119\.07 ft$/);
  });

  it('names documents and libraries, not where a copy of them lay', () => {
    const sources = checkedFamilies.flatMap((family) => family.sources.map(({ source }) => source));
    expect(
      sources.filter((source) =>
        /github|scribd|stored|casetext|toolbox|eng-tips|not visible|hpxml\.|[,;(]$|undefined/i.test(
          source,
        ),
      ),
    ).toEqual([]);
    expect(shownSource('TP-410 p. A-29; not visible here')).toBe('TP-410 p. A-29');
  });

  it('no unit is left as it is spelled in a key', () => {
    const texts = shown.flatMap(({ given, values }) => [given, ...values.map((v) => v.published)]);
    expect(texts.filter((text) => /\d [a-z]+\d?_/.test(text))).toEqual([]);
    expect(unitSymbol('m3_h')).toBe('m³/h');
    expect(unitSymbol('kgal_per_kwh')).toBe('kgal/kWh');
    expect(unitSymbol('ft_per_100_ft')).toBe('ft/100 ft');
    expect(unitSymbol('per_kwh')).toBe('per kWh');
    expect(unitSymbol('c')).toBe('°C');
  });

  it('numbers are written plainly', () => {
    expect(readable(0)).toBe('0');
    expect(readable(1.0033667563000113e-6)).toBe('1.003367 × 10⁻⁶');
    expect(readable(-0.26075)).toBe('−0.26075');
    expect(differenceText(0)).toBe('none');
    expect(differenceText(2e-16)).toBe('under 1 in 10⁹');
    expect(differenceText(2e-8)).toBe('under 1 in 10⁶');
    expect(differenceText(0.0027168)).toBe('0.27 %');
  });
});
