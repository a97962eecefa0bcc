import { type ReadonlySignal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { judge } from '#course/Check/question.ts';
import { keptUnits } from '#pad/store/keptUnits.ts';
import { learning, markPassed, recallLearning } from '#pad/store/learning.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { QuantityField } from '#ui/controls/TextFields.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { type UnitChoice, us } from '#units/choice.ts';
import { symbolFor } from '#units/format.ts';
import type { CapstoneStep } from './worked.ts';

interface ViewProps {
  readonly id: string;
  /** The steps in either system of units. */
  readonly steps: Readonly<Record<UnitChoice['preset'], readonly CapstoneStep[]>>;
}

/** The whole way from two gauges to a priced day, one number at a time. */
function CapstoneSteps({ id, steps }: ViewProps): JSX.Element {
  const units = useSignal<UnitChoice>(us);
  useEffect(() => {
    recallLearning();
    units.value = keptUnits() ?? us;
  }, []);
  const shown = steps[units.value.preset];
  const passed = useComputed(
    () => shown.filter((step) => learning.value.passed[`${id}-${step.id}`] === true).length,
  );
  return (
    <div class="capstone">
      <p class="capstone-progress needs-script" role="status">
        {passed.value === shown.length
          ? 'All steps are done. The day sheet below is the day you worked out.'
          : `${passed.value} of ${shown.length} steps done.`}
      </p>
      <ol class="capstone-steps">
        {shown.map((step) => (
          <Step key={step.id} id={`${id}-${step.id}`} step={step} units={units} />
        ))}
      </ol>
    </div>
  );
}

export default guarded(CapstoneSteps);

interface StepProps {
  readonly id: string;
  readonly step: CapstoneStep;
  readonly units: ReadonlySignal<UnitChoice>;
}

function Step({ id, step, units }: StepProps): JSX.Element {
  const { title, prompt, quantity, working, shown } = step;
  const given = useSignal<number | undefined>(undefined);
  const verdict = useSignal<{ right: boolean; says: string } | undefined>(undefined);
  const entry = useMemo(
    () => (quantity === null ? plainEntry('answer') : quantityEntry(quantity, units.value)),
    [quantity, units.value],
  );
  const unit = quantity === null ? step.unit : symbolFor(units.value, quantity);
  const done = learning.value.passed[id] === true;
  const submit = (event: Event) => {
    event.preventDefault();
    if (given.value === undefined) {
      verdict.value = { right: false, says: 'Give a number first.' };
      return;
    }
    const found = judge(step, given.value);
    verdict.value = found.right ? { right: true, says: `Right. Go on with ${shown}.` } : found;
    if (found.right) markPassed(id);
  };
  return (
    <li class="check capstone-step" data-done={done}>
      <p class="check-prompt" id={`${id}-prompt`}>
        <span class="capstone-title">{title}.</span> {prompt}
      </p>
      <form class="check-answer needs-script" onSubmit={submit} aria-labelledby={`${id}-prompt`}>
        <QuantityField
          key={units.value.preset}
          id={`${id}-answer`}
          label={`Your answer: ${title.toLowerCase()}`}
          value={given}
          entry={entry}
          {...(unit !== undefined && { unit })}
          apply={(value) => {
            given.value = value;
          }}
        />
        <button type="submit" class="button">
          Check
        </button>
      </form>
      <p class="check-verdict" role="status" data-right={verdict.value?.right}>
        {verdict.value?.says ?? (done ? 'Done before.' : '')}
      </p>
      <details class="check-working">
        <summary>Show the working</summary>
        {working.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </details>
    </li>
  );
}
