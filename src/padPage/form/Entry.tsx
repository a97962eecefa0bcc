/** Adding, moving and removing entries of a list. */

import type { ComponentChildren, JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { useComputed } from '#ui/controls/failure.ts';
import { useForm } from './form.ts';

/** Puts the focus on an element once the page shows it. */
export function focusSoon(id: string): void {
  requestAnimationFrame(() => {
    requestAnimationFrame(() => document.getElementById(id)?.focus());
  });
}

interface EntryProps {
  /** The entry's own id in the pad. */
  readonly id: string;
  /** Element id. */
  readonly elementId: string;
  /** One line that says what it is. */
  readonly title: ComponentChildren;
  readonly children: ComponentChildren;
}

/** Closes the open entries around a new one, so that a phone shows one at a time; what is wrong stays in sight. */
function closeOthers(here: HTMLElement | null): void {
  const list = here?.parentElement?.parentElement;
  for (const other of list?.querySelectorAll<HTMLDetailsElement>(':scope > li > .form-entry') ??
    []) {
    const isWrong = other.querySelector('[aria-invalid="true"]') !== null;
    if (other !== here && !isWrong) other.open = false;
  }
}

/**
 * An entry that opens for its fields; one just added stands open and takes the focus. Once opened the
 * fields stay, so that what was typed and makes no sense yet is not lost by closing.
 */
export function Entry({ id, elementId, title, children }: EntryProps): JSX.Element {
  const form = useForm();
  const here = useRef<HTMLDetailsElement>(null);
  const [open, setOpen] = useState(() => form.fresh.peek() === id);
  const wasOpen = useRef(false);
  wasOpen.current ||= open;
  useEffect(() => {
    if (form.fresh.peek() !== id) return;
    form.fresh.value = null;
    closeOthers(here.current);
    here.current?.querySelector<HTMLElement>('input, select, button')?.focus();
  }, [form, id]);
  return (
    <details
      ref={here}
      class="form-entry"
      open={open}
      onToggle={(event) => {
        if (event.target === event.currentTarget) setOpen(event.currentTarget.open);
      }}
    >
      <summary id={elementId}>{title}</summary>
      {wasOpen.current && <div class="form-entry-body">{children}</div>}
    </details>
  );
}

interface ToolProps {
  /** What the buttons act on, as it stands after "Remove". */
  readonly name: string;
  readonly elementId: string;
  readonly onRemove: () => void;
  readonly onMove?: ((by: -1 | 1) => void) | undefined;
  readonly isFirst?: boolean;
  readonly isLast?: boolean;
}

/** Move up, move down, remove. */
export function EntryTools(props: ToolProps): JSX.Element {
  const { name, elementId, onMove, onRemove } = props;
  const move = (by: -1 | 1, word: 'up' | 'down', stuck: boolean | undefined) => (
    <button
      type="button"
      id={`${elementId}-${word}`}
      class="button button-quiet form-small"
      aria-label={`Move ${word}: ${name}`}
      aria-disabled={stuck === true}
      onClick={() => {
        if (stuck === true) return;
        onMove?.(by);
        focusSoon(`${elementId}-${word}`);
      }}
    >
      Move {word}
    </button>
  );
  return (
    <div class="form-tools">
      {onMove !== undefined && move(-1, 'up', props.isFirst)}
      {onMove !== undefined && move(1, 'down', props.isLast)}
      <RemoveButton name={name} onRemove={onRemove} />
    </div>
  );
}

interface RemoveProps {
  readonly name: string;
  readonly onRemove: () => void;
  /** A mere cross, for rows of a table. */
  readonly isNarrow?: boolean;
}

/** Takes an entry away. It needs no question first: undo brings it back, and the form says so. */
export function RemoveButton(props: RemoveProps): JSX.Element {
  const { name, onRemove, isNarrow = false } = props;
  const form = useForm();
  return (
    <button
      type="button"
      class={isNarrow ? 'button button-quiet form-narrow' : 'button button-quiet form-small'}
      aria-label={`Remove: ${name}`}
      onClick={() => {
        onRemove();
        form.said.value = `Removed: ${name}. Undo brings it back.`;
      }}
    >
      {isNarrow ? '×' : 'Remove'}
    </button>
  );
}

interface AddProps {
  readonly id: string;
  readonly children: ComponentChildren;
  readonly onAdd: () => void;
  readonly label?: string;
}

export function AddButton({ id, children, onAdd, label }: AddProps): JSX.Element {
  return (
    <button
      type="button"
      id={id}
      class="button button-quiet form-add"
      aria-label={label}
      onClick={onAdd}
    >
      <span aria-hidden="true">+</span>
      {children}
    </button>
  );
}

/** More fields, shown when asked for. */
export function More(props: { title: string; open?: boolean; children: ComponentChildren }) {
  const [open, setOpen] = useState(props.open ?? false);
  return (
    <details
      class="form-more"
      open={open}
      onToggle={(event) => {
        if (event.target === event.currentTarget) setOpen(event.currentTarget.open);
      }}
    >
      <summary>{props.title}</summary>
      {open && <div class="form-fields">{props.children}</div>}
    </details>
  );
}

/** The ids of a list, followed; a list drawn from it redraws only when entries come, go or move. */
export function useIds(read: () => readonly { readonly id: string }[]): readonly string[] {
  const joined = useComputed(() =>
    read()
      .map(({ id }) => id)
      .join(' '),
  );
  return joined.value === '' ? [] : joined.value.split(' ');
}
