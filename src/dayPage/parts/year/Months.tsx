import type { JSX } from 'preact';
import { MonthBars, type MonthSeries } from '#ui/charts/MonthBars.tsx';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import type { Amounts, BesideKind, OtherPlan } from './beside.ts';
import type { Measure, YearModel } from './model.ts';
import {
  besideTitle,
  capital,
  measureNames,
  measureWords,
  otherPlanNames,
  shortMonths,
} from './text.ts';

interface PartProps {
  readonly id: string;
  readonly model: YearModel;
}

/** What the picture shows, and beside which year. */
export function MonthChoices({ id, model }: PartProps): JSX.Element {
  const shown = model.shown.value;
  return (
    <div class="year-choices needs-script">
      <ChoiceField
        id={`${id}-measure`}
        label="Month by month"
        choices={model.measures.value.map((which) => ({ id: which, label: measureNames[which] }))}
        value={model.measure.value}
        apply={(which) => model.setMeasure(which as Measure)}
      />
      {shown !== null && (
        <ChoiceField
          id={`${id}-beside`}
          label="Beside"
          choices={model.besides.value.map(({ kind }) => ({
            id: kind,
            label: kind === 'plan' ? 'The same pump, another plan' : besideTitle(model, kind),
          }))}
          value={shown.kind}
          apply={(kind) => model.show(kind as BesideKind)}
        />
      )}
      {shown?.kind === 'plan' && model.plans.value.length > 1 && (
        <ChoiceField
          id={`${id}-plan`}
          label="Its plan, all year"
          choices={model.plans.value.map((which) => ({
            id: which,
            label: capital(otherPlanNames[which]),
          }))}
          value={model.otherPlan.value}
          apply={(which) => model.setOtherPlan(which as OtherPlan)}
        />
      )}
    </div>
  );
}

/** The twelve months of the reader's year, beside those of another. */
export function Months({ model }: { model: YearModel }): JSX.Element | null {
  const [side, other] = [model.side.value, model.shown.value];
  if (side === null) return null;
  const words = measureWords(model, model.measure.value);
  const amounts = (months: readonly Amounts[]): readonly number[] | null => {
    const known = months.map(words.of).filter((value) => value !== null);
    return known.length === 12 ? known : null;
  };
  const mine = amounts(side.months);
  const others = other === null ? null : amounts(other.months);
  if (mine === null) return null;
  const first: MonthSeries = { id: 'mine', name: 'Your year', amounts: mine };
  const second: MonthSeries | undefined =
    other === null || others === null
      ? undefined
      : { id: 'other', name: besideTitle(model, other.kind), amounts: others };
  if ([...mine, ...(others ?? [])].every((amount) => amount === 0)) {
    return (
      <p class="field-help">
        {measureNames[model.measure.value]}: {words.say(0)} in every month, so there is nothing to
        draw.
      </p>
    );
  }
  return (
    <div class="year-months-plot">
      <MonthBars
        first={first}
        second={second}
        of={words.mark}
        title={words.title}
        unit={words.unit}
        shownAs={words.shownAs}
        months={shortMonths}
      />
      {other !== null && others === null && (
        <p class="field-help">
          How much water {besideTitle(model, other.kind).toLowerCase()} moved is not known: only its
          watts and hours are.
        </p>
      )}
    </div>
  );
}
