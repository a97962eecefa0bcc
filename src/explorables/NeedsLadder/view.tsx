import type { ReadonlySignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { ToggleField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink, type LinkField } from '#ui/figure/linkState.ts';
import { guarded } from '#ui/loading/Guard.tsx';
import { exampleScene } from './example.ts';
import { createModel, type NeedsLadderModel, type Step } from './model.ts';
import { Picture } from './Picture.tsx';
import { coverText, fateText, needText, sentence, spoken, table } from './text.ts';

/** Speed the picture opens at [rpm]: some needs are served, some not yet. */
const opening = 1300;

function linkFields(model: NeedsLadderModel): Readonly<Record<string, LinkField>> {
  const speed = dialInLink(model.speed);
  return {
    speed: { ...speed, read: () => (model.source.value === 'mine' ? '' : speed.read()) },
    covers: {
      read: () => (model.blocked.value ? '' : 'open'),
      write: (text) => {
        model.blocked.value = text !== 'open';
      },
    },
  };
}

/** What each thing on the pad needs, as rungs of a ladder of speeds, under the ceilings of the limits. */
function NeedsLadder({ id }: { id: string }): JSX.Element {
  const model = useMemo(() => createModel(exampleScene, opening), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['needs', linkFields],
    own: () => import('./own.ts'),
  });
  const said = useComputed(() => spoken(model));
  const entry = useComputed(() => quantityEntry('speed', model.units.value));
  return (
    <Figure
      id={id}
      title="A ladder of speeds"
      {...figure}
      note="The pad of the example is invented; its needs and limits are of a common size, and all its water passes each thing in turn. On a real pad the label and the manual of each unit govern, and the flow marked on the covers above all."
    >
      <div class="needs-row">
        <Picture model={model} said={said} />
        <div class="needs-side">
          <Needs model={model} />
          <Covers id={id} model={model} />
        </div>
      </div>
      {model.mayRun.value && (
        <RangeField
          id={`${id}-speed`}
          label="Speed"
          dial={model.speed}
          spoken={said}
          entry={entry}
          unit="rpm"
          {...(model.ladder.value.stop !== undefined && {
            hint: 'It ends at the hard stop of the suction covers.',
          })}
        />
      )}
    </Figure>
  );
}

export default guarded(NeedsLadder);

/** Each need in words: what it asks for, and how it fares. */
function Needs({ model }: { readonly model: NeedsLadderModel }): JSX.Element {
  const { steps } = model.ladder.value;
  return (
    <ul class="needs-list" role="list">
      {[...steps].reverse().map((step) => (
        <NeedLine key={step.need.id} model={model} step={step} />
      ))}
    </ul>
  );
}

function NeedLine({ model, step }: { model: NeedsLadderModel; step: Step }): JSX.Element {
  const fate = useComputed(() => model.fateOf(step));
  const words = useComputed(() => fateText(model, step));
  const asks = useComputed(() => needText(model, step));
  return (
    <li class="needs-line" data-fate={fate}>
      <strong>{step.need.name}</strong>
      <span class="needs-asks">{asks}</span>
      <span class="needs-fate">{words}</span>
    </li>
  );
}

interface CoversProps {
  readonly id: string;
  readonly model: NeedsLadderModel;
}

/** What passes through each suction cover; with one of them blocked, the other takes all. */
function Covers({ id, model }: CoversProps): JSX.Element | null {
  const { covers } = model.ladder.value.scene;
  if (covers.length === 0) return null;
  return (
    <div class="needs-covers">
      {covers.map((_, place) => (
        <Cover key={place} model={model} place={place} />
      ))}
      {covers.length > 1 && (
        <div class="needs-script">
          <ToggleField
            id={`${id}-blocked`}
            label="One cover is blocked"
            value={model.blocked}
            apply={(on) => {
              model.blocked.value = on;
            }}
          />
        </div>
      )}
      <p class="needs-rule">
        {covers.length > 1
          ? 'The stop takes one of them as blocked and every other line as shut, whether they are or not.'
          : 'The stop is the flow marked on the cover. A single outlet needs a second protection as well.'}
      </p>
    </div>
  );
}

function Cover({ model, place }: { model: NeedsLadderModel; place: number }): JSX.Element {
  const share: ReadonlySignal<string> = useComputed(() => {
    const load = model.covers.value[place];
    const part = load === undefined ? 0 : load.flow / load.marked;
    return `--share:${Math.min(part, 1).toFixed(4)}`;
  });
  const shut = useComputed(() => model.covers.value[place]?.blocked ?? false);
  const words = useComputed(() => coverText(model, place));
  return (
    <div class="needs-cover" data-blocked={shut} data-quantity="flow">
      <span class="needs-cover-name">Cover {place + 1}</span>
      <span class="needs-cover-track" aria-hidden="true">
        <span class="needs-cover-fill" style={share} />
      </span>
      <span class="needs-cover-words">{words}</span>
    </div>
  );
}
