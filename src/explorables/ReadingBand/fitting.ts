/** From a fit of the core to what the picture draws. Fetched when the picture wakes. */
import type { PadFit } from '#core/fit/padEvidence.ts';
import { contradictionText } from './contradictions.ts';
import {
  type Chosen,
  type Fitted,
  type Fitter,
  type Foretold,
  type Known,
  type NotePad,
  noNotes,
  reachOf,
} from './pad.ts';

/** How many speeds are drawn. */
const places = 24;

interface FitInputs {
  readonly pad: NotePad;
  /** Speed that the core's ratios count from [rpm]. */
  readonly reference: number;
  /** The fit of some of the notes; null where the core cannot fit them. */
  readonly fitOf: (chosen: Chosen) => PadFit | null;
}

function speedsOf({ speeds: { least, top } }: NotePad): number[] {
  return Array.from({ length: places }, (_, at) => least + ((top - least) * at) / (places - 1));
}

/** Best values come from the band's own middle on the logarithm, where the core puts them. */
const middle = ({ low, high }: { low: number; high: number }) => Math.sqrt(low * high);

/** What the other notes alone say where the slowest was taken. */
function foretell({ pad, reference, fitOf }: FitInputs, chosen: Chosen): Foretold | undefined {
  const used = pad.lines
    .filter(({ id, power }) => chosen.ids.includes(id) && power !== undefined)
    .sort((a, b) => a.speed - b.speed);
  const [slowest] = used;
  if (slowest?.power === undefined || used.length < 2) return undefined;
  const others = chosen.ids.filter((id) => id !== slowest.id);
  const band = fitOf({ ...chosen, ids: others })?.bandAt(slowest.speed / reference).power;
  if (band === undefined) return undefined;
  const { speed, power: measured } = slowest;
  return { speed, measured, said: { ...band, best: middle(band) } };
}

function knownBy({ pad, reference }: FitInputs, fit: PadFit): readonly Known[] {
  return speedsOf(pad).map((speed) => {
    const { power, flow } = fit.bandAt(speed / reference);
    return {
      speed,
      power: { ...power, best: middle(power) },
      flow: { ...flow, best: middle(flow) },
    };
  });
}

function fitted(inputs: FitInputs, chosen: Chosen, fit: PadFit): Omit<Fitted, 'reach'> {
  const { pad, reference } = inputs;
  const speedOf = (id: string) => pad.lines.find((line) => line.id === id)?.speed ?? 0;
  const next = (answer: 'power' | 'flow') => {
    const { instrument, ratio, widthBefore, widthAfter } = fit.narrowingOf[answer];
    return { instrument, speed: ratio * reference, before: widthBefore, after: widthAfter };
  };
  return {
    known: knownBy(inputs, fit),
    residuals: fit.residuals.map(({ id, quantity, measured, predicted, deviations }) => ({
      speed: speedOf(id),
      quantity,
      measured,
      predicted,
      deviations,
    })),
    contradictions: [
      ...new Set(
        fit.contradictions.map((found) => contradictionText(found, (id) => `${speedOf(id)} rpm`)),
      ),
    ],
    next: { power: next('power'), flow: next('flow') },
    foretold: foretell(inputs, chosen),
  };
}

/**
 * Notes that show a shade more resistance than described leave the slowest speeds a shade less sure:
 * nobody knows with which power of the flow it goes. Hence a twentieth above the share without notes.
 */
function withRoom({ power, flow }: Fitted['reach']): Fitted['reach'] {
  return { power, flow: { ...flow, share: 1.05 * flow.share } };
}

/** A fitter that the picture can ask for any choice of notes. */
export function fitterFrom(inputs: FitInputs): Fitter {
  let reach: Fitted['reach'] | undefined;
  return (chosen) => {
    const fit = inputs.fitOf(chosen);
    if (fit === null) throw new RangeError('These notes cannot be fitted.');
    reach ??= withRoom(reachOf(knownBy(inputs, inputs.fitOf(noNotes) ?? fit)));
    return { ...fitted(inputs, chosen, fit), reach };
  };
}
