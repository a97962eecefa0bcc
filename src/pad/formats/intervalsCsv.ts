/** Intervals of a meter from a table. */
import { joulesPerKilowattHour } from '#core/base/constants.ts';
import type { AmountUnit, CsvChoice } from './csvLook.ts';
import { createCsvSeries, isProblem } from './csvSeries.ts';
import { type MeterFile, meterFile } from './meterFile.ts';
import { type FileProblem, type ToLocal, usualStep } from './series.ts';

const energyOf: Readonly<Record<AmountUnit, (value: number, minutes: number) => number>> = {
  kWh: (value) => value * joulesPerKilowattHour,
  Wh: (value) => (value * joulesPerKilowattHour) / 1000,
  kW: (value, minutes) => value * 1000 * 60 * minutes,
  W: (value, minutes) => value * 60 * minutes,
};

/** Takes a table piece by piece; gives its intervals at the end. */
export function createIntervalsCsv(choice: CsvChoice, toLocal: ToLocal) {
  const series = createCsvSeries(choice, toLocal);
  return {
    push: series.push,
    end: (): MeterFile | FileProblem => {
      const read = series.end();
      if (isProblem(read)) return read;
      const step = usualStep(read.values);
      if (step === null) return { code: 'noReadings' };
      const early = choice.atEnd ? step : 0;
      const values = read.values.map((value) => ({
        ...value,
        local: value.local - early,
        running: value.running - early,
      }));
      const unit = choice.unit === 'degC' || choice.unit === 'degF' ? 'kWh' : choice.unit;
      return meterFile(values, step, energyOf[unit], read.notes);
    },
  };
}
