import { pipeSize } from '#core/hydraulics/pipe.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { padFragment } from '#pad/document/link.ts';
import { foot, gallonPerMinute } from '#units/factors.ts';
import { formatIn } from '#units/format.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/velocity-and-bore/';

/** Velocity by the definition, as the page should write it. */
function velocityShown(gpm: number, size: string): string {
  const area = (Math.PI / 4) * pipeSize(size).bore ** 2;
  return formatIn('velocity', (gpm * gallonPerMinute) / area, 'ft/s');
}

test('flow by keys: the sentence gives the velocity of that flow, and Reset brings 45 gpm back', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  const slider = page.locator('#bore-velocity-flow');
  await slider.focus();
  await page.keyboard.press('PageUp');
  await page.keyboard.press('ArrowRight');
  await expect(finding).toContainText(`moves at ${velocityShown(56, 'sch40-2')}`);
  await page.locator('#bore-velocity-pipe-sch40-2').focus();
  await page.keyboard.press('ArrowRight');
  await expect(finding).toContainText(`moves at ${velocityShown(56, 'sch80-2')}`);
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toContainText(`moves at ${velocityShown(45, 'sch40-2')}`);
});

test('switches to the reader’s own pipes, and fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(path + padFragment(ownerPad));
  await wakeAll(page);
  await page.getByText('My pad', { exact: true }).click();
  const finding = page.locator('.figure-finding');
  await expect(finding).toContainText('through your pump');
  await page.locator('label', { hasText: 'Suction 2-1/2 in Schedule 40' }).click();
  await page.locator('#bore-velocity-flow-number').fill('60');
  // Arithmetic: 60 gpm over the area of a bore of 2.469 in (ASTM D1785).
  const area = (Math.PI / 4) * (2.469 * 0.0254) ** 2;
  const velocity = (60 * gallonPerMinute) / area / foot;
  await expect(finding).toContainText(`moves at ${velocity.toFixed(2)}`);
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
});
