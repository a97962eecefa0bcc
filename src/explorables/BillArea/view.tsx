import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import type { Spot } from '#ui/charts/labels.ts';
import { Band, placed } from '#ui/charts/marks.tsx';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { across, fraction, span, upward, valueAt } from '#ui/charts/scale.ts';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { plainEntry } from '#ui/controls/plainEntry.ts';
import { QuantityRange } from '#ui/controls/QuantityRange.tsx';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink } from '#ui/figure/linkState.ts';
import { guarded } from '#ui/loading/Guard.tsx';
import { format } from '#units/format.ts';
import { exampleLoad } from './example.ts';
import { type BillModel, createModel, day, energyOf } from './model.ts';
import { bars, money, sentence, spokenPower, spokenPrice, spokenTime, table } from './text.ts';

const hour = 3600;
const hoursPerMark = 4;

/** The 24 hours, with a mark every four. */
const timeSide: Side = {
  title: 'Time it runs in a day',
  unit: 'h',
  axis: {
    min: 0,
    max: day,
    ticks: [0, 4, 8, 12, 16, 20, 24].map((hours) => ({
      value: hours * hour,
      label: String(hours),
    })),
  },
};

interface Said {
  readonly power: ReadonlySignal<string>;
  readonly time: ReadonlySignal<string>;
  readonly price: ReadonlySignal<string>;
}

/** Watts times hours as an area that is the bill, and beside it the amperes, which are not. */
function BillArea({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(exampleLoad), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: [
      'bill',
      () => ({
        watts: dialInLink(model.power),
        time: dialInLink(model.time),
        price: dialInLink(model.price),
      }),
    ],
    own: () => import('./own.ts'),
  });
  const side = useComputed(() =>
    quantitySide('Wire power', 'power', model.units.value, {
      max: model.load.value.greatestPower,
    }),
  );
  const said: Said = {
    power: useComputed(() => spokenPower(model)),
    time: useComputed(() => spokenTime(model)),
    price: useComputed(() => spokenPrice(model)),
  };
  const square = useComputed(() => {
    const [first, second] = side.value.axis.ticks;
    const step = (second?.value ?? 0) - (first?.value ?? 0);
    return `Pump, motor and price of the example are invented. Each square of the bold grid is ${format('energy', energyOf(step, hoursPerMark * hour), model.units.value)}. The motor is one that runs straight from the supply; behind an electronic drive the current follows another law, and your own ammeter will show other figures.`;
  });
  return (
    <Figure id={id} title="The bill is an area" {...figure} note={square}>
      <div class="bill-row">
        <AreaPicture model={model} side={side.value} said={said} />
        <Ammeter model={model} />
      </div>
      <Controls id={id} model={model} said={said} />
    </Figure>
  );
}

export default guarded(BillArea);

interface AreaProps {
  readonly model: BillModel;
  readonly side: Side;
  readonly said: Said;
}

/** Keeps the two handles from lying on each other when the area is small [of the picture]. */
const leastOffset = 0.07;

function AreaPicture({ model, side, said }: AreaProps): JSX.Element {
  const x = timeSide.axis;
  const y = side.axis;
  const area = useComputed(() => {
    const right = across(x, model.time.value.value).toFixed(1);
    const top = upward(y, model.power.value.value).toFixed(1);
    return `M0,${span}V${top}H${right}V${span}Z`;
  });
  const width = useComputed(() => fraction(x, model.time.value.value));
  const height = useComputed(() => fraction(y, model.power.value.value));
  const timeAt = useComputed<Spot>(() => ({
    x: width.value,
    y: 1 - Math.max(height.value / 2, leastOffset),
  }));
  const powerAt = useComputed<Spot>(() => ({
    x: Math.max(width.value / 2, leastOffset),
    y: 1 - height.value,
  }));
  // In the middle of the area; beside or above it where it is too small to hold words and handles.
  const totalStyle = useComputed(() => {
    const [wide, high] = [width.value, height.value];
    if (wide < 0.5) return placed({ x: wide + 0.31, y: Math.min(1 - high / 2, 0.84) });
    return placed({ x: wide / 2, y: high > 0.35 ? 1 - high / 2 : 1 - high - 0.2 });
  });
  const energy = useComputed(() => format('energy', model.energy.value, model.units.value));
  const cost = useComputed(() => `${money(model, model.cost.value)} a day`);
  return (
    <Frame
      x={timeSide}
      y={side}
      title="Watts over hours; the area is the energy of the day"
      handlesTitle="Set hours and watts on the picture"
      drawing={
        <>
          <Band d={area} of="money" />
          <path class="bill-edge" d={area} />
        </>
      }
      labels={
        <span class="bill-total" style={totalStyle}>
          <b>{energy}</b>
          {cost}
        </span>
      }
    >
      <DragHandle
        dial={model.time}
        label="Hours a day"
        spoken={said.time}
        at={timeAt}
        valueAt={(spot) => valueAt(x, spot.x)}
        of="money"
      />
      <DragHandle
        dial={model.power}
        label="Watts"
        spoken={said.power}
        at={powerAt}
        valueAt={(spot) => valueAt(y, 1 - spot.y)}
        orientation="vertical"
        of="power"
      />
    </Frame>
  );
}

/** What the ammeter shows, and below it what of that does the work. */
function Ammeter({ model }: { readonly model: BillModel }): JSX.Element {
  const found = useComputed(() => bars(model)).value;
  if (found === undefined) {
    return <p class="bill-note">No amperes were read at these watts.</p>;
  }
  return (
    <dl class="bill-meter">
      <div>
        <dt>The ammeter shows {found.shown}</dt>
        <dd>
          <span
            class="bill-track is-shown"
            aria-hidden="true"
            style={`--share:${found.shownShare.toFixed(4)}`}
          />
          <span class="bill-note">times the volts: {found.apparent}</span>
        </dd>
      </div>
      <div>
        <dt>The watts need {found.working}</dt>
        <dd>
          <span
            class="bill-track"
            aria-hidden="true"
            style={`--share:${found.workingShare.toFixed(4)}`}
          />
          <span class="bill-note">power factor {found.factor}</span>
        </dd>
      </div>
    </dl>
  );
}

function Controls({
  id,
  model,
  said,
}: {
  readonly id: string;
  readonly model: BillModel;
  readonly said: Said;
}): JSX.Element {
  const price = useMemo(() => plainEntry('price'), []);
  const currency = useComputed(() => `${model.load.value.currency} per kWh`);
  return (
    <>
      <QuantityRange
        id={`${id}-watts`}
        label="Watts"
        dial={model.power}
        of="power"
        units={model.units}
        spoken={said.power}
      />
      <QuantityRange
        id={`${id}-hours`}
        label="Hours a day"
        dial={model.time}
        of="duration"
        units={model.units}
        spoken={said.time}
      />
      <RangeField
        id={`${id}-price`}
        label="Price"
        dial={model.price}
        spoken={said.price}
        entry={price}
        unit={currency}
      />
    </>
  );
}
