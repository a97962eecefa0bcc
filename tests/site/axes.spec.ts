import type { Page } from '@playwright/test';
import { expect, test, wakeAll } from './fixture.ts';
import { pagePaths } from './site.ts';

/*
 * A picture whose axis follows what is drawn on it tells lies: what doubles looks the same. So the
 * marks of a lesson's axes stay where they are while every control is taken to both its ends. Where
 * the range is too wide for that, the axis may grow, but then it marks where it ended before.
 */

const grown = ' (grown, and marked)';

/** The marks of each axis of a figure, by the figure's id and the titles of both axes. */
const marksOf = (page: Page): Promise<Record<string, string>> =>
  page.evaluate(
    (grown) =>
      Object.fromEntries(
        [...document.querySelectorAll('.figure .plot')].map((plot) => {
          const all = (name: string) =>
            [...plot.querySelectorAll(name)].map((mark) => mark.textContent).join(' ');
          const titles = `${all('.plot-x-title')} / ${all('.plot-y-title')}`;
          return [
            `${plot.closest('.figure')?.id}: ${titles}`,
            `${all('.plot-tick-x')} / ${all('.plot-tick-y')}${all('.plot-former-name') === '' ? '' : grown}`,
          ];
        }),
      ),
    grown,
  );

const controls =
  '.figure input[type="range"], .figure input[type="checkbox"], .figure input[type="radio"]';

for (const path of pagePaths().filter((each) => /^\/lessons\/.+\/$/.test(each))) {
  test(`axes stand still while the controls go to their ends: ${path}`, async ({ page }) => {
    await page.goto(path);
    await wakeAll(page);
    const first = await marksOf(page);
    const moved: string[] = [];
    const look = async (what: string) => {
      for (const [axes, marks] of Object.entries(await marksOf(page))) {
        first[axes] ??= marks;
        if (marks.endsWith(grown)) continue;
        if (first[axes] !== marks) moved.push(`${what}: ${axes}: ${first[axes]} -> ${marks}`);
      }
    };
    for (const control of await page.locator(controls).all()) {
      if (!(await control.isVisible()) || (await control.isDisabled())) continue;
      const name = (await control.getAttribute('id')) ?? (await control.getAttribute('name')) ?? '';
      if ((await control.getAttribute('type')) === 'range') {
        const from = await control.inputValue();
        for (const end of ['Home', 'End']) {
          await control.press(end);
          await look(`${name} ${end}`);
        }
        await control.fill(from);
      } else {
        await control.click({ force: true });
        await look(name);
      }
    }
    expect(moved).toEqual([]);
  });
}
