import { exampleMachine } from '#explorables/example/flatPrice.ts';
import { operatingStateAt } from '#explorables/example/machine.ts';
import { machineOf } from '#explorables/example/padMachine.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { padFragment } from '#pad/document/link.ts';
import { us } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { expect, test, wakeAll, widthBeyondScreen } from '../fixture.ts';

const path = '/lessons/flow-power-speed/';

/** What the core says of one pump at one speed, as the page should write it. */
function moved(machine: typeof exampleMachine, speed: number): string {
  const { flow, head, power } = operatingStateAt(machine, speed);
  return `moves ${format('flow', flow, us)} at ${format('head', head, us)} and draws ${format('power', power, us)}`;
}

test('speed by keys: flow, head and watts are the core’s, and Reset brings 1720 rpm back', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  await page.locator('#flow-power-speed-speed').focus();
  await page.keyboard.press('PageUp');
  await page.keyboard.press('ArrowRight');
  await expect(finding).toContainText(moved(exampleMachine, 1830));
  await page.getByRole('slider', { name: 'Speed' }).first().focus();
  await page.keyboard.press('End');
  await expect(finding).toContainText(moved(exampleMachine, exampleMachine.topSpeed));
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toContainText(moved(exampleMachine, 1720));
});

test('switches to the reader’s own pump, and fits a phone', async ({ page }) => {
  const own = machineOf(ownerPad);
  if (own === undefined) throw new Error('the example has no pump');
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(path + padFragment(ownerPad));
  await wakeAll(page);
  await page.getByText('My pad', { exact: true }).click();
  await page.locator('#flow-power-speed-speed').focus();
  await page.keyboard.press('End');
  await expect(page.locator('.figure-finding')).toContainText(moved(own, own.topSpeed));
  expect(await widthBeyondScreen(page)).toBe(0);
});
