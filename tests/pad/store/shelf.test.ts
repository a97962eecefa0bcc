import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { serialisePad } from '#pad/document/written.ts';
import { padKey } from '#pad/store/storage.ts';
import { createPadStore } from '#pad/store/store.ts';
import { atHand, named, surroundings } from './storeFixtures.ts';

// Our own behaviour: these checks have no outside source.

describe('the shelf', () => {
  const opened = (kept: Readonly<Record<string, string>> = {}) => {
    const browser = surroundings(kept);
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    return { browser, store };
  };
  const names = (store: ReturnType<typeof createPadStore>) =>
    store.shelf.pads.value.map(({ name }) => name);

  test('copies, deletes and brings back', () => {
    const { store } = opened({ [padKey]: serialisePad(named('mine')) });
    store.shelf.copy();
    expect(names(store)).toEqual(['mine', 'mine, copy']);
    store.set(['notes'], 'in the copy', 'the notes');
    store.shelf.remove(store.shelf.openId.value ?? '');
    expect(names(store)).toEqual(['mine']);
    expect(store.pad.value.name).toBe('mine');
    store.shelf.bringBack();
    expect(names(store)).toEqual(['mine', 'mine, copy']);
    expect(store.pad.value).toMatchObject({ name: 'mine, copy', notes: 'in the copy' });
  });

  test('without its last pad shows the example, as nobody’s', () => {
    const { store, browser } = opened({ [padKey]: serialisePad(named('mine')) });
    store.replace(lodgePad, 'an example');
    for (const { id } of store.shelf.pads.value) store.shelf.remove(id);
    expect(store.isOwn.value).toBe(false);
    expect(store.pad.value).toBe(ownerPad);
    expect(browser.entries.has(padKey)).toBe(false);
  });

  test('undo does not lead from one pad to another', () => {
    const { store } = opened({ [padKey]: serialisePad(named('mine')) });
    store.set(['notes'], 'x', 'the notes');
    store.replace(lodgePad, 'an example');
    expect(store.undoLabel.value).toBeNull();
  });

  test('asks the browser once to keep what it keeps', () => {
    const { store, browser } = opened();
    store.set(['name'], 'a', 'the name');
    browser.settle();
    store.set(['name'], 'b', 'the name');
    browser.settle();
    expect(browser.asks()).toBe(1);
  });

  test('a browser that is full says so at once, is tried again, and loses nothing', () => {
    const { store, browser } = opened();
    store.set(['name'], 'kept', 'the name');
    browser.settle();
    expect(store.isKept.value).toBe(true);
    const emptied = browser.full();
    store.set(['name'], 'typed when full', 'the name');
    browser.settle();
    expect(store.isKept.value).toBe(false);
    expect(store.notice.value?.sentence).toContain('did not keep your last changes');
    store.replace(lodgePad, 'an example');
    expect(store.pad.value).toBe(lodgePad);
    store.undo();
    expect(store.pad.value.name).toBe('typed when full');
    emptied();
    store.set(['notes'], 'more', 'the notes');
    browser.settle();
    expect(store.isKept.value).toBe(true);
    expect(browser.entries.get(padKey)).toContain('typed when full');
  });
});

describe('one pad in two tabs', () => {
  /** Two tabs of one browser; neither hears of the other, as after the back button. */
  function twoTabs() {
    const browser = surroundings({ [padKey]: serialisePad(named('mine')) });
    const first = createPadStore(ownerPad, browser.page, atHand);
    first.connect();
    first.set(['notes'], 'begun', 'the notes');
    browser.settle();
    const second = createPadStore(ownerPad, browser.page, atHand);
    second.connect();
    return { browser, first, second };
  }

  test('changes of different parts are put together, although neither heard of the other', () => {
    const { browser, first, second } = twoTabs();
    first.set(['site', 'altitude'], 300, 'the altitude');
    browser.settle();
    second.set(['turnoverTarget'], 2, 'the turnovers');
    browser.settle();
    expect(second.pad.value).toMatchObject({ site: { altitude: 300 }, turnoverTarget: 2 });
    expect(second.notice.value?.sentence).toContain('were put together with yours');
  });

  test('changes of the same part keep both pads, and say so', () => {
    const { browser, first, second } = twoTabs();
    first.set(['notes'], 'from the first', 'the notes');
    browser.settle();
    second.set(['notes'], 'from the second', 'the notes');
    browser.settle();
    expect(second.notice.value?.sentence).toContain('Both are on the shelf');
    const texts = [...browser.entries]
      .filter(([key]) => key.startsWith('cubelaw-shelf/'))
      .map(([, text]) => text);
    expect(texts.some((text) => text.includes('from the first'))).toBe(true);
    expect(texts.some((text) => text.includes('from the second'))).toBe(true);
  });

  test('a page that comes back by the back button takes what was kept meanwhile', () => {
    const { browser, first, second } = twoTabs();
    first.set(['notes'], 'newer', 'the notes');
    browser.settle();
    expect(second.pad.value.notes).toBe('begun');
    browser.returned();
    expect(second.pad.value.notes).toBe('newer');
  });

  // Every text that was ever kept is open, on the shelf, or was taken over into what is.
  test('no order of edits, openings and returns loses a word that was typed', () => {
    type Act = { readonly tab: number; readonly act: string };
    const acts = fc.array(
      fc.record({
        tab: fc.nat(1),
        act: fc.constantFrom('edit', 'edit', 'settle', 'open', 'choose', 'copy', 'return', 'leave'),
      }) as fc.Arbitrary<Act>,
      { maxLength: 24 },
    );
    fc.assert(
      fc.property(acts, (steps) => {
        const { browser, first, second } = twoTabs();
        const tabs = [first, second];
        const typed: string[] = [];
        for (const [at, { tab, act }] of steps.entries()) {
          const store = tabs[tab] ?? first;
          if (act === 'edit') {
            const word = `word-${at}.`;
            const { notes } = store.pad.peek();
            store.set(['notes'], `${notes} ${word}`, 'the notes');
            typed.push(word);
          } else if (act === 'settle') browser.settle();
          else if (act === 'open') store.replace(lodgePad, 'an example');
          else if (act === 'copy') store.shelf.copy();
          else if (act === 'choose')
            store.shelf.choose(
              store.shelf.pads.value[at % store.shelf.pads.value.length]?.id ?? '',
            );
          else if (act === 'return') browser.returned();
          else for (const leave of browser.listeners.leave) leave();
        }
        for (const leave of browser.listeners.leave) leave();
        const all = [...browser.entries.values()].join(' ');
        for (const word of typed) expect(all).toContain(word);
      }),
      { numRuns: 200 },
    );
  });
});
