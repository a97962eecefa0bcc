import type { Page } from '@playwright/test';
import { type DayAnswer, dayBands, dayQuestions } from '#core/uncertainty/dayBands.ts';
import { uncertaintyOf } from '#core/uncertainty/uncertainty.ts';
import { inOrder } from '#dayPage/day/edit.ts';
import { ownerPad } from '#pad/demos/demos.ts';
import { padFragment } from '#pad/document/link.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { us } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { expectNoBarrier } from './barriers.ts';
import { expect, test, widthBeyondScreen } from './fixture.ts';

const part = (page: Page) => page.locator('.sure');
const finding = (page: Page) => part(page).locator('.cheapest-finding');

async function open(page: Page, pad?: Pad): Promise<void> {
  await page.goto(`/day/${pad === undefined ? '' : padFragment(pad)}`);
  await expect(page.locator('astro-island[ssr]')).toHaveCount(0);
  await page.getByRole('button', { name: 'See how sure this is' }).focus();
  await page.keyboard.press('Enter');
  await expect(finding(page)).toContainText('Your day takes between');
}

/** The band of one answer by the core, as the page should write it. */
function bandOf(pad: Pad, of: DayAnswer): string {
  const { fit, blocks, needs, tariff } = padModel(pad);
  if (fit === null || blocks === null || pad.day.date === null) throw new Error('no day');
  const day = { blocks, needs, limitsOf: () => [], tariff, date: pad.day.date };
  const { band } = dayBands(uncertaintyOf(fit.spread), dayQuestions(day))[of];
  if (of === 'cost') {
    const money = (amount: number) => formatMoney(amount, pad.tariff.currency);
    return `between ${money(band.low)} and ${money(band.high)}`;
  }
  const quantity = of === 'water' ? 'volume' : 'energy';
  const low = format(quantity, band.low, us, { digits: 3, withUnit: false });
  return `between ${low} and ${format(quantity, band.high, us, { digits: 3 })}`;
}

test('by keys alone it tells water, energy and money with the bands of the core, and what to read', async ({
  page,
}) => {
  await open(page);
  await expect(finding(page)).toContainText(`Your day takes ${bandOf(ownerPad, 'energy')}`);
  await expect(finding(page)).toContainText(/The watts, read at 850\srpm, would halve that\./);
  await part(page).getByLabel('Energy', { exact: true }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(finding(page)).toContainText(`Your day costs ${bandOf(ownerPad, 'cost')}`);
  await page.keyboard.press('ArrowRight');
  await expect(finding(page)).toContainText(`Your day moves ${bandOf(ownerPad, 'water')}`);
  await expect(finding(page)).toContainText('The flow meter, read at');
  await expect(part(page).locator('.sure-next h3')).toHaveText('What would narrow the water');
  await expect(part(page).locator('.sure-chance')).toHaveCount(5);
  await expect(part(page).locator('.sure-year')).toContainText('The year 2027 costs between $');
  await expect(part(page).getByRole('img', { name: /^Water of the day: most likely/ })).toHaveCount(
    1,
  );
});

test('it follows the day', async ({ page }) => {
  await open(page);
  const speed = page.getByRole('group', { name: 'Block 1' }).getByLabel('Speed');
  const [block] = inOrder(ownerPad.day.blocks);
  if (block === undefined) throw new Error('no block');
  await speed.fill('1200');
  await page.keyboard.press('Tab');
  const changed = ownerPad.day.blocks.map((one) => (one === block ? { ...one, speed: 1200 } : one));
  const pad = { ...ownerPad, day: { ...ownerPad.day, blocks: changed } };
  await expect(finding(page)).toContainText(`Your day takes ${bandOf(pad, 'energy')}`);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(finding(page)).toContainText(`Your day takes ${bandOf(ownerPad, 'energy')}`);
});

test('a cover that may be passed is said before all else', async ({ page }) => {
  const suctionCovers = ownerPad.limits.suctionCovers.map((cover) => ({
    ...cover,
    markedFlow: 0.0034,
  }));
  await open(page, { ...ownerPad, limits: { ...ownerPad.limits, suctionCovers } });
  await expect(finding(page)).toContainText(
    /^In \d+ of \d+ pads that would give your readings, the flow passes what the suction covers bear\./,
  );
  await expect(part(page).locator('.sure-chance.is-stop')).toHaveCount(1);
});

test('by day, by night and on a phone it has no barrier that axe can find', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open(page, { ...ownerPad, readings: [] });
  await expect(finding(page)).toContainText('all of this rests on typical values');
  await expect(part(page).locator('.sure-chance').first()).toBeVisible();
  await expectNoBarrier(page, '.sure');
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await widthBeyondScreen(page)).toBe(0);
  // The names of the ends stay clear of one another.
  for (const answer of await part(page).locator('.sure-answer').all()) {
    const low = await answer.locator('.sure-end.is-low').boundingBox();
    const high = await answer.locator('.sure-end.is-high').boundingBox();
    if (low === null || high === null) throw new Error('no names');
    expect(low.x + low.width).toBeLessThan(high.x);
  }
});
