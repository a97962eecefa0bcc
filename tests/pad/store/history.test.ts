import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  coalesceWithin,
  type History,
  longestHistory,
  record,
  redo,
  startHistory,
  undo,
} from '#pad/store/history.ts';

// Our own behaviour: these checks have no outside source.

function write(history: History<string>, text: string, at: number, field?: string) {
  return record(history, text, { label: `writing ${text}`, at, field });
}

describe('undo and redo', () => {
  test('undo brings back the document before, redo the one after', () => {
    const two = write(write(startHistory('a'), 'b', 0), 'c', 1);
    expect(undo(two).present).toBe('b');
    expect(undo(undo(two)).present).toBe('a');
    expect(redo(undo(two)).present).toBe('c');
    expect(undo(two).future[0]?.label).toBe('writing c');
  });

  test('with nothing to undo or redo nothing happens', () => {
    const start = startHistory('a');
    expect(undo(start)).toBe(start);
    expect(redo(start)).toBe(start);
  });

  test('a new edit after undo gives up what was undone', () => {
    const history = write(undo(write(startHistory('a'), 'b', 0)), 'c', 1);
    expect(redo(history)).toBe(history);
    expect(undo(history).present).toBe('a');
  });

  test('quick edits of one field are one step, a pause starts another', () => {
    const dragged = ['b', 'c', 'd'].reduce(
      (history, text, place) => write(history, text, place * 100, 'speed'),
      startHistory('a'),
    );
    expect(dragged.past).toHaveLength(1);
    expect(undo(dragged).present).toBe('a');
    const later = write(dragged, 'e', 200 + coalesceWithin + 1, 'speed');
    expect(undo(later).present).toBe('d');
  });

  test('another field, or none, starts a step of its own', () => {
    const one = write(startHistory('a'), 'b', 0, 'speed');
    expect(undo(write(one, 'c', 1, 'length')).present).toBe('b');
    expect(undo(write(one, 'c', 1)).present).toBe('b');
    expect(undo(write(write(startHistory('a'), 'b', 0), 'c', 1)).present).toBe('b');
  });

  test('an edit right after undo does not melt into the step before', () => {
    const history = write(undo(write(startHistory('a'), 'b', 0, 'speed')), 'c', 1, 'speed');
    expect(undo(history).present).toBe('a');
  });

  test('an edit that changes nothing is no step', () => {
    const start = startHistory('a');
    expect(write(start, 'a', 0)).toBe(start);
  });

  test('the oldest steps are forgotten', () => {
    let history = startHistory('0');
    for (let step = 1; step <= longestHistory + 50; step += 1) {
      history = write(history, String(step), step);
    }
    expect(history.past).toHaveLength(longestHistory);
  });

  test('as many redos as undos lead back to where one was', () => {
    fc.assert(
      fc.property(fc.array(fc.string(), { maxLength: 20 }), fc.nat(25), (texts, steps) => {
        const full = texts.reduce(
          (history, text, at) => write(history, text, at),
          startHistory(''),
        );
        const count = Math.min(steps, full.past.length);
        const back = Array.from({ length: count }).reduce<History<string>>(
          (history) => undo(history),
          full,
        );
        const again = Array.from({ length: count }).reduce<History<string>>(
          (history) => redo(history),
          back,
        );
        expect(again.present).toBe(full.present);
        expect(again.past).toEqual(full.past);
      }),
    );
  });
});
