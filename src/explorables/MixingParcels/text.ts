import type { TableData } from '#ui/charts/Table.tsx';
import { format, speak } from '#units/format.ts';
import { type MixingModel, nearly, passedBy, type Settings } from './model.ts';

/** A share in percent, with a place more where whole ones would say all or nothing. */
export function percentText(share: number): string {
  const near = Math.min(share, 1 - share) < 0.01 && share > 0 && share < 1;
  return format('share', share, { preset: 'us', overrides: {} }, { places: near ? 2 : 0 });
}

/** What the picture shows now. */
export function sentence(model: MixingModel): string {
  const units = model.units.value;
  const { volume, flow, time } = model.settings.value;
  if (flow === 0) return 'No water moves, so none has passed the filter.';
  if (time === 0) return 'The pump has just been started; no water has passed the filter yet.';
  const { turnovers, share, never, once, often } = model.here.value;
  return (
    `In ${format('duration', time, units)} at ${format('flow', flow, units)} the pump moves ${turnovers.toFixed(2)} times the ${format('volume', volume, units)} of the pool. ` +
    `${percentText(share)} of the water has passed the filter: ${percentText(once)} once, ${percentText(often)} more than once. ` +
    `${percentText(never)} has never been there. ` +
    `Until ${percentText(nearly)} has passed, it takes ${format('duration', model.nearlyAll.value ?? 0, units)}.`
  );
}

/** Spoken with each control: its value, and the share that follows. */
export function spoken(model: MixingModel, name: keyof Settings): string {
  const units = model.units.value;
  const value = model.settings.value[name];
  const quantity = ({ volume: 'volume', flow: 'flow', time: 'duration' } as const)[name];
  const share = Math.round(100 * model.here.value.share);
  return `${speak(quantity, value, units)}; ${share} percent has passed the filter`;
}

/** The parcels in words, for those who do not see them. */
export function parcelText(model: MixingModel): string {
  const { never, once, often } = model.parcels.value;
  return `Of 100 parcels of water ${never} have never passed the filter, ${once} once and ${often} more than once.`;
}

const hoursShown = [2, 4, 6, 8, 12, 16, 20, 24, 36, 48];

/** Share passed at round hours. */
export function table(model: MixingModel): TableData {
  return {
    caption: 'Water that has passed the filter, by hours of running',
    columns: ['Hours', 'Turnovers', 'Passed', 'Once', 'More than once', 'Never'],
    rows: hoursShown.map((hours) => {
      const { turnovers, share, never, once, often } = passedBy(model.settings.value, hours * 3600);
      return [
        String(hours),
        turnovers.toFixed(2),
        percentText(share),
        percentText(once),
        percentText(often),
        percentText(never),
      ];
    }),
  };
}
