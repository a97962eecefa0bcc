import { systemHead } from '#core/hydraulics/circuit.ts';
import { exampleScene } from '#explorables/CircuitBuilder/example.ts';
import { circuitOf } from '#explorables/CircuitBuilder/model.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { padFragment } from '#pad/document/link.ts';
import { foot, gallonPerMinute } from '#units/factors.ts';
import { formatIn } from '#units/format.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/system-curve/';

/** The head by the core, as the page should write it. */
function headShown(gpm: number, counts: Readonly<Record<string, number>>, feet = 0): string {
  const circuit = circuitOf(exampleScene, { counts, lift: feet * foot });
  return formatIn('head', systemHead(circuit, gpm * gallonPerMinute), 'ft');
}

test('parts and lift by keys: the head is the core’s; Reset brings the first circuit back', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  const more = page.getByRole('button', { name: /^One more: Returns/ });
  await more.focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await page.locator('#circuit-heater').focus();
  await page.keyboard.press('Space');
  await page.locator('#circuit-lift').focus();
  for (let press = 0; press < 3; press += 1) await page.keyboard.press('ArrowUp');
  await page.locator('#circuit-flow').focus();
  await page.keyboard.press('PageUp');
  await expect(finding).toContainText(
    `At 60\u00a0gpm the circuit takes ${headShown(60, { returns: 3, heater: 0 }, 3)}`,
  );
  await expect(finding).toContainText('is lift');
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toContainText(`At 50\u00a0gpm the circuit takes ${headShown(50, {})}`);
});

test('builds on the reader’s own circuit, and fits a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(path + padFragment(ownerPad));
  await wakeAll(page);
  await page.getByText('My pad', { exact: true }).click();
  await page.locator('label', { hasText: 'Gas heater' }).click();
  await expect(page.locator('.figure-finding')).toContainText('less than in the circuit');
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
});
