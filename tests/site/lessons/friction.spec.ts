import { darcyWeisbach, smoothPlasticRoughness } from '#core/hydraulics/friction.ts';
import { pipeSize } from '#core/hydraulics/pipe.ts';
import { water } from '#core/water/water.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { padFragment } from '#pad/document/link.ts';
import { foot, gallonPerMinute } from '#units/factors.ts';
import { formatIn } from '#units/format.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/friction/';

/** The loss by the core, as the page should write it. */
function lossShown(gpm: number, size: string, feet = 100): string {
  const loss = darcyWeisbach({
    flow: gpm * gallonPerMinute,
    bore: pipeSize(size).bore,
    length: feet * foot,
    roughness: smoothPlasticRoughness,
    kinematicViscosity: water(27).kinematicViscosity,
  });
  return formatIn('head', loss, 'ft');
}

test('the point by keys: the loss is the core’s; layered flow is told; Reset brings 45 gpm back', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  const point = page.getByRole('slider', { name: 'Flow' }).first();
  await point.focus();
  await page.keyboard.press('PageUp');
  await page.keyboard.press('ArrowLeft');
  await expect(finding).toContainText(`lose ${lossShown(54, 'sch40-2')} of head`);
  await page.locator('#moody-pipe-sch40-2').focus();
  await page.keyboard.press('ArrowRight');
  await expect(finding).toContainText(`lose ${lossShown(54, 'sch40-1.5')} of head`);
  await point.focus();
  await page.keyboard.press('Home');
  await expect(finding).toContainText('slides in layers');
  await expect(finding).toContainText('Twice the flow would lose 2 × that');
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toContainText(`lose ${lossShown(45, 'sch40-2')} of head`);
});

test('takes the reader’s own run with its length, and fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(path + padFragment(ownerPad));
  await wakeAll(page);
  await page.getByText('My pad', { exact: true }).click();
  await page.locator('label', { hasText: /^Return 2 in Schedule 40$/ }).click();
  await page.locator('#moody-flow-number').fill('60');
  await expect(page.locator('.figure-finding')).toContainText(
    `lose ${lossShown(60, 'sch40-2', 52)} of head`,
  );
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
});
