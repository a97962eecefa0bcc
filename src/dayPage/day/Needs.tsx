import type { JSX } from 'preact';
import { problemSentence } from '#pad/messages/problems.ts';
import { stripPieces } from '#ui/charts/ring.ts';
import { format } from '#units/format.ts';
import { needName } from '#words/needsAndLimits.ts';
import type { DayModel } from './model.ts';
import {
  crossingsByQuiet,
  crossingText,
  type NeedService,
  needText,
  needWhy,
  quietText,
} from './servedText.ts';
import { crossingsByLimit, spanText } from './text.ts';

const at = ({ from, to }: { from: number; to: number }) =>
  `--from:${from.toFixed(5)};--to:${to.toFixed(5)}`;

const key = ({ from, to }: { from: number; to: number }) => `${from}-${to}`;

/** Every need with its windows and the runs that serve it, met or short. */
export function Needs({ model }: { model: DayModel }): JSX.Element | null {
  const needs = model.here.value?.report.needs ?? [];
  if (needs.length === 0) {
    return <p>This pad names no needs yet, so nothing can be missed or met.</p>;
  }
  return (
    <ul class="day-needs" role="list">
      {needs.map((service) => (
        <NeedRow key={service.need.id} service={service} model={model} />
      ))}
    </ul>
  );
}

function NeedRow({ service, model }: { service: NeedService; model: DayModel }): JSX.Element {
  const { need, runs, met } = service;
  const units = model.units.value;
  const most =
    need.greatestFlow === undefined ? '' : ` to ${format('flow', need.greatestFlow, units)}`;
  const windows = need.windows.length === 0 ? 'any time' : need.windows.map(spanText).join(', ');
  const why = needWhy(service);
  return (
    <li class={met ? 'day-need' : 'day-need is-short'}>
      <p class="day-need-head">
        <b>{needName(need)}</b>
        <span class="day-need-state">{needText(service)}</span>
      </p>
      <div class="day-track" aria-hidden="true">
        {(need.windows.length === 0 ? [{ start: 0, end: 0 }] : need.windows)
          .flatMap((window) => stripPieces(window.start, window.end % 1440))
          .map((piece) => (
            <span key={`w${key(piece)}`} class="day-window" style={at(piece)} />
          ))}
        {runs.flatMap((run) =>
          stripPieces(run.start, run.end % 1440).map((piece) => (
            <span
              key={`r${key(piece)}`}
              class={run.counted ? 'day-run' : 'day-run is-lost'}
              style={at(piece)}
            />
          )),
        )}
      </div>
      <p class="day-need-terms">
        {format('flow', need.leastFlow, units)}
        {most === '' ? ' or more' : most}, {windows}
        {runs.length === 0
          ? ''
          : `; served ${
              runs
                .filter((run) => run.counted)
                .map(spanText)
                .join(', ') || 'never long enough'
            }`}
        .{why !== null && ` ${why}`}
      </p>
    </li>
  );
}

/** Every limit crossed and when, and the quiet hours. */
export function Limits({ model }: { model: DayModel }): JSX.Element {
  const report = model.here.value?.report;
  const units = model.units.value;
  const reference = model.speeds.value?.reference ?? 1;
  const crossings = report === undefined ? [] : crossingsByLimit(report);
  const quiet = report === undefined ? [] : crossingsByQuiet(report);
  const stops = model.stopProblems.value;
  if (crossings.length + quiet.length + stops.length === 0) {
    const many = model.limits.value.length;
    return (
      <p class="day-good">
        {many === 0
          ? 'This pad names no limits yet. Labels and manuals do: read them first.'
          : `None of the ${many} limits of this pad is crossed, and the quiet hours are kept.`}
      </p>
    );
  }
  return (
    <ul class="day-crossings" role="list">
      {stops.map((stop) => (
        <li key={stop.code} class="day-crossing is-stop">
          <b>Stop. </b>
          {problemSentence(stop, units)}
        </li>
      ))}
      {crossings.map((crossing) => (
        <li
          key={crossing.limit.id}
          class={crossing.limit.hard ? 'day-crossing is-stop' : 'day-crossing'}
        >
          {crossing.limit.hard && <b>Stop. </b>}
          {crossingText(crossing, reference, units)}
          {crossing.limit.hard && ' Never run above the flow marked on a suction cover.'}
        </li>
      ))}
      {quiet.map((crossing) => (
        <li key={spanText(crossing.quiet)} class="day-crossing">
          {quietText(crossing, reference, units)}
        </li>
      ))}
    </ul>
  );
}
