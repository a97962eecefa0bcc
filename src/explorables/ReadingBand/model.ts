import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Source } from '#ui/figure/Figure.tsx';
import { type UnitChoice, us } from '#units/choice.ts';
import { slipped } from './example.ts';
import type { Answer, Chosen, Fitted, Fitter, NoteLine, NotePad } from './pad.ts';

export interface ReadingBandModel {
  readonly units: Signal<UnitChoice>;
  readonly source: Signal<Source>;
  /** The reader's own notes with what fits them. */
  readonly own: Signal<OwnNotes | undefined>;
  /** What fits the example; not there until it has been fetched. */
  readonly fitter: Signal<Fitter | undefined>;
  readonly pad: ReadonlySignal<NotePad>;
  readonly answer: Signal<Answer>;
  readonly gauges: Signal<boolean>;
  readonly slip: Signal<boolean>;
  /** Lines in use, as they stand in the notebook, the slip included. */
  readonly used: ReadonlySignal<readonly NoteLine[]>;
  readonly fitted: ReadonlySignal<Fitted>;
  isUsed(id: string): boolean;
  use(id: string, on: boolean): void;
  reset(): void;
}

export interface OwnNotes {
  readonly pad: NotePad;
  readonly fitter: Fitter;
}

/** A notebook whose lines are taken into account one by one. */
export function createModel(example: NotePad, opening: Chosen, first: Fitted): ReadingBandModel {
  const units = signal<UnitChoice>(us);
  const source = signal<Source>('example');
  const own = signal<OwnNotes | undefined>(undefined);
  const fitter = signal<Fitter | undefined>(undefined);
  const answer = signal<Answer>('power');
  const gauges = signal(opening.gauges);
  const slip = signal(opening.slip);
  /** Ids of both pads side by side: going back to the example finds its lines as they were left. */
  const picked = signal<ReadonlySet<string>>(new Set(opening.ids));
  const ownPicked = signal<ReadonlySet<string> | undefined>(undefined);

  const mine = computed(() => (source.value === 'mine' ? own.value : undefined));
  const pad = computed(() => mine.value?.pad ?? example);
  const ids = computed(() => {
    if (mine.value === undefined) return picked.value;
    return ownPicked.value ?? new Set(mine.value.pad.lines.map(({ id }) => id));
  });
  const chosen = computed(
    (): Chosen => ({
      ids: pad.value.lines.map(({ id }) => id).filter((id) => ids.value.has(id)),
      gauges: gauges.value,
      slip: slip.value && mine.value === undefined,
    }),
  );
  const fitted = computed(() => {
    const working = mine.value?.fitter ?? fitter.value;
    return working === undefined ? first : working(chosen.value);
  });
  const used = computed(() =>
    pad.value.lines
      .filter(({ id }) => ids.value.has(id))
      .map((line) =>
        chosen.value.slip && line.id === slipped.id ? { ...line, power: slipped.power } : line,
      ),
  );
  return {
    units,
    source,
    own,
    fitter,
    pad,
    answer,
    gauges,
    slip,
    used,
    fitted,
    isUsed: (id) => ids.value.has(id),
    use: (id, on) => {
      const next = new Set(ids.peek());
      if (on) next.add(id);
      else next.delete(id);
      if (mine.peek() === undefined) picked.value = next;
      else ownPicked.value = next;
    },
    reset: () => {
      source.value = 'example';
      answer.value = 'power';
      gauges.value = opening.gauges;
      slip.value = opening.slip;
      picked.value = new Set(opening.ids);
      ownPicked.value = undefined;
    },
  };
}
