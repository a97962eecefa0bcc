import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cautions } from '#content/cautions.ts';
import { formsOf, glossary } from '#content/glossary.ts';
import { citation, type Source, sources } from '#content/sources.ts';
import { backwash, grades, needs, printedVelocities } from '#reference/equipment.ts';
import { subjects } from '#reference/formulas/subjects.ts';

const root = join(import.meta.dirname, '../..');
const pages = join(root, 'src/pages/reference');
const components = join(root, 'src/reference');
const files = [
  ...readdirSync(pages).map((name) => join(pages, name)),
  ...['shelf.ts', 'equipment.ts', 'pipes.ts', 'fittings.ts'].map((name) => join(components, name)),
  ...readdirSync(join(components, 'formulas')).map((name) => join(components, 'formulas', name)),
  ...readdirSync(join(root, 'content/glossary')).map((name) =>
    join(root, 'content/glossary', name),
  ),
  ...['cautions.ts', 'sources.ts'].map((name) => join(root, 'content', name)),
];

/** Old-book English and British spelling; our own choice, no source. */
const foreign =
  /\b(?:reckon\w*|dear(?:er|est)?|flat out|told (?:as|by|plainly)|becomes? of|lets? be|held? against|most near|shall|to be had|less worked out|litres?|(?:milli)?metres?|vapours?|colou?rs? of|centred?|whatever is|goes about)\b/i;
/** Comments, our own names, spellings that links look for, and the title of a paper of 1883. */
const passed = /^\s*(?:\/?\*|\/\/)|[mM]etres(?:\(| = )|^ +forms: |sinuous/;

const lawOf = (name: string) => {
  const law = subjects.flatMap(({ laws }) => laws).find((each) => each.name === name);
  if (law === undefined) throw new Error(`no law named ${name}`);
  return law;
};

describe('words of the shelf', () => {
  it.each(files)('%s is in today’s American English', (file) => {
    const lines = readFileSync(file, 'utf8').split('\n');
    expect(lines.filter((line) => foreign.test(line) && !passed.test(line))).toEqual([]);
  });

  it('the glossary holds what a beginner trips on', () => {
    const all = glossary.flatMap((term) => [term.term.toLowerCase(), ...formsOf(term)]);
    const asked = [
      ['pad', 'spillway', 'eyeball', 'union', 'weir', 'bonding', 'ground-fault protection'],
      ['filter media', 'backwash', 'check valve', 'service factor', 'static head', 'lift'],
      ['affinity laws', 'Reynolds number', 'skimmer', 'heater', 'salt cell', 'drive', 'NPSH'],
      ['schedule', 'vacuum release', 'equalizer port', 'alternating current', 'flow switch'],
    ].flat();
    expect(asked.filter((word) => !all.includes(word))).toEqual([]);
  });
});

describe('figures of the shelf', () => {
  it('a gauge of grade 3A is good to 0.25 %, as the grade says', () => {
    // ASME B40.100, accuracy grades, from memory.
    expect(grades.rows.find(([grade]) => grade === '3A')).toEqual(['3A', '0.25', '0.25']);
    expect(grades.rows.find(([grade]) => grade === '4A')).toEqual(['4A', '0.1', '0.1']);
    expect(grades.rows.find(([grade]) => grade === 'B')).toEqual(['B', '2', '3']);
  });

  it('a code prints 10 ft/s for discharge pipe', () => {
    // Nevada Administrative Code 444.160(1).
    const row = printedVelocities.rows.find(
      ([document, line]) => document?.startsWith('Nevada') && line === 'discharge',
    );
    expect(Number(row?.[2])).toBe(10);
  });

  it('a sand bed of 3 ft² is backwashed with 45 gpm', () => {
    // Model Aquatic Health Code, second-hand: 15 gpm/ft² or more. NIST SP 811: 15 gpm/ft² is
    // 15 × 3.785411784 × 60 / 1000 m³/h over 0.09290304 m² = 36.7 m/h.
    expect(backwash.rows.map(([, ...rates]) => rates.map(Number))).toEqual([[15, 36.7]]);
  });

  it('a suction cleaner starts from 30 gpm', () => {
    // Common practice, no source.
    expect(needs().rows.find(([name]) => name === 'Cleaner')?.[1]).toBe('30');
  });
});

describe('laws with their conditions and their own sources', () => {
  it('current goes by the power factor, not by an angle', () => {
    // IEC 60050-131: power factor is active over apparent power.
    const { tex, symbols } = lawOf('Current');
    expect(tex + JSON.stringify(symbols)).not.toMatch(/cos|varphi|φ/);
  });

  it('what is not Colebrook’s does not stand under his name', () => {
    for (const name of ['Darcy–Weisbach', 'Branches side by side', 'System curve']) {
      expect(lawOf(name).sources).not.toContain('darcy-colebrook');
    }
  });

  it.each([
    ['Darcy–Weisbach', /full pipe.*steady.*Newtonian/i],
    ['Colebrook–White', /blended over Re/],
    ['Share of the water filtered', /plug/],
    ['Speed with the most water for the energy', /P₀ \+ c r³.*speed range/],
    ['Time of a heater', /losses/],
    ['NPSH available', /3 %/],
    ['System curve', /two water levels.*solar/],
    ['Wire power along a closed loop', /filter loads/],
    ['Least value the rule allows', /July 19, 2021.*single-phase/],
    ['Flow that the suction outlets may bear', /second protection/],
  ])('%s says where it holds', (name, says) => expect(lawOf(name).note).toMatch(says));
});

describe('sources', () => {
  const note = (id: keyof typeof sources) => (sources[id] as Source).note ?? '';

  it('what the core has from memory is from memory on the shelf', () => {
    const core = readFileSync(join(root, 'src/core/fit/gauges.ts'), 'utf8');
    expect(core).toMatch(/ASME B40\.100[^*]*\*?[^*]*memory/);
    expect(note('asme-gauges')).toMatch(/memory/);
  });

  it('papers and rules stand under the titles they print', () => {
    // Water 13(17), 2350, as its publisher lists it; 77 Ill. Adm. Code 906, section 906.10.
    expect(citation('simmonds-2021')).toContain('Revisiting the Gage–Bidwell Law of Dilution');
    expect(citation('illinois-906')).toMatch(/private sewage/i);
  });

  it('a cover is rated by one standard, a system with one cover blocked by another', () => {
    expect(citation('cfr-1450')).toMatch(/rating/);
    expect(citation('apsp-7')).toMatch(/ANSI\/APSP\/ICC-7/);
    expect(note('apsp-7')).toMatch(/memory/);
  });
});

describe('cautions', () => {
  const said = (id: keyof typeof cautions) => `${cautions[id].title}. ${cautions[id].text}`;

  it.each([
    [
      'second-protection',
      /not the whole.*two balanced.*vacuum release.*vent line.*gravity drain.*automatic shut-off/i,
    ],
    [
      'entrapment',
      /cut the pump.*break the seal.*switch.*mark.*body.*limb.*hair.*bowels.*jewelry/i,
    ],
    ['suction-cover', /missing or broken cover means pump off, pool closed/i],
    ['other-speeds', /priming.*freeze.*override.*below the stop/i],
    ['strainer', /lock off the power.*pressure go.*shut the valves.*basket.*lid.*prime.*air/i],
    ['filter-restart', /clamp.*air valve.*stand clear.*lowest speed.*steady stream.*test speed/i],
    ['filter-pressure', /never turn a multiport valve under pressure/i],
    ['lock-out', /timer or automation restarts.*drive’s label.*dead/i],
    ['electrician', /bonding.*GFCI.*local code/i],
    ['heater-cool-down', /10 to 20 minutes before.*stops or slows.*manual/i],
    [
      'no-flow',
      /without flow.*collect gas.*pump’s power.*proven flow switch.*stay closed.*slowest planned speed.*opens.*qualified/i,
    ],
    ['frost', /cap.*no proof.*every line moves, or drain it.*disabled or adjustable/i],
  ] as const)('%s says the whole', (id, says) => expect(said(id)).toMatch(says));

  it('are short', () => {
    const long = Object.entries(cautions).filter(([, { text }]) => text.split(/\s+/).length > 50);
    expect(long.map(([id]) => id)).toEqual([]);
  });
});
