import { signal, useSignalEffect } from '@preact/signals';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useComputed } from '#ui/controls/failure.ts';
import { Guard } from '#ui/loading/Guard.tsx';
import type * as Bodies from './bodies.tsx';
import { focusSoon } from './Entry.tsx';
import { useForm } from './form.ts';
import { NotFetched } from './NotFetched.tsx';
import { type StepId, type StepTexts, stepElement, steps } from './steps.ts';
import { stepSummary } from './text.ts';

type Fetched = typeof Bodies | 'not yet' | 'failed';

/** The insides of the steps, once a step has been opened; written by an effect only. */
const bodies = signal<Fetched>('not yet');

async function fetchBodies(): Promise<void> {
  try {
    bodies.value = await import('./bodies.tsx');
  } catch {
    bodies.value = 'failed';
  }
}

function StepBody(props: StepTexts & { id: StepId }): JSX.Element {
  const { store } = useForm();
  const fetched = bodies.value;
  if (fetched === 'not yet') return <p class="field-help">One moment.</p>;
  if (fetched === 'failed') return <NotFetched />;
  return (
    <Guard store={store}>
      <fetched.Body {...props} />
    </Guard>
  );
}

/** One step: a line that says what it holds, and the fields once it has been opened. */
export function Step({ id, ...texts }: StepTexts & { id: StepId }): JSX.Element {
  const form = useForm();
  const place = steps.findIndex((step) => step.id === id);
  const { title, parts } = steps[place] ?? steps[0];
  const open = useComputed(() => form.open.value.includes(id));
  const summary = useComputed(() => stepSummary(id, form.pad.value));
  const wrong = useComputed(() => parts.reduce((sum, at) => sum + form.errorsIn(at).length, 0));
  const lacking = useComputed(() => parts.reduce((sum, at) => sum + form.notesIn(at).length, 0));
  useSignalEffect(() => {
    if (open.value && bodies.value === 'not yet') void fetchBodies();
  });
  const wasOpen = useRef(false);
  wasOpen.current ||= open.value;
  const turn = (isOpen: boolean) => {
    const others = form.open.peek().filter((each) => each !== id);
    if (isOpen !== form.open.peek().includes(id))
      form.open.value = isOpen ? [...others, id] : others;
  };
  return (
    <details
      class="form-step"
      id={stepElement(id)}
      open={open.value}
      onToggle={(event) => {
        if (event.target === event.currentTarget) turn(event.currentTarget.open);
      }}
    >
      <summary id={`${stepElement(id)}-head`}>
        <span class="form-step-number" aria-hidden="true">
          {place + 1}
        </span>
        <h2>{title}</h2>
        <span class="form-step-state">
          <span>{summary}</span>
          <State wrong={wrong.value} lacking={lacking.value} />
        </span>
      </summary>
      {wasOpen.current && (
        <div class="form-step-body">
          <StepBody id={id} {...texts} />
          <NextStep after={place} />
        </div>
      )}
    </details>
  );
}

function State({ wrong, lacking }: { wrong: number; lacking: number }): JSX.Element | null {
  if (wrong > 0) return <strong class="form-flag is-wrong">{wrong} to check</strong>;
  if (lacking > 0) return <span class="form-flag">{lacking} not said yet</span>;
  return null;
}

/** Closes this step and opens the next, so that a phone shows one at a time; the last leads to the day. */
function NextStep({ after }: { after: number }): JSX.Element | null {
  const form = useForm();
  const here = steps[after];
  const next = steps[after + 1];
  if (here === undefined) return null;
  if (next === undefined) {
    return (
      <a class="button form-next" href="/day/">
        Next: Day sheet
      </a>
    );
  }
  return (
    <button
      type="button"
      class="button form-next"
      onClick={() => {
        form.open.value = [...form.open.peek().filter((id) => id !== here.id), next.id];
        focusSoon(`${stepElement(next.id)}-head`);
      }}
    >
      Next: {next.title}
    </button>
  );
}
