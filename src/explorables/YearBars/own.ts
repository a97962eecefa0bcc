import { operatingStateAt } from '#explorables/example/machine.ts';
import { machineOf } from '#explorables/example/padMachine.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import type { YearBarsModel } from './model.ts';

/** Puts the reader's own pump and tariff beside the example; without either the switch stays away. */
export function takePad(model: YearBarsModel, pad: Pad): void {
  const machine = machineOf(pad);
  const { tariff, standbyPower } = padModel(pad);
  model.own.value =
    machine === undefined || tariff === null
      ? undefined
      : {
          runningAt: (speed) => operatingStateAt(machine, speed),
          leastSpeed: machine.leastSpeed,
          topSpeed: machine.topSpeed,
          tariff,
          year: pad.day.date?.year ?? 2027,
          standbyPower,
        };
  model.units.value = pad.units;
}
