import type { JSX } from 'preact';
import { freshId } from '#pad/document/ids.ts';
import { newReading } from '#pad/document/parts.ts';
import type { Reading } from '#pad/document/schema.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { format } from '#units/format.ts';
import { AddButton, Entry, focusSoon, More, RemoveButton, useIds } from './Entry.tsx';
import { Findings, NumberField, PickField } from './fields.tsx';
import { useForm } from './form.ts';
import { inserted } from './lists.ts';
import { elementId, valueAtSpot } from './spot.ts';

/** What the instruments showed, one entry a speed. */
export function StepReadings({ caution }: { caution: string }): JSX.Element {
  const form = useForm();
  const ids = useIds(() => form.pad.value.readings);
  const add = () => {
    const id = freshId('reading', form.pad.peek().readings);
    form.fresh.value = id;
    form.change(
      ['readings'],
      (list: readonly Reading[]) => inserted(list, list.length, newReading(id)),
      'a new reading',
    );
  };
  return (
    <>
      <p>
        One filter gauge, the speed and the watts the drive shows are enough. Read them at the
        fastest speed and at a slow one; wait until the needle rests.
      </p>
      <ol class="form-entries">
        {ids.map((id) => (
          <ReadingEntry key={id} id={id} />
        ))}
      </ol>
      <AddButton id="form-readings-add" onAdd={add}>
        Add a reading
      </AddButton>
      <More title="How good the instruments are">
        <Gauge at="filterGauge" name="Filter gauge" />
        <Gauge at="vacuumGauge" name="Vacuum gauge" />
        <div class="form-pair">
          <NumberField
            at={['instruments', 'meterShare']}
            label="Flow meter good to"
            what="the accuracy of the flow meter"
          />
          <NumberField
            at={['instruments', 'powerShare']}
            label="Watts good to"
            what="the accuracy of the watts"
          />
        </div>
      </More>
      <p class="caution">{caution}</p>
    </>
  );
}

function ReadingEntry({ id }: { id: string }): JSX.Element {
  const form = useForm();
  const at = ['readings', `@${id}`];
  const reading = useComputed(() => valueAtSpot(form.pad.value, at) as Reading | undefined);
  const title = useComputed(() => {
    const now = reading.value;
    return now === undefined ? '' : readingText(now, form.units.value);
  });
  const hasMore = useComputed(() => {
    const now = reading.value;
    return [now?.flow, now?.suctionVacuum, now?.gaugeHeight, now?.current].some(
      (value) => typeof value === 'number',
    );
  });
  const remove = () => {
    form.change(
      ['readings'],
      (list: readonly Reading[]) => list.filter((each) => each.id !== id),
      'taking away a reading',
    );
    focusSoon('form-readings-add');
  };
  const number = (field: keyof Reading, label: string, what: string, hint?: string) => (
    <NumberField
      at={[...at, field]}
      label={label}
      what={`the ${what} of a reading`}
      {...(hint === undefined ? {} : { hint })}
    />
  );
  return (
    <li>
      <Entry id={id} elementId={elementId(at)} title={title}>
        <div class="form-fields">
          {number('speed', 'Speed', 'speed')}
          <div class="form-pair">
            {number('filterPressure', 'Filter gauge', 'filter gauge')}
            {number('power', 'Power the drive shows', 'power')}
          </div>
          <More title="More instruments" open={hasMore.value}>
            {number('suctionVacuum', 'Vacuum gauge', 'vacuum gauge', 'Before the pump.')}
            {number(
              'gaugeHeight',
              'Height of the filter gauge',
              'gauge height',
              'Above the vacuum gauge or, without one, above the pool surface.',
            )}
            <div class="form-pair">
              {number('flow', 'Flow meter', 'flow')}
              {number('current', 'Current', 'current')}
            </div>
          </More>
          <Findings at={at} />
        </div>
        <div class="form-tools">
          <RemoveButton name={title.value} onRemove={remove} />
        </div>
      </Entry>
    </li>
  );
}

function readingText(reading: Reading, units: Parameters<typeof format>[2]): string {
  const { speed, filterPressure, power, flow } = reading;
  const said = [
    speed === null ? 'No speed yet' : format('speed', speed, units),
    filterPressure === null ? '' : format('pressure', filterPressure, units),
    power === null ? '' : format('power', power, units),
    flow === null ? '' : format('flow', flow, units),
  ];
  return said.filter((part) => part !== '').join(', ');
}

/** Accuracy grades by ASME B40.100, ordinary ones first. */
const grades = [
  { id: 'B', label: 'B (ordinary)' },
  { id: 'C', label: 'C' },
  { id: 'D', label: 'D (rough)' },
  { id: 'A', label: 'A' },
  { id: '1A', label: '1A' },
  { id: '2A', label: '2A' },
  { id: '3A', label: '3A' },
  { id: '4A', label: '4A (test gauge)' },
];

function Gauge({ at, name }: { at: 'filterGauge' | 'vacuumGauge'; name: string }): JSX.Element {
  const what = name.toLowerCase();
  return (
    <div class="form-pair">
      <NumberField
        at={['instruments', at, 'span']}
        label={`${name}, full scale`}
        what={`the span of the ${what}`}
      />
      <PickField
        at={['instruments', at, 'grade']}
        label={`${name}, grade`}
        what={`the grade of the ${what}`}
        choices={grades}
        unsaid="Not said: B"
      />
    </div>
  );
}
