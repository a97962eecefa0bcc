import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import type { DayModel } from '#dayPage/day/model.ts';
import { FileField } from '#dayPage/fileInput/FileField.tsx';
import { startReading } from '#dayPage/fileInput/startReading.ts';
import { Frame } from '#ui/charts/Frame.tsx';
import { Curve, CurveLabel } from '#ui/charts/marks.tsx';
import { Table } from '#ui/charts/Table.tsx';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { useSettled } from '#ui/controls/settle.ts';
import { Announce } from '#ui/figure/Announce.tsx';
import { type Against, createMeterCheck, type Measures, type MeterModel } from './model.ts';
import { drawnOf } from './picture.ts';
import { besideText, dayTable, fileText, findingText, hourTable } from './text.ts';

/** How long the pad keeps still before a year of plans is worked out anew [ms]. */
const rest = 300;

/** A meter file held against the day on the sheet. */
export function MeterCheck({
  id,
  day,
}: {
  readonly id: string;
  readonly day: DayModel;
}): JSX.Element {
  const pad = useSettled(day.pad, rest);
  const model = useMemo(() => createMeterCheck(day, pad, startReading), [day, pad]);
  useEffect(() => model.file.stop, [model]);
  const finding = useComputed(() => findingText(model));
  return (
    <div class="meter-check">
      <Asked id={id} model={model} />
      <Found model={model} />
      <Announce sentence={finding} />
    </div>
  );
}

function Asked({ id, model }: { id: string; model: MeterModel }): JSX.Element {
  return (
    <div class="meter-asked needs-script">
      <ChoiceField
        id={`${id}-measures`}
        label="The meter measures"
        choices={[
          { id: 'house', label: 'the whole house' },
          { id: 'pump', label: 'the pump alone' },
        ]}
        value={model.measures}
        apply={(choice) => {
          model.measures.value = choice as Measures;
        }}
      />
      {model.hasPlans.value && (
        <ChoiceField
          id={`${id}-against`}
          label="Held against"
          choices={[
            { id: 'year', label: 'the plans of the year' },
            { id: 'day', label: 'the day on the sheet' },
          ]}
          value={model.against}
          apply={(choice) => model.holdAgainst(choice as Against)}
        />
      )}
      <FileField
        id={`${id}-file`}
        want="meter"
        label="Meter file"
        hint="Green Button XML, or a table saved as CSV: one row an interval, with its start and its kWh, Wh, kW or W. Up to 50 MB. It is read on this device and sent nowhere; nothing of it is kept."
        accept=".xml,.csv,.txt,text/csv,text/xml,application/xml"
        model={model.file}
      />
      <Sample model={model} />
    </div>
  );
}

function Sample({ model }: { model: MeterModel }): JSX.Element | null {
  if (!model.hasDay.value) {
    return (
      <p>
        The pad does not say enough yet for a day to hold a meter against: it needs a pump and its
        plumbing.
      </p>
    );
  }
  const isLoaded = model.file.loaded.value !== null;
  return (
    <div class="meter-buttons">
      <button type="button" class="button button-quiet" onClick={model.trySample}>
        Try it with an invented meter file
      </button>
      {isLoaded && (
        <button type="button" class="button button-quiet" onClick={model.file.forget}>
          Put the file away
        </button>
      )}
    </div>
  );
}

function Found({ model }: { model: MeterModel }): JSX.Element | null {
  const finding = useComputed(() => findingText(model));
  const beside = useComputed(() => besideText(model));
  const hours = useComputed(() => hourTable(model));
  const days = useComputed(() => dayTable(model));
  if (model.held.value === null) return null;
  const [what = '', ...notes] = fileText(model);
  return (
    <>
      <p class="cheapest-finding">{finding}</p>
      {beside.value !== '' && <p class="meter-beside">{beside}</p>}
      <Picture model={model} />
      <p class="meter-file">{what}</p>
      {notes.length > 0 && (
        <ul class="meter-notes">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      <Table data={hours} summary="By the hour, as a table" />
      <Table data={days} summary="Day by day, as a table" />
    </>
  );
}

/** Modelled and metered power by the hour of the day. */
function Picture({ model }: { model: MeterModel }): JSX.Element | null {
  const drawn = useComputed(() => drawnOf(model)).value;
  if (drawn === null) return null;
  const isLifted = drawn.restLabel !== undefined;
  const says = isLifted
    ? 'The mean day: the meter dashed; dotted the pump as modelled, standing on what the rest of the house draws. Where the two jump alike, the pump does what the day says.'
    : 'The mean day: the meter dashed, the pump as modelled dotted.';
  return (
    <>
      <p class="meter-says">{says}</p>
      <Frame
        x={drawn.x}
        y={drawn.y}
        title="Metered and modelled power by the hour of the day"
        drawing={
          <>
            {isLifted && <Curve d={drawn.rest} of="plain" faint />}
            <Curve d={drawn.modelled} of="power" />
            <g class="meter-line">
              <Curve d={drawn.metered} of="power" />
            </g>
          </>
        }
        labels={
          <>
            {drawn.modelledLabel && (
              <CurveLabel
                of="power"
                text={isLifted ? 'with the pump as modelled' : 'pump as modelled'}
                at={drawn.modelledLabel}
              />
            )}
            {drawn.meteredLabel && (
              <CurveLabel of="power" text="metered" at={drawn.meteredLabel} strong />
            )}
            {drawn.restLabel && (
              <CurveLabel of="plain" text="rest of the house" at={drawn.restLabel} />
            )}
          </>
        }
      />
    </>
  );
}
