/** What the picture of a meter is drawn from: the mean day, metered and modelled. */
import type { Side } from '#charts/Frame.tsx';
import { type Placement, placeLabels, type Spot } from '#charts/labels.ts';
import { linePath } from '#charts/path.ts';
import { quantitySide } from '#charts/quantityAxis.ts';
import { type Axis, across, fraction, upward } from '#charts/scale.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import type { Held, MeterModel } from './model.ts';

export interface Drawn {
  readonly x: Side;
  readonly y: Side;
  readonly metered: string;
  readonly modelled: string;
  /** What the house draws beside the pump; empty where it is not known. */
  readonly rest: string;
  readonly meteredLabel: Placement | undefined;
  readonly modelledLabel: Placement | undefined;
  readonly restLabel: Placement | undefined;
}

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

/** A power for each slot of the day [W]; a slot without one leaves a gap. */
type Powers = readonly (number | null)[];

/** Level through each slot, straight up or down between; broken where no interval was. */
function stepped(powers: Powers, x: Axis, y: Axis): string {
  const length = 1440 / powers.length;
  return powers
    .map((power, index) => {
      if (power === null) return '';
      const [from, to, at] = [
        across(x, length * index),
        across(x, length * (index + 1)),
        upward(y, power),
      ].map((place) => place.toFixed(1));
      const joined = index > 0 && powers[index - 1] !== null;
      return joined ? `V${at}H${to}` : `M${from},${at}H${to}`;
    })
    .join('');
}

function smooth(powers: Powers, x: Axis, y: Axis): string {
  const length = 1440 / powers.length;
  return linePath(
    powers.map((power, index) => ({ x: length * (index + 0.5), y: power ?? undefined })),
    x,
    y,
  );
}

function spotsOf(powers: Powers, x: Axis, y: Axis): readonly Spot[] {
  const length = 1440 / powers.length;
  return powers.flatMap((power, index) =>
    power === null ? [] : [{ x: fraction(x, length * (index + 0.5)), y: 1 - fraction(y, power) }],
  );
}

/** The mean day by slots, or by the hour where intervals are longer. */
function meanDay({ slots, stretch }: Held): {
  readonly metered: Powers;
  readonly modelled: Powers;
} {
  if (slots.length > 0) {
    return {
      metered: slots.map(({ metered }) => metered),
      modelled: slots.map(({ modelled }) => modelled),
    };
  }
  const powers = (of: 'metered' | 'modelled') =>
    stretch.byHour.map((hour) => (hour.minutes > 0 ? hour[of] / (60 * hour.minutes) : null));
  return { metered: powers('metered'), modelled: powers('modelled') };
}

export function drawnOf(model: MeterModel): Drawn | null {
  const held = model.held.value;
  if (held === null) return null;
  const { metered, modelled: pump } = meanDay(held);
  // Beside a whole house the pump stands on what the house draws, so that the two lines can meet.
  const { kind, rest } = held.house;
  const isLifted = model.measures.value === 'house' && kind === 'told';
  const below = isLifted ? rest.map((power) => Math.max(0, power)) : [];
  const modelled = pump.map((power, index) =>
    power === null ? null : power + (below[index] ?? 0),
  );
  const greatest = Math.max(1, ...[...metered, ...modelled].map((power) => power ?? 0));
  const y = quantitySide('Mean power', 'power', model.units.value, { max: 1.2 * greatest });
  const [x, axis] = [time.axis, y.axis];
  const [modelledLabel, meteredLabel, restLabel] = placeLabels([
    { line: spotsOf(modelled, x, axis), width: 0.34, height: 0.09, wish: 0.45 },
    { line: spotsOf(metered, x, axis), width: 0.24, height: 0.09, wish: 0.8 },
    { line: spotsOf(below, x, axis), width: 0.4, height: 0.09, wish: 0.15 },
  ]);
  return {
    x: time,
    y,
    metered: stepped(metered, x, axis),
    modelled: stepped(modelled, x, axis),
    rest: smooth(below, x, axis),
    meteredLabel,
    modelledLabel,
    restLabel: isLifted ? restLabel : undefined,
  };
}
