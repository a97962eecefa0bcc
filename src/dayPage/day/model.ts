/** The day of the reader's pad: what is set, what follows from it, and every way to change it. */
import { computed, signal } from '@preact/signals';
import type { CalendarDate } from '#core/time/calendar.ts';
import { freshId } from '#pad/document/ids.ts';
import type { Pad, PadBlock, PadDay } from '#pad/document/schema.ts';
import { withoutOverlap } from '#pad/model/assembleDay.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import { pricedDate } from '#pad/model/someDay.ts';
import type { PadStore } from '#pad/store/store.ts';
import { presets } from '#units/choice.ts';
import { moneyOf } from '#units/money.ts';
import { benchOf } from './bench.ts';
import * as edit from './edit.ts';
import { bandsOn, flatOutDay, usualDay, type WorkedDay, workOut } from './figures.ts';
import { type Hold, onGrid } from './grip.ts';
import { isInvented } from './text.ts';

export type CompareWith = PadDay['compareWith'];

/** Something typed that could not be done; the text stays in its field until the reader leaves it. */
export interface Refused {
  readonly id: string;
  readonly edge: 'start' | 'end';
  readonly minute: number;
  readonly said: edit.Said;
}

/** Changes of one kind that follow one another count from the same day, so that going back undoes them. */
interface Session {
  readonly key: string;
  readonly base: readonly PadBlock[];
  last: readonly PadBlock[];
  by: number;
}

const undoWords = {
  start: 'the start of a block',
  end: 'the end of a block',
  body: 'moving a block',
};

export type DayModel = ReturnType<typeof createDayModel>;

export function createDayModel(store: PadStore) {
  const { pad, units } = store;
  const today = signal<CalendarDate | null>(null);
  const said = signal<edit.Said | null>(null);
  const refused = signal<Refused | null>(null);
  const heldId = signal<string | null>(null);
  let session: Session | undefined;

  const date = computed(() => pricedDate(pad.value.day.date, today.value ?? undefined));
  const stored = computed(() => pad.value.day.blocks);
  const blocks = computed(() => withoutOverlap(stored.value));
  const overlapMended = computed(() => blocks.value !== stored.value);
  const assembled = computed(() => benchOf(pad.value));
  const bench = computed(() => assembled.value.bench);
  const missing = computed(() => assembled.value.missing);
  const blockProblems = computed(() => assembled.value.blockProblems);
  const stopProblems = computed(() => assembled.value.stopProblems);

  const here = computed(() => worked(blocks.value));
  const compareWith = computed(() => pad.value.day.compareWith);
  const otherBlocks = computed(() => otherDay(compareWith.value));
  const other = computed(() => (otherBlocks.value === null ? null : worked(otherBlocks.value)));
  // Parts of the bench that an edit of the blocks does not touch stay the same objects, and so does
  // all that follows from them alone.
  const tariff = computed(() => bench.value?.tariff ?? null);
  const limits = computed(() => bench.value?.limits ?? []);
  const limitsGiven = computed(() => pad.value.limits);
  const speeds = computed(() => bench.value?.speeds ?? null);
  const name = computed(() => pad.value.name);
  const invented = computed(() => isInvented(pad.value));
  const bands = computed(() => (tariff.value === null ? [] : bandsOn(tariff.value, date.value)));
  const currency = computed(() => moneyOf(pad.value.tariff.currency, bands.value));

  function worked(of: readonly PadBlock[]): WorkedDay | null {
    const on = bench.value;
    return on === null ? null : unlessRefused(() => workOut(on, of, date.value));
  }

  function otherDay(which: CompareWith): readonly PadBlock[] | null {
    if (which === 'old') {
      const { oldBlocks } = pad.value.day;
      return oldBlocks.length === 0 ? null : withoutOverlap(oldBlocks);
    }
    if (bench.value === null) return null;
    if (which === 'usual') return usualDay(bench.value);
    return flatOutDay(bench.value, here.value?.report.volumeMoved ?? 0);
  }

  function changeDay(change: Partial<PadDay>, label: string, field?: string): void {
    store.edit((now: Pad) => ({ ...now, day: { ...now.day, ...change } }), label, field);
  }

  function apply(edited: edit.Edited, label: string, field?: string): void {
    said.value = edited.said;
    refused.value = null;
    if (edited.blocks !== stored.peek()) changeDay({ blocks: edited.blocks }, label, field);
  }

  function sessionFor(key: string): Session {
    const now = blocks.peek();
    if (session?.key !== key || session.last !== now)
      session = { key, base: now, last: now, by: 0 };
    return session;
  }

  /** Takes a grip so many minutes from where its session began. */
  function go(current: Session, id: string, grip: edit.Grip, by: number): void {
    const edited = edit.shift(current.base, id, grip, by);
    apply(edited, undoWords[grip], `day/${id}/${grip}`);
    current.last = blocks.peek();
  }

  function hold(id: string, grip: edit.Grip): Hold {
    const key = `${id}/${grip}`;
    const minuteIn = (base: readonly PadBlock[]) => {
      const block = base.find((each) => each.id === id);
      return (grip === 'end' ? block?.end : block?.start) ?? 0;
    };
    /** Goes there and stands there, so that whatever follows goes on from it. */
    const goTo = (current: Session, by: number) => {
      const { least, most } = edit.reachOf(current.base, id, grip);
      go(current, id, grip, by);
      current.by = Math.min(most, Math.max(least, by));
    };
    const nudge = (by: number) => {
      const current = sessionFor(key);
      goTo(current, current.by + by);
    };
    return {
      take: () => {
        session = undefined;
        heldId.value = id;
        sessionFor(key);
      },
      drag: (by) => {
        const current = sessionFor(key);
        goTo(current, onGrid(minuteIn(current.base), by));
      },
      nudge,
      toEnd: (way) => {
        const current = sessionFor(key);
        const { least, most } = edit.reachOf(current.base, id, grip);
        current.by = way < 0 ? least : most;
        go(current, id, grip, current.by);
      },
    };
  }

  function typeEdge(id: string, edge: 'start' | 'end', minute: number): void {
    const current = sessionFor(`typed/${id}/${edge}`);
    const edited = edit.typeEdge(current.base, id, edge, minute);
    apply(edited, undoWords[edge], `day/${id}/typed-${edge}`);
    current.last = blocks.peek();
    const done = edited.blocks !== current.base || edited.said === null;
    if (!done && edited.said !== null) refused.value = { id, edge, minute, said: edited.said };
  }

  function newBlock(): Pick<PadBlock, 'id' | 'speed'> {
    const now = blocks.peek();
    const held = now.find(({ id }) => id === heldId.peek()) ?? edit.inOrder(now)[0];
    const id = freshId('block-', now);
    return { id, speed: held?.speed ?? bench.peek()?.speeds.least ?? null };
  }

  function add(into?: edit.Stretch): void {
    const given = newBlock();
    const now = blocks.peek();
    const edited = into === undefined ? edit.addBlock(now, given) : edit.fillGap(now, into, given);
    if (edited.blocks !== now) heldId.value = given.id;
    apply(edited, 'adding a block');
  }

  function remove(id: string): void {
    apply({ blocks: edit.removeBlock(blocks.peek(), id), said: null }, 'removing a block');
  }

  function describe(id: string, change: Partial<Pick<PadBlock, 'speed' | 'reason'>>): void {
    const [name] = Object.keys(change);
    const label = name === 'speed' ? 'the speed of a block' : 'the reason of a block';
    const changed = edit.describeBlock(blocks.peek(), id, change);
    apply({ blocks: changed, said: null }, label, `day/${id}/${name}`);
  }

  return {
    store,
    pad,
    units,
    today,
    date,
    blocks,
    overlapMended,
    bench,
    missing,
    blockProblems,
    stopProblems,
    here,
    compareWith,
    other,
    name,
    invented,
    speeds,
    tariff,
    limits,
    limitsGiven,
    currency,
    bands,
    said,
    refused,
    heldId,
    hold,
    typeEdge,
    add,
    remove,
    describe,
    leaveField: () => {
      session = undefined;
      refused.value = null;
    },
    setDate: (next: CalendarDate) => changeDay({ date: next }, 'the date', 'day/date'),
    compare: (which: CompareWith) => changeDay({ compareWith: which }, 'the day to compare with'),
    keepAsOld: () =>
      changeDay(
        { oldBlocks: blocks.peek(), compareWith: 'old' },
        'keeping this day as the old one',
      ),
    setUnits: (preset: 'us' | 'metric') =>
      void store.edit((now) => ({ ...now, units: presets[preset] }), 'the units'),
  };
}
