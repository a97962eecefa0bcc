import type { Signal } from '@preact/signals';
import type { ComponentChildren, JSX } from 'preact';
import { type Live, read } from '#ui/charts/live.ts';
import { Table, type TableData } from '#ui/charts/Table.tsx';
import { useSettled } from '#ui/controls/settle.ts';
import { Announce } from './Announce.tsx';

/** Whose pad a picture is drawn for. */
export type Source = 'example' | 'mine';

interface FigureProps {
  readonly id: string;
  readonly title: string;
  /** The finding in one sentence; caption, spoken text and print all use it. */
  readonly sentence: Live<string>;
  readonly table: Live<TableData>;
  readonly onReset?: () => void;
  /** The switch between the example and the reader's own pad, where there is one. */
  readonly source?: Signal<Source>;
  /** False while the reader has no pad of their own. */
  readonly hasOwn?: Live<boolean>;
  /** Says what is invented and what was assumed. */
  readonly note?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** The shell every explorable stands in: title, tools, picture and controls, finding, numbers. */
export function Figure(props: FigureProps): JSX.Element {
  const { id, title, sentence, table, onReset, source, note } = props;
  const settledTable = useSettled(table, 250);
  return (
    <figure class="figure" id={id} aria-labelledby={`${id}-title`}>
      <div class="figure-head">
        <p class="figure-title" id={`${id}-title`}>
          {title}
        </p>
        <div class="figure-tools needs-script">
          {source !== undefined && <SourceSwitch id={id} source={source} hasOwn={props.hasOwn} />}
          {onReset !== undefined && (
            <button type="button" class="button button-quiet" onClick={onReset}>
              Reset
            </button>
          )}
        </div>
      </div>
      {props.children}
      <figcaption class="figure-finding">{sentence}</figcaption>
      {note !== undefined && <p class="figure-note">{note}</p>}
      <Table data={settledTable} />
      <Announce sentence={sentence} />
    </figure>
  );
}

interface SwitchProps {
  readonly id: string;
  readonly source: Signal<Source>;
  readonly hasOwn?: Live<boolean> | undefined;
}

function SourceSwitch({ id, source, hasOwn = true }: SwitchProps): JSX.Element | null {
  if (!read(hasOwn)) return null;
  const item = (which: Source, words: string) => (
    <label class="choice-item">
      <input
        type="radio"
        name={`${id}-source`}
        value={which}
        checked={source.value === which}
        onChange={() => {
          source.value = which;
        }}
      />
      <span>{words}</span>
    </label>
  );
  return (
    <fieldset class="source-switch choice-row">
      <legend class="visually-hidden">Show it for</legend>
      {item('example', 'The example')}
      {item('mine', 'My pad')}
    </fieldset>
  );
}
