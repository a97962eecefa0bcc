import { describe, expect, test, vi } from 'vitest';
import { lodgePad, ownerPad, rigPad } from '#pad/demos/demos.ts';
import { parsePad } from '#pad/document/file.ts';
import { padFragment } from '#pad/document/link.ts';
import { emptyPad } from '#pad/document/parts.ts';
import { serialisePad } from '#pad/document/written.ts';
import { shelfPrefix } from '#pad/store/shelf.ts';
import { asideKey, padKey, readKept } from '#pad/store/storage.ts';
import { createPadStore } from '#pad/store/store.ts';
import { atHand, named, surroundings } from './storeFixtures.ts';

// Our own behaviour: these checks have no outside source.

describe('the store before a page has come to life', () => {
  test('holds the example, whatever the browser keeps', () => {
    const browser = surroundings({ [padKey]: serialisePad(named('mine')) });
    const store = createPadStore(ownerPad, browser.page, atHand);
    expect(store.pad.value).toBe(ownerPad);
    expect(store.isOwn.value).toBe(false);
  });
});

describe('editing', () => {
  test('a value put at a path changes that and nothing beside it', () => {
    const store = createPadStore(ownerPad, surroundings().page, atHand);
    expect(store.set(['pump', 'topSpeed'], 3000, 'the top speed')).toEqual([]);
    expect(store.pad.value.pump.topSpeed).toBe(3000);
    expect(store.pad.value.plumbing).toBe(ownerPad.plumbing);
    expect(store.isOwn.value).toBe(true);
    expect(store.undoLabel.value).toBe('the top speed');
  });

  test('a value the definition refuses comes back as a problem and changes nothing', () => {
    const store = createPadStore(ownerPad, surroundings().page, atHand);
    const [problem] = store.set(['pump', 'topSpeed'], 99_999, 'the top speed');
    expect(problem).toMatchObject({ code: 'tooLarge', path: ['pump', 'topSpeed'] });
    expect(store.pad.value).toBe(ownerPad);
    expect(store.undoLabel.value).toBeNull();
  });

  test('a listener that throws is reported, and keeps nothing from being kept', () => {
    const report = vi.fn();
    vi.stubGlobal('reportError', report);
    const browser = surroundings();
    const store = createPadStore(ownerPad, browser.page, atHand);
    const disconnect = store.connect();
    const fault = new Error('a fault of the test');
    const stop = store.pad.subscribe((pad) => {
      if (pad !== ownerPad) throw fault;
    });
    expect(store.set(['pump', 'topSpeed'], 3000, 'the top speed')).toEqual([]);
    expect(report).toHaveBeenCalledWith(fault);
    expect(store.pad.value.pump.topSpeed).toBe(3000);
    browser.settle();
    expect(store.isKept.value).toBe(true);
    store.undo();
    expect(store.pad.value).toBe(ownerPad);
    stop();
    disconnect();
    vi.unstubAllGlobals();
  });

  test('undo and redo walk back and forth, and a drag is one step', () => {
    const browser = surroundings();
    const store = createPadStore(ownerPad, browser.page, atHand);
    for (const speed of [3000, 2900, 2800]) {
      browser.wait(50);
      store.set(['pump', 'topSpeed'], speed, 'the top speed');
    }
    store.undo();
    expect(store.pad.value).toBe(ownerPad);
    expect(store.redoLabel.value).toBe('the top speed');
    store.redo();
    expect(store.pad.value.pump.topSpeed).toBe(2800);
  });

  test('changing the units changes no stored value', () => {
    const store = createPadStore(ownerPad, surroundings().page, atHand);
    store.set(['units', 'preset'], 'metric', 'the units');
    store.set(['units', 'overrides'], { pressure: 'psi' }, 'the unit of pressure');
    expect({ ...store.pad.value, units: ownerPad.units }).toEqual(ownerPad);
  });
});

describe('files and links', () => {
  test('a broken file leaves the present pad untouched and says so', async () => {
    const store = createPadStore(ownerPad, surroundings().page, atHand);
    const result = await store.open('{"format":');
    expect(result?.ok).toBe(false);
    expect(store.pad.value).toBe(ownerPad);
    expect(store.isOwn.value).toBe(false);
    expect(store.notice.value).toEqual({
      kind: 'error',
      sentence:
        'This is not a pad file, or it is damaged: its text is not complete JSON. Your present pad is unchanged.',
    });
  });

  test('a good file opens beside the pad', async () => {
    const browser = surroundings({ [padKey]: serialisePad(named('mine')) });
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    expect((await store.open(serialisePad(lodgePad)))?.ok).toBe(true);
    expect(store.pad.value).toEqual(lodgePad);
    expect(store.shelf.pads.value.map(({ name }) => name)).toEqual(['mine', lodgePad.name]);
    store.shelf.choose(store.shelf.pads.value[0]?.id ?? '');
    expect(store.pad.value.name).toBe('mine');
  });

  test('a link opens beside the kept pad, and the address is cleared', async () => {
    const browser = surroundings({ [padKey]: serialisePad(named('mine')) }, padFragment(lodgePad));
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    await vi.waitFor(() => expect(browser.fragment()).toBe(''));
    expect(store.pad.value).toEqual(lodgePad);
    expect(store.notice.value?.sentence).toContain('was opened beside yours');
    expect(store.shelf.pads.value.map(({ name }) => name)).toEqual(['mine', lodgePad.name]);
  });

  test('a pad of a link is not that of the next visit until it is worked on', async () => {
    const mine = serialisePad(named('mine'));
    const browser = surroundings({ [padKey]: mine }, padFragment(lodgePad));
    const store = createPadStore(ownerPad, browser.page, atHand);
    const disconnect = store.connect();
    await vi.waitFor(() => expect(browser.fragment()).toBe(''));
    disconnect();
    expect(browser.entries.get(padKey)).toBe(mine);
    store.set(['name'], 'theirs, by me', 'the name');
    store.connect()();
    expect(browser.entries.get(padKey)).toContain('theirs, by me');
  });

  test('a second link, an example and an empty pad leave every pad on the shelf', async () => {
    const browser = surroundings({ [padKey]: serialisePad(named('mine')) });
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    store.set(['notes'], 'typed a moment ago', 'the notes');
    store.replace(lodgePad, 'an example');
    store.replace(rigPad, 'another');
    store.replace(lodgePad, 'the first again');
    store.replace(emptyPad(), 'an empty pad');
    const names = store.shelf.pads.value.map(({ name }) => name);
    // An untouched example that stands there already is opened and not put there twice.
    expect(names).toEqual(['mine', lodgePad.name, rigPad.name, '']);
    store.shelf.choose(store.shelf.pads.value[0]?.id ?? '');
    expect(store.pad.value).toMatchObject({ name: 'mine', notes: 'typed a moment ago' });
  });

  test('a broken link leaves the kept pad untouched and says so', async () => {
    const broken = padFragment(lodgePad).slice(0, 200);
    const browser = surroundings({ [padKey]: serialisePad(named('mine')) }, broken);
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    await vi.waitFor(() => expect(browser.fragment()).toBe(''));
    expect(store.pad.value.name).toBe('mine');
    expect(store.notice.value?.sentence).toContain('The pad in this link is damaged');
  });

  test('a fragment that is no pad is left alone', () => {
    const browser = surroundings({}, '#pump');
    createPadStore(ownerPad, browser.page, atHand).connect();
    expect(browser.fragment()).toBe('#pump');
  });

  test('the fragment and the file carry the present pad', async () => {
    const store = createPadStore(ownerPad, surroundings().page, atHand);
    store.replace(lodgePad, 'another example');
    expect(await store.fragment()).toBe(padFragment(lodgePad));
    expect(JSON.parse(store.fileText())).toEqual(JSON.parse(serialisePad(lodgePad)));
  });
});

describe('keeping the pad in the browser', () => {
  test('every change is kept, after a moment', () => {
    const browser = surroundings();
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    store.set(['name'], 'mine', 'the name');
    expect(browser.writes()).toBe(0);
    browser.settle();
    expect(
      readKept(browser.page.storage(), browser.entries.get(padKey) ?? null, parsePad),
    ).toMatchObject({
      kind: 'pad',
      pad: { name: 'mine' },
    });
  });

  test('an untouched example is not kept', () => {
    const browser = surroundings();
    createPadStore(ownerPad, browser.page, atHand).connect();
    browser.settle();
    expect(browser.writes()).toBe(0);
  });

  test('a change made just before leaving is kept too', () => {
    const browser = surroundings();
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    store.set(['name'], 'mine', 'the name');
    for (const leave of browser.listeners.leave) leave();
    expect(browser.entries.get(padKey)).toContain('mine');
  });

  test('the kept pad comes back on the next visit', () => {
    const browser = surroundings({ [padKey]: serialisePad(named('mine')) });
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    expect(store.pad.value.name).toBe('mine');
    expect(store.isOwn.value).toBe(true);
    expect(store.undoLabel.value).toBeNull();
    // It has its place on the shelf from then on, and nothing is written again.
    const writes = browser.writes();
    browser.settle();
    expect(browser.writes()).toBe(writes);
    expect(store.shelf.pads.value.map(({ name }) => name)).toEqual(['mine']);
  });

  test('spoiled storage gives the example and a sentence, and the text is put aside', () => {
    const browser = surroundings({ [padKey]: '{"format":"cubelaw-pad","vers' });
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    expect(store.pad.value).toBe(ownerPad);
    expect(store.notice.value).toEqual({
      kind: 'error',
      sentence:
        'The pad kept in this browser could not be read, so the example stands here instead. Its text is kept aside and can be saved as a file.',
    });
    expect(store.aside()).toBe('{"format":"cubelaw-pad","vers');
    expect(browser.entries.has(padKey)).toBe(false);
    expect(browser.entries.has(asideKey)).toBe(true);
  });

  test('without storage everything works but keeping, and that is said once', () => {
    const browser = surroundings();
    browser.withoutStorage();
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    store.set(['name'], 'mine', 'the name');
    browser.settle();
    expect(store.pad.value.name).toBe('mine');
    expect(store.notice.value?.sentence).toBe(
      'This browser does not keep the pad. Save it as a file before you leave this page.',
    );
    store.dismissNotice();
    store.set(['name'], 'mine too', 'the name');
    browser.settle();
    expect(store.notice.value).toBeNull();
  });

  test('storage that throws is as good as none', () => {
    const thrower = () => {
      throw new Error('shut off');
    };
    const place = {
      getItem: thrower,
      setItem: thrower,
      removeItem: thrower,
      key: thrower,
      length: 1,
    };
    const browser = surroundings();
    const page = { ...browser.page, storage: () => place, session: () => place };
    const store = createPadStore(ownerPad, page, atHand);
    store.connect();
    store.set(['name'], 'mine', 'the name');
    browser.settle();
    expect(store.pad.value.name).toBe('mine');
    expect(store.shelf.pads.value).toEqual([]);
    expect(store.isKept.value).toBe(false);
  });

  test('a change in another tab stands here too, can be undone and is not written again', () => {
    const browser = surroundings({ [padKey]: serialisePad(named('mine')) });
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    const writes = browser.writes();
    browser.elsewhere(serialisePad(named('theirs')), shelfPrefix + store.shelf.openId.value);
    expect(store.pad.value.name).toBe('theirs');
    browser.settle();
    expect(browser.writes()).toBe(writes);
    store.undo();
    expect(store.pad.value.name).toBe('mine');
  });

  test('nonsense from another tab is passed over', () => {
    const browser = surroundings({ [padKey]: serialisePad(named('mine')) });
    const store = createPadStore(ownerPad, browser.page, atHand);
    store.connect();
    browser.elsewhere('nonsense');
    expect(store.pad.value.name).toBe('mine');
  });

  test('several parts of a page share one connection, and the last to go ends it', () => {
    const browser = surroundings();
    const store = createPadStore(ownerPad, browser.page, atHand);
    const [first, second] = [store.connect(), store.connect()];
    expect(browser.listeners.kept.size).toBe(1);
    first();
    first();
    expect(browser.listeners.kept.size).toBe(1);
    second();
    expect(browser.listeners.kept.size).toBe(0);
  });
});
