import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import type { SeasonPlan } from '#pad/document/schema.ts';
import type { NamedNeed } from '#pad/model/assembleNeeds.ts';
import { SelectField, ToggleField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { QuantityField, TextField } from '#ui/controls/TextFields.tsx';
import { monthNames } from '#units/monthNames.ts';
import { needName } from '#words/needsAndLimits.ts';
import type { YearModel } from './model.ts';
import { cheapestStep } from './plans.ts';
import { needsOfSeason } from './seasons.ts';
import { saidText, seasonShortText, seasonText } from './seasonText.ts';

interface PartProps {
  readonly id: string;
  readonly model: YearModel;
}

/** As many plans as a pad may hold. */
const mostPlans = 12;

/** Day plans by season: what holds when, and for which needs. */
export function Plans({ id, model }: PartProps): JSX.Element {
  const { plans } = model.given.value;
  return (
    <fieldset class="year-group">
      <legend>Days by season</legend>
      {plans.length === 0 && (
        <p class="field-help">
          The day on your sheet holds all year, with every need. Give a season a day of its own, and
          say which needs hold in it.
        </p>
      )}
      {plans.map((plan) => (
        <Season key={plan.id} id={`${id}-${plan.id}`} model={model} plan={plan} />
      ))}
      {plans.length < mostPlans && <NewPlan id={id} model={model} />}
    </fieldset>
  );
}

interface DayFieldsProps {
  readonly id: string;
  readonly month: number;
  readonly day: number;
  readonly apply: (month: number, day: number) => void;
}

const dayChoices = Array.from({ length: 31 }, (_, index) => ({
  id: String(index + 1),
  label: String(index + 1),
}));
const monthChoices = monthNames.map((label, index) => ({ id: String(index + 1), label }));

/** A first day of any year, in two lists. */
function DayFields({ id, month, day, apply }: DayFieldsProps): JSX.Element {
  return (
    <>
      <SelectField
        id={`${id}-day`}
        label="From day"
        choices={dayChoices}
        value={String(day)}
        apply={(choice) => apply(month, Number(choice))}
      />
      <SelectField
        id={`${id}-month`}
        label="Month"
        choices={monthChoices}
        value={String(month)}
        apply={(choice) => apply(Number(choice), day)}
      />
    </>
  );
}

function NewPlan({ id, model }: PartProps): JSX.Element {
  const month = useSignal(5);
  const day = useSignal(1);
  return (
    <div class="year-row">
      <DayFields
        id={`${id}-from`}
        month={month.value}
        day={day.value}
        apply={(nextMonth, nextDay) => {
          month.value = nextMonth;
          day.value = nextDay;
        }}
      />
      <button
        type="button"
        class="button button-quiet"
        onClick={() => model.addPlan(month.value, day.value)}
      >
        Use the day on the sheet from then on
      </button>
    </div>
  );
}

interface SeasonProps extends PartProps {
  readonly plan: SeasonPlan;
}

/** One plan: its name, its first day, its needs, how it fares, and a cheaper one in its place. */
function Season({ id, model, plan }: SeasonProps): JSX.Element {
  const needs = needsOfSeason(model.day.pad.value, plan);
  const holding = needs.filter(({ holds }) => holds).length;
  const facts = model.seasons.value.find((each) => each.plan.id === plan.id);
  return (
    <section class="year-season" aria-label={plan.name || 'A season without a name'}>
      <div class="year-row">
        <TextField
          id={`${id}-name`}
          label="Season"
          value={plan.name}
          apply={(name) => model.renamePlan(plan.id, name ?? '')}
        />
        <DayFields
          id={`${id}-first`}
          {...plan.from}
          apply={(month, day) => model.movePlan(plan.id, month, day)}
        />
      </div>
      {facts !== undefined && (
        <p class="year-facts">
          {seasonText(model, facts)} <strong>{seasonShortText(facts, holding)}</strong>
        </p>
      )}
      {needs.length > 0 && <Needs id={id} model={model} plan={plan} needs={needs} />}
      <Cheaper id={id} model={model} plan={plan} />
    </section>
  );
}

interface NeedsProps extends SeasonProps {
  readonly needs: readonly { readonly need: NamedNeed; readonly holds: boolean }[];
}

function Needs({ id, model, plan, needs }: NeedsProps): JSX.Element {
  return (
    <fieldset class="year-needs">
      <legend>Needs that hold in this season</legend>
      {needs.map(({ need, holds }) => (
        <ToggleField
          key={need.id}
          id={`${id}-holds-${need.id}`}
          label={needName(need)}
          value={holds}
          apply={(on) => model.holdNeed(plan.id, need.id, on)}
        />
      ))}
    </fieldset>
  );
}

/** The cheapest day for the season in one tap, and what came of it. */
function Cheaper({ id, model, plan }: SeasonProps): JSX.Element {
  const entry = useMemo(() => plainEntry('number of turnovers', { least: 0, greatest: 50 }), []);
  const turnovers = useComputed(() => model.turnoversOf(plan.id));
  const { store } = model.day;
  const said = model.said.value;
  const isUndoable = store.undoLabel.value === cheapestStep;
  const words =
    said === null || said.id !== plan.id || (said.said.kind === 'found' && !isUndoable)
      ? null
      : saidText(model, said);
  return (
    <>
      <div class="year-row">
        <QuantityField
          id={`${id}-turnovers`}
          label="Water to move"
          value={turnovers}
          entry={entry}
          unit="turnovers a day"
          whenEmpty="Give a number here."
          apply={(wish) => wish !== undefined && model.wishTurnovers(plan.id, wish)}
        />
        <button type="button" class="button" onClick={() => model.layCheapest(plan.id)}>
          Take the cheapest day for this season
        </button>
      </div>
      <div aria-live="polite">
        {words !== null && (
          <p class="year-facts">
            {words}{' '}
            {said?.said.kind === 'found' && (
              <button type="button" class="button button-quiet" onClick={store.undo}>
                Undo the cheapest day
              </button>
            )}
          </p>
        )}
      </div>
      <div class="year-row year-steps">
        <button type="button" class="button button-quiet" onClick={() => model.layOnSheet(plan.id)}>
          Show it on the sheet
        </button>
        <button
          type="button"
          class="button button-quiet"
          onClick={() => model.addPlan(plan.from.month, plan.from.day)}
        >
          Put the day on the sheet in its place
        </button>
        <button type="button" class="button button-quiet" onClick={() => model.removePlan(plan.id)}>
          Remove
        </button>
      </div>
    </>
  );
}
