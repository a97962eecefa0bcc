import type { Page } from '@playwright/test';
import { walkAt } from '#explorables/example/rig.ts';
import { exampleRig } from '#explorables/example/valve.ts';
import { gallonPerMinute } from '#units/factors.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/operating-point/';
const [pumpA, pumpB] = exampleRig.pumps;

async function shownFlow(page: Page): Promise<number> {
  const text = await page.locator('#valve-walk .readout[data-quantity="flow"] dd').textContent();
  return Number.parseFloat(text ?? '');
}

test('by keys the valve closes to a fifth, the flow follows, and reset opens it', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const valve = page.locator('#valve-walk-valve');
  await valve.focus();
  await page.keyboard.press('Home');
  await expect(page.locator('#valve-walk .figure-finding')).toContainText('The valve is shut.');
  for (let press = 0; press < 4; press += 1) await page.keyboard.press('PageUp');
  await expect(valve).toHaveAttribute('aria-valuetext', /^20 percent open/);
  const flow = walkAt(exampleRig, pumpA, 0, 0.2).flow / gallonPerMinute;
  expect(Math.abs((await shownFlow(page)) - flow)).toBeLessThanOrEqual(0.5);
  await page.getByRole('button', { name: 'Reset' }).first().click();
  const free = walkAt(exampleRig, pumpA, 0, 1).flow / gallonPerMinute;
  expect(Math.abs((await shownFlow(page)) - free)).toBeLessThanOrEqual(0.5);
});

test('the knob on the curve answers to keys, and the larger pump says that it is a guess', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const knob = page.getByRole('slider', { name: 'Valve', exact: true });
  await knob.focus();
  await page.keyboard.press('PageDown');
  await expect(knob).toHaveAttribute('aria-valuenow', '0.95');
  await page.keyboard.press('End');
  await page.getByText('pump B, larger').first().click();
  await expect(page.locator('#valve-walk .figure-finding')).toContainText('is a guess');
  const flow = walkAt(exampleRig, pumpB ?? pumpA, 0, 1).flow / gallonPerMinute;
  expect(Math.abs((await shownFlow(page)) - flow)).toBeLessThanOrEqual(0.5);
});

test('no sideways scroll on a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 800 });
  await page.goto(path);
  await wakeAll(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});
