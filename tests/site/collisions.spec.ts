import type { Page } from '@playwright/test';
import { expect, openDoors, test, wakeAll } from './fixture.ts';
import { pagePaths, pageSource } from './site.ts';

/*
 * Words on a picture: none under a handle, none on another, none cut off, on every page with a
 * figure, as it opens and with each handle at either end of its way.
 */

const widths = [390, 768, 1280];

/** Every fault of the words on the pictures of a page; runs in the page. */
function faultsOfWords(): string[] {
  const scenes = '.plot, [data-drag-field], .day-plan, [role="img"], svg';
  const knobs = '.drag-handle, .day-edge';
  type Side = 'left' | 'right' | 'top' | 'bottom';
  type Box = Record<Side, number>;
  const seen = (element: Element) =>
    element.checkVisibility({ visibilityProperty: true, opacityProperty: true });

  /** Outermost picture that an element belongs to. */
  const sceneOf = (element: Element) => {
    let scene: Element | null = null;
    for (let at = element.closest(scenes); at !== null; ) {
      scene = at;
      at = at.parentElement?.closest(scenes) ?? null;
    }
    return scene;
  };

  /** The letters of an element's own text, without the room above and below them. */
  const wordsOf = (element: Element): Box[] =>
    [...element.childNodes].flatMap((node) => {
      if (node.nodeType !== Node.TEXT_NODE || node.textContent?.trim() === '') return [];
      const range = document.createRange();
      range.selectNodeContents(node);
      return [...range.getClientRects()].map(({ left, right, top, bottom, width, height }) => {
        // Upright words have that room beside them.
        const upright =
          height > 1.6 * width && node.textContent !== null && node.textContent.length > 1;
        const [across, over, under] = upright
          ? [0.2 * width, 0, 0]
          : [0, 0.28 * height, 0.2 * height];
        return {
          left: left + across,
          right: right - across,
          top: top + over,
          bottom: bottom - under,
        };
      });
    });

  const meet = (a: Box, b: Box) =>
    Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;

  /** The part of a handle that is seen: its touch field reaches further. */
  const knobOf = (handle: Element): Box => {
    const box = handle.getBoundingClientRect();
    const { width, height } = getComputedStyle(handle, '::before');
    const half = (size: string, whole: number) => (Number.parseFloat(size) || whole) / 2;
    const [x, y] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
    const [w, h] = [half(width, box.width), half(height, box.height)];
    return { left: x - w, right: x + w, top: y - h, bottom: y + h };
  };

  /** Whether words reach beyond what cuts them off: the screen, or a box around that hides the rest. */
  const isCut = (element: Element, words: Box) => {
    if (words.left < -0.5 || words.right > document.documentElement.clientWidth + 0.5) return true;
    for (let at: Element | null = element; at !== null; at = at.parentElement) {
      const { overflowX, overflowY } = getComputedStyle(at);
      if (overflowX === 'visible' && overflowY === 'visible') continue;
      if (at === document.documentElement || at === document.body) break;
      if (/auto|scroll/.test(overflowX)) return false;
      const frame = at.getBoundingClientRect();
      if (words.left < frame.left - 1 || words.right > frame.right + 1) return true;
      if (words.top < frame.top - 3 || words.bottom > frame.bottom + 3) return true;
    }
    // The edge of the graph paper runs through no name of a line.
    const body = element.closest('.curve-label')?.closest('.plot-body')?.getBoundingClientRect();
    const through = (edge: number) => words.top < edge - 1 && words.bottom > edge + 1;
    return body !== undefined && (through(body.top) || through(body.bottom));
  };

  const labels = [...document.querySelectorAll('body *')].flatMap((element) => {
    const scene = sceneOf(element);
    if (scene === null || element.closest('.visually-hidden, style') || !seen(element)) return [];
    const boxes = wordsOf(element);
    if (boxes.length === 0) return [];
    return [{ element, scene, boxes, text: element.textContent?.trim() ?? '' }];
  });
  const handles = [...document.querySelectorAll(knobs)].filter(seen);

  return labels.flatMap(({ element, scene, boxes, text }, place) => [
    ...handles
      .filter((handle) => boxes.some((box) => meet(box, knobOf(handle))))
      .map((handle) => `“${text}” under the handle ${handle.getAttribute('aria-label')}`),
    ...labels
      .slice(place + 1)
      .filter(
        (other) =>
          other.scene === scene &&
          !other.element.contains(element) &&
          !element.contains(other.element) &&
          boxes.some((box) => other.boxes.some((each) => meet(box, each))),
      )
      .map((other) => `“${text}” on “${other.text}”`),
    ...(boxes.some((box) => isCut(element, box)) ? [`“${text}” is cut off`] : []),
  ]);
}

/** Sends every handle and every slider to an end of its way. */
async function sendTo(page: Page, end: 'Home' | 'End'): Promise<void> {
  await page.evaluate(async (key) => {
    for (const handle of document.querySelectorAll('.drag-handle')) {
      handle.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    }
    for (const slider of document.querySelectorAll<HTMLInputElement>('input[type="range"]')) {
      slider.value = key === 'Home' ? slider.min : slider.max;
      slider.dispatchEvent(new Event('input', { bubbles: true }));
    }
    await new Promise((done) => setTimeout(done, 60));
  }, end);
}

const pages = pagePaths().filter((path) =>
  /class="[^"]*\b(plot|day-plan|capstone-scheme)\b|data-drag-field|role="img"/.test(
    pageSource(path),
  ),
);

for (const path of pages) {
  test(`no word on a picture of ${path} is covered or cut`, async ({ page }) => {
    await page.goto(path);
    await wakeAll(page);
    const found: string[] = [];
    const told = new Set<string>();
    const look = async (state: string) => {
      for (const width of widths) {
        await page.setViewportSize({ width, height: 844 });
        for (const fault of await page.evaluate(faultsOfWords)) {
          if (!told.has(fault)) found.push(`at ${width} px, ${state}: ${fault}`);
          told.add(fault);
        }
      }
    };
    await look('as it opens');
    if (path === '/day/') {
      await openDoors(page);
      await look('every part open');
    }
    for (const end of ['Home', 'End'] as const) {
      await sendTo(page, end);
      await look(end === 'Home' ? 'all at the least' : 'all at the most');
    }
    expect(found).toEqual([]);
  });
}
