import { fitPad } from '#core/fit/fitPad.ts';
import { typicalInstruments } from '#core/fit/padEvidence.ts';
import { demoCircuit, demoCurve } from '#explorables/example/demo.ts';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import { padFragment } from '#pad/document/link.ts';
import { psi } from '#units/factors.ts';
import { formatIn } from '#units/format.ts';
import { expect, test, wakeAll } from '../fixture.ts';

const path = '/lessons/read-your-pump/';

/** Band of the power at 600 rpm by the core, from notes of speed, watts and psi. */
function bandShown(notes: readonly (readonly [number, number, number])[]): string {
  const fit = fitPad({
    circuit: demoCircuit,
    curve: demoCurve,
    curveKnown: 'dataSheet',
    instruments: typicalInstruments,
    readings: notes.map(([speed, power, pounds]) => ({
      id: `${speed}`,
      ratio: speed / 3450,
      power,
      dischargePressure: pounds * psi,
    })),
    leastRatio: 600 / 3450,
    greatestRatio: 1,
  });
  const { low, high } = fit.bandAt(600 / 3450).power;
  return `from ${formatIn('power', low, 'W')} to ${formatIn('power', high, 'W')}`;
}

const fast = [
  [3450, 1990, 22.5],
  [2800, 1105, 14.5],
] as const;
const slow = [900, 142, 1.5] as const;

test('notes are ticked by keys: the band is that of the core, and Reset brings the two fast ones back', async ({
  page,
}) => {
  await page.goto(path);
  await wakeAll(page);
  const finding = page.locator('.figure-finding');
  await expect(finding).toContainText(bandShown(fast));
  await page.locator('#reading-band-at-900').focus();
  await page.keyboard.press('Space');
  await expect(finding).toContainText(bandShown([...fast, slow]));
  await page.locator('#reading-band-at-1900').focus();
  await page.keyboard.press('Space');
  await page.locator('#reading-band-slip').focus();
  await page.keyboard.press('Space');
  await expect(finding).toContainText('These notes cannot all be right.');
  await expect(page).toHaveURL(/readingband=.*slip-1/);
  await page.getByRole('button', { name: 'Reset' }).click();
  await expect(finding).toContainText(bandShown(fast));
});

test('the reader’s own notes on a phone, and an empty sheet to print', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(path + padFragment(ownerPad));
  await wakeAll(page);
  await page.getByText('My pad', { exact: true }).click();
  await expect(page.locator('.figure-finding')).toContainText('With 3 of 3 notes');
  await expect(page.locator('.reading-sheet tbody tr')).toHaveCount(4);
  const overhang = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(overhang).toBe(0);
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.reading-sheet')).toBeVisible();
});
