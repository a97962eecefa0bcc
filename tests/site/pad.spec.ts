import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixture.ts';
import { padHand, startEmpty } from './padHand.ts';

test.use({ contextOptions: { reducedMotion: 'reduce' } });

async function open(page: Page, path = '/pad/'): Promise<void> {
  await page.goto(path);
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
}

/** Presses keys one after the other. */
async function keys(page: Page, ...pressed: readonly string[]): Promise<void> {
  for (const key of pressed) await page.keyboard.press(key);
}

const head = (page: Page, step: string) => page.locator(`#pad-step-${step}-head`);
const steps = 'place pool pipes pump readings needs limits tariff keep'.split(' ');

/** Opens steps by keyboard. */
async function openSteps(page: Page, wanted: readonly string[]): Promise<void> {
  for (const step of wanted) {
    await head(page, step).focus();
    await page.keyboard.press('Enter');
    await expect(page.locator(`#pad-step-${step} .form-step-body`)).toBeVisible();
    await expect(page.locator(`#pad-step-${step}`)).not.toContainText('One moment.');
  }
}

/** The pad as the browser keeps it, once it has been written down. */
async function keptPad(page: Page): Promise<Record<string, unknown>> {
  // A page that is left writes at once what it would have written a moment later.
  const text = await page.evaluate(() => {
    dispatchEvent(new PageTransitionEvent('pagehide'));
    return localStorage.getItem('cubelaw-pad');
  });
  return JSON.parse(text ?? '{}');
}

/** What has the focus: where it stands in the page, and whether an eye can find it. */
function focusNow(page: Page) {
  return page.evaluate(() => {
    const here = document.activeElement;
    if (here === null || here === document.body) return null;
    const every = [...document.querySelectorAll('*')];
    const box = here.getBoundingClientRect();
    const over = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
    // The box of a choice is drawn on the words beside it.
    const shown = [here, here.nextElementSibling, here.parentElement].some((each) => {
      const { outlineStyle, outlineWidth } = getComputedStyle(each ?? here);
      return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
    });
    const inForm = here.closest('.form') !== null;
    const covered = over === null || !(here.contains(over) || over.closest('label, summary, a'));
    const name = `${here.tagName} ${here.id || here.getAttribute('aria-label') || here.textContent}`;
    return { place: every.indexOf(here), inForm, shown, covered: covered && over !== here, name };
  });
}

/** Every control of the form that can be used now, by its place in the page. */
function controlsInForm(page: Page): Promise<number[]> {
  return page.evaluate(() => {
    const every = [...document.querySelectorAll('*')];
    const wanted = 'button, input, select, textarea, summary, a[href], [role=slider]';
    return [...document.querySelectorAll(`.form :is(${wanted})`)]
      .filter((each) => each.checkVisibility({ visibilityProperty: true }))
      .filter(
        (each) => !(each instanceof HTMLInputElement && each.type === 'radio' && !each.checked),
      )
      .map((each) => every.indexOf(each));
  });
}

test('the Tab key passes every control of the form in its order, each in sight', async ({
  page,
}) => {
  await open(page);
  await openSteps(page, steps);
  // An entry with what it holds, and one with times of the day inside.
  const needs = page.locator('#pad-step-needs');
  for (const inner of [
    page.locator('#pad-step-readings .form-entry > summary').first(),
    needs.locator('.form-entry > summary').first(),
    needs.locator('.form-more > summary').first(),
  ]) {
    await inner.focus();
    await page.keyboard.press('Enter');
  }
  await expect(needs.locator('input[type=time]').first()).toBeVisible();
  const wanted = await controlsInForm(page);
  expect(wanted.length).toBeGreaterThan(90);
  await page.locator('.masthead a').first().focus();
  const passed: number[] = [];
  const wrong: string[] = [];
  for (let stop = 0; stop < 2 * wanted.length; stop += 1) {
    await page.keyboard.press('Tab');
    const now = await focusNow(page);
    if (now === null || (passed.length > 0 && !now.inForm)) break;
    if (!now.inForm) continue;
    // A time has several stops in one field.
    if (passed.at(-1) !== now.place) passed.push(now.place);
    if (!now.shown) wrong.push(`no outline: ${now.name}`);
    if (now.covered) wrong.push(`covered: ${now.name}`);
  }
  expect(wrong).toEqual([]);
  expect(passed).toEqual(wanted);
});

test('steps open and close, and parts are added, moved and removed, by keys alone', async ({
  page,
}) => {
  await open(page);
  const start = page.getByRole('button', { name: /^An empty pad/ });
  await start.focus();
  await keys(page, 'Enter');
  await expect(head(page, 'place')).toBeFocused();
  await keys(page, 'Space');
  await expect(page.locator('#pad-step-place')).not.toHaveAttribute('open');
  await openSteps(page, ['pipes']);

  const pipes = page.locator('#pad-step-pipes');
  const titles = pipes.locator('.form-entry > summary');
  const button = (name: string | RegExp) => pipes.getByRole('button', { name }).first();
  await button('Add a pipe to the suction side').focus();
  await keys(page, 'Enter');
  await expect(pipes.locator('select').first()).toBeFocused();
  await page.keyboard.type('2 in Sch');
  await keys(page, 'Tab');
  await page.keyboard.type('40');
  await expect(titles).toHaveText([
    'Pipe, 40.0\u00a0ft of 2\u00a0in Schedule\u00a040'.replaceAll('\u00a0', ' '),
  ]);
  await button('Add a fitting to the suction side').focus();
  await keys(page, 'Enter');
  await expect(titles).toHaveText([/^Pipe, 40/, /^Elbow 90°, 2 in/]);
  await expect(pipes.locator('.form-entry').first()).not.toHaveAttribute('open');

  await button(/^Move up: Elbow/).focus();
  await keys(page, 'Enter');
  await expect(titles).toHaveText([/^Elbow/, /^Pipe/]);
  await expect(button(/^Move up: Elbow/)).toBeFocused();
  await button(/^Remove: Elbow/).focus();
  await keys(page, 'Space');
  await expect(titles).toHaveText([/^Pipe/]);
  await expect(button('Add a pipe to the suction side')).toBeFocused();
  await expect(page.locator('.form > [role=status]').last()).toContainText('Removed: Elbow 90°');

  await keys(page, 'Control+z');
  await expect(titles).toHaveText([/^Elbow/, /^Pipe/]);
  await keys(page, 'Control+z');
  await expect(titles).toHaveText([/^Pipe/, /^Elbow/]);
  await keys(page, 'Control+Shift+Z');
  await expect(titles).toHaveText([/^Elbow/, /^Pipe/]);
  await keys(page, 'Control+y');
  await expect(titles).toHaveText([/^Pipe/]);
});

test('the knob of the speed answers to every key of a slider, and says what follows', async ({
  page,
}) => {
  await open(page);
  const knob = page.locator('#answers [role=slider]');
  const [least, most] = [600, 3450];
  const stands = async (speed: number) => {
    await expect(knob).toHaveAttribute('aria-valuenow', String(speed));
    await expect(knob).toHaveAttribute(
      'aria-valuetext',
      new RegExp(`^${speed} revolutions per minute, [\\d.]+ gallons per minute, \\d+ watts$`),
    );
    await expect(page.locator('#answers .readouts')).toBeVisible();
  };
  await knob.focus();
  await keys(page, 'Home');
  await stands(least);
  await keys(page, 'ArrowUp', 'ArrowRight', 'ArrowRight', 'ArrowLeft', 'ArrowDown');
  const step = Number(await knob.getAttribute('aria-valuenow')) - least;
  expect(step).toBeGreaterThan(0);
  await stands(least + step);
  await keys(page, 'PageUp', 'PageUp', 'PageDown');
  await stands(least + 11 * step);
  await keys(page, 'End');
  await stands(most);
  await expect(knob).toBeFocused();
});

test('what makes no sense stays as typed with its sentence, and costs no answer', async ({
  page,
}) => {
  await open(page);
  const answer = page.locator('#answers .answers-rung-speed').first();
  const before = await answer.textContent();
  await openSteps(page, ['pool', 'pipes', 'pump']);
  const pipe = page.locator('#pad-step-pipes .form-entry', { hasText: /^Pipe/ }).first();
  await pipe.locator('summary').first().focus();
  await keys(page, 'Enter');
  const wrong: readonly [Locator, string, string][] = [
    [
      page.locator('#form-pool-outline-length'),
      'thirty',
      'Error: “thirty” is not a number. Enter the length in ft, for example 33.',
    ],
    [page.locator('#form-pump-referenceSpeed'), '34500000', 'rated speed'],
    [pipe.getByLabel('Length'), '12 psi', 'ft'],
  ];
  for (const [field, typed, sentence] of wrong) {
    await field.fill(typed);
    await field.blur();
    await expect(field).toHaveValue(typed);
    await expect(field).toHaveAttribute('aria-invalid', 'true');
    const described = (await field.getAttribute('aria-describedby')) ?? '';
    const told = page.locator(`#${described.split(' ').at(-1)}`);
    await expect(told).toContainText(sentence);
    await expect(told).toContainText('Error: ');
  }
  // Closing and opening again loses nothing of it.
  for (const _ of ['close', 'open']) {
    await pipe.locator('summary').first().focus();
    await keys(page, 'Enter');
  }
  await expect(pipe.getByLabel('Length')).toHaveValue('12 psi');
  await expect(answer).toHaveText(before ?? '');
});

test('the other units and back again leave every value as it was', async ({ page }) => {
  await open(page);
  await openSteps(page, ['pool', 'pump']);
  const fields = () =>
    page
      .locator('.form-step input[type=text]')
      .evaluateAll((all) =>
        all.map((each) => (each instanceof HTMLInputElement ? each.value : '')),
      );
  const before = await fields();
  const length = page.locator('#form-pool-outline-length');
  const feet = Number(await length.inputValue());
  await page.locator('#form-bar-preset-us').focus();
  await keys(page, 'ArrowRight');
  // 1 ft = 0.3048 m exactly (NIST SP 811, appendix B).
  await expect(length).toHaveValue(String(Number((feet * 0.3048).toPrecision(12))));
  await expect(page.locator('#answers')).toContainText('m³/h');
  const { units: metric, ...inMetric } = await keptPad(page);
  await keys(page, 'ArrowLeft');
  await expect.poll(fields).toEqual(before);
  const { units: us, ...inUs } = await keptPad(page);
  expect(inUs).toEqual(inMetric);
  expect(us).not.toEqual(metric);
});

const file = (text: string) => ({
  name: 'pad.json',
  mimeType: 'application/json',
  buffer: Buffer.from(text),
});

test('a broken file and a broken link each get a sentence and change nothing', async ({ page }) => {
  await open(page);
  const hand = padHand(page, 'mouse');
  await startEmpty(page, hand);
  await hand.type('place', { 'Name of this pad': 'Mine' });
  await openSteps(page, ['keep']);
  const before = await keptPad(page);
  const input = page.getByLabel('Open a pad file');
  const told = page.locator('#pad-step-keep .field-error');
  for (const text of [
    '{ "format": ',
    '{"shopping": ["milk"]}',
    JSON.stringify({ ...before, pool: 3 }),
  ]) {
    await input.setInputFiles(file(text));
    await expect(told).toContainText('Your present pad is unchanged.');
    await expect.poll(() => keptPad(page)).toEqual(before);
  }
  await page.goto('/pad/#pad=1.brokenOnTheWay');
  await expect(page.locator('.form-notice')).toContainText('The pad in this link is damaged');
  await expect(page.locator('.form-whose')).toHaveText('Open: Mine. It is kept in this browser.');
  await expect.poll(() => keptPad(page)).toEqual(before);
});

test('a saved file and a copied link bring the same pad to another browser', async ({
  page,
  browser,
}) => {
  await open(page);
  const hand = padHand(page, 'mouse');
  await hand.press(page.getByRole('button', { name: /^A training rig/ }));
  await expect(page.locator('.form-whose')).toContainText('kept in this browser');
  await openSteps(page, ['place', 'keep']);
  await hand.type('place', { 'Name of this pad': 'Rig “2” of Zoë' });
  const pad = await keptPad(page);
  expect(pad['name']).toBe('Rig “2” of Zoë');
  const saving = page.waitForEvent('download');
  await hand.pressIn('keep', 'Save as a file');
  const saved = readFileSync(await (await saving).path(), 'utf8');
  await hand.pressIn('keep', 'Copy a link');
  const link = await page.getByLabel('The link, with the whole pad in it').inputValue();

  const elsewhere = await browser.newContext({ reducedMotion: 'reduce', serviceWorkers: 'block' });
  const other = await elsewhere.newPage();
  await open(other, link);
  await expect(other.locator('.form-notice')).toContainText(
    'This pad came with the link and was opened beside yours.',
  );
  await expect(other).toHaveURL(/\/pad\/$/);
  await expect.poll(() => keptPad(other)).toEqual(pad);

  await other.getByRole('button', { name: /^An empty pad/ }).click();
  await openSteps(other, ['keep']);
  expect(await keptPad(other)).not.toEqual(pad);
  await other.getByLabel('Open a pad file').setInputFiles(file(saved));
  await expect(other.locator('.form-whose')).toContainText('Rig “2” of Zoë');
  await expect.poll(() => keptPad(other)).toEqual(pad);
  await elsewhere.close();
});
