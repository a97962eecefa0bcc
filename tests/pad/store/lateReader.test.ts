import { expect, test } from 'vitest';
import { lodgePad, ownerPad } from '#pad/demos/demos.ts';
import { padFragment } from '#pad/document/link.ts';
import { padReader } from '#pad/document/padReader.ts';
import { fetchedReader, type PadReader } from '#pad/document/reader.ts';
import { serialisePad } from '#pad/document/written.ts';
import { shelfPrefix } from '#pad/store/shelf.ts';
import { padKey } from '#pad/store/storage.ts';
import { createPadStore } from '#pad/store/store.ts';

// Our own behaviour: these checks have no outside source.

/** A page whose reader comes when the test says so. */
function page(kept: Readonly<Record<string, string>> = {}, fragment = '') {
  const entries = new Map(Object.entries(kept));
  const touches: (() => void)[] = [];
  let arrive: (reader: PadReader) => void = () => {};
  let fail: (cause: Error) => void = () => {};
  let fetches = 0;
  const source = fetchedReader(() => {
    fetches += 1;
    return new Promise((resolve, reject) => {
      arrive = resolve;
      fail = reject;
    });
  });
  const off = () => () => {};
  const store = createPadStore(
    ownerPad,
    {
      storage: () => ({
        getItem: (key) => entries.get(key) ?? null,
        setItem: (key, text) => void entries.set(key, text),
        removeItem: (key) => void entries.delete(key),
        key: (at) => [...entries.keys()][at] ?? null,
        length: entries.size,
      }),
      now: () => 0,
      later: off,
      fragment: () => fragment,
      clearFragment: () => {},
      onFragment: off,
      onKept: off,
      onLeave: off,
      onReturn: off,
      session: () => null,
      freshId: () => `id-${entries.size}`,
      askToKeep: () => {},
      padIsThere: () => {},
      onTouch: (callback) => {
        touches.push(callback);
        return () => {};
      },
    },
    source,
  );
  const settle = () => new Promise<void>((resolve) => setTimeout(resolve));
  return {
    store,
    entries,
    touches,
    fetches: () => fetches,
    arrive: async () => {
      arrive(padReader);
      await settle();
    },
    fail: async () => {
      fail(new Error('no connection'));
      await settle();
    },
  };
}

test('a first visit fetches nothing until the reader touches the page', () => {
  const { store, touches, fetches } = page();
  store.connect();
  expect(fetches()).toBe(0);
  for (const touch of touches) touch();
  for (const touch of touches) touch();
  expect(fetches()).toBe(1);
});

test('edits made before it arrives are made at once, each an own step', async () => {
  const { store, arrive } = page();
  store.connect();
  store.set(['name'], 'first', 'the name');
  store.edit((pad) => ({ ...pad, name: `${pad.name}, then second`, notes: 'n' }), 'more');
  expect(store.pad.value.name).toBe('first, then second');
  await arrive();
  expect(store.pad.value.name).toBe('first, then second');
  expect(store.notice.value).toBeNull();
  store.undo();
  expect(store.pad.value.name).toBe('first');
});

test('one of them that breaks the definition is taken back when it arrives, and that is said', async () => {
  const { store, arrive } = page();
  store.connect();
  store.set(['name'], 'mine', 'the name');
  store.set(['site', 'waterTemperature'], 900, 'the temperature');
  await arrive();
  expect(store.pad.value).toMatchObject({ name: 'mine', site: ownerPad.site });
  expect(store.notice.value?.sentence).toBe(
    'A change made while this page was still coming could not be kept. Please make it again.',
  );
});

test('what the browser kept comes first, and an edit made meanwhile lands on it', async () => {
  const { store, arrive } = page({ [padKey]: serialisePad({ ...lodgePad, name: 'mine' }) });
  store.connect();
  store.set(['notes'], 'typed early', 'the notes');
  await arrive();
  expect(store.pad.value).toMatchObject({ name: 'mine', notes: 'typed early' });
});

test('a link leaves the kept pad on the shelf, although both were read late', async () => {
  const kept = serialisePad({ ...lodgePad, name: 'mine' });
  const { store, entries, arrive } = page({ [padKey]: kept }, padFragment(lodgePad));
  store.connect();
  await arrive();
  await expect.poll(() => store.pad.value.name).toBe(lodgePad.name);
  const shelved = [...entries].filter(([key]) => key.startsWith(shelfPrefix));
  expect(shelved.map(([, text]) => JSON.parse(text))).toContainEqual(JSON.parse(kept));
});

test('an edit stays when the fetch fails', async () => {
  const { store, fail } = page();
  store.connect();
  store.set(['name'], 'mine', 'the name');
  await fail();
  expect(store.pad.value.name).toBe('mine');
  expect(store.notice.value).toBeNull();
});

test('a kept pad that cannot be read for want of a connection is told, and tried again', async () => {
  const { store, fail, arrive, fetches } = page({
    [padKey]: serialisePad({ ...lodgePad, name: 'kept' }),
  });
  store.connect();
  await fail();
  expect(store.pad.value).toBe(ownerPad);
  expect(store.notice.value?.sentence).toBe(
    'That could not be done, because a part of this page could not be fetched. Reload the page when there is a connection, then try again. Your present pad is unchanged.',
  );
  store.set(['notes'], 'later', 'the notes');
  expect(fetches()).toBe(2);
  await arrive();
  expect(store.pad.value).toMatchObject({ name: 'kept', notes: 'later' });
});

test('an edit made before the page has connected comes after the kept pad, and loses nothing of it', async () => {
  const kept = { ...lodgePad, name: 'mine' };
  const { store, entries, arrive } = page({ [padKey]: serialisePad(kept) });
  store.set(['turnoverTarget'], 3, 'the target');
  const disconnect = store.connect();
  await arrive();
  expect(store.pad.value).toEqual({ ...kept, turnoverTarget: 3 });
  expect(store.undoLabel.value).toBe('the target');
  disconnect();
  expect(JSON.parse(entries.get(padKey) ?? '').name).toBe('mine');
});
