import type { ComponentChildren } from 'preact';
import renderToString from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { fieldRules } from '#pad/document/fieldRules.ts';
import { emptyPad, newPipe } from '#pad/document/parts.ts';
import type { Pad } from '#pad/document/schema.ts';
import { Body } from '#padPage/form/bodies.tsx';
import { createForm, type Form, FormProvider } from '#padPage/form/form.ts';
import { numberField } from '#padPage/form/numberField.ts';
import { type StepId, steps } from '#padPage/form/steps.ts';
import PadForm from '#padPage/form/view.tsx';
import { createFieldState } from '#ui/controls/entry.ts';
import { storeOf } from '../dayPage/daySheetFixtures.ts';

const cautions = { readings: 'R', suctionCovers: 'S', manuals: 'M', pump: 'P' };
const texts = { cautions, schemaHref: '/schema/pad-v2.json' };

const rules = fieldRules();

const inMetric = (pad: Pad): Pad => ({ ...pad, units: { preset: 'metric', overrides: {} } });

function inside(form: Form, children: ComponentChildren): string {
  return renderToString(<FormProvider value={form}>{children}</FormProvider>);
}

function body(id: StepId, pad: Pad): string {
  return inside(createForm(storeOf(pad), rules), <Body id={id} {...texts} />);
}

/** What the field with this id shows. */
function shown(html: string, id: string): string | undefined {
  const input = html.match(/<input[^>]*>/g)?.find((tag) => tag.includes(` id="${id}"`));
  return input?.match(/ value="([^"]*)"/)?.[1];
}

describe('the page before any script has run', () => {
  const html = renderToString(
    <PadForm
      rules={rules}
      starts={[]}
      answersHref="#answers"
      store={storeOf(ownerPad)}
      {...texts}
    />,
  );

  it('says for each step what the example holds', () => {
    // 32 ft × 16 ft × (3.5 ft + 7 ft)/2 = 2688 ft³; 1728/231 gal each (NIST SP 811): 20 107.6 gal.
    expect(html).toContain('20\u202f108\u00a0gal');
    expect(html).toContain('10 parts before the pump, 18 after');
    expect(html).toContain('3450\u00a0rpm at most, points of its curve');
    expect(html).toContain('$0.16 per\u00a0kWh to $0.49 per\u00a0kWh');
    for (const { title } of steps) expect(html).toContain(`<h2>${title}</h2>`);
  });

  it('has nothing to undo and says nothing', () => {
    expect(html.match(/aria-disabled="true"/g)).toHaveLength(2);
    expect(html).toContain('role="status"></p>');
  });

  it('renders every step of every example and of an empty pad', () => {
    for (const pad of [ownerPad, lodgePad, rigPad, emptyPad('us'), emptyPad('metric')]) {
      for (const { id } of steps) expect(body(id, pad).length).toBeGreaterThan(100);
    }
  });
});

describe('values in the reader’s units', () => {
  it('are shown as typed in US units', () => {
    expect(shown(body('pool', ownerPad), 'form-pool-outline-length')).toBe('32');
    expect(shown(body('place', ownerPad), 'form-site-waterTemperature')).toBe('80.6');
    expect(shown(body('pump', ownerPad), 'form-pump-knowledge-points-1-flow')).toBe('20');
    expect(shown(body('pump', ownerPad), 'form-pump-knowledge-points-1-head')).toBe('84.5');
  });

  it('are the same values in metric units', () => {
    // 1 ft = 0.3048 m exactly; 80.6 °F = 27 °C; 1 gpm = 231 in³/min = 0.227 124 707 04 m³/h (NIST SP 811).
    const metric = inMetric(ownerPad);
    expect(shown(body('pool', metric), 'form-pool-outline-length')).toBe('9.7536');
    expect(shown(body('place', metric), 'form-site-waterTemperature')).toBe('27');
    expect(Number(shown(body('pump', metric), 'form-pump-knowledge-points-1-flow'))).toBeCloseTo(
      20 * 0.22712470704,
      9,
    );
    expect(body('pool', metric)).toContain('76.1\u00a0m³');
  });

  it('follow a unit chosen for one quantity alone', () => {
    const mixed: Pad = { ...ownerPad, units: { preset: 'us', overrides: { head: 'm' } } };
    const html = body('pump', mixed);
    // 84.5 ft × 0.3048.
    expect(shown(html, 'form-pump-knowledge-points-1-head')).toBe('25.7556');
    expect(shown(html, 'form-pump-knowledge-points-1-flow')).toBe('20');
  });
});

/** The memory of a field, as the kit keeps it, tied to the form. */
function fieldOf(form: Form, spot: readonly (string | number)[], name: string) {
  const { value, entry } = numberField(form, spot, name, 'measured');
  const apply = (next: number | undefined) => form.set(spot, next ?? null, `the ${name}`);
  return createFieldState({ value, entry, apply });
}

describe('typing', () => {
  const length = ['pool', 'outline', 'length'] as const;

  it('keeps what makes no sense, says why, and leaves the pad as it is', () => {
    const form = createForm(storeOf(ownerPad), rules);
    const field = fieldOf(form, length, 'length');
    field.type('thirty');
    field.leave();
    expect(field.text.value).toBe('thirty');
    expect(field.problem.value).toBe(
      '“thirty” is not a number. Enter the length in ft, for example 33.',
    );
    expect(form.pad.value).toBe(ownerPad);
  });

  it('refuses what the pad cannot hold, with the range that its definition gives', () => {
    const form = createForm(storeOf(ownerPad), rules);
    const field = fieldOf(form, length, 'length');
    field.type('900 ft');
    field.leave();
    // The pad holds sides up to 200 m: 200/0.3048 = 656.2 ft.
    expect(field.problem.value).toBe(
      '900 ft is too much. The length must be from 0\u00a0ft to 656.2\u00a0ft.',
    );
    expect(form.pad.value).toBe(ownerPad);
  });

  it('takes a value in another unit, and undo brings the old one back', () => {
    const form = createForm(storeOf(ownerPad), rules);
    const field = fieldOf(form, length, 'length');
    field.type('10 m');
    expect(form.pad.value.pool).toMatchObject({ outline: { length: 10 } });
    expect(form.store.undoLabel.value).toBe('the length');
    field.leave();
    form.undo();
    expect(field.text.value).toBe('32');
    expect(form.said.value).toBe('Took back: the length.');
    form.redo();
    expect(form.pad.value.pool).toMatchObject({ outline: { length: 10 } });
  });

  it('empties a value that is not known after all', () => {
    const form = createForm(storeOf(ownerPad), rules);
    fieldOf(form, ['needs', '@skim', 'leastFlow'], 'least flow').type('');
    expect(form.pad.value.needs[0]?.leastFlow).toBeNull();
  });

  it('changes of the unit never change the pad', () => {
    const form = createForm(storeOf(ownerPad), rules);
    const field = fieldOf(form, length, 'length');
    form.set(['units'], { preset: 'metric', overrides: {} }, 'the system of units');
    expect(field.text.value).toBe('9.7536');
    expect(form.pad.value.pool).toBe(ownerPad.pool);
  });
});

describe('what is wrong or missing', () => {
  const withPipe: Pad = {
    ...emptyPad('us'),
    plumbing: { suction: [newPipe('run', { sizeId: 'sch40-2' })], discharge: [], staticHead: null },
  };

  it('is not told before the page has come to life', () => {
    const form = createForm(storeOf(withPipe), rules);
    expect(form.notesIn(['plumbing'])).toEqual([]);
  });

  it('is told beside its entry, wherever that has moved', () => {
    const form = createForm(storeOf(withPipe), rules);
    form.judge();
    expect(form.notesIn(['plumbing', 'suction', '@run'])).toEqual([
      'This run has no length yet, so the answers leave it out; type its length.',
    ]);
    expect(form.errorsIn(['plumbing'])).toEqual([]);
  });

  it('stands beside its field with the word “Error” for those who cannot see the mark', () => {
    const slow: Pad = { ...ownerPad, pump: { ...ownerPad.pump, leastSpeed: 3460, topSpeed: 3450 } };
    const form = createForm(storeOf(slow), rules);
    form.judge();
    expect(form.errorsIn(['pump'])).toHaveLength(1);
    const html = inside(form, <Body id="pump" {...texts} />);
    expect(html).toMatch(
      /id="form-pump-leastSpeed-error"><span class="visually-hidden">Error: <\/span>The slowest speed is above the fastest/,
    );
    expect(html).toMatch(/id="form-pump-leastSpeed"[^>]*aria-describedby="[^"]*error"/);
  });
});

describe('every control', () => {
  it('has an id of its own and a label', () => {
    for (const { id } of steps) {
      const html = body(id, ownerPad);
      const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, each]) => each);
      expect(new Set(ids).size).toBe(ids.length);
      for (const [tag] of html.matchAll(/<(?:input|select|textarea)[^>]*>/g)) {
        const own = tag.match(/ id="([^"]+)"/)?.[1];
        const isInLabel = /type="(radio|checkbox)"/.test(tag);
        expect(isInLabel || html.includes(`for="${own}"`), tag).toBe(true);
      }
    }
  });
});
