import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { problemSentence } from '#pad/messages/problems.ts';
import { prepare } from '#pad/model/firstFit.ts';
import { dateProblems } from '#pad/model/someDay.ts';
import { padStore } from '#pad/store/padStore.ts';
import type { PadStore } from '#pad/store/store.ts';
import { Table } from '#ui/charts/Table.tsx';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { describedBy, Field } from '#ui/controls/Field.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { useSettled } from '#ui/controls/settle.ts';
import { Announce } from '#ui/figure/Announce.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { Later } from '#ui/loading/Later.tsx';
import { LazySection } from '#ui/loading/LazySection.tsx';
import { BlockList } from './day/BlockList.tsx';
import { hardCautions, type SheetCautions } from './day/dayCautions.ts';
import type { WorkedDay } from './day/figures.ts';
import { LaneKey, Lanes } from './day/Lanes.tsx';
import { createDayModel, type DayModel } from './day/model.ts';
import { Strip } from './day/Strip.tsx';
import { Totals } from './day/Totals.tsx';
import { tableOf } from './day/table.ts';
import { dayKindText, findingText, saidText } from './day/text.ts';
import { firstSteps } from './firstSteps.ts';

const loadFinder = async () => (await import('./parts/cheapest/Finder.tsx')).Finder;
const loadWhatIf = async () => (await import('./parts/whatIf/WhatIf.tsx')).WhatIf;
const loadSure = async () => (await import('./parts/sure/HowSure.tsx')).HowSure;
const loadYear = async () => (await import('./parts/year/YearSheet.tsx')).YearSheet;
const loadMeter = async () => (await import('./parts/meter/MeterCheck.tsx')).MeterCheck;
const loadTakeOut = async () => (await import('./parts/takeOut/TakeOut.tsx')).TakeOut;
const loadServed = async () => (await import('./day/Served.tsx')).Served;
const builtServed = import.meta.env.SSR ? await loadServed() : null;
const loadCompare = async () => (await import('./day/Compare.tsx')).Compare;
const builtCompare = import.meta.env.SSR ? await loadCompare() : null;
const loadPrintSheet = async () => (await import('./day/PrintSheet.tsx')).PrintSheet;
const builtPrintSheet = import.meta.env.SSR ? await loadPrintSheet() : null;
if (!import.meta.env.SSR) await prepare(firstSteps);

interface DaySheetProps {
  readonly id: string;
  readonly cautions: SheetCautions;
  /** Where the pad is described, once there is such a page. */
  readonly padHref?: string | undefined;
  readonly store?: PadStore;
}

/** The reader's day: laid out, worked out, compared and printed. */
function DaySheet({ store = padStore, ...props }: DaySheetProps): JSX.Element {
  const { id } = props;
  const model = useMemo(() => createDayModel(store), [store]);
  useEffect(() => {
    const now = new Date();
    model.today.value = { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() };
    return store.connect();
  }, [model, store]);
  const finding = useComputed(() => findingOf(model));
  const tone = useComputed(() =>
    mustStop(model.here.value) ? 'day-finding is-stop' : 'day-finding',
  );
  const spoken = useComputed(() => {
    const said = model.said.value;
    return said === null ? finding.value : `${saidText(said)} ${finding.value}`;
  });
  const calm = useCalm(model);
  return (
    <div class="day" id={id} data-first-pad>
      <div class="day-screen no-print">
        <Tools id={id} model={model} padHref={props.padHref} />
        <Missing model={model} padHref={props.padHref} />
        <p class={tone}>{finding}</p>
        <Totals model={model} />
        <section class="sheet day-board" aria-labelledby={`${id}-board`}>
          <h2 id={`${id}-board`}>The 24 hours</h2>
          <p class="day-help needs-script">
            Drag a block to move it, or take hold of either end. With keys: arrows 5 minutes, Page
            keys an hour. Every time can also be typed below.
          </p>
          <Strip model={model} />
          <div class="day-words">
            <Said model={model} />
            <LaneKey model={model} />
          </div>
          <Lanes model={model} />
          <DayTable model={calm} />
        </section>
        <HardCautions model={calm} cautions={props.cautions} />
        <section class="day-section">
          <h2>Blocks</h2>
          <BlockList id={id} model={model} />
        </section>
        <Later load={loadServed} built={builtServed} props={{ model: calm }} wake={model.pad} />
        <section class="day-section">
          <h2>The cheapest day</h2>
          <LazySection
            lead="Of all days that move the water, serve every need and keep every limit, one is the cheapest. It can be worked out, with the proof."
            word="Find the cheapest day"
            load={loadFinder}
            props={{ id: `${id}-cheapest`, day: calm }}
          />
        </section>
        <section class="day-section">
          <h2>What if</h2>
          <LazySection
            lead="Change one thing over its whole range, the tariff, a pipe, the filter, the hours of a need, and see what the cheapest day then costs, and where its plan changes."
            word="Try one thing"
            load={loadWhatIf}
            props={{ id: `${id}-what-if`, day: calm }}
          />
        </section>
        <section class="day-section">
          <h2>Beside another day</h2>
          <Later
            load={loadCompare}
            built={builtCompare}
            props={{ id: `${id}-compare`, model: calm }}
            wake={model.pad}
          />
        </section>
        <section class="day-section">
          <h2>How sure</h2>
          <LazySection
            lead="A few readings never tell all of a pad. How far may water, energy and money be off, is every need still served, and which one more reading would tell most?"
            word="See how sure this is"
            load={loadSure}
            props={{ id: `${id}-sure`, day: calm }}
          />
        </section>
        <section class="day-section">
          <h2>The whole year</h2>
          <LazySection
            lead="Seasons, warm and cold water, a filter that loads and is cleaned, frost: 365 days of this pad, beside another year, and what a pump earns back."
            word="Work out the year"
            load={loadYear}
            props={{ id: `${id}-year`, day: calm }}
          />
        </section>
        <section class="day-section">
          <h2>Take it with you</h2>
          <LazySection
            lead="Day and year as tables for a spreadsheet, and the day for the calendar of your phone."
            word="Choose a file"
            load={loadTakeOut}
            props={{ id: `${id}-out`, day: calm }}
          />
        </section>
        <section class="day-section">
          <h2>Check it against the meter</h2>
          <LazySection
            lead="A file of your electricity meter shows whether the pump draws what this day says."
            word="Open a meter file"
            load={loadMeter}
            props={{ id: `${id}-meter`, day: calm }}
          />
        </section>
        <Announce sentence={spoken} />
      </div>
      <Later
        load={loadPrintSheet}
        built={builtPrintSheet}
        props={{ model, cautions: props.cautions }}
        wake={model.pad}
      />
    </div>
  );
}

export default guarded(DaySheet, padStore);

/** How long a drag must rest before what stands below the strip follows [ms]. */
const rest = 150;

/** The same day for the parts below the strip: they follow when the hand rests, and so keep out of its way. */
function useCalm(model: DayModel): DayModel {
  const here = useSettled(model.here, rest);
  const other = useSettled(model.other, rest);
  return useMemo(() => ({ ...model, here, other }), [model, here, other]);
}

/** What must never be done or forgotten on this day, under its 24 hours. */
function HardCautions({
  model,
  cautions,
}: {
  model: DayModel;
  cautions: SheetCautions;
}): JSX.Element | null {
  const day = model.here.value;
  const said = day === null ? [] : hardCautions(day.report, model.pad.value, cautions);
  if (said.length === 0) return null;
  return (
    <div class="caution caution-hard" role="note">
      {said.map(({ title, text }) => (
        <p key={title}>
          <strong class="caution-title">{title}.</strong> {text}
        </p>
      ))}
    </div>
  );
}

function DayTable({ model }: { model: DayModel }): JSX.Element {
  const data = useComputed(() => tableOf(model));
  return <Table data={data} summary="The day as a table" />;
}

function mustStop(day: WorkedDay | null): boolean {
  return day?.report.crossings.some(({ limit }) => limit.hard) ?? false;
}

function findingOf(model: DayModel): string {
  const day = model.here.value;
  if (day === null) return 'This day cannot be worked out yet.';
  return findingText(day, model.units.value, model.currency.value);
}

/** Date, undo and redo, units, print. */
function Tools(props: { id: string; model: DayModel; padHref?: string | undefined }): JSX.Element {
  const { id, model, padHref } = props;
  const { store } = model;
  const kind = useComputed(() => dayKindText(model.date.value, model.tariff.value));
  const name = useComputed(() => model.name.value || 'A pad without a name');
  const preset = useComputed(() => model.units.value.preset);
  const undoLabel = useComputed(() => `Undo ${store.undoLabel.value ?? ''}`.trim());
  const redoLabel = useComputed(() => `Redo ${store.redoLabel.value ?? ''}`.trim());
  return (
    <div class="day-tools">
      <div class="day-whose">
        <p class="day-name">{name}</p>
        <p class="day-kind">{kind}</p>
        {padHref !== undefined && (
          <p class="day-kind">
            <a href={`${padHref}#form-start-title`}>Your pads</a>
          </p>
        )}
      </div>
      <div class="day-tool-row needs-script">
        <DateField id={`${id}-date`} model={model} />
        <ChoiceField
          id={`${id}-units`}
          label="Units"
          choices={[
            { id: 'us', label: 'US' },
            { id: 'metric', label: 'Metric' },
          ]}
          value={preset}
          apply={(next) => model.setUnits(next === 'us' ? 'us' : 'metric')}
        />
        <div class="day-buttons">
          <button
            type="button"
            class="button button-quiet"
            aria-label={undoLabel}
            aria-disabled={store.undoLabel.value === null}
            onClick={store.undo}
          >
            Undo
          </button>
          <button
            type="button"
            class="button button-quiet"
            aria-label={redoLabel}
            aria-disabled={store.redoLabel.value === null}
            onClick={store.redo}
          >
            Redo
          </button>
          <button type="button" class="button" onClick={() => window.print()}>
            Print the sheet
          </button>
        </div>
      </div>
    </div>
  );
}

const two = (value: number) => String(value).padStart(2, '0');

/** The day that is priced; season and kind of day follow from it. */
function DateField({ id, model }: { id: string; model: DayModel }): JSX.Element {
  const value = useComputed(() => {
    const { year, month, day } = model.date.value;
    return `${year}-${two(month)}-${two(day)}`;
  });
  const problem = useComputed(() => {
    const [found] = dateProblems(model.pad.value.day.date);
    return found && problemSentence(found, model.units.value);
  });
  const take = (text: string) => {
    const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
    const [year, month, day] = (match ?? []).slice(1).map(Number);
    if (year === undefined || month === undefined || day === undefined) return;
    if (year >= 1970 && year <= 2200) model.setDate({ year, month, day });
  };
  return (
    <Field id={id} label="Date" problem={problem}>
      <input
        id={id}
        class="input"
        type="date"
        min="1970-01-01"
        max="2200-12-31"
        value={value}
        aria-describedby={describedBy(id, undefined, problem.value)}
        onChange={(event) => take(event.currentTarget.value)}
      />
    </Field>
  );
}

/** What the pad still lacks, and what had to be mended, each in a sentence. */
function Missing(props: { model: DayModel; padHref?: string | undefined }): JSX.Element | null {
  const { model, padHref } = props;
  const units = model.units.value;
  const lacks = model.missing.value.map((problem) => problemSentence(problem, units));
  const notice = model.store.notice.value;
  if (lacks.length === 0 && notice === null && !model.overlapMended.value) return null;
  return (
    <div class="day-missing">
      {notice !== null && (
        <p>
          {notice.sentence}{' '}
          <button type="button" class="button button-quiet" onClick={model.store.dismissNotice}>
            Close this note
          </button>
        </p>
      )}
      {model.blockProblems.value
        .filter(({ code }) => code === 'blockOverlap')
        .map((found) => (
          <p key={found.path.join()}>{problemSentence(found, model.units.value)}</p>
        ))}
      {lacks.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {lacks.length > 0 && padHref !== undefined && (
        <p>
          <a href={padHref}>Describe your pad</a>
        </p>
      )}
    </div>
  );
}

/** Why the last change did not go as wished, or what gave way. */
function Said({ model }: { model: DayModel }): JSX.Element {
  const words = useComputed(() => (model.said.value === null ? '' : saidText(model.said.value)));
  return <p class="day-said">{words}</p>;
}
