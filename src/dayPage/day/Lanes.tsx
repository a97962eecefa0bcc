import { computed, type ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import { Curve, CurveLabel, type Quantity, Rule } from '#ui/charts/marks.tsx';
import { shownUnit } from '#ui/charts/quantityAxis.ts';
import { fraction, niceAxis, type TickedAxis } from '#ui/charts/scale.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { format, symbolFor } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import type { Quantity as Measured } from '#units/quantities.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import { limitShortNames } from '#words/needsAndLimits.ts';
import type { Report, WorkedDay } from './figures.ts';
import type { DayModel } from './model.ts';
import { costSteps, merged, type Step, stepPath, stepsOf } from './steps.ts';
import { otherInSentence } from './text.ts';

const time: Side = {
  axis: {
    min: 0,
    max: 1440,
    ticks: [0, 3, 6, 9, 12, 15, 18, 21, 24].map((hour) => ({
      value: hour * 60,
      label: hour === 24 ? '24:00' : clock(hour * 60),
    })),
  },
  title: 'Time of day',
  unit: '',
};

interface LaneKind {
  readonly id: string;
  readonly of: Quantity;
  readonly title: string;
  /** One line or two; two belong to one quantity and are named in their label. */
  readonly lines: readonly ((day: Report) => readonly Step[])[];
  readonly names: readonly string[];
  readonly unit: string;
  readonly measured: Measured | null;
  readonly say: (value: number) => string;
  readonly bare: (value: number) => string;
  /** A level that must not be passed, when there is one. */
  readonly limit?: { readonly value: number; readonly name: string } | undefined;
}

function inUnits(model: DayModel, measured: Measured) {
  const units = model.units.value;
  return {
    measured,
    unit: symbolFor(units, measured),
    names: [],
    say: (value: number) => format(measured, value, units),
    bare: (value: number) => format(measured, value, units, { withUnit: false }),
  };
}

function flowLane(model: DayModel): LaneKind {
  const tightest = model.limits.value[0];
  return {
    ...inUnits(model, 'flow'),
    id: 'flow',
    of: 'flow',
    title: 'Flow',
    lines: [stepsOf(({ flow }) => flow)],
    limit: tightest && {
      value: tightest.greatestFlow,
      name: `limit, ${limitShortNames[tightest.kind]},`,
    },
  };
}

function velocityLane(model: DayModel): LaneKind {
  const { suctionVelocity, dischargeVelocity } = model.limitsGiven.value;
  const value = suctionVelocity ?? dischargeVelocity;
  const side = suctionVelocity === null ? 'return' : 'suction';
  return {
    ...inUnits(model, 'velocity'),
    id: 'velocity',
    of: 'velocity',
    title: 'Velocity, suction and return',
    names: ['suction', 'return'],
    lines: [
      stepsOf((segment) => segment.suctionVelocity),
      stepsOf((segment) => segment.dischargeVelocity),
    ],
    limit: value === null ? undefined : { value, name: `limit, ${side},` },
  };
}

function moneyLane(model: DayModel): LaneKind {
  const currency = model.currency.value;
  const say = (value: number) => formatMoney(value, currency, { places: currency.places + 1 });
  return {
    id: 'money',
    of: 'money',
    title: 'Cost of running',
    lines: [costSteps(model.bands.value)],
    names: [],
    measured: null,
    unit: `${currency.sign} per hour`.trim(),
    say,
    bare: say,
  };
}

function kindsOf(model: DayModel): readonly LaneKind[] {
  const power: LaneKind = {
    ...inUnits(model, 'power'),
    id: 'power',
    of: 'power',
    title: 'Power',
    lines: [stepsOf((segment) => segment.power)],
  };
  const wet = [flowLane(model), power, velocityLane(model)];
  return model.bands.value.length === 0 ? wet : [...wet, moneyLane(model)];
}

/** Flow, watts, velocity and money for every minute, one above the other on the time of the strip. */
export function Lanes({ model }: { model: DayModel }): JSX.Element {
  const kinds = useComputed(() => kindsOf(model));
  return (
    <div class="day-lanes">
      {kinds.value.map((kind) => (
        <Lane key={kind.id} kind={kind} model={model} />
      ))}
    </div>
  );
}

function greatestOf(kind: LaneKind, day: WorkedDay | null): number {
  if (day === null) return 0;
  return Math.max(0, ...kind.lines.flatMap((steps) => steps(day.report).map(({ value }) => value)));
}

/** The axis both days fit in; the same object for as long as its marks stay, so that a drag redraws lines only. */
function useAxis(kind: LaneKind, model: DayModel): ReadonlySignal<TickedAxis> {
  return useMemo(() => {
    let kept: TickedAxis | undefined;
    return computed(() => {
      const greatest = Math.max(
        greatestOf(kind, model.here.value),
        greatestOf(kind, model.other.value),
      );
      const { measured } = kind;
      const unit = measured === null ? {} : { unit: shownUnit(measured, model.units.value) };
      const axis = niceAxis({ max: greatest * 1.05 || 1, count: 3, ...unit });
      const same = kept?.max === axis.max && kept.ticks.length === axis.ticks.length;
      kept = same && kept !== undefined ? kept : axis;
      return kept;
    });
  }, [kind, model]);
}

/** In the row of the title, where no value stands in the way. */
const aboveRight = { x: 1, y: 0, above: true, ends: true };

interface LaneProps {
  readonly kind: LaneKind;
  readonly model: DayModel;
}

function Lane({ kind, model }: LaneProps): JSX.Element {
  const live = useAxis(kind, model);
  const axis = live.value;
  const limit = kind.limit !== undefined && kind.limit.value <= axis.max ? kind.limit : undefined;
  const level = limit === undefined ? 0 : 1 - fraction(axis, limit.value);
  const of = { kind, axis };
  return (
    <div class={limit === undefined ? 'day-lane' : 'day-lane has-limit'}>
      <Frame
        x={time}
        y={{ axis, title: kind.title, unit: kind.unit }}
        shape="strip"
        title={`${kind.title} through the day`}
        drawing={
          <>
            <Lines {...of} day={model.other} faint />
            {limit !== undefined && <Rule at={level} level />}
            <Lines {...of} day={model.here} />
          </>
        }
        labels={
          <>
            <Values {...of} day={model.here} />
            {limit !== undefined && (
              <CurveLabel
                of="plain"
                text={`${limit.name} ${kind.say(limit.value)}`}
                at={aboveRight}
              />
            )}
          </>
        }
      />
    </div>
  );
}

interface DrawnProps {
  readonly kind: LaneKind;
  readonly axis: TickedAxis;
  readonly day: ReadonlySignal<WorkedDay | null>;
}

function Lines({ kind, axis, day, faint = false }: DrawnProps & { faint?: boolean }): JSX.Element {
  return (
    <>
      {kind.lines.map((steps, place) => (
        <Line key={kind.names[place] ?? kind.id} {...{ kind, axis, day, faint, steps }} />
      ))}
    </>
  );
}

interface LineProps extends DrawnProps {
  readonly steps: LaneKind['lines'][number];
  readonly faint: boolean;
}

function Line({ kind, axis, day, faint, steps }: LineProps): JSX.Element {
  const d = useMemo(
    () =>
      computed(() =>
        day.value === null ? '' : stepPath(steps(day.value.report), time.axis, axis),
      ),
    [axis, day, steps],
  );
  return <Curve d={d} of={kind.of} faint={faint} />;
}

/** Less than this and the words would not fit; the table has them all [min]. */
const shortestLabelled = 90;

/** The value on each step, above the upper line where there are two. */
function Values({ kind, day, axis }: DrawnProps): JSX.Element | null {
  if (day.value === null) return null;
  const { report } = day.value;
  const [first = [], second] = kind.lines.map((steps) => merged(steps(report)));
  return (
    <>
      {first
        .filter(({ value, start, end }) => value > 0 && end - start >= shortestLabelled)
        .map(({ start, end, value }, place) => {
          const beside = second?.find((step) => step.start === start)?.value;
          const y = 1 - fraction(axis, Math.max(value, beside ?? 0));
          const long = end - start >= (beside === undefined ? 240 : 300);
          return (
            <span
              key={place}
              class={`day-value ${y > 0.25 ? 'is-above' : 'is-below'}`}
              data-quantity={kind.of}
              data-size={long ? 'large' : 'middle'}
              style={`--x:${(start / 1440).toFixed(4)};--y:${y.toFixed(4)};--wide:${((end - start) / 1440).toFixed(4)}`}
            >
              {beside === undefined ? (
                kind.say(value)
              ) : (
                <Pair kind={kind} first={value} second={beside} long={long} />
              )}
            </span>
          );
        })}
    </>
  );
}

/** Both values, with their names where there is room: not on a phone, where the title gives the order. */
function Pair(props: { kind: LaneKind; first: number; second: number; long: boolean }) {
  const { kind, first, second, long } = props;
  const name = (place: number) => long && <span class="day-name-part">{kind.names[place]} </span>;
  return (
    <>
      {name(0)}
      {kind.bare(first)}, {name(1)}
      {kind.bare(second)}
    </>
  );
}

/** Says which lines are whose. */
export function LaneKey({ model }: { model: DayModel }): JSX.Element | null {
  const name = useComputed(() => otherInSentence[model.compareWith.value]);
  if (model.other.value === null) return null;
  return <p class="day-key">Thick lines are this day. Thin lines are {name}.</p>;
}
