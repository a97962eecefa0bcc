import type { JSX } from 'preact';
import { freshId } from '#pad/document/ids.ts';
import type { PadNeed } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import type { UnitChoice } from '#units/choice.ts';
import { format } from '#units/format.ts';
import { formatTimeOfDay } from '#units/timeOfDay.ts';
import { AddButton, Entry, EntryTools, focusSoon, More, RemoveButton, useIds } from './Entry.tsx';
import { ClockField, Findings, NumberField, PickField, WordsField } from './fields.tsx';
import { type Form, useForm } from './form.ts';
import { inserted, moved, waysIn, without } from './lists.ts';
import { elementId, type Spot, valueAtSpot } from './spot.ts';
import { isUsualNeed, usualNeed, usualNeeds } from './usual.ts';

type NeedKind = PadNeed['kind'];
type Basis = NonNullable<PadNeed['basis']>;

const needKinds = Object.keys(usualNeeds) as readonly NeedKind[];

/** What the water is wanted for. */
export function StepNeeds({ caution }: { caution: string }): JSX.Element {
  const form = useForm();
  const ids = useIds(() => form.pad.value.needs);
  const add = (kind: NeedKind) => {
    const need = usualNeed(freshId('need', form.pad.peek().needs), kind, form.units.peek().preset);
    form.fresh.value = need.id;
    form.change(
      ['needs'],
      (list: readonly PadNeed[]) => inserted(list, list.length, need),
      'a new need',
    );
  };
  return (
    <>
      <p>What is the water wanted for? Each need asks for a least flow, for so long a day.</p>
      <ol class="form-entries">
        {ids.map((id, place) => (
          <NeedEntry key={id} id={id} isFirst={place === 0} isLast={place === ids.length - 1} />
        ))}
      </ol>
      <p class="form-label" id="form-need-kinds">
        Add a need
      </p>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset would bring its own box and legend */}
      <div class="form-adders" role="group" aria-labelledby="form-need-kinds">
        {needKinds.map((kind) => (
          <AddButton key={kind} id={`form-need-add-${kind}`} onAdd={() => add(kind)}>
            {usualNeeds[kind].name}
          </AddButton>
        ))}
      </div>
      <p class="form-usual">
        New needs start with usual figures (common practice, no source). {caution}
      </p>
      <NumberField
        at={['turnoverTarget']}
        label="Turnovers wanted a day"
        hint="How often the whole volume should go round; leave empty if you do not care."
      />
    </>
  );
}

function needText(need: PadNeed, minutes: number | null, units: UnitChoice): string {
  const name = need.name || usualNeeds[need.kind].name;
  const flow =
    need.leastFlow === null ? 'flow not said yet' : format('flow', need.leastFlow, units);
  const time =
    minutes === null ? 'time not known yet' : `${format('duration', minutes * 60, units)} a day`;
  return `${name}, ${flow}, ${time}`;
}

/** Minutes a day as typed or worked out; null while neither is there. */
function minutesOf(form: Form, id: string): number | null {
  const pad = form.pad.value;
  const typed = pad.needs.find((need) => need.id === id)?.minutes ?? null;
  return typed ?? padModel(pad).needs.find((need) => need.id === id)?.minutes ?? null;
}

interface NeedProps {
  readonly id: string;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

function NeedEntry({ id, isFirst, isLast }: NeedProps): JSX.Element {
  const form = useForm();
  const at = ['needs', `@${id}`];
  const need = useComputed(() => valueAtSpot(form.pad.value, at) as PadNeed | undefined);
  const title = useComputed(() =>
    need.value === undefined ? '' : needText(need.value, minutesOf(form, id), form.units.value),
  );
  const ways = useComputed(() => {
    const { suction, discharge } = form.pad.value.plumbing;
    return JSON.stringify(waysIn([...suction, ...discharge]));
  });
  const isUsual = useComputed(() => need.value !== undefined && isUsualNeed(need.value));
  const placeIn = (list: readonly PadNeed[]) => list.findIndex((each) => each.id === id);
  const remove = () => {
    form.change(
      ['needs'],
      (list: readonly PadNeed[]) => without(list, placeIn(list)),
      'taking away a need',
    );
    focusSoon('form-need-add-skimming');
  };
  return (
    <li>
      <Entry id={id} elementId={elementId(at)} title={title}>
        <div class="form-fields">
          <WordsField at={[...at, 'name']} label="Name" what="the name of a need" />
          <div class="form-pair">
            <NumberField at={[...at, 'leastFlow']} label="Least flow" what="the flow of a need" />
            <NumberField
              at={[...at, 'greatestFlow']}
              label="Greatest flow"
              what="the greatest flow of a need"
            />
          </div>
          {ways.value !== '[]' && (
            <PickField
              at={[...at, 'branchId']}
              label="That flow must pass"
              what="where a need takes its flow"
              choices={JSON.parse(ways.value) as { id: string; label: string }[]}
              unsaid="The pump"
            />
          )}
          {isUsual.value && (
            <p class="form-usual">
              That least flow is a usual figure (common practice, no source). Take the manual’s.
            </p>
          )}
          <TimeADay at={at} id={id} />
          <NumberField
            at={[...at, 'shortestRun']}
            label="Shortest run"
            what="the shortest run of a need"
            writing="minutes"
            hint="Less at a stretch does no good; empty for none."
          />
          <Windows at={[...at, 'windows']} />
          <Findings at={at} />
        </div>
        <EntryTools
          name={title.value}
          elementId={elementId(at)}
          isFirst={isFirst}
          isLast={isLast}
          onRemove={remove}
          onMove={(by) =>
            form.change(
              ['needs'],
              (list: readonly PadNeed[]) => moved(list, placeIn(list), by),
              'moving a need',
            )
          }
        />
      </Entry>
    </li>
  );
}

const bases: Readonly<Record<Basis['kind'], Basis>> = {
  chlorine: { kind: 'chlorine', dailyUse: null, output: null },
  heat: { kind: 'heat', dailyRise: null, heaterPower: null },
};

const chlorineKinds: readonly NeedKind[] = ['saltCell'];
const heatKinds: readonly NeedKind[] = ['heating', 'solar'];

/** The time a day: typed, or worked out from what the pool uses up. */
function TimeADay({ at, id }: { at: Spot; id: string }): JSX.Element {
  const form = useForm();
  const need = useComputed(() => valueAtSpot(form.pad.value, at) as PadNeed | undefined);
  const basis = useComputed(() => need.value?.basis?.kind ?? 'typed');
  const kind = useComputed(() => need.value?.kind ?? 'filtering');
  const choices = [
    { id: 'typed', label: 'Typed' },
    ...(chlorineKinds.includes(kind.value) ? [{ id: 'chlorine', label: 'From chlorine use' }] : []),
    ...(heatKinds.includes(kind.value) ? [{ id: 'heat', label: 'From degrees lost' }] : []),
  ];
  const choose = (to: string) =>
    form.change(
      at,
      (before: PadNeed) =>
        to === 'typed'
          ? { ...before, basis: null, minutes: minutesOf(form, id) }
          : { ...before, basis: bases[to as Basis['kind']], minutes: null },
      'where the time of a need comes from',
    );
  const result = useComputed(() => {
    const minutes = minutesOf(form, id);
    return minutes === null ? '' : format('duration', minutes * 60, form.units.value);
  });
  return (
    <>
      {choices.length > 1 && (
        <ChoiceField
          id={`${elementId(at)}-basis`}
          label="Time a day"
          choices={choices}
          value={basis.value}
          apply={choose}
        />
      )}
      {basis.value === 'typed' && (
        <NumberField
          at={[...at, 'minutes']}
          label="Time a day"
          what="the time of a need"
          writing="minutes"
        />
      )}
      {basis.value === 'chlorine' && (
        <div class="form-pair">
          <NumberField
            at={[...at, 'basis', 'dailyUse']}
            label="Chlorine used a day"
            hint="Often 1 to 3 mg/L (common practice)."
          />
          <NumberField at={[...at, 'basis', 'output']} label="Cell makes" hint="On its label." />
        </div>
      )}
      {basis.value === 'heat' && (
        <div class="form-pair">
          <NumberField at={[...at, 'basis', 'dailyRise']} label="Degrees to make up a day" />
          <NumberField
            at={[...at, 'basis', 'heaterPower']}
            label="Heat into the water"
            hint="Output, not input."
          />
        </div>
      )}
      {basis.value !== 'typed' && result.value !== '' && (
        <p class="form-result">
          Works out at <strong>{result}</strong> a day.
        </p>
      )}
    </>
  );
}

type Window = PadNeed['windows'][number];

/** Times of day at which it may run. */
function Windows({ at }: { at: Spot }): JSX.Element {
  const form = useForm();
  const spans = useComputed(() =>
    ((valueAtSpot(form.pad.value, at) as readonly Window[] | undefined) ?? [])
      .map(({ start, end }) => `${formatTimeOfDay(start)} to ${formatTimeOfDay(end)}`)
      .join('\n'),
  );
  const all = spans.value === '' ? [] : spans.value.split('\n');
  const addId = `${elementId(at)}-add`;
  const add = () =>
    form.change(
      at,
      (list: readonly Window[]) => inserted(list, list.length, { start: 540, end: 1020 }),
      'a new time for a need',
    );
  return (
    <More title={all.length === 0 ? 'Allowed at any time' : `Allowed ${all.join(' and ')}`}>
      {all.map((words, place) => (
        <div key={String(place)} class="form-row">
          <ClockField at={[...at, place, 'start']} label="From" what="when a need may run" />
          <ClockField at={[...at, place, 'end']} label="To" what="when a need may run" />
          <RemoveButton
            name={words}
            onRemove={() => {
              form.change(
                at,
                (list: readonly Window[]) => without(list, place),
                'taking away a time for a need',
              );
              focusSoon(addId);
            }}
          />
        </div>
      ))}
      <AddButton id={addId} onAdd={add}>
        Add a time
      </AddButton>
    </More>
  );
}
