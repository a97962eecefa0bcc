import type { ComponentChildren, JSX } from 'preact';
import { type Live, read } from '#ui/charts/live.ts';

interface FieldProps {
  /** Unique on the page and the same on every build: labels, hints and errors hang on it. */
  readonly id: string;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly problem?: Live<string | undefined>;
  readonly children: ComponentChildren;
}

/** The ids that describe a field, for its `aria-describedby`. */
export function describedBy(id: string, hint?: string, problem?: string): string | undefined {
  const ids = [hint === undefined ? '' : `${id}-hint`, problem === undefined ? '' : `${id}-error`];
  return ids.filter((part) => part !== '').join(' ') || undefined;
}

/** A label, a hint, the control and the sentence that says what is wrong with it. */
export function Field({ id, label, hint, problem, children }: FieldProps): JSX.Element {
  const sentence = read(problem);
  return (
    <div class={sentence === undefined ? 'field' : 'field is-wrong'}>
      <label class="field-label" for={id}>
        {label}
      </label>
      {hint !== undefined && (
        <p class="field-help" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {children}
      <Problem id={id} sentence={sentence} />
    </div>
  );
}

/** The sentence beside a field at fault; the word "Error" is there for those who cannot see the mark. */
export function Problem(props: { id: string; sentence: string | undefined }): JSX.Element | null {
  if (props.sentence === undefined) return null;
  return (
    <p class="field-error" id={`${props.id}-error`}>
      <span class="visually-hidden">Error: </span>
      {props.sentence}
    </p>
  );
}
