import { signal } from '@preact/signals';
import * as fc from 'fast-check';
import renderToString from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { createFieldState, type Entry } from '#ui/controls/entry.ts';
import { createNumberControl, onDialKey, snap } from '#ui/controls/numberControl.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { dialField, RangeField } from '#ui/controls/RangeField.tsx';
import { clockMinute, clockText, QuantityField } from '#ui/controls/TextFields.tsx';
import { dialInLink, readLink, writeLink } from '#ui/figure/linkState.ts';
import { metric, us } from '#units/choice.ts';

const speedDial = (start = 1750) =>
  createNumberControl({ value: signal(start), min: 600, max: 3450, step: 10 });

describe('dial', () => {
  // Keys of a slider: W3C ARIA Authoring Practices, slider pattern.
  it('moves one step by arrow, ten by page, and to the exact ends by Home and End', () => {
    const dial = speedDial();
    const valueAfter = (key: string) => {
      dial.press(key);
      return dial.value.peek();
    };
    expect(valueAfter('ArrowRight')).toBe(1760);
    expect(valueAfter('ArrowUp')).toBe(1770);
    expect(valueAfter('ArrowLeft')).toBe(1760);
    expect(valueAfter('ArrowDown')).toBe(1750);
    expect(valueAfter('PageUp')).toBe(1850);
    expect(valueAfter('PageDown')).toBe(1750);
    expect(valueAfter('End')).toBe(3450);
    expect(valueAfter('ArrowRight')).toBe(3450);
    expect(valueAfter('Home')).toBe(600);
    expect(valueAfter('ArrowLeft')).toBe(600);
  });

  it('leaves other keys to the page', () => {
    expect(speedDial().press('Tab')).toBe(false);
  });

  it('leaves keys with a modifier to the browser', () => {
    const dial = speedDial();
    let prevented = false;
    const event = { key: 'ArrowLeft', altKey: true, preventDefault: () => (prevented = true) };
    onDialKey(dial)(event as unknown as KeyboardEvent);
    expect(dial.value.peek()).toBe(1750);
    expect(prevented).toBe(false);
  });

  it('reaches an end that is not on the grid', () => {
    const dial = createNumberControl({ value: signal(3450), min: 600, max: 3456, step: 10 });
    dial.press('End');
    expect(dial.value.peek()).toBe(3456);
    dial.press('ArrowLeft');
    expect(dial.value.peek()).toBe(3450);
  });

  it('ignores a wish that is no number', () => {
    const dial = speedDial();
    dial.apply(Number.NaN);
    expect(dial.value.peek()).toBe(1750);
  });

  it('always stays in range, on the grid or at an end', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true }),
        fc.constantFrom(0.1, 0.25, 1, 7, 50),
        (wish, step) => {
          const got = snap(wish, -3, 411, step);
          expect(got).toBeGreaterThanOrEqual(-3);
          expect(got).toBeLessThanOrEqual(411);
          const steps = got / step;
          const onGrid = Math.abs(steps - Math.round(steps)) < 1e-9;
          expect(onGrid || got === -3 || got === 411).toBe(true);
        },
      ),
    );
  });
});

describe('text field', () => {
  const whole: Entry<number> = {
    format: String,
    parse: (text) =>
      /^\d+$/.test(text)
        ? { ok: true, value: Number(text) }
        : { ok: false, problem: 'Give a whole number.' },
  };
  const field = (start?: number) => {
    const value = signal<number | undefined>(start);
    const state = createFieldState<number>({
      value,
      entry: whole,
      apply: (next) => {
        value.value = next;
      },
      whenEmpty: 'Give a number here.',
    });
    return { value, state };
  };

  it('applies understood text at once', () => {
    const { value, state } = field(7);
    state.type('12');
    expect(value.value).toBe(12);
    expect(state.problem.value).toBeUndefined();
  });

  it('keeps what was typed, and the value it had, while the text makes no sense', () => {
    const { value, state } = field(7);
    state.type('12x');
    expect(state.text.value).toBe('12x');
    expect(value.value).toBe(7);
  });

  it('says what is wrong only after the reader has left, and stops when it is mended', () => {
    const { state } = field(7);
    state.type('12x');
    expect(state.problem.value).toBeUndefined();
    state.leave();
    expect(state.problem.value).toBe('Give a whole number.');
    state.type('12');
    expect(state.problem.value).toBeUndefined();
  });

  it('asks for a number when a field that needs one is emptied', () => {
    const { state } = field(7);
    state.type('');
    state.leave();
    expect(state.problem.value).toBe('Give a number here.');
  });

  it('shows the value in another unit without changing it', () => {
    const value = signal<number | undefined>(0.003);
    const entry = signal(quantityEntry('flow', us));
    const apply = () => {
      throw new Error('a change of unit must not write');
    };
    const state = createFieldState<number>({ value, entry, apply });
    state.text.value;
    entry.value = quantityEntry('flow', metric);
    // 0.003 m3/s × 3600 s/h = 10.8 m3/h.
    expect(state.text.value).toBe('10.8');
  });

  it('shows a value that was set from elsewhere, whatever was typed', () => {
    const { value, state } = field(7);
    state.type('12x');
    state.leave();
    value.value = 30;
    expect(state.text.value).toBe('30');
    expect(state.problem.value).toBeUndefined();
  });

  it('drops half-typed text when the dial is set again, even to the value it has', () => {
    const dial = speedDial();
    const state = dialField(dial, quantityEntry('speed', us));
    state.type('17x');
    state.leave();
    dial.apply(1750);
    expect(state.text.value).toBe('1750');
    expect(state.problem.value).toBeUndefined();
  });

  it('refuses a typed number outside the dial instead of bending it', () => {
    const dial = speedDial();
    const state = dialField(dial, quantityEntry('speed', us));
    state.type('9000');
    state.leave();
    expect(dial.value.peek()).toBe(1750);
    expect(state.problem.value).toBe('Give a number from 600 to 3450.');
  });
});

describe('rendering on the server', () => {
  it('ties the sentence of a problem to its field', () => {
    const html = renderToString(
      <QuantityField
        id="bore"
        label="Bore"
        value={signal(0.05)}
        entry={quantityEntry('diameter', metric)}
        unit="mm"
        apply={() => undefined}
        problem="The bore must be less than the outside."
      />,
    );
    expect(html).toContain('aria-describedby="bore-error"');
    expect(html).toContain('aria-invalid="true"');
    expect(html).toMatch(/id="bore-error"><span class="visually-hidden">Error: <\/span>The bore/);
    expect(html).toContain('value="50"');
  });

  it('gives a slider its range, its value and its spoken form', () => {
    const html = renderToString(
      <RangeField
        id="speed"
        label="Speed"
        dial={speedDial()}
        spoken="1750 rpm, 51 gallons per minute"
      />,
    );
    expect(html).toContain('type="range" min="600" max="3450" step="10" value="1750"');
    expect(html).toContain('aria-valuetext="1750 rpm, 51 gallons per minute"');
    expect(html).toContain('aria-label="Less speed"');
  });
});

describe('link of a picture', () => {
  it('carries only what differs from the opening state, and leaves the rest of the query alone', () => {
    const dial = speedDial();
    const fields = { speed: dialInLink(dial) };
    expect(writeLink('?other=1', 'law', fields)).toBe('?other=1');
    dial.apply(2000);
    expect(writeLink('?other=1', 'law', fields)).toBe('?other=1&law=speed-2000');
  });

  it('reads back what it wrote', () => {
    expect([...readLink('?law=speed-2000_price--0.5', 'law')]).toEqual([
      ['speed', '2000'],
      ['price', '-0.5'],
    ]);
  });

  it('brings a spoiled value into range and passes over nonsense', () => {
    const dial = speedDial();
    const field = dialInLink(dial);
    field.write('1e9');
    expect(dial.value.peek()).toBe(3450);
    field.write('fast');
    expect(dial.value.peek()).toBe(3450);
    expect(readLink('?law=%00%3Cscript%3E', 'law').size).toBe(0);
  });
});

describe('time of the day', () => {
  it('is written and read as a clock field does', () => {
    expect(clockText(390)).toBe('06:30');
    expect(clockMinute('06:30')).toBe(390);
    expect(clockMinute('23:59')).toBe(1439);
  });

  it('reads nothing from what is no time of the day', () => {
    for (const text of ['', '24:00', '12:60', 'noon']) expect(clockMinute(text)).toBeUndefined();
  });
});
