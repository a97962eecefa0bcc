import type { JSX } from 'preact';
import { freshId } from '#pad/document/ids.ts';
import { newCover, newQuiet } from '#pad/document/parts.ts';
import type { Pad, PadLimits, QuietHours, SuctionCover } from '#pad/document/schema.ts';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { format } from '#units/format.ts';
import { formatTimeOfDay } from '#units/timeOfDay.ts';
import { AddButton, Entry, focusSoon, More, RemoveButton, useIds } from './Entry.tsx';
import { ClockField, Findings, NumberField, PickField, WordsField } from './fields.tsx';
import { useForm } from './form.ts';
import { inserted, waysIn } from './lists.ts';
import { elementId, valueAtSpot } from './spot.ts';
import { usualVelocities } from './usual.ts';

/** What no plan may cross. */
export function StepLimits({ coverCaution }: { coverCaution: string }): JSX.Element {
  return (
    <>
      <h3>Suction covers</h3>
      <p class="caution caution-hard">{coverCaution}</p>
      <Covers />
      <h3>Greatest velocities</h3>
      <Velocities />
      <h3>Filter, heater, pump</h3>
      <div class="form-fields">
        <Limit name="filterRate" label="Greatest filter rate" hint="On the filter’s label." />
        <Limit
          name="heaterGreatestFlow"
          label="Greatest flow through the heater"
          hint="In the heater’s manual."
        />
        <More title="NPSH: will the suction hold?">
          <Limit
            name="npshRequired"
            label="NPSH the pump requires"
            hint="On its data sheet, at the greatest flow you run."
          />
          <NumberField at={['limits', 'npshMargin']} label="Margin above it" />
        </More>
      </div>
      <WhereRead />
      <Findings at={['limits']} />
      <h3>Quiet hours</h3>
      <Quiet />
    </>
  );
}

type SingleLimit = Exclude<
  keyof PadLimits,
  'suctionCovers' | 'coversBalanced' | 'sources' | 'npshMargin'
>;

interface LimitProps {
  readonly name: SingleLimit;
  readonly label: string;
  readonly hint?: string;
}

function Limit({ name, label, hint }: LimitProps): JSX.Element {
  return (
    <NumberField at={['limits', name]} label={label} {...(hint === undefined ? {} : { hint })} />
  );
}

const sourced: readonly { readonly name: keyof PadLimits; readonly label: string }[] = [
  { name: 'suctionCovers', label: 'Suction covers' },
  { name: 'suctionVelocity', label: 'Velocity in suction pipe' },
  { name: 'dischargeVelocity', label: 'Velocity in discharge pipe' },
  { name: 'filterRate', label: 'Filter rate' },
  { name: 'heaterGreatestFlow', label: 'Heater' },
  { name: 'npshRequired', label: 'NPSH' },
];

/** Where each limit was read, for whoever asks later. */
function WhereRead(): JSX.Element {
  return (
    <More title="Where each was read">
      {sourced.map(({ name, label }) => (
        <WordsField
          key={name}
          at={['limits', 'sources', name]}
          label={label}
          what="where a limit was read"
          max={200}
        />
      ))}
    </More>
  );
}

const commonPractice = 'Common practice';

function withVelocities(pad: Pad): Pad {
  const { suction, discharge } = usualVelocities(pad.units.preset);
  const sources = {
    ...pad.limits.sources,
    suctionVelocity: commonPractice,
    dischargeVelocity: commonPractice,
  };
  const limits = { suctionVelocity: suction, dischargeVelocity: discharge, sources };
  return { ...pad, limits: { ...pad.limits, ...limits } };
}

function Velocities(): JSX.Element {
  const form = useForm();
  const usual = useComputed(() => {
    const { suction, discharge } = usualVelocities(form.units.value.preset);
    const shown = (value: number) => format('velocity', value, form.units.value);
    return `${shown(suction)} before the pump and ${shown(discharge)} after`;
  });
  const isEmpty = useComputed(() => {
    const { suctionVelocity, dischargeVelocity } = form.pad.value.limits;
    return suctionVelocity === null && dischargeVelocity === null;
  });
  return (
    <div class="form-fields">
      {isEmpty.value && (
        <div class="form-offer">
          <p>Common practice, no source: {usual}. Local code may say otherwise.</p>
          <button
            type="button"
            class="button button-quiet"
            onClick={() => form.store.edit(withVelocities, 'the usual velocities')}
          >
            Use these
          </button>
        </div>
      )}
      <div class="form-pair">
        <Limit name="suctionVelocity" label="In suction pipe" />
        <Limit name="dischargeVelocity" label="In discharge pipe" />
      </div>
    </div>
  );
}

function Covers(): JSX.Element {
  const form = useForm();
  const ids = useIds(() => form.pad.value.limits.suctionCovers);
  const add = () => {
    const id = freshId('cover', form.pad.peek().limits.suctionCovers);
    form.fresh.value = id;
    form.change(
      ['limits', 'suctionCovers'],
      (list: readonly SuctionCover[]) => inserted(list, list.length, newCover(id)),
      'a new suction cover',
    );
  };
  return (
    <>
      <ol class="form-entries">
        {ids.map((id, place) => (
          <Cover key={id} id={id} place={place} />
        ))}
      </ol>
      {ids.length > 1 && <Balance />}
      <AddButton id="form-cover-add" onAdd={add}>
        Add a suction cover
      </AddButton>
    </>
  );
}

/** How the covers share: only a balanced tee lets them share evenly. */
function Balance(): JSX.Element {
  const form = useForm();
  const value = useComputed(() => (form.pad.value.limits.coversBalanced ? 'balanced' : 'unknown'));
  return (
    <ChoiceField
      id="form-covers-balanced"
      label="How are their pipes joined?"
      hint="Covers on one line share it evenly only with equal pipes, the tee midway and no valve between. If you don’t know, each cover must bear all the flow."
      choices={[
        { id: 'unknown', label: 'I don’t know' },
        { id: 'balanced', label: 'Balanced tee' },
      ]}
      value={value}
      apply={(id) =>
        form.change(
          ['limits', 'coversBalanced'],
          () => id === 'balanced',
          'how the covers are joined',
        )
      }
    />
  );
}

function Cover({ id, place }: { id: string; place: number }): JSX.Element {
  const form = useForm();
  const at = ['limits', 'suctionCovers', `@${id}`];
  const title = useComputed(() => {
    const cover = valueAtSpot(form.pad.value, at) as SuctionCover | undefined;
    const name = cover?.name || `Suction cover ${place + 1}`;
    const flow = cover?.markedFlow ?? null;
    return flow === null
      ? `${name}, flow not said yet`
      : `${name}, at most ${format('flow', flow, form.units.value)}`;
  });
  const ways = useComputed(() => JSON.stringify(waysIn(form.pad.value.plumbing.suction)));
  const remove = () => {
    form.change(
      ['limits', 'suctionCovers'],
      (list: readonly SuctionCover[]) => list.filter((each) => each.id !== id),
      'taking away a suction cover',
    );
    focusSoon('form-cover-add');
  };
  return (
    <li>
      <Entry id={id} elementId={elementId(at)} title={title}>
        <div class="form-fields">
          <NumberField
            at={[...at, 'markedFlow']}
            label="Flow marked on the cover"
            hint="Read it off the cover itself. A plan never goes above it."
          />
          <WordsField at={[...at, 'name']} label="Name" what="the name of a cover" />
          <PickField
            at={[...at, 'branchId']}
            label="It stands in"
            what="where a cover stands"
            choices={JSON.parse(ways.value) as { id: string; label: string }[]}
            unsaid="I don’t know its pipe"
          />
        </div>
        <div class="form-tools">
          <RemoveButton name={title.value} onRemove={remove} />
        </div>
      </Entry>
    </li>
  );
}

function Quiet(): JSX.Element {
  const form = useForm();
  const ids = useIds(() => form.pad.value.quiet);
  const add = () => {
    const id = freshId('quiet', form.pad.peek().quiet);
    form.fresh.value = id;
    form.change(
      ['quiet'],
      (list: readonly QuietHours[]) =>
        inserted(list, list.length, newQuiet(id, 22 * 60, 7 * 60, null)),
      'new quiet hours',
    );
  };
  return (
    <>
      <p class="field-help">Times at which the pump must stay slow, for the neighbours’ sake.</p>
      <ol class="form-entries">
        {ids.map((id) => (
          <QuietEntry key={id} id={id} />
        ))}
      </ol>
      <AddButton id="form-quiet-add" onAdd={add}>
        Add quiet hours
      </AddButton>
      <Findings at={['quiet']} />
    </>
  );
}

function QuietEntry({ id }: { id: string }): JSX.Element {
  const form = useForm();
  const at = ['quiet', `@${id}`];
  const title = useComputed(() => {
    const quiet = valueAtSpot(form.pad.value, at) as QuietHours | undefined;
    if (quiet === undefined) return '';
    const span = `${formatTimeOfDay(quiet.start)} to ${formatTimeOfDay(quiet.end)}`;
    const { ceilingSpeed } = quiet;
    return ceilingSpeed === null
      ? `${span}, speed not said yet`
      : `${span}, at most ${format('speed', ceilingSpeed, form.units.value)}`;
  });
  const remove = () => {
    form.change(
      ['quiet'],
      (list: readonly QuietHours[]) => list.filter((each) => each.id !== id),
      'taking away quiet hours',
    );
    focusSoon('form-quiet-add');
  };
  return (
    <li>
      <Entry id={id} elementId={elementId(at)} title={title}>
        <div class="form-row">
          <ClockField at={[...at, 'start']} label="From" what="the quiet hours" />
          <ClockField at={[...at, 'end']} label="To" what="the quiet hours" />
          <NumberField at={[...at, 'ceilingSpeed']} label="Fastest then" what="the quiet speed" />
        </div>
        <div class="form-tools">
          <RemoveButton name={title.value} onRemove={remove} />
        </div>
      </Entry>
    </li>
  );
}
