import type { PadFit } from '#core/fit/padEvidence.ts';
import type { Pad } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { fitterFrom } from './fitting.ts';
import type { OwnNotes, ReadingBandModel } from './model.ts';
import type { Chosen, NotePad } from './pad.ts';

/** The same pad with some of its readings, and without its gauges where they are left out. */
function withSome(pad: Pad, { ids, gauges }: Chosen): Pad {
  const kept = pad.readings.filter(({ id }) => ids.includes(id));
  const bare = { filterPressure: null, suctionVacuum: null, gaugeHeight: null };
  return {
    ...pad,
    readings: gauges ? kept : kept.map((reading) => ({ ...reading, ...bare })),
  };
}

/** The reader's own notes, or nothing while no reading can be used. */
export function notesOf(pad: Pad): OwnNotes | undefined {
  const { speeds, fit } = padModel(pad);
  if (speeds === null || fit === null || fit.residuals.length === 0) return undefined;
  const usable = new Set(fit.residuals.map(({ id }) => id));
  const notes: NotePad = {
    speeds,
    lines: pad.readings
      .filter(({ id, speed }) => usable.has(id) && speed !== null)
      .map(({ id, speed, power, filterPressure }) => ({
        id,
        speed: speed ?? 0,
        power: power ?? undefined,
        pressure: filterPressure ?? undefined,
      }))
      .sort((a, b) => b.speed - a.speed),
  };
  // A choice that the core refuses shows what is known by all the notes.
  const fitOf = (chosen: Chosen): PadFit => padModel(withSome(pad, chosen)).fit ?? fit;
  return { pad: notes, fitter: fitterFrom({ pad: notes, reference: speeds.reference, fitOf }) };
}

/** Puts the reader's own readings and units beside the example. */
export function takePad(model: ReadingBandModel, pad: Pad): void {
  model.own.value = notesOf(pad);
  model.units.value = pad.units;
}
