import { compileCircuit } from '#core/hydraulics/compiledCircuit.ts';
import { filterFactor } from '#core/hydraulics/equipment.ts';
import { operatingPoint } from '#core/pump/operatingPoint.ts';
import { cleanCircuit, exampleBench, filterEnds } from '#explorables/example/filter.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { padFragment } from '#pad/document/link.ts';
import { formatIn } from '#units/format.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/filter-loading/';

/** Flow by the core, so many of eight weeks from clean to due. */
function flowShown(weeks: number, speed: number): string {
  const factor = filterFactor(filterEnds, weeks / 8);
  const discharge = cleanCircuit.discharge.map((part) =>
    part.kind === 'equipment' && part.id === 'filter' ? { ...part, factor } : part,
  );
  const folded = compileCircuit({ ...cleanCircuit, discharge });
  const point = operatingPoint(exampleBench.curve, folded, speed / exampleBench.speeds.reference);
  return formatIn('flow', point.kind === 'flowing' ? point.flow : 0, 'gpm');
}

test('weeks and speed by keys: the flow is that of the core, and Reset brings four weeks back', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  await expect(finding).toContainText(`flow is ${flowShown(4, 1800)} instead`);
  await page.locator('.drag-handle').focus();
  await page.keyboard.press('PageUp');
  await page.keyboard.press('ArrowRight');
  await expect(finding).toContainText(`After 5.25 weeks`);
  await expect(finding).toContainText(`flow is ${flowShown(5.25, 1800)} instead`);
  await page.locator('#filter-weeks-speed').focus();
  await page.keyboard.press('End');
  await expect(finding).toContainText(`flow is ${flowShown(5.25, 3450)} instead`);
  await expect(page).toHaveURL(/filterweeks=weeks-5\.25_speed-3450/);
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toContainText(`flow is ${flowShown(4, 1800)} instead`);
});

test('the reader’s own filter, on a phone without sideways scroll', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(path + padFragment(ownerPad));
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  const example = (await finding.textContent()) ?? '';
  await page.getByText('My pad', { exact: true }).click();
  await expect(page.locator('.readouts')).toContainText('more than a clean filter');
  await expect(finding).not.toHaveText(example);
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
});
