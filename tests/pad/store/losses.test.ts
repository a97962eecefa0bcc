import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { serialisePad } from '#pad/document/written.ts';
import { shelfPrefix } from '#pad/store/shelf.ts';
import { asideKey, padKey } from '#pad/store/storage.ts';
import { named } from './storeFixtures.ts';
import { browser, call, names, type Tab } from './tabs.ts';

// Our own behaviour: these checks have no outside source.

const open = (tab: Tab) => tab.store.shelf.openId.value ?? '';
const choose = (tab: Tab, name: string) => {
  const found = tab.store.shelf.pads.value.find((each) => each.name === name);
  tab.store.shelf.choose(found?.id ?? '');
};
const remove = (tab: Tab, name: string) => {
  const found = tab.store.shelf.pads.value.find((each) => each.name === name);
  tab.store.shelf.remove(found?.id ?? '');
};

describe('a pad from before there was a shelf', () => {
  const before = { [padKey]: serialisePad(named('mine')) };

  test('has its place there as soon as a page has come to life, in two tabs the same', () => {
    const all = browser(before);
    const [first, second] = [all.open(), all.open()];
    expect(names(first)).toEqual(['mine']);
    expect(open(second)).toBe(open(first));
  });

  test('is not taken out of another tab by an example opened in this one', () => {
    const all = browser(before);
    const [first, second] = [all.open(), all.open()];
    first.store.replace(lodgePad, 'an example');
    second.hear();
    expect(second.store.pad.value.name).toBe('mine');
  });

  test('changed by a page of the older edition, still open, is put on the shelf, not written over', () => {
    const all = browser(before);
    const tab = all.open();
    all.entries.set(padKey, serialisePad(named('by the older edition')));
    call(tab, 'mine, newer');
    expect(all.all()).toContain('by the older edition');
    expect(all.all()).toContain('mine, newer');
  });
});

describe('a pad deleted in one tab', () => {
  test('is gone from the next visit, which opens another', () => {
    const all = browser();
    const tab = all.open();
    call(tab, 'first');
    tab.store.replace(named('second'), 'a new one');
    const other = all.open();
    choose(other, 'first');
    remove(other, 'second');
    expect(all.open().store.pad.value.name).toBe('first');
    expect(all.entries.get(padKey)).toContain('first');
  });

  test('where it was the last one opened anywhere is not brought back by the next visit', () => {
    const all = browser();
    const tab = all.open();
    call(tab, 'first');
    const other = all.open();
    other.store.replace(named('second'), 'a new one');
    tab.hear();
    remove(tab, 'second');
    expect(all.entries.get(padKey)).not.toContain('"name":"second"');
    expect(all.open().store.pad.value.name).toBe('first');
  });

  test('is said to be gone in the other, and a change there keeps it again', () => {
    const all = browser();
    const tab = all.open();
    call(tab, 'mine');
    const other = all.open();
    remove(other, 'mine');
    tab.hear();
    expect(tab.store.isKept.value).toBe(false);
    expect(tab.store.notice.value?.sentence).toBe(
      'This pad was deleted in another tab. It still stands here; change anything and it is kept again.',
    );
    tab.leave();
    expect(all.all()).not.toContain('mine');
    call(tab, 'mine again');
    expect(tab.store.isKept.value).toBe(true);
    expect(all.open().store.pad.value.name).toBe('mine again');
  });

  test('comes back with what was typed a moment ago, although the browser is full', () => {
    const all = browser();
    const tab = all.open();
    call(tab, 'mine');
    all.leaveRoom(0);
    call(tab, 'typed when full');
    tab.store.shelf.remove(open(tab));
    all.leaveRoom(1e9);
    tab.store.shelf.bringBack();
    expect(tab.store.pad.value.name).toBe('typed when full');
  });
});

describe('a browser that is full', () => {
  test('never lets an example take the place of the pad that is kept', () => {
    const all = browser();
    const tab = all.open();
    call(tab, 'kept');
    all.leaveRoom(0);
    call(tab, 'typed when full');
    tab.store.replace(lodgePad, 'an example');
    all.leaveRoom(1e9);
    tab.settle();
    expect(names(tab)).toEqual(['kept', lodgePad.name]);
    tab.store.undo();
    tab.settle();
    expect(names(tab)).toEqual(['kept', 'typed when full']);
  });

  test('says why another pad is not opened', () => {
    const all = browser();
    const tab = all.open();
    call(tab, 'first');
    tab.store.replace(named('second'), 'a new one');
    all.leaveRoom(0);
    call(tab, 'second, changed');
    choose(tab, 'first');
    expect(tab.store.pad.value.name).toBe('second, changed');
    expect(tab.store.notice.value?.sentence).toContain('Save it as a file');
  });

  test('is tried again once at a time', () => {
    const all = browser();
    const tab = all.open();
    call(tab, 'kept');
    all.leaveRoom(0);
    for (const at of [1, 2, 3]) call(tab, `typed ${at}`);
    all.leaveRoom(1e9);
    tab.settle();
    expect(tab.store.isKept.value).toBe(true);
    expect(all.all()).toContain('typed 3');
  });

  test('keeps 99 pads at most, and says so', () => {
    const pads = Array.from({ length: 99 }, (_, at) => [
      `${shelfPrefix}${String(at).padStart(3, '0')}`,
      serialisePad(named(`pad ${at}`)),
    ]);
    const tab = browser(Object.fromEntries(pads)).open();
    tab.store.replace(lodgePad, 'an example');
    expect(tab.store.pad.value).toBe(ownerPad);
    expect(tab.store.notice.value?.sentence).toContain('keeps 99 pads at most');
    choose(tab, 'pad 7');
    expect(tab.store.pad.value.name).toBe('pad 7');
  });
});

test('a pad of the shelf that cannot be read says so, and nothing takes its place', () => {
  const newer = serialisePad(named('newer')).replace(/"version":\d+/, '"version":999');
  const id = 'abc';
  const all = browser({ [shelfPrefix + id]: newer, 'cubelaw-open': id, [padKey]: newer });
  const tab = all.open();
  expect(tab.store.notice.value?.sentence).toContain('could not be read');
  call(tab, 'made from the example');
  expect(all.entries.get(shelfPrefix + id)).toBe(newer);
  expect(all.entries.get(asideKey)).toBe(newer);
  tab.store.dismissNotice();
  choose(tab, 'newer');
  expect(tab.store.notice.value?.sentence).toContain('of version 999');
  expect(tab.store.pad.value.name).toBe('made from the example');
});

test('where the browser keeps nothing, that is known before anything is typed', () => {
  const all = browser();
  const tab = all.open();
  expect(tab.store.refuses.value).toBe(false);
  all.leaveRoom(0);
  call(tab, 'mine');
  expect(tab.store.refuses.value).toBe(true);
});

describe('a page that comes back as it was left', () => {
  test('with the example shows the pad made meanwhile', () => {
    const all = browser();
    const day = all.open();
    const pad = day.load();
    call(pad, 'made meanwhile');
    day.comeBack();
    expect(day.store.pad.value.name).toBe('made meanwhile');
  });

  test('shows the pad that was chosen in its tab meanwhile, and undo is its own', () => {
    const all = browser();
    const day = all.open();
    call(day, 'first');
    const pad = day.load();
    pad.store.replace(rigPad, 'an example');
    day.comeBack();
    expect(day.store.pad.value.name).toBe(rigPad.name);
    expect(day.store.undoLabel.value).toBeNull();
  });

  test('keeps what it could not keep before, beside what was done meanwhile', () => {
    const all = browser();
    const day = all.open();
    call(day, 'first');
    all.leaveRoom(0);
    call(day, 'typed when full');
    const pad = day.load();
    all.leaveRoom(1e9);
    call(pad, 'from the other page');
    day.comeBack();
    day.settle();
    expect(all.all()).toContain('typed when full');
    expect(all.all()).toContain('from the other page');
  });
});

/*
 * Whatever two tabs do in whatever order, hearing of one another or not: each word that was typed is
 * in a pad of the shelf at the end, or in one that a reader deleted and can bring back.
 */
const acts = 'edit edit edit settle hear leave back load open copy choose delete bringBack'.split(
  ' ',
);

test('a pad that another tab brings back is the open one where it comes to be shown', () => {
  const all = browser({ [padKey]: serialisePad(named('begun')) });
  const [first, other] = [all.open(), all.open()];
  other.store.shelf.remove('0');
  const tab = first.load();
  other.store.shelf.bringBack();
  tab.hear();
  expect(tab.store.pad.value.name).toBe('begun');
  expect(tab.store.shelf.openId.value).toBe('0');
});

test('no order of doings in two tabs loses a word that was typed', () => {
  const doing = fc.record({ tab: fc.nat(1), act: fc.constantFrom(...acts), which: fc.nat(9) });
  fc.assert(
    fc.property(fc.array(doing, { maxLength: 40 }), (steps) => {
      const all = browser({ [padKey]: serialisePad(named('begun')) });
      const tabs = [all.open(), all.open()];
      const typed: string[] = [];
      const deleted: string[] = [];
      for (const [at, { tab: which, act, which: pad }] of steps.entries()) {
        const tab = tabs[which] as Tab;
        const { store } = tab;
        const { pads, remove, choose, copy, bringBack } = store.shelf;
        const id = pads.value[pad % Math.max(1, pads.value.length)]?.id ?? '';
        if (act === 'edit') {
          const field = pad % 2 === 0 ? 'notes' : 'name';
          store.set([field], `${store.pad.value[field]} word${at}.`.slice(-110), field);
          typed.push(`word${at}.`);
        } else if (act === 'settle') tab.settle();
        else if (act === 'hear') tab.hear();
        else if (act === 'leave') tab.leave();
        else if (act === 'back') {
          tab.leave();
          tab.comeBack();
        } else if (act === 'load') tabs[which] = tab.load();
        else if (act === 'open') store.replace(pad % 2 === 0 ? lodgePad : rigPad, 'an example');
        else if (act === 'copy') copy();
        else if (act === 'choose') choose(id);
        else if (act === 'delete') {
          if (id === store.shelf.openId.value) deleted.push(JSON.stringify(store.pad.value));
          deleted.push(all.entries.get(shelfPrefix + id) ?? '');
          remove(id);
        } else bringBack();
      }
      for (const tab of tabs) tab.leave();
      const found = [all.all(), ...deleted].join('\n');
      expect(typed.filter((word) => !found.includes(word))).toEqual([]);
    }),
    { numRuns: Number(process.env['LOSS_RUNS'] ?? 400) },
  );
});
