import type { CDPSession, Locator, Page } from '@playwright/test';
import { expect, test, wakeAll } from './fixture.ts';
import { pagePaths } from './site.ts';

/*
 * Every handle of the site is pulled 120 px by mouse and by touch. Its value must follow all the way:
 * it changes again in the second half of the pull, unless it has come to its end by then.
 */

const pull = 120;
const steps = 12;
const handles = '[role="slider"]:not(input):not([aria-hidden="true"])';

interface Pull {
  /** Value after each step of the pull. */
  readonly values: readonly number[];
  readonly least: number;
  readonly most: number;
}

const numberOf = (handle: Locator, name: string) =>
  handle.getAttribute(name).then((text) => Number(text));

/** The way with more room before it, or the other one: right or left for one that lies, up or down for one that stands. */
async function wayOf(handle: Locator, page: Page, back: boolean) {
  // A block that a finger has tapped shows a knob of its own to be moved by.
  const knob = handle.locator('[data-hold]');
  const box = await ((await knob.count()) > 0 ? knob : handle).boundingBox();
  if (box === null) throw new Error('nothing to take hold of');
  const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const field = await handle.evaluate((element) => {
    const around = (
      element.closest('[data-drag-field], .plot-body') ?? element
    ).getBoundingClientRect();
    return { left: around.left, right: around.right, top: around.top, bottom: around.bottom };
  });
  const strip = await handle.evaluate((element) => {
    const around = element.closest('.day-strip')?.getBoundingClientRect();
    return around === undefined ? null : around.height > around.width;
  });
  const stands = strip ?? (await handle.getAttribute('aria-orientation')) === 'vertical';
  const view = page.viewportSize() ?? { width: 1280, height: 800 };
  const [to, x, y] = stands
    ? [field.bottom - at.y > at.y - field.top ? 1 : -1, 0, 1]
    : [field.right - at.x > at.x - field.left ? 1 : -1, 1, 0];
  const turn = back ? -1 : 1;
  const inView = (value: number, end: number) => Math.min(end - 2, Math.max(2, value));
  return {
    at,
    stepTo: (step: number) => ({
      x: inView(at.x + (turn * x * to * pull * step) / steps, view.width),
      y: inView(at.y + (turn * y * to * pull * step) / steps, view.height),
    }),
  };
}

async function pulled(
  handle: Locator,
  page: Page,
  back: boolean,
  press: (spot: { x: number; y: number }, phase: 'down' | 'move' | 'up') => Promise<void>,
): Promise<Pull> {
  // Into the middle, so that neither a heading that stays nor the end of the window is in the way.
  await handle.evaluate((element) =>
    element.scrollIntoView({ block: 'center', behavior: 'instant' }),
  );
  const { at, stepTo } = await wayOf(handle, page, back);
  const values = [await numberOf(handle, 'aria-valuenow')];
  await press(at, 'down');
  for (let step = 1; step <= steps; step += 1) {
    await press(stepTo(step), 'move');
    values.push(await numberOf(handle, 'aria-valuenow'));
  }
  await press(stepTo(steps), 'up');
  return {
    values,
    least: await numberOf(handle, 'aria-valuemin'),
    most: await numberOf(handle, 'aria-valuemax'),
  };
}

/** What is wrong with a pull; nothing where the value followed. */
function faultOf({ values, least, most }: Pull): string | null {
  const [first = 0, middle = 0, last = 0] = [values[0], values[steps / 2], values[steps]];
  const shown = values.map((value) => Number(value.toPrecision(5))).join(' ');
  if (first === middle && middle === last) return `does not move: ${shown}`;
  const near = 1e-6 * Math.max(1, most - least);
  const atEnd = Math.abs(last - least) < near || Math.abs(last - most) < near;
  if (middle === last && !atEnd) return `stops half way: ${shown}`;
  return null;
}

async function touch(session: CDPSession, spot: { x: number; y: number }, phase: string) {
  const type = phase === 'down' ? 'touchStart' : phase === 'move' ? 'touchMove' : 'touchEnd';
  await session.send('Input.dispatchTouchEvent', {
    type,
    touchPoints: phase === 'up' ? [] : [{ x: spot.x, y: spot.y }],
  });
}

/** Pulls one handle of a page as it was opened. */
async function faultIn(
  page: Page,
  place: number,
  by: 'mouse' | 'touch',
  back: boolean,
): Promise<string | null> {
  const handle = page.locator(handles).nth(place);
  if (!(await handle.isVisible())) return null;
  const isBlock = await handle.evaluate((element) => element.matches('.day-block'));
  if (by === 'touch' && isBlock) await handle.tap();
  const session = by === 'touch' ? await page.context().newCDPSession(page) : null;
  const fault = faultOf(
    await pulled(handle, page, back, async (spot, phase) => {
      if (session !== null) return touch(session, spot, phase);
      await page.mouse.move(spot.x, spot.y);
      if (phase === 'down') await page.mouse.down();
      if (phase === 'up') await page.mouse.up();
    }),
  );
  await session?.detach();
  return fault === null ? null : `${await handle.getAttribute('aria-label')} ${fault}`;
}

/** Takes back what a pull changed, where the page keeps what was changed. */
async function takenBack(page: Page): Promise<void> {
  const undo = page.getByRole('button', { name: /^Undo/ }).first();
  if ((await undo.count()) === 0) return;
  if ((await undo.getAttribute('aria-disabled')) === 'false') await undo.click();
}

/** A handle may have no room one way, as a block between two others: then it must follow the other. */
async function faultsOn(page: Page, by: 'mouse' | 'touch'): Promise<readonly string[]> {
  const faults: string[] = [];
  const count = await page.locator(handles).count();
  for (let place = 0; place < count; place += 1) {
    const there = await faultIn(page, place, by, false);
    await takenBack(page);
    const fault = there === null ? null : await faultIn(page, place, by, true);
    if (there !== null) await takenBack(page);
    if (fault !== null) faults.push(fault);
  }
  return faults;
}

const pages = pagePaths().filter((path) => !path.startsWith('/reference/') && path !== '/404.html');

for (const path of pages) {
  test(`every handle on ${path} follows the mouse`, async ({ page }) => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.goto(path);
    await wakeAll(page);
    expect(await faultsOn(page, 'mouse')).toEqual([]);
  });
}

test.describe('by touch', () => {
  test.use({ hasTouch: true, isMobile: true, viewport: { width: 390, height: 844 } });
  for (const path of pages) {
    test(`every handle on ${path} follows a finger`, async ({ page }) => {
      await page.goto(path);
      await wakeAll(page);
      expect(await faultsOn(page, 'touch')).toEqual([]);
    });
  }
});
