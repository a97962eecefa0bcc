import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { PumpKnowledge } from '#pad/document/schema.ts';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { Problem } from '#ui/controls/Field.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { symbolFor } from '#units/format.ts';
import { type CurvePoint, knowledgeAs, noPoint, pastedPoints } from './curvePoints.ts';
import { AddButton, More, RemoveButton } from './Entry.tsx';
import { Faults, Findings, NumberField, OneOfField, WordsField } from './fields.tsx';
import { type Form, useForm } from './form.ts';
import { inserted, without } from './lists.ts';

const knowledgeAt = ['pump', 'knowledge'] as const;
const pointsAt = [...knowledgeAt, 'points'] as const;

/** The pump: its speeds, and what is known of its curve. */
export function StepPump({ caution }: { caution: string }): JSX.Element {
  const form = useForm();
  const kind = useComputed(() => form.pad.value.pump.knowledge.kind as string);
  return (
    <div class="form-fields">
      <WordsField at={['pump', 'name']} label="Name" what="the name of the pump" />
      <NumberField
        at={['pump', 'referenceSpeed']}
        label="Rated speed"
        hint="The speed its curve or nameplate is stated at, often 3450 or 2900 rpm."
      />
      <div class="form-pair">
        <NumberField at={['pump', 'leastSpeed']} label="Slowest speed" />
        <NumberField at={['pump', 'topSpeed']} label="Fastest speed" />
      </div>
      <ChoiceField
        id="form-knowledge"
        label="What do you know of it?"
        hint="Readings in the next step sharpen any of these."
        choices={[
          { id: 'nameplate', label: 'Nameplate' },
          { id: 'powerLaw', label: 'Three points' },
          { id: 'curve', label: 'Its curve' },
        ]}
        value={kind}
        apply={(id) =>
          form.change(
            knowledgeAt,
            (before: PumpKnowledge) => knowledgeAs(id as PumpKnowledge['kind'], before),
            'what is known of the pump',
          )
        }
      />
      {kind.value === 'nameplate' ? <Nameplate /> : <Points />}
      <Findings at={['pump']} />
      <More title="Step, voltage, efficiency">
        <div class="form-pair">
          <NumberField
            at={['pump', 'speedStep']}
            label="Speed step"
            hint="Empty when any speed can be set."
          />
          <NumberField at={['pump', 'voltage']} label="Voltage" />
        </div>
        <NumberField
          at={['pump', 'fixedPower']}
          label="Fixed draw"
          hint="Watts that do not fall with speed: electronics and fan. Watts of a data sheet hold it already."
        />
        <NumberField
          at={['pump', 'standbyPower']}
          label="Watts while the pump is stopped"
          hint="What its drive and controls draw then. Empty counts as 0 W."
        />
        <div class="form-pair">
          <NumberField
            at={['pump', 'efficiency']}
            label="Best efficiency"
            hint="Water over shaft."
          />
          <NumberField
            at={['pump', 'driveEfficiency']}
            label="Drive efficiency"
            hint="Shaft over wire."
          />
        </div>
      </More>
      <More title="Speeds it runs at by itself">
        <div class="form-pair">
          <NumberField
            at={['pump', 'primingSpeed']}
            label="Priming speed"
            hint="The speed at each start, from its settings."
          />
          <NumberField
            at={['pump', 'primingMinutes']}
            label="Priming time"
            what="how long the pump primes"
            writing="minutes"
            hint="The day counts it at every start."
          />
        </div>
        <NumberField
          at={['pump', 'overrideSpeed']}
          label="Fastest override"
          hint="The fastest speed a quick clean, a button or an outside control can call for. It must stay below the stop of the suction covers."
        />
      </More>
      <p class="caution">{caution}</p>
    </div>
  );
}

function Nameplate(): JSX.Element {
  const form = useForm();
  const means = useComputed(() => {
    const { knowledge } = form.pad.value.pump;
    return knowledge.kind === 'nameplate' && knowledge.power !== null;
  });
  return (
    <>
      <NumberField
        at={[...knowledgeAt, 'power']}
        label="Rated power"
        hint="You may type “1.5 hp” or “1.1 kW”."
      />
      {means.value && (
        <OneOfField
          at={[...knowledgeAt, 'powerMeans']}
          label="That power is"
          what="what the rated power means"
          choices={[
            { id: 'shaft', label: 'At the shaft' },
            { id: 'wire', label: 'Drawn from the wire' },
          ]}
        />
      )}
      <p class="field-help">If the plate or the box names a flow and a head, type both.</p>
      <div class="form-pair">
        <NumberField at={[...knowledgeAt, 'flow']} label="Best flow" />
        <NumberField at={[...knowledgeAt, 'head']} label="Best head" />
      </div>
      <p class="form-usual">
        No plate to read? Leave these empty: the watts you read in the next step stand in for it.
        With no curve the answers take the usual shape of one, and say how wide that leaves them.
      </p>
    </>
  );
}

function pointsIn(form: Form): readonly CurvePoint[] {
  const { knowledge } = form.pad.value.pump;
  return knowledge.kind === 'nameplate' ? [] : knowledge.points;
}

/** Flow, head and perhaps power at the rated speed. */
function Points(): JSX.Element {
  const form = useForm();
  const many = useComputed(() => pointsIn(form).length);
  const isThree = useComputed(() => form.pad.value.pump.knowledge.kind === 'powerLaw');
  const change = (update: (before: readonly CurvePoint[]) => readonly CurvePoint[], what: string) =>
    form.change(pointsAt, update, what);
  const { units } = form;
  const cell = (place: number, field: keyof CurvePoint, label: string) => (
    <NumberField at={[...pointsAt, place, field]} label={label} what="a point of the curve" />
  );
  return (
    <>
      <p class="field-help">
        From its data sheet, all at the rated speed.
        {isThree.value
          ? ' The first at no flow.'
          : ' Five or more are best; power only if it is given.'}
      </p>
      <ol class="form-rows form-cells">
        {Array.from({ length: many.value }, (_, place) => (
          <li key={String(place)} class="form-row">
            <span class="form-row-number">{place + 1}</span>
            {cell(place, 'flow', `Flow, ${symbolFor(units.value, 'flow')}`)}
            {cell(place, 'head', `Head, ${symbolFor(units.value, 'head')}`)}
            {cell(place, 'power', `Power, ${symbolFor(units.value, 'power')}`)}
            {!isThree.value && (
              <RemoveButton
                isNarrow
                name={`point ${place + 1}`}
                onRemove={() => change((points) => without(points, place), 'taking away a point')}
              />
            )}
          </li>
        ))}
      </ol>
      <Faults at={pointsAt} />
      {!isThree.value && (
        <>
          <AddButton
            id="form-point-add"
            onAdd={() =>
              change((points) => inserted(points, points.length, noPoint), 'a new point')
            }
          >
            Add a point
          </AddButton>
          <More title="Paste columns">
            <Paste onPoints={(points) => change(() => points, 'pasting the curve')} />
          </More>
        </>
      )}
    </>
  );
}

/** Lines of two or three columns, taken when the button is pressed; wrong text stays. */
function Paste({ onPoints }: { onPoints: (points: readonly CurvePoint[]) => void }): JSX.Element {
  const { units, said } = useForm();
  const text = useSignal('');
  const problem = useSignal<string | undefined>(undefined);
  const flow = symbolFor(units.value, 'flow');
  const head = symbolFor(units.value, 'head');
  const take = () => {
    const pasted = pastedPoints(text.value, units.value);
    problem.value = pasted.ok ? undefined : pasted.problem;
    if (!pasted.ok) return;
    onPoints(pasted.points);
    text.value = '';
    said.value = `${pasted.points.length} points taken over.`;
  };
  const wrong = problem.value !== undefined;
  return (
    <div class={wrong ? 'field is-wrong' : 'field'}>
      <label class="field-label" for="form-paste">
        Flow and head, one point a line
      </label>
      <p class="field-help" id="form-paste-hint">
        Flow in {flow}, then head in {head}; power in W may follow. This replaces the points above.
      </p>
      <textarea
        id="form-paste"
        class="input form-paste"
        rows={5}
        value={text}
        aria-invalid={wrong}
        aria-describedby={wrong ? 'form-paste-hint form-paste-error' : 'form-paste-hint'}
        onInput={(event) => {
          text.value = event.currentTarget.value;
        }}
      />
      <Problem id="form-paste" sentence={problem.value} />
      <button type="button" class="button button-quiet" onClick={take}>
        Take these points
      </button>
    </div>
  );
}
