import type { TableData } from '#ui/charts/Table.tsx';
import { format } from '#units/format.ts';
import { formatTimeOfDay as clock } from '#units/timeOfDay.ts';
import type { DayModel } from './model.ts';
import { rpmText } from './text.ts';

/** The step lines as numbers: one row for each stretch of the day. */
export function tableOf(model: DayModel): TableData {
  const units = model.units.value;
  const segments = model.here.value?.report.segments ?? [];
  const reference = model.speeds.value?.reference ?? 1;
  return {
    caption: 'Each stretch of the day from midnight to midnight.',
    columns: ['From–to', 'Speed', 'Flow', 'Power', 'Velocity, suction', 'Velocity, return'],
    rows: segments.map((segment) => [
      `${clock(segment.start)}–${segment.end === 1440 ? '24:00' : clock(segment.end)}`,
      segment.kind === 'off' ? 'off' : rpmText(segment.ratio * reference, units),
      format('flow', segment.flow, units),
      format('power', segment.power, units),
      format('velocity', segment.suctionVelocity, units),
      format('velocity', segment.dischargeVelocity, units),
    ]),
  };
}
