/** What is always at hand: undo, redo, units, and the way to the answers. */
import { signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { useForm } from './form.ts';
import { NotFetched } from './NotFetched.tsx';
import type { UnitsList } from './UnitsList.tsx';

/** The bar that stays in sight: at the top of the form on a desk, under the thumb on a phone. */
export function Tools({ answers }: { answers: string }): JSX.Element {
  return (
    <>
      <div class="form-bar" role="toolbar" aria-label="Undo, redo, units">
        <StepButton word="Undo" />
        <StepButton word="Redo" />
        <PresetSwitch id="form-bar-preset" label="System of units" />
        <button type="button" class="button button-quiet form-small" popovertarget="form-units">
          Units
        </button>
        <OtherSide answers={answers} />
      </div>
      <UnitsPanel />
    </>
  );
}

/** On a phone, the way to the answers and, from there, back to the form. */
function OtherSide({ answers }: { answers: string }): JSX.Element {
  const atAnswers = useSignal(false);
  useEffect(() => {
    const there = document.querySelector(answers);
    if (there === null) return;
    const watch = new IntersectionObserver(
      (entries) => {
        // Several may come at once, the oldest first; only the last is so now.
        atAnswers.value = entries.at(-1)?.isIntersecting ?? false;
      },
      // Answers that only show below the step one types in are not where the reader is.
      { rootMargin: '0px 0px -70% 0px' },
    );
    watch.observe(there);
    return () => watch.disconnect();
  }, [answers]);
  return (
    <a
      class="button form-small form-to-answers"
      href={atAnswers.value ? '#form-start-title' : answers}
    >
      {atAnswers.value ? 'Form' : 'Answers'}
    </a>
  );
}

function StepButton({ word }: { word: 'Undo' | 'Redo' }): JSX.Element {
  const form = useForm();
  const { store } = form;
  const label = word === 'Undo' ? store.undoLabel : store.redoLabel;
  const none = useComputed(() => label.value === null);
  return (
    <button
      type="button"
      class="button button-quiet form-small form-step-button"
      aria-disabled={none}
      onClick={word === 'Undo' ? form.undo : form.redo}
    >
      <span>{word}</span> <span class="form-what">{label}</span>
    </button>
  );
}

/** The choice of each unit on its own, fetched when the panel first opens. */
const unitsList = signal<typeof UnitsList | 'not yet' | 'failed'>('not yet');

async function fetchUnitsList(): Promise<void> {
  if (unitsList.peek() !== 'not yet' && unitsList.peek() !== 'failed') return;
  try {
    unitsList.value = (await import('./UnitsList.tsx')).UnitsList;
  } catch {
    unitsList.value = 'failed';
  }
}

/** The system of units, and the unit of each quantity on its own. */
function UnitsPanel(): JSX.Element {
  return (
    <div
      id="form-units"
      class="form-units"
      popover="auto"
      role="dialog"
      aria-label="Units"
      onBeforeToggle={fetchUnitsList}
    >
      <div class="form-units-head">
        <PresetSwitch
          id="form-units-preset"
          label="Units"
          hint="Changing them never changes a value or an answer."
        />
        <button
          type="button"
          class="button button-quiet form-small"
          popovertarget="form-units"
          popovertargetaction="hide"
        >
          Done
        </button>
      </div>
      <p class="field-help">Or a unit for each quantity:</p>
      <FetchedList />
    </div>
  );
}

function FetchedList(): JSX.Element {
  const List = unitsList.value;
  if (List === 'not yet') return <p class="field-help">One moment.</p>;
  if (List === 'failed') return <NotFetched />;
  return <List />;
}

interface PresetProps {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
}

const presetChoices = [
  { id: 'us', label: 'US' },
  { id: 'metric', label: 'Metric' },
] as const;

/** US or metric; units chosen apart go back to the system’s own. */
export function PresetSwitch(props: PresetProps): JSX.Element {
  const form = useForm();
  const preset = useComputed(() => form.units.value.preset);
  return (
    <ChoiceField
      {...props}
      choices={presetChoices}
      value={preset}
      apply={(id) => form.set(['units'], { preset: id, overrides: {} }, 'the system of units')}
    />
  );
}
