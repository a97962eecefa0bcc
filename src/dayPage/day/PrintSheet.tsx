import type { JSX } from 'preact';
import type { PadBlock } from '#pad/document/schema.ts';
import { problemSentence } from '#pad/messages/problems.ts';
import { isTakenInstead } from '#pad/model/assembleDay.ts';
import { blockMinutes, stripPieces } from '#ui/charts/ring.ts';
import { format } from '#units/format.ts';
import { formatMoney, formatPrice } from '#units/money.ts';
import { needName } from '#words/needsAndLimits.ts';
import { hardCautions, type SheetCaution, type SheetCautions } from './dayCautions.ts';
import { inOrder } from './edit.ts';
import { segmentOf, type WorkedDay } from './figures.ts';
import type { DayModel } from './model.ts';
import { seasonOfSheet } from './season.ts';
import {
  crossingsByQuiet,
  crossingText,
  dateText,
  needText,
  quietText,
  shortDate,
} from './servedText.ts';
import {
  crossingsByLimit,
  kilowattHours,
  lengthText,
  percentText,
  priceKindText,
  rpmText,
  spanText,
  turnoversText,
} from './text.ts';

interface SheetProps {
  readonly model: DayModel;
  readonly cautions: SheetCautions;
}

/** The page that hangs by the pump. It is only drawn on paper. */
export function PrintSheet({ model, cautions }: SheetProps): JSX.Element | null {
  const day = model.here.value;
  if (day === null) return null;
  const date = model.date.value;
  const made = model.today.value;
  const kind = priceKindText(date, model.tariff.value);
  const invented = model.invented.value;
  const season = seasonOfSheet(model.pad.value, day.blocks, date);
  const said = [...hardCautions(day.report, model.pad.value, cautions), ...cautions.always];
  return (
    <section class="print-sheet" data-dense={denseness(day, said)}>
      <header>
        <h2>Day sheet</h2>
        <p class="print-name">{model.name.value || 'A pad without a name'}</p>
        <p>
          For {dateText(date)}
          {kind === '' ? '' : `, ${kind}`}. {season !== '' && <b>{season}</b>}
          {invented && <b> Example data, invented.</b>}
        </p>
      </header>
      <PaperStrip model={model} day={day} />
      <BlockTable model={model} day={day} />
      <div class="print-columns">
        <div>
          <h3>Needs</h3>
          <ul>
            {day.report.needs.map((service) => (
              <li key={service.need.id} class={service.met ? undefined : 'is-short'}>
                <b>{needName(service.need)}</b> {needText(service)}
              </li>
            ))}
            {day.report.needs.length === 0 && <li>No needs are named.</li>}
          </ul>
        </div>
        <div>
          <h3>Limits</h3>
          <LimitList model={model} day={day} />
        </div>
        <div>
          <h3>The day</h3>
          <Sums model={model} day={day} />
        </div>
      </div>
      <div class="print-cautions">
        {said.map(({ title, text }) => (
          <p key={title}>
            <b>{title}.</b> {text}
          </p>
        ))}
      </div>
      <p class="print-made">
        Worked out with Cubelaw{made === null ? '' : ` on ${shortDate(made)}`}. Figures are
        estimates from what was typed in; check them against gauges and meter.
      </p>
    </section>
  );
}

/** Heights of a row and a line [mm], letters in a reason's line and columns of needs, size by size. */
const sizes = [
  { dense: 'few', row: 10.5, line: 5.5, letters: 45, columns: 1 },
  { dense: 'some', row: 6, line: 4.6, letters: 75, columns: 1 },
  { dense: 'more', row: 4.4, line: 4.2, letters: Number.POSITIVE_INFINITY, columns: 2 },
] as const;

/** What a US letter leaves for rows, lists and cautions, with a little to spare [mm]. */
const heightLeft = 158;

/** Letters in a line of the cautions, and its height [mm]. */
const cautionLine = { letters: 105, height: 4.7 };

/** How small the writing must be for all of it to stay on one page. */
function denseness(
  { blocks, report }: WorkedDay,
  cautions: readonly SheetCaution[],
): 'few' | 'some' | 'more' | 'many' {
  const cautionLines = cautions.map(({ title, text }) =>
    Math.ceil((title.length + text.length + 2) / cautionLine.letters),
  );
  const said = cautionLines.reduce((sum, each) => sum + each * cautionLine.height, 0);
  const crossed = 4 * (crossingsByLimit(report).length + crossingsByQuiet(report).length);
  const fits = sizes.find(({ row, line, letters, columns }) => {
    const needs = Math.ceil(report.needs.length / columns);
    const lines = columns === 1 ? Math.max(5, needs, crossed) : needs + Math.max(5, crossed);
    const rows = blocks.map(({ reason }) => row + line * Math.floor(reason.length / letters));
    return rows.reduce((sum, each) => sum + each, lines * line) <= heightLeft - said;
  });
  return fits?.dense ?? 'many';
}

interface PartProps {
  readonly model: DayModel;
  readonly day: WorkedDay;
}

function BlockTable({ model, day }: PartProps): JSX.Element {
  const units = model.units.value;
  const at = (block: PadBlock) => segmentOf(day.report, block.id);
  return (
    <table class="print-blocks">
      <thead>
        <tr>
          <th scope="col">From–to</th>
          <th scope="col">Lasts</th>
          <th scope="col">Speed</th>
          <th scope="col">Flow</th>
          <th scope="col">Watts</th>
          <th scope="col">Why</th>
        </tr>
      </thead>
      <tbody>
        {inOrder(day.blocks).map((block) => (
          <tr key={block.id}>
            <th scope="row">{spanText(block)}</th>
            <td>{lengthText(blockMinutes(block.start, block.end))}</td>
            <td>
              <b>{rpmText(block.speed, units)}</b>
            </td>
            <td>{format('flow', at(block)?.flow ?? 0, units)}</td>
            <td>{format('power', at(block)?.power ?? 0, units)}</td>
            <td class="print-why">{block.reason}</td>
          </tr>
        ))}
        {day.blocks.length === 0 && (
          <tr>
            <th scope="row">all day</th>
            <td colSpan={5}>off</td>
          </tr>
        )}
      </tbody>
    </table>
  );
}

/** The day as it looks: speeds as levels, prices under them. */
function PaperStrip({ model, day }: PartProps): JSX.Element {
  const top = model.speeds.value?.top ?? 1;
  const units = model.units.value;
  const currency = model.currency.value;
  return (
    <div class="print-strip" aria-hidden="true">
      <div class="print-blocks-row">
        {day.blocks.flatMap((block) =>
          stripPieces(block.start, block.end).map((piece) => (
            <span
              key={`${block.id}${piece.from}`}
              class="print-block"
              style={`--from:${piece.from};--to:${piece.to};--level:${Math.min(1, (block.speed ?? 0) / top)}`}
            >
              {piece.to - piece.from > 0.06 && <b>{rpmText(block.speed, units)}</b>}
            </span>
          )),
        )}
      </div>
      <div class="print-bands-row">
        {model.bands.value.map((band) => (
          <span
            key={band.start}
            class="print-band"
            style={`--from:${band.start / 1440};--to:${band.end / 1440}`}
          >
            {formatPrice(band.price, currency).replace(' per\u00a0kWh', '')}
            {band.end - band.start >= 180 && ` ${band.name ?? ''}`}
          </span>
        ))}
      </div>
      <div class="print-hours">
        {[0, 3, 6, 9, 12, 15, 18, 21, 24].map((hour) => (
          <span key={hour} style={`--at:${hour / 24}`}>
            {hour}
          </span>
        ))}
      </div>
    </div>
  );
}

function LimitList({ model, day }: PartProps): JSX.Element {
  const crossings = crossingsByLimit(day.report);
  const quietCrossings = crossingsByQuiet(day.report);
  const units = model.units.value;
  const reference = model.speeds.value?.reference ?? 1;
  const stops = model.stopProblems.value;
  const held = model.blockProblems.value.filter(isTakenInstead);
  if (crossings.length + quietCrossings.length + stops.length + held.length === 0) {
    const known = model.limits.value.length > 0;
    return <p>{known ? 'No limit is crossed; quiet hours are kept.' : 'No limits are named.'}</p>;
  }
  return (
    <ul>
      {stops.map((stop) => (
        <li key={stop.code} class="is-short">
          <b>Stop: do not run. </b>
          {problemSentence(stop, units)}
        </li>
      ))}
      {held.map((found) => (
        <li key={found.path.join()} class="is-short">
          {problemSentence(found, units)}
        </li>
      ))}
      {crossings.map((crossing) => (
        <li key={crossing.limit.id} class="is-short">
          {crossing.limit.hard && <b>Stop: do not run. </b>}
          {crossingText(crossing, reference, units)}
        </li>
      ))}
      {quietCrossings.map((crossing) => (
        <li key={spanText(crossing.quiet)} class="is-short">
          {quietText(crossing, reference, units)}
        </li>
      ))}
    </ul>
  );
}

function Sums({ model, day }: PartProps): JSX.Element {
  const units = model.units.value;
  const currency = model.currency.value;
  const { report, turnovers, filtered, prices } = day;
  return (
    <ul>
      <li>{format('volume', report.volumeMoved, units)} moved</li>
      {turnovers !== null && filtered !== null && (
        <li>
          {turnoversText(turnovers)} turnovers, {percentText(filtered)} filtered
        </li>
      )}
      <li>{kilowattHours(report.energy, units)}</li>
      {prices !== null && (
        <>
          <li>
            <b>{formatMoney(prices.day.cost, currency)}</b> for the day
          </li>
          <li>
            {formatMoney(prices.year.cost, currency)}{' '}
            {model.pad.value.year.plans.length === 0 ? 'for the year' : 'for a year of such days'}
          </li>
        </>
      )}
    </ul>
  );
}
