import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import type { Pad } from '#pad/document/schema.ts';
import { prepare } from '#pad/model/firstFit.ts';
import { unlessRefused } from '#pad/model/memo.ts';
import { padStore } from '#pad/store/padStore.ts';
import type { PadStore } from '#pad/store/store.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { quantityEntry } from '#ui/controls/quantityEntry.ts';
import { RangeField } from '#ui/controls/RangeField.tsx';
import { Figure } from '#ui/figure/Figure.tsx';
import { Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { Later } from '#ui/loading/Later.tsx';
import { AnswerPart } from './AnswerPart.tsx';
import { hereAt } from './figures.ts';
import { firstSteps } from './firstSteps.ts';
import { Ladder } from './Ladder.tsx';
import { type AnswersModel, createAnswers } from './model.ts';
import { OperatingPicture } from './OperatingPicture.tsx';
import { readoutsOf } from './readouts.ts';
import * as text from './text.ts';

const loadRest = async () => (await import('./Rest.tsx')).Rest;
const builtRest = import.meta.env.SSR ? await loadRest() : null;
if (!import.meta.env.SSR) await prepare(firstSteps);

interface PadAnswersProps {
  readonly id?: string;
  readonly store?: PadStore;
  /** The pad that the page is built with, whatever the reader's own turns out to be. */
  readonly first?: Pad;
}

/** Everything that follows from the reader's pad. */
function PadAnswers(props: PadAnswersProps): JSX.Element {
  const { id = 'answers', store = padStore, first = ownerPad } = props;
  const model = useMemo(() => createAnswers(first), [first]);
  useEffect(() => model.follow(store), [model, store]);
  const hasScene = useComputed(() => model.scene.value !== null);
  return (
    <div class="answers" id={id} data-first-pad>
      <h2 class="answers-title">What your pad does</h2>
      {hasScene.value && <Answers id={id} model={model} />}
      <Later load={loadRest} built={builtRest} props={{ id, model }} wake={model.pad} />
      {hasScene.value && (
        <p class="answers-next">
          <a class="button" href="/day/">
            Lay these speeds over a day
          </a>
        </p>
      )}
    </div>
  );
}

export default guarded(PadAnswers, padStore);

interface AnswersProps {
  readonly id: string;
  readonly model: AnswersModel;
}

function Answers({ id, model }: AnswersProps): JSX.Element {
  return (
    <>
      <Point id={`${id}-point`} model={model} />
      <AnswerPart
        id={`${id}-ladder`}
        title="Speed ladder"
        lead="The slowest speed for each need. Take a rung to set the picture above."
      >
        <Ladder model={model} />
      </AnswerPart>
    </>
  );
}

/** Where pump and pipes meet at the speed chosen, and what that gives. */
function Point({ id, model }: AnswersProps): JSX.Element {
  const { scene, here, units, prices, speed } = model;
  const sentence = useComputed(() => {
    const [pad, now] = [scene.value, here.value];
    return pad === null || now === null ? '' : text.finding(now, pad, units.value);
  });
  const said = useComputed(() => (here.value === null ? '' : text.spoken(here.value, units.value)));
  const table = useComputed(() => {
    const pad = scene.value;
    if (pad === null) return { caption: '', columns: [], rows: [] };
    const at = (wish: number) => unlessRefused(() => hereAt(pad, wish));
    return text.speedTable(pad, at, prices.value, units.value);
  });
  const entry = useComputed(() =>
    quantityEntry('speed', units.value, { least: speed.min.value, greatest: speed.max.value }),
  );
  return (
    <Figure
      id={id}
      title="Where pump and pipes meet"
      sentence={sentence}
      table={table}
      note="Shaded: where the operating point may lie, by all that is known. Numbers: the rungs of the ladder."
    >
      <OperatingPicture model={model} said={said} />
      <RangeField
        id={`${id}-speed`}
        label="Speed"
        dial={speed}
        spoken={said}
        entry={entry}
        unit="rpm"
      />
      <Readouts model={model} />
    </Figure>
  );
}

/** Which figures there are follows the pad; what they say follows the speed. */
function Readouts({ model }: { readonly model: AnswersModel }): JSX.Element {
  const kinds = useComputed(() => {
    const { scene, prices, here, units } = model;
    return [
      scene.value !== null && scene.value.known.volume !== null,
      prices.value?.low,
      prices.value?.high,
      prices.value?.currency,
      here.value?.current === null,
      model.leastEnergy.value?.speed,
      units.value.preset,
    ].join(' ');
  });
  const items = useMemo(() => readoutsOf(model), [model, kinds.value]);
  return <Readings items={items} />;
}
