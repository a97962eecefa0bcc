import type { JSX } from 'preact';
import { type ComparisonLine, compareDays } from '#core/day/compareDays.ts';
import type { PadBlock } from '#pad/document/schema.ts';
import { ringPiece, ringPoint } from '#ui/charts/ring.ts';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { format } from '#units/format.ts';
import { formatMoney } from '#units/money.ts';
import { minusSign } from '#units/numerals.ts';
import { limitShortNames, needName } from '#words/needsAndLimits.ts';
import type { WorkedDay } from './figures.ts';
import type { CompareWith, DayModel } from './model.ts';
import { ScrollBox } from './ScrollBox.tsx';
import { kilowattHours, lengthText, rpmText, spanText } from './text.ts';

export const otherNames: Readonly<Record<CompareWith, string>> = {
  usual: 'The usual three-block day',
  oneSpeed: 'Top speed alone',
  old: 'Your old day',
};

const otherNotes: Readonly<Record<CompareWith, string>> = {
  usual:
    'The rule of thumb: 3 hours high, 6 hours middle, the rest low. Common practice, not worked out for any pool.',
  oneSpeed: 'Top speed from 08:00, for as long as it takes to move the same water.',
  old: 'The day you kept before.',
};

/** A second day beside this one, line by line. */
export function Compare({ id, model }: { id: string; model: DayModel }): JSX.Element {
  const which = model.compareWith;
  const note = useComputed(() => otherNotes[which.value]);
  const other = model.other.value;
  const here = model.here.value;
  return (
    <div class="day-compare">
      <div class="day-compare-head needs-script">
        <ChoiceField
          id={`${id}-with`}
          label="Compare with"
          choices={(['usual', 'oneSpeed', 'old'] as const).map((each) => ({
            id: each,
            label: otherNames[each],
          }))}
          value={which}
          apply={(next) => model.compare(next as CompareWith)}
        />
        <button type="button" class="button button-quiet" onClick={model.keepAsOld}>
          Keep this day as the old one
        </button>
      </div>
      <p class="day-note">{note}</p>
      {other === null && which.value === 'old' && (
        <p>
          No old day is kept yet. Keep this one, change it, and see here what the change is worth.
        </p>
      )}
      {here !== null && other !== null && (
        <div class="day-pair">
          <div class="day-rings">
            <Ring title="This day" day={here} model={model} />
            <Ring title={otherNames[which.value]} day={other} model={model} />
          </div>
          <Lines here={here} other={other} model={model} />
        </div>
      )}
    </div>
  );
}

/** The day as a clock of 24 hours, midnight on top: the faster, the thicker. */
export function Ring(props: { title: string; day: WorkedDay; model: DayModel }): JSX.Element {
  const { title, day, model } = props;
  const units = model.units.value;
  const top = model.speeds.value?.top ?? 1;
  const words = day.blocks.map((block) => `${spanText(block)} ${rpmText(block.speed, units)}`);
  const outer = (block: PadBlock) => 44 + 52 * Math.min(1, (block.speed ?? 0) / top);
  return (
    <figure class="day-ring">
      <svg
        viewBox="-112 -112 224 224"
        role="img"
        aria-label={`${title}: ${words.join('; ') || 'off'}`}
      >
        <circle class="day-ring-face" r="100" />
        {day.blocks.map((block) => (
          <path
            key={block.id}
            class="day-ring-block"
            d={ringPiece(block.start, block.end, 40, outer(block))}
          />
        ))}
        <circle class="day-ring-hub" r="40" />
        {[0, 6, 12, 18].map((hour) => {
          const spot = ringPoint(hour * 60, 29);
          return (
            <text key={hour} x={spot.x} y={spot.y} class="day-ring-hour">
              {hour}
            </text>
          );
        })}
      </svg>
      <figcaption>{title}</figcaption>
    </figure>
  );
}

interface LinesProps {
  readonly here: WorkedDay;
  readonly other: WorkedDay;
  readonly model: DayModel;
}

const priced = ({ report, prices }: WorkedDay) =>
  prices === null ? { report } : { report, cost: prices.day.cost };

function Lines({ here, other, model }: LinesProps): JSX.Element {
  const lines = compareDays(priced(other), priced(here)).filter(
    ({ kind }) => kind !== 'turnovers' || here.turnovers !== null,
  );
  return (
    <ScrollBox label="The two days line by line">
      <table class="day-table">
        <caption>Line by line, on the same date</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">{otherNames[model.compareWith.value]}</th>
            <th scope="col">This day</th>
            <th scope="col">Difference</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Line
              key={`${line.kind}${line.id}`}
              line={line}
              model={model}
              here={here}
              other={other}
            />
          ))}
          <YearLine here={here} other={other} model={model} />
        </tbody>
      </table>
    </ScrollBox>
  );
}

function sayer(line: ComparisonLine, model: DayModel): (value: number) => string {
  const units = model.units.value;
  switch (line.kind) {
    case 'water':
      return (value) => format('volume', value, units);
    case 'turnovers':
      return (value) => value.toFixed(2);
    case 'energy':
      return (value) => kilowattHours(value, units);
    case 'cost':
      return (value) => formatMoney(value, model.currency.value);
    default:
      return lengthText;
  }
}

function titleOf(line: ComparisonLine, { here, other }: Omit<LinesProps, 'model'>): string {
  const reports = [here.report, other.report];
  switch (line.kind) {
    case 'water':
      return 'Water moved';
    case 'turnovers':
      return 'Turnovers';
    case 'runMinutes':
      return 'Running time';
    case 'energy':
      return 'Energy';
    case 'cost':
      return 'Price of the day';
    case 'need': {
      const found = here.report.needs.find(({ need }) => need.id === line.id);
      return found === undefined ? 'A need' : `${needName(found.need)}, served`;
    }
    case 'limit': {
      const found = reports
        .flatMap(({ crossings }) => crossings)
        .find((c) => c.limit.id === line.id);
      return found === undefined
        ? 'A limit'
        : `Above the limit: ${limitShortNames[found.limit.kind]}`;
    }
    case 'quiet':
      return 'Too fast in quiet hours';
  }
}

function signed(difference: number, say: (value: number) => string): string {
  const words = say(Math.abs(difference));
  if (words === say(0)) return 'the same';
  return difference > 0 ? `+${words}` : `${minusSign}${words}`;
}

function Line({ line, model, ...days }: LinesProps & { line: ComparisonLine }): JSX.Element {
  const say = sayer(line, model);
  const cell = (value: number | null, well: boolean | null) =>
    value === null ? '–' : `${say(value)}${well === false ? wellWord(line) : ''}`;
  return (
    <tr>
      <th scope="row">{titleOf(line, days)}</th>
      <td class={line.firstWell === false ? 'is-short' : undefined}>
        {cell(line.first, line.firstWell)}
      </td>
      <td class={line.secondWell === false ? 'is-short' : undefined}>
        {cell(line.second, line.secondWell)}
      </td>
      <td>{line.difference === null ? '–' : signed(line.difference, say)}</td>
    </tr>
  );
}

const wellWord = (line: ComparisonLine) => (line.kind === 'need' ? ', short' : '');

/** What the difference comes to in a year. */
function YearLine({ here, other, model }: LinesProps): JSX.Element | null {
  if (here.prices === null || other.prices === null) return null;
  const say = (value: number) => formatMoney(value, model.currency.value);
  const [mine, theirs] = [here.prices.year.cost, other.prices.year.cost];
  return (
    <tr class="day-total">
      <th scope="row">Price of the year {model.date.value.year}</th>
      <td>{say(theirs)}</td>
      <td>{say(mine)}</td>
      <td>{signed(mine - theirs, say)}</td>
    </tr>
  );
}
