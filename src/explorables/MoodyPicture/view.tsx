import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { QuantityRange } from '#ui/controls/QuantityRange.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { dialInLink, type LinkField } from '#ui/figure/linkState.ts';
import { Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { format } from '#units/format.ts';
import { createModel, type MoodyModel, type MoodyProps } from './model.ts';
import { Picture } from './Picture.tsx';
import { hazenNote, note, sentence, spoken, table, timesText } from './text.ts';

interface ViewProps extends MoodyProps {
  readonly id: string;
}

/** Settings in the link; the reader's own pad never travels in it. */
function linkFields(model: MoodyModel, first: string): Readonly<Record<string, LinkField>> {
  const ofExample = (read: () => string) => () => (model.source.value === 'mine' ? '' : read());
  const flow = dialInLink(model.flow);
  return {
    flow: { ...flow, read: ofExample(flow.read) },
    pipe: {
      read: ofExample(() => (model.chosen.value.id === first ? '' : model.chosen.value.id)),
      write: model.choosePipe,
    },
    wall: {
      read: ofExample(() => (model.wall.value === 'plastic' ? '' : model.wall.value)),
      write: model.chooseWall,
    },
  };
}

/** One run of pipe as a point on the chart of friction factors. */
function MoodyPicture({ id, ...props }: ViewProps): JSX.Element {
  const model = useMemo(() => createModel(props), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['friction', () => linkFields(model, props.pipes[0] ?? '')],
    own: () => import('./own.ts'),
  });
  const small = useComputed(() => note(model));
  const said = useComputed(() => spoken(model));
  const pipe = useComputed(() => model.chosen.value.id);
  return (
    <Figure id={id} title="Friction on one chart" {...figure} note={small}>
      <div class="moody-choices needs-script" key={model.source.value}>
        <ChoiceField
          id={`${id}-pipe`}
          label="The pipe"
          choices={model.scene.value.pipes}
          value={pipe}
          apply={model.choosePipe}
        />
        {model.source.value === 'example' && (
          <ChoiceField
            id={`${id}-wall`}
            label="Its wall"
            choices={[
              { id: 'plastic', label: 'Smooth plastic' },
              { id: 'rusty', label: 'Old galvanised steel' },
            ]}
            value={model.wall}
            apply={model.chooseWall}
          />
        )}
      </div>
      <Picture model={model} said={said} />
      <QuantityRange
        id={`${id}-flow`}
        label="Flow"
        dial={model.flow}
        of="flow"
        units={model.units}
        spoken={said}
      />
      <Losses model={model} />
    </Figure>
  );
}

export default guarded(MoodyPicture);

/** The loss by both laws, and what twice of each thing does to it. */
function Losses({ model }: { model: MoodyModel }): JSX.Element {
  const head = (value: number) => format('head', value, model.units.value);
  const loss = useComputed(() => head(model.here.value.loss));
  const over = useComputed(
    () => `over ${format('length', model.here.value.length, model.units.value)}`,
  );
  const hazen = useComputed(() => {
    const { hazen: found } = model.here.value;
    return found === undefined ? '–' : head(found);
  });
  const hazenWords = useComputed(() => hazenNote(model.here.value));
  const twice = (name: 'flow' | 'length' | 'bore') => ({
    value: useComputed(() => timesText(model.here.value.twice[name])),
    note: useComputed(() => `${head(model.here.value.loss * model.here.value.twice[name])}`),
  });
  const [flow, length, bore] = [twice('flow'), twice('length'), twice('bore')];
  return (
    <Readings
      items={[
        { id: 'loss', label: 'Darcy–Weisbach', value: loss, note: over, of: 'head' },
        { id: 'hazen', label: 'Hazen–Williams', value: hazen, note: hazenWords, of: 'head' },
        { id: 'twice-flow', label: 'Twice the flow', ...flow },
        { id: 'twice-length', label: 'Twice the length', ...length },
        { id: 'twice-bore', label: 'Twice the bore', ...bore },
      ]}
    />
  );
}
