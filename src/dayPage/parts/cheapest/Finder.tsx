import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { Ring } from '#dayPage/day/Compare.tsx';
import { segmentOf, type WorkedDay } from '#dayPage/day/figures.ts';
import type { DayModel } from '#dayPage/day/model.ts';
import { ScrollBox } from '#dayPage/day/ScrollBox.tsx';
import { lengthText, rpmText, spanText } from '#dayPage/day/text.ts';
import { reasoned } from '#dayPage/planning/plannerInputs.ts';
import { ChoiceField, SelectField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { minutesEntry } from '#ui/controls/minutesEntry.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { Announce } from '#ui/figure/Announce.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import { needName } from '#words/needsAndLimits.ts';
import { createFinder, type FinderModel, type NeedDial } from './model.ts';
import { startSearch } from './search.ts';
import { findingText } from './text.ts';
import { worthTexts } from './worthText.ts';

/** Looks for the cheapest day and shows it beside the one on the sheet. */
export function Finder({ id, day }: { readonly id: string; readonly day: DayModel }): JSX.Element {
  const model = useMemo(() => createFinder(day, startSearch), [day]);
  useEffect(model.follow, [model]);
  const finding = useComputed(() => findingText(model));
  return (
    <div class="cheapest">
      <Wishes id={id} model={model} />
      <div class="cheapest-found">
        <p class="cheapest-finding">{finding}</p>
        <Progress model={model} />
        <Found model={model} />
      </div>
      <Announce sentence={finding} />
    </div>
  );
}

const changeChoices = [
  { id: 'any', label: 'As many as it takes' },
  ...[8, 6, 4, 3, 2].map((most) => ({ id: String(most), label: `${most} at most` })),
];

/** What is asked for: it starts as the pad has it, and trying changes nothing there. */
function Wishes({ id, model }: { id: string; model: FinderModel }): JSX.Element {
  const changes = useComputed(() => String(model.mostChanges.value ?? 'any'));
  const stop = useComputed(() => (model.mayStop.value ? 'may' : 'never'));
  const isTried = model.isTried.value;
  return (
    <div class="cheapest-wishes needs-script">
      <Turnovers id={`${id}-turnovers`} model={model} />
      {model.needs.value.map((each) => (
        <NeedHours key={each.need.id} id={`${id}-need-${each.need.id}`} need={each} model={model} />
      ))}
      <SelectField
        id={`${id}-changes`}
        label="Changes of speed in a day"
        choices={changeChoices}
        value={changes}
        apply={(choice) => {
          model.mostChanges.value = choice === 'any' ? null : Number(choice);
        }}
      />
      <ChoiceField
        id={`${id}-stop`}
        label="The pump"
        choices={[
          { id: 'may', label: 'may stand still' },
          { id: 'never', label: 'never stands still' },
        ]}
        value={stop}
        apply={(choice) => {
          model.mayStop.value = choice === 'may';
        }}
      />
      {isTried && (
        <button type="button" class="button button-quiet" onClick={model.reset}>
          Back to what the pad asks
        </button>
      )}
    </div>
  );
}

function Turnovers({ id, model }: { id: string; model: FinderModel }): JSX.Element {
  const { turnovers: dial, day } = model;
  const entry = useMemo(() => plainEntry('number of turnovers', { least: 0 }), []);
  const spoken = useComputed(() => {
    const volume = day.bench.value?.volume ?? null;
    const water =
      volume === null ? '' : `, ${speak('volume', dial.value.value * volume, day.units.value)}`;
    return `${dial.value.value.toFixed(1)} turnovers${water}`;
  });
  return (
    <RangeField
      id={id}
      label="Water to move"
      dial={dial}
      spoken={spoken}
      entry={entry}
      unit="turnovers"
    />
  );
}

interface NeedHoursProps {
  readonly id: string;
  readonly need: NeedDial;
  readonly model: FinderModel;
}

function NeedHours({ id, need: { need, dial }, model }: NeedHoursProps): JSX.Element {
  const name = needName(need);
  const { units } = model.day;
  const entry = useComputed(() => minutesEntry(name, units.value));
  const unit = useComputed(() => symbolFor(units.value, 'duration'));
  const spoken = useComputed(() => lengthText(dial.value.value));
  return <RangeField id={id} label={name} dial={dial} spoken={spoken} entry={entry} unit={unit} />;
}

function Progress({ model }: { model: FinderModel }): JSX.Element | null {
  const searching = model.searching.value;
  if (searching.kind !== 'searching') return null;
  const gap = searching.progress?.gap ?? 1;
  return (
    <div class="cheapest-progress">
      <progress
        aria-label="How near the search is to its end"
        max={1}
        // The last thousandth is where it stops; its logarithm moves evenly.
        value={Math.min(1, Math.max(0, -Math.log10(Math.max(gap, 1e-4)) / 3))}
      />
      <button type="button" class="button button-quiet" onClick={model.cancel}>
        Call off
      </button>
    </div>
  );
}

function Found({ model }: { model: FinderModel }): JSX.Element | null {
  const worked = model.worked.value;
  const here = model.day.here.value;
  if (worked === null) return null;
  return (
    <>
      <div class="day-rings">
        <Ring title="The cheapest day" day={worked} model={model.day} />
        {here !== null && <Ring title="The day on your sheet" day={here} model={model.day} />}
      </div>
      <BlockTable model={model} worked={worked} />
      <p class="needs-script">
        <button type="button" class="button" onClick={model.lay}>
          Lay this day on the sheet
        </button>
      </p>
      <h3>What makes it dear</h3>
      <ul class="cheapest-worth">
        {worthTexts(model).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </>
  );
}

function BlockTable({ model, worked }: { model: FinderModel; worked: WorkedDay }): JSX.Element {
  const units = model.day.units.value;
  const at = (id: string) => segmentOf(worked.report, id);
  return (
    <ScrollBox label="The blocks of the cheapest day">
      <table class="day-table">
        <caption>The blocks of the cheapest day</caption>
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">Speed</th>
            <th scope="col">Flow</th>
            <th scope="col">Power</th>
            <th class="is-words" scope="col">
              Serves
            </th>
          </tr>
        </thead>
        <tbody>
          {reasoned(model.blocks.value, worked).map((block) => (
            <tr key={block.id}>
              <th scope="row">{spanText(block)}</th>
              <td>{rpmText(block.speed, units)}</td>
              <td>{format('flow', at(block.id)?.flow ?? 0, units)}</td>
              <td>{format('power', at(block.id)?.power ?? 0, units)}</td>
              <td class="is-words">{block.reason}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
