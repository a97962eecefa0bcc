/** Frost by the hour, from a series that is open on the page: every part of the page goes by it. */
import { type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { CalendarDate } from '#core/time/calendar.ts';
import type { Span } from '#core/time/spans.ts';
import type { PadStore } from '#pad/store/store.ts';

/** Stretches of frost on a date; undefined where the months of the pad are to tell. */
export type FrostOn = (date: CalendarDate) => readonly Span[] | undefined;

type Source = ReadonlySignal<FrostOn | undefined>;

/** One place a store, empty until a series is opened, so that whoever looks early is told later. */
const places = new WeakMap<PadStore, Signal<Source | null>>();

function placeOf(store: PadStore): Signal<Source | null> {
  const place = places.get(store) ?? signal<Source | null>(null);
  places.set(store, place);
  return place;
}

/** To be called in an effect: the page goes by this series until the result is called. */
export function shareFrost(store: PadStore, source: Source): () => void {
  const place = placeOf(store);
  place.value = source;
  return () => {
    if (place.peek() === source) place.value = null;
  };
}

/** What the open series says; undefined where none is open or the pad holds other months. */
export const openFrost = (store: PadStore): FrostOn | undefined => placeOf(store).value?.value;
