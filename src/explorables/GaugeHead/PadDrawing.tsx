import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import type { Spot } from '#ui/charts/labels.ts';
import { DragHandle } from '#ui/controls/DragHandle.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import {
  dialRadius,
  drawing,
  filterGaugeX,
  heightAt,
  heightX,
  levelOf,
  spotOf,
  suctionGauge,
  tipOf,
  turnOf,
  valueAtTurn,
} from './drawing.ts';
import type { GaugeHeadModel, GaugeName } from './model.ts';
import { gaugeText, spoken } from './text.ts';

/** Pump, suction gauge and filter gauge as they stand; needles and height can be dragged. */
export function PadDrawing({ model }: { model: GaugeHeadModel }): JSX.Element {
  const { gaugeHeight } = model.dials;
  const level = useComputed(() =>
    levelOf(gaugeHeight.value.value, gaugeHeight.min.value, gaugeHeight.max.value),
  );
  const stem = useComputed(() => `M${filterGaugeX},${level.value + dialRadius}V212`);
  const lower = `M${suctionGauge.x + dialRadius},${suctionGauge.y}H${heightX + 14}`;
  const upper = useComputed(() => `M${heightX - 14},${level.value}H${filterGaugeX - dialRadius}`);
  const between = useComputed(() => `M${heightX},${suctionGauge.y}V${level.value}`);
  const heightWords = useComputed(() => gaugeText(model, 'gaugeHeight'));
  const heightY = useComputed(() => (level.value + suctionGauge.y) / 2 + 5);
  const heightSaid = useComputed(() => spoken(model, 'gaugeHeight'));
  const heightSpot = useComputed(() => spotOf(heightX, level.value));
  return (
    <div class="gauge-pad" data-drag-field>
      <svg
        class="gauge-drawing"
        viewBox={`0 0 ${drawing.width} ${drawing.height}`}
        role="img"
        aria-label="A pump with a gauge before it and a gauge on the filter after it"
      >
        <path class="gauge-water" d="M0,208H30V272H0Z" />
        <path class="gauge-pipe" d={`M20,244H${heightX - 30}M${heightX + 26},244H400`} />
        <path class="gauge-pipe" d={`M${suctionGauge.x},${suctionGauge.y + dialRadius}V244`} />
        <path class="gauge-tank" d="M284,268V224Q284,212 296,212H340Q352,212 352,224V268Z" />
        <path class="gauge-pipe" d={stem} />
        <circle class="gauge-pump" cx={heightX} cy={238} r={30} />
        <text class="gauge-word" x={heightX} y={243}>
          pump
        </text>
        <text class="gauge-word" x={318} y={249}>
          filter
        </text>
        <text class="gauge-word is-start" x={2} y={200}>
          pool
        </text>
        <path class="gauge-level" d={lower} />
        <path class="gauge-level" d={upper} />
        <path class="gauge-height" d={between} />
        <text class="gauge-word is-start" x={heightX + 26} y={heightY}>
          {heightWords}
        </text>
        <Dial model={model} name="suctionVacuum" x={suctionGauge.x} y={suctionGauge.y} />
        <Dial model={model} name="filterPressure" x={filterGaugeX} y={level} />
      </svg>
      <Needle model={model} name="suctionVacuum" label="Suction gauge" x={suctionGauge.x} />
      <Needle model={model} name="filterPressure" label="Filter gauge" x={filterGaugeX} y={level} />
      <DragHandle
        dial={gaugeHeight}
        label="Height of the filter gauge above the suction gauge"
        spoken={heightSaid}
        at={heightSpot}
        valueAt={({ y }: Spot) =>
          heightAt(y * drawing.height, gaugeHeight.min.peek(), gaugeHeight.max.peek())
        }
        orientation="vertical"
      />
    </div>
  );
}

interface DialProps {
  readonly model: GaugeHeadModel;
  readonly name: Exclude<GaugeName, 'gaugeHeight'>;
  readonly x: number;
  readonly y: number | ReadonlySignal<number>;
}

const marks = [0, 0.25, 0.5, 0.75, 1];

function Dial({ model, name, x, y }: DialProps): JSX.Element {
  const dial = model.dials[name];
  const words = useComputed(() => gaugeText(model, name));
  const place = useComputed(() => `translate(${x} ${typeof y === 'number' ? y : y.value})`);
  const turn = useComputed(
    () => `rotate(${turnOf(dial.value.value, dial.min.value, dial.max.value).toFixed(1)})`,
  );
  return (
    <g transform={place}>
      <circle class="gauge-face" r={dialRadius} />
      {marks.map((mark) => (
        <path
          key={mark}
          class="gauge-mark"
          d={`M0,${-dialRadius + 2}V${-dialRadius + 7}`}
          transform={`rotate(${turnOf(mark, 0, 1)})`}
        />
      ))}
      <path class="gauge-needle" d={`M0,6V${-dialRadius + 8}`} transform={turn} />
      <circle class="gauge-hub" r={4} />
      <text class="gauge-reading" y={-dialRadius - 8}>
        {words}
      </text>
    </g>
  );
}

interface NeedleProps {
  readonly model: GaugeHeadModel;
  readonly name: Exclude<GaugeName, 'gaugeHeight'>;
  readonly label: string;
  readonly x: number;
  readonly y?: ReadonlySignal<number>;
}

function Needle({ model, name, label, x, y }: NeedleProps): JSX.Element {
  const dial = model.dials[name];
  const middle = () => y?.value ?? suctionGauge.y;
  const said = useComputed(() => spoken(model, name));
  const tip = useComputed(() => {
    const at = tipOf(x, middle(), turnOf(dial.value.value, dial.min.value, dial.max.value));
    return spotOf(at.x, at.y);
  });
  const valueAt = (spot: Spot) =>
    valueAtTurn(
      spot.x * drawing.width - x,
      spot.y * drawing.height - (y?.peek() ?? suctionGauge.y),
      dial.min.peek(),
      dial.max.peek(),
    );
  return (
    <DragHandle
      dial={dial}
      label={label}
      spoken={said}
      at={tip}
      valueAt={valueAt}
      orientation="vertical"
    />
  );
}
