/** Air temperatures by the hour from a table. */
import type { HourlyTemperature } from '#core/year/conditions.ts';
import { toSI } from '#units/convert.ts';
import type { CsvChoice } from './csvLook.ts';
import { createCsvSeries, isProblem } from './csvSeries.ts';
import { dayAt } from './dateOfMinute.ts';
import type { FileNote, FileProblem, ToLocal } from './series.ts';

export interface TemperatureFile {
  /** One entry for each hour of the local clock that has a value, in order. */
  readonly hours: readonly HourlyTemperature[];
  readonly notes: readonly FileNote[];
}

/** No air on Earth has been colder or warmer [degC]; beyond them the unit or the column is wrong. */
const air = { least: -90, greatest: 60 };

/** Takes a table piece by piece; gives the mean of each hour at the end. */
export function createTemperatureCsv(choice: CsvChoice, toLocal: ToLocal) {
  const series = createCsvSeries(choice, toLocal);
  const unit = choice.unit === 'degF' ? 'degF' : 'degC';
  return {
    push: series.push,
    end: (): TemperatureFile | FileProblem => {
      const read = series.end();
      if (isProblem(read)) return read;
      const sums = new Map<number, { total: number; count: number }>();
      const absurd = { count: 0, line: 0 };
      for (const { local, value, line } of read.values) {
        const temperature = toSI('temperature', value, unit);
        if (temperature < air.least || temperature > air.greatest) {
          absurd.count += 1;
          absurd.line ||= line;
          continue;
        }
        const hour = Math.floor(local / 60);
        const sum = sums.get(hour) ?? { total: 0, count: 0 };
        sums.set(hour, { total: sum.total + temperature, count: sum.count + 1 });
      }
      if (2 * absurd.count > read.values.length) {
        return { code: 'mostlyAbsurd', ...absurd, of: read.values.length };
      }
      const hours = [...sums]
        .sort(([one], [other]) => one - other)
        .map(([hour, { total, count }]) => ({
          date: dayAt(60 * hour),
          hour: hour % 24,
          temperature: total / count,
        }));
      return {
        hours,
        notes: [
          ...read.notes,
          ...(absurd.count > 0 ? [{ code: 'absurd', ...absurd } as const] : []),
        ],
      };
    },
  };
}
