import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { Frame, type Side } from '#ui/charts/Frame.tsx';
import { Band, Curve, CurveLabel, Marker } from '#ui/charts/marks.tsx';
import { bandPath, linePath } from '#ui/charts/path.ts';
import { quantitySide } from '#ui/charts/quantityAxis.ts';
import { fraction, niceAxis, type TickedAxis } from '#ui/charts/scale.ts';
import { ChoiceField, ToggleField } from '#ui/controls/ChoiceFields.tsx';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { examplePad, openingChoice } from './example.ts';
import { createModel, type ReadingBandModel } from './model.ts';
import { type Answer, type Fitted, halfWidth } from './pad.ts';
import { lineText, sentence, table } from './text.ts';

const answers = [
  { id: 'power', label: 'Power' },
  { id: 'flow', label: 'Flow' },
] as const;

/** Settings of the example in the address: which lines, and the three switches. */
function inLink(model: ReadingBandModel) {
  const flag = (name: 'gauges' | 'slip', opening: boolean) => ({
    read: () => (model[name].value === opening ? '' : String(Number(model[name].value))),
    write: (text: string) => {
      model[name].value = text === '1';
    },
  });
  const lines = examplePad.lines.map(({ id }, place) => {
    const opening = openingChoice.ids.includes(id);
    return [
      `note${'abcd'[place]}`,
      {
        read: () => {
          if (model.source.value === 'mine') return '';
          return model.isUsed(id) === opening ? '' : String(Number(model.isUsed(id)));
        },
        write: (text: string) => model.use(id, text === '1'),
      },
    ] as const;
  });
  return {
    ...Object.fromEntries(lines),
    gauges: flag('gauges', openingChoice.gauges),
    slip: flag('slip', openingChoice.slip),
    of: {
      read: () => (model.answer.value === 'power' ? '' : model.answer.value),
      write: (text: string) => choose(model, text),
    },
  };
}

function choose(model: ReadingBandModel, id: string): void {
  if (id === 'power' || id === 'flow') model.answer.value = id;
}

interface ViewProps {
  readonly id: string;
  /** The fit of the opening notes, worked out when the page was built. */
  readonly first: Fitted;
}

/** A notebook of readings, and how sure each line of it makes the answer. */
function ReadingBand({ id, first }: ViewProps): JSX.Element {
  const model = useMemo(() => createModel(examplePad, openingChoice, first), []);
  useEffect(() => {
    void import('./exampleFit.ts').then(
      ({ exampleFitter }) => {
        model.fitter.value = exampleFitter;
      },
      () => {
        // Out of reach: the first picture stands.
      },
    );
  }, []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['readingband', inLink],
    own: () => import('./own.ts'),
  });
  return (
    <Figure
      id={id}
      title="How sure the notes make you"
      {...figure}
      note="The example is an invented pad with invented readings. The band holds the truth nineteen times in twenty, if the instruments are as good as usual: watts to 5 %, a gauge of grade B."
    >
      <div class="plot-pair">
        <BandPlot model={model} />
        <WidthPlot model={model} />
      </div>
      <Notes id={id} model={model} />
    </Figure>
  );
}

export default guarded(ReadingBand);

function Notes({ id, model }: { id: string; model: ReadingBandModel }): JSX.Element {
  const mine = model.source.value === 'mine';
  return (
    <>
      <fieldset class="band-notes needs-script">
        <legend>Notes to use</legend>
        {model.pad.value.lines.map((line) => (
          <ToggleField
            key={line.id}
            id={`${id}-${line.id}`}
            label={lineText(line, model)}
            value={model.isUsed(line.id)}
            apply={(on) => model.use(line.id, on)}
          />
        ))}
      </fieldset>
      <div class="band-notes needs-script">
        <ToggleField
          id={`${id}-gauges`}
          label="Use the gauges as well as the watts"
          value={model.gauges}
          apply={(on) => {
            model.gauges.value = on;
          }}
        />
        {!mine && (
          <ToggleField
            id={`${id}-slip`}
            label="Write the watts at 1900 rpm down wrong: 340 for 430"
            value={model.slip}
            apply={(on) => {
              model.slip.value = on;
            }}
          />
        )}
        <ChoiceField
          id={`${id}-of`}
          label="Show"
          choices={answers}
          value={model.answer}
          apply={(which) => choose(model, which)}
        />
      </div>
    </>
  );
}

interface PlotProps {
  readonly model: ReadingBandModel;
}

function speedSide(model: ReadingBandModel): Side {
  const { least, top } = model.pad.value.speeds;
  return quantitySide('Speed', 'speed', model.units.value, { min: least, max: top, exact: true });
}

const names: Readonly<Record<Answer, string>> = { power: 'Wire power', flow: 'Flow' };

/** The answer with its band over the speeds, and the watts that were read. */
function BandPlot({ model }: PlotProps): JSX.Element {
  const answer = model.answer.value;
  const { known, reach } = model.fitted.value;
  const xSide = speedSide(model);
  const { axis: x } = xSide;
  const ySide = quantitySide(names[answer], answer, model.units.value, {
    max: Math.max(reach[answer].high, 1e-6),
  });
  const { axis: y } = ySide;
  const read = answer === 'power' ? model.used.value : [];
  return (
    <Frame
      x={xSide}
      y={ySide}
      shape="square"
      title={`${names[answer]} against speed, with its band`}
      drawing={
        <>
          <Band
            of={answer}
            d={bandPath(
              known.map((each) => ({
                x: each.speed,
                low: each[answer].low,
                high: each[answer].high,
              })),
              x,
              y,
            )}
          />
          <Curve
            of={answer}
            d={linePath(
              known.map((each) => ({ x: each.speed, y: each[answer].best })),
              x,
              y,
            )}
          />
        </>
      }
      labels={read.flatMap(({ id, speed, power }) =>
        power === undefined
          ? []
          : [
              <Marker
                key={id}
                of="power"
                at={{ x: fraction(x, speed), y: 1 - fraction(y, power) }}
              />,
            ],
      )}
    />
  );
}

const percentAxis = (most: number): TickedAxis => niceAxis({ max: Math.max(most, 5), count: 4 });

/** Half the band as a share of the answer: where the slow end shows. */
function WidthPlot({ model }: PlotProps): JSX.Element {
  const answer = model.answer.value;
  const { known, reach } = model.fitted.value;
  const xSide = speedSide(model);
  const widths = known.map((each) => ({ x: each.speed, y: 100 * halfWidth(each, answer) }));
  const y = percentAxis(100 * reach[answer].share);
  const ySide: Side = { axis: y, title: `Band of the ${answer}`, unit: '± %' };
  const [slowest] = widths;
  return (
    <Frame
      x={xSide}
      y={ySide}
      shape="square"
      title={`How wide the band of the ${answer} is, against speed`}
      drawing={<Curve of={answer} d={linePath(widths, xSide.axis, y)} />}
      labels={
        slowest !== undefined && (
          <CurveLabel
            of={answer}
            strong
            at={{
              x: 0.1,
              y: 1 - fraction(y, slowest.y),
              above: slowest.y < 0.8 * y.max,
              ends: false,
            }}
            text={`± ${Math.round(slowest.y)} %`}
          />
        )
      }
    />
  );
}
