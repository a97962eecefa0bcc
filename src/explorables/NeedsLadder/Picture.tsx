import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import type { Spot } from '#ui/charts/labels.ts';
import { placed } from '#ui/charts/marks.tsx';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction, valueAt } from '#ui/charts/scale.ts';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import type { Ladder, NeedsLadderModel, Step } from './model.ts';
import { spread } from './spread.ts';
import { ceilingNames } from './text.ts';

/** Nothing is measured across: needs stand to the left of the ladder, limits to its right. */
const x: Side = { axis: { min: 0, max: 1, ticks: [] }, title: '', unit: '' };
const rails = { left: 0.5, right: 0.62 } as const;
/** Words stand this far apart, as a share of the height: a line of writing on a phone. */
const lineGap = 0.075;

const unit = (part: number) => (1000 * part).toFixed(1);
const level = (from: number, to: number, at: number) => `M${unit(from)},${unit(at)}H${unit(to)}`;

interface PictureProps {
  readonly model: NeedsLadderModel;
  readonly said: ReadonlySignal<string>;
}

/** The ladder of speeds: a rung for each need, a ceiling for each limit, and the speed that is set. */
export function Picture({ model, said }: PictureProps): JSX.Element {
  const ladder = model.ladder.value;
  const { topSpeed } = ladder.scene;
  const ySide = quantitySide('Speed of the pump', 'speed', model.units.value, {
    max: topSpeed,
    count: 6,
  });
  const { axis: y } = ySide;
  const down = (speed: number) => 1 - fraction(y, speed);
  const at = useComputed<Spot>(() => ({ x: rails.right, y: down(model.speed.value.value) }));
  const filled = useComputed(
    () => `M${unit(rails.left)},1000V${unit(at.value.y)}H${unit(rails.right)}V1000Z`,
  );
  const speedFor = (spot: Spot) => valueAt(y, 1 - spot.y);
  return (
    <Frame
      x={x}
      y={ySide}
      title="Ladder of speeds with a rung for each need and a ceiling for each limit"
      handlesTitle="Set the speed on the ladder"
      drawing={
        <>
          {ladder.stop !== undefined && (
            <path class="needs-barred" d={`M0,0H1000V${unit(down(ladder.stop))}H0Z`} />
          )}
          <path class="needs-below" d={filled} />
          <path class="needs-rail" d={`M${unit(rails.left)},0V1000M${unit(rails.right)},0V1000`} />
          <Ceilings ladder={ladder} down={down} />
          <Rungs model={model} ladder={ladder} down={down} />
        </>
      }
      labels={<CeilingNames ladder={ladder} down={down} />}
    >
      {model.mayRun.value && (
        <DragHandle
          dial={model.speed}
          label="Speed"
          spoken={said}
          at={at}
          valueAt={speedFor}
          orientation="vertical"
        />
      )}
      <RungNames model={model} ladder={ladder} down={down} />
    </Frame>
  );
}

interface PartProps {
  readonly ladder: Ladder;
  readonly down: (speed: number) => number;
}

type Hung = Step & { readonly speed: number };

const hung = (ladder: Ladder): Hung[] =>
  ladder.steps.filter((step): step is Hung => step.speed !== undefined);

const namePlaces = (ladder: Ladder, down: PartProps['down']) =>
  spread(
    hung(ladder).map(({ speed }) => down(speed)),
    lineGap,
    0.03,
    0.97,
  );

function Rungs({ model, ladder, down }: PartProps & { model: NeedsLadderModel }): JSX.Element {
  const places = namePlaces(ladder, down);
  return (
    <>
      {hung(ladder).map((step, index) => (
        <RungLine
          key={step.need.id}
          model={model}
          step={step}
          down={down}
          name={places[index] ?? 0}
        />
      ))}
    </>
  );
}

interface RungProps {
  readonly model: NeedsLadderModel;
  readonly step: Hung;
  readonly down: PartProps['down'];
  /** Height of the need's name. */
  readonly name: number;
}

function RungLine({ model, step, down, name }: RungProps): JSX.Element {
  const fate = useComputed(() => model.fateOf(step));
  const at = down(step.speed);
  return (
    <g class="needs-rung" data-fate={fate}>
      <path
        class="needs-lead"
        d={`M${unit(rails.left)},${unit(at)}L${unit(rails.left - 0.03)},${unit(name)}`}
      />
      <path class="needs-bar" d={level(rails.left, rails.right, at)} />
    </g>
  );
}

/** Names to press: a rung that is taken sets the speed. */
function RungNames({ model, ladder, down }: PartProps & { model: NeedsLadderModel }): JSX.Element {
  const places = namePlaces(ladder, down);
  return (
    <>
      {hung(ladder).map((step, index) => (
        <RungName key={step.need.id} model={model} step={step} name={places[index] ?? 0} />
      ))}
    </>
  );
}

function RungName({ model, step, name }: Omit<RungProps, 'down'>): JSX.Element {
  const fate = useComputed(() => model.fateOf(step));
  const sign = useComputed(
    () => ({ served: '✓', tooSlow: '', tooFast: '!', never: '✕' })[fate.value],
  );
  return (
    <span
      class="needs-name"
      aria-hidden="true"
      data-fate={fate}
      style={placed({ x: rails.left - 0.04, y: name })}
    >
      {sign} {step.need.name}
    </span>
  );
}

const within = (ladder: Ladder) =>
  ladder.ceilings.flatMap(({ limit, speed }) =>
    speed === undefined ? [] : [{ limit, speed: limit.hard ? (ladder.stop ?? speed) : speed }],
  );

function Ceilings({ ladder, down }: PartProps): JSX.Element {
  const all = within(ladder);
  const places = ceilingPlaces(ladder, down);
  return (
    <>
      {all.map(({ limit, speed }, index) => (
        <path
          key={limit.id}
          class="needs-ceiling"
          data-hard={limit.hard}
          d={`${level(rails.left - 0.02, rails.right + 0.06, down(speed))}L${unit(rails.right + 0.09)},${unit(places[index] ?? 0)}`}
        />
      ))}
    </>
  );
}

const ceilingPlaces = (ladder: Ladder, down: PartProps['down']) =>
  spread(
    within(ladder).map(({ speed }) => down(speed)),
    lineGap,
    0.03,
    0.97,
  );

function CeilingNames({ ladder, down }: PartProps): JSX.Element {
  const places = ceilingPlaces(ladder, down);
  return (
    <>
      {within(ladder).map(({ limit }, index) => (
        <span
          key={limit.id}
          class="needs-ceiling-name"
          data-hard={limit.hard}
          style={placed({ x: rails.right + 0.1, y: places[index] ?? 0 })}
        >
          {ceilingNames[limit.kind]}
          {limit.hard ? ': stop' : ''}
        </span>
      ))}
    </>
  );
}
