/** What the picture of a meter is drawn from: the mean day, metered and modelled. */
import type { Side } from '#ui/charts/Frame.tsx';
import { type Placement, placeLabels, type Spot } from '#ui/charts/labels.ts';
import { linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { type Axis, across, fraction, upward } from '#ui/charts/scale.ts';
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
    ticks: [0, 6, 12, 18, 24].map((hour) => ({
      value: hour * 60,
      // Hours alone: "24:00" would reach over the edge of a phone.
      label: String(hour).padStart(2, '0'),
    })),
    fine: Array.from({ length: 24 }, (_, hour) => hour * 60),
  },
  title: 'Hour of the day',
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

/** Points along the steps, the jumps too, so that no words are laid over them. */
function spotsOf(powers: Powers, x: Axis, y: Axis): readonly Spot[] {
  const length = 1440 / powers.length;
  return powers.flatMap((power, index) => {
    if (power === null) return [];
    const before = powers[index - 1] ?? power;
    const jump = [0.2, 0.4, 0.6, 0.8].map((part) => before + part * (power - before));
    const from = fraction(x, length * index);
    const at = (place: number, value: number) => ({ x: place, y: 1 - fraction(y, value) });
    return [
      ...jump.map((value) => at(from, value)),
      at(fraction(x, length * (index + 0.5)), power),
    ];
  });
}

/** Slots finer than half an hour are drawn by the half hour: what jitters faster hides the lines. */
function drawnSlots(powers: Powers): Powers {
  if (powers.length <= 48) return powers;
  const share = powers.length / 48;
  return Array.from({ length: 48 }, (_, index) => {
    const own = powers.slice(share * index, share * (index + 1)).filter((power) => power !== null);
    return own.length === 0 ? null : own.reduce((sum, power) => sum + power, 0) / own.length;
  });
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
  const day = meanDay(held);
  const [metered, pump] = [drawnSlots(day.metered), drawnSlots(day.modelled)];
  // Beside a whole house the pump stands on what the house draws, so that the two lines can meet.
  const { kind, rest } = held.house;
  const isLifted = model.measures.value === 'house' && kind === 'told';
  const below = isLifted ? drawnSlots(rest.map((power) => Math.max(0, power))) : [];
  const modelled = pump.map((power, index) =>
    power === null ? null : power + (below[index] ?? 0),
  );
  const greatest = Math.max(1, ...[...metered, ...modelled].map((power) => power ?? 0));
  const y = quantitySide('Mean power', 'power', model.units.value, { max: 1.12 * greatest });
  const [x, axis] = [time.axis, y.axis];
  const [modelledLabel, meteredLabel, restLabel] = placeLabels([
    { line: spotsOf(modelled, x, axis), width: isLifted ? 0.56 : 0.4, height: 0.09, wish: 0.4 },
    { line: spotsOf(metered, x, axis), width: 0.22, height: 0.09, wish: 0.65 },
    { line: spotsOf(below, x, axis), width: 0.42, height: 0.09, wish: 0.1 },
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
