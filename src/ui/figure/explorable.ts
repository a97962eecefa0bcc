import type { ReadonlySignal, Signal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { Pad } from '#pad/document/schema.ts';
import type { TableData } from '#ui/charts/Table.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import type { Source } from './Figure.tsx';
import { type LinkFields, useLinkState } from './linkState.ts';
import { useOwnPad } from './ownPad.ts';

/** What every explorable of a lesson has: the example or the reader's own, and a way back. */
interface ExplorableModel {
  /** The reader's own, when their pad says enough of it. */
  readonly own: ReadonlySignal<unknown>;
  readonly source: Signal<Source>;
  reset(): void;
}

interface ExplorableParts<Model> {
  readonly sentence: (model: Model) => string;
  readonly table: (model: Model) => TableData;
  /** Name of the picture in the page's address, letters only, and its settings. */
  readonly link: readonly [name: string, fields: (model: Model) => LinkFields];
  /** Brings what puts the reader's own pad beside the example. */
  readonly own: () => Promise<{ readonly takePad: (model: Model, pad: Pad) => void }>;
}

/** Ties a model to its figure: the finding, the table, the link, Reset and the reader's own pad. */
export function useExplorable<Model extends ExplorableModel>(
  model: Model,
  parts: ExplorableParts<Model>,
) {
  const [name, fieldsOf] = parts.link;
  useOwnPad(async () => {
    const { takePad } = await parts.own();
    return (pad) => takePad(model, pad);
  });
  useLinkState(
    name,
    useMemo(() => fieldsOf(model), [model]),
  );
  return {
    sentence: useComputed(() => parts.sentence(model)),
    table: useComputed(() => parts.table(model)),
    hasOwn: useComputed(() => model.own.value !== undefined),
    source: model.source,
    onReset: model.reset,
  };
}
