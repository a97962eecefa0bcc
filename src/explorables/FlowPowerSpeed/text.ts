import { operatingStateAt } from '#explorables/example/machine.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { format, speak, symbolFor } from '#units/format.ts';
import type { FlowPowerSpeedModel } from './model.ts';

const percent = (share: number) => `${Math.round(share * 100)}\u00a0%`;

/** The finding, in two sentences. */
export function sentence(model: FlowPowerSpeedModel): string {
  const units = model.units.value;
  const { here, full, shares } = model;
  const { speed, flow, head, power, extrapolated } = here.value;
  if (flow === 0) {
    return `At ${format('speed', speed, units)} no water moves: the pump makes ${format('head', head, units)} of head and does not reach the height that the water must.`;
  }
  const what = shares.value;
  return (
    `At ${format('speed', speed, units)} the pump moves ${format('flow', flow, units)} at ${format('head', head, units)} and draws ${format('power', power, units)}. ` +
    `Compared with ${format('speed', full.value.speed, units)} that is ${percent(what.speed)} of the speed, ${percent(what.flow)} of the flow, ${percent(what.head)} of the head and ${percent(what.power)} of the power.` +
    (extrapolated ? ' This flow lies past the end of the pump’s curve, so it is a guess.' : '')
  );
}

/** Spoken with the slider. */
export function spoken(model: FlowPowerSpeedModel): string {
  const units = model.units.value;
  const { speed, flow, power } = model.here.value;
  return `${speak('speed', speed, units)}, ${speak('flow', flow, units)}, ${speak('power', power, units)}`;
}

/** The plain law beside what the pump really does: speed share to the power 1, 2, 3. */
export function bars(model: FlowPowerSpeedModel) {
  const units = model.units.value;
  const { here, shares } = model;
  const ratio = shares.value.speed;
  const bar = (of: 'flow' | 'head' | 'power', label: string, power: number, law: string) => ({
    of,
    label,
    law,
    share: shares.value[of],
    plain: ratio ** power,
    shown: format(of, here.value[of], units),
    percent: percent(shares.value[of]),
  });
  return [
    bar('flow', 'Flow', 1, 'speed share'),
    bar('head', 'Head', 2, 'squared'),
    bar('power', 'Wire power', 3, 'cubed'),
  ] as const;
}

export function table(model: FlowPowerSpeedModel): TableData {
  const units = model.units.value;
  const machine = model.machine.value;
  const { leastSpeed, topSpeed } = machine;
  const steps = 8;
  const bare = { withUnit: false };
  return {
    caption: 'What the pump does at speeds from slowest to fastest',
    columns: [
      `Speed, ${symbolFor(units, 'speed')}`,
      `Flow, ${symbolFor(units, 'flow')}`,
      `Head, ${symbolFor(units, 'head')}`,
      `Wire power, ${symbolFor(units, 'power')}`,
    ],
    rows: Array.from({ length: steps + 1 }, (_, index) => {
      const speed = leastSpeed + ((topSpeed - leastSpeed) * index) / steps;
      const at = operatingStateAt(machine, speed);
      return [
        format('speed', at.speed, units, bare),
        format('flow', at.flow, units, bare),
        format('head', at.head, units, bare),
        format('power', at.power, units, bare),
      ];
    }),
  };
}
