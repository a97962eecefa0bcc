import { type ReadonlySignal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import { ChoiceField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { useExplorable } from '#ui/figure/explorable.ts';
import { Figure } from '#ui/figure/Figure.tsx';
import type { LinkFields } from '#ui/figure/linkState.ts';
import { type Reading, Readings } from '#ui/figure/Readings.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { createModel, type HourHuntModel, type Hours, type HuntPlace } from './model.ts';
import {
  hourLabel,
  hourSpoken,
  kindChoices,
  levelName,
  levels,
  money,
  needLines,
  note,
  priceSteps,
  sentence,
  table,
} from './text.ts';

interface ViewProps {
  readonly id: string;
  readonly place: HuntPlace;
}

/** A day as 24 digits, and back; anything else is no day. */
const written = (hours: Hours) => hours.join('');
const read = (text: string) => (/^[0-3]{24}$/.test(text) ? [...text].map(Number) : []);

function linkFields(model: HourHuntModel): LinkFields {
  return {
    kind: {
      read: () => (model.kindAt.value === 0 ? '' : String(model.kindAt.value)),
      write: (text) => model.chooseKind(Number(text)),
    },
    day: {
      read: () => {
        const text = written(model.hours.value);
        return text === written(model.usual.value.hours) ? '' : text;
      },
      write: (text) => model.lay(read(text)),
    },
    best: {
      read: () => {
        const found = model.best.value;
        const known = found === undefined || found.hours === model.usual.value.hours;
        return known ? '' : written(found.hours);
      },
      write: (text) => {
        const day = read(text);
        if (day.length === 24) model.recall(day);
      },
    },
  };
}

/** Twenty-four hours to lay by hand, and what they cost. */
function HourHunt({ id, place }: ViewProps): JSX.Element {
  const model = useMemo(() => createModel(place), []);
  const figure = useExplorable(model, {
    sentence,
    table,
    link: ['hourhunt', linkFields],
    own: () => import('./own.ts'),
  });
  return (
    <Figure id={id} title="A day to make cheaper by hand" {...figure} note={note(model)}>
      <Choices id={id} model={model} />
      <HourCells id={id} model={model} />
      <Amounts model={model} />
      <NeedList model={model} />
    </Figure>
  );
}

export default guarded(HourHunt);

function Choices({ id, model }: { id: string; model: HourHuntModel }): JSX.Element {
  const kinds = kindChoices(model);
  const brushes = levels(model);
  const brush = useComputed(() => String(model.brush.value));
  const kind = useComputed(() => String(model.kindAt.value));
  const gives = brushes[model.brush.value]?.gives ?? '';
  return (
    <div class="hunt-choices needs-script">
      {kinds.length > 1 && (
        <ChoiceField
          id={`${id}-kind`}
          label="Kind of day"
          choices={kinds}
          value={kind}
          apply={(at) => model.chooseKind(Number(at))}
        />
      )}
      <ChoiceField
        id={`${id}-brush`}
        label="A tap on an hour sets"
        choices={brushes}
        value={brush}
        apply={(level) => model.chooseBrush(Number(level))}
      />
      <p class="hunt-gives">{gives === '' ? 'The pump stands.' : `That moves ${gives}.`}</p>
    </div>
  );
}

/** The clock as 24 cells: a tap lays the chosen speed, arrows walk and change it. */
function HourCells({ id, model }: { id: string; model: HourHuntModel }): JSX.Element {
  const cells = useRef<HTMLDivElement>(null);
  const held = useSignal(0);
  const steps = useComputed(() => priceSteps(model.prices.value));
  const go = (hour: number) => {
    held.value = (hour + 24) % 24;
    const cell = cells.current?.children[held.value];
    if (cell instanceof HTMLElement) cell.focus();
  };
  const most = model.place.value.settings.length;
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const hour = held.peek();
    const level = model.hours.peek()[hour] ?? 0;
    const moves: Record<string, () => void> = {
      ArrowRight: () => go(hour + 1),
      ArrowLeft: () => go(hour - 1),
      Home: () => go(0),
      End: () => go(23),
      ArrowUp: () => model.setHour(hour, Math.min(level + 1, most)),
      ArrowDown: () => model.setHour(hour, Math.max(level - 1, 0)),
      ' ': () => model.setHour(hour, model.brush.peek()),
      Enter: () => model.setHour(hour, model.brush.peek()),
    };
    const move = moves[event.key];
    if (move === undefined) return;
    event.preventDefault();
    move();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring its own box and legend
    <div
      ref={cells}
      class="hunt-hours"
      role="group"
      aria-label="The 24 hours: left and right walk, up and down change the speed"
    >
      {Array.from({ length: 24 }, (_, hour) => (
        <HourCell
          key={hour}
          id={`${id}-hour-${hour}`}
          hour={hour}
          model={model}
          step={steps.value[hour] ?? 0}
          held={held.value === hour}
          onKeyDown={onKeyDown}
          take={() => {
            held.value = hour;
          }}
        />
      ))}
    </div>
  );
}

interface CellProps {
  readonly id: string;
  readonly hour: number;
  readonly model: HourHuntModel;
  readonly step: number;
  readonly held: boolean;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly take: () => void;
}

function HourCell({ id, hour, model, step, held, onKeyDown, take }: CellProps): JSX.Element {
  const level: ReadonlySignal<number> = useComputed(() => model.hours.value[hour] ?? 0);
  const spoken = useComputed(() => hourSpoken(model, hour));
  const paint = () => model.setHour(hour, model.brush.peek());
  const price = money(model, model.prices.value[hour] ?? 0);
  return (
    <div
      id={id}
      class="hunt-hour"
      data-step={step}
      data-level={level}
      role="spinbutton"
      tabIndex={held ? 0 : -1}
      aria-label={hourLabel(hour)}
      aria-valuemin={0}
      aria-valuemax={model.place.value.settings.length}
      aria-valuenow={level}
      aria-valuetext={spoken}
      onFocus={take}
      onKeyDown={onKeyDown}
      onClick={paint}
      onPointerDown={(event) => {
        if (event.pointerType === 'mouse' && event.button === 0) paint();
      }}
      // A mouse held down paints on over the next hours; a finger scrolls the page instead.
      onPointerEnter={(event) => {
        if (event.pointerType === 'mouse' && event.buttons === 1) paint();
      }}
    >
      <span class="hunt-clock">{String(hour).padStart(2, '0')}</span>
      <span class="hunt-price" data-quantity="money">
        {price}
      </span>
      <span class="hunt-level" data-quantity="power" aria-hidden="true">
        {[3, 2, 1].map((rung) => (
          <span key={rung} class={rung <= level.value ? 'hunt-rung is-on' : 'hunt-rung'} />
        ))}
      </span>
      <span class="hunt-name">{levelName(model, level.value)}</span>
    </div>
  );
}

function Amounts({ model }: { model: HourHuntModel }): JSX.Element {
  const items: Reading[] = [
    {
      id: 'here',
      label: 'This day',
      value: useComputed(() => money(model, model.here.value.price.energyCost)),
      note: useComputed(() => (model.here.value.sound ? 'every need met' : 'not good enough')),
      of: 'money',
    },
    {
      id: 'usual',
      label: 'The usual day',
      value: useComputed(() => money(model, model.usual.value.price.energyCost)),
      note: useComputed(() => (model.usual.value.sound ? 'every need met' : 'not good enough')),
      of: 'money',
    },
    {
      id: 'best',
      label: 'Best found so far',
      value: useComputed(() =>
        model.best.value === undefined
          ? 'none yet'
          : money(model, model.best.value.price.energyCost),
      ),
      note: useComputed(() => (model.best.value === undefined ? '' : 'kept for you')),
      of: 'money',
    },
  ];
  const best = model.best.value;
  const outOfReach = useSignal(false);
  const showCheapest = () =>
    import('./cheapest.ts').then(
      (cheapest) => {
        outOfReach.value = false;
        cheapest.showCheapest(model);
      },
      () => {
        outOfReach.value = true;
      },
    );
  return (
    <div class="hunt-amounts">
      <Readings items={items} />
      <p class="hunt-buttons needs-script">
        <button
          type="button"
          class="button button-quiet"
          onClick={() => model.lay(model.usual.peek().hours)}
        >
          Lay the usual day
        </button>
        <button
          type="button"
          class="button button-quiet"
          disabled={best === undefined}
          onClick={() => best !== undefined && model.lay(best.hours)}
        >
          Back to the best
        </button>
        {model.tried.value && (
          <button type="button" class="button button-quiet" onClick={showCheapest}>
            Show the cheapest day
          </button>
        )}
      </p>
      <p class="hunt-cheapest" role="status">
        {outOfReach.value
          ? 'The search could not be fetched. Try again once you are online.'
          : model.shown.value?.words}
      </p>
    </div>
  );
}

function NeedList({ model }: { model: HourHuntModel }): JSX.Element {
  return (
    <ul class="hunt-needs">
      {needLines(model).map(({ id, name, asks, met, state, share }) => (
        <li key={id} class="hunt-need" data-met={met}>
          <span class="hunt-need-name">{name}</span> <span class="hunt-asks">{asks}</span>
          <span class="hunt-track" aria-hidden="true">
            <span class="hunt-fill" style={`--share:${share.toFixed(4)}`} />
          </span>
          <span class="hunt-state">{state}</span>
        </li>
      ))}
    </ul>
  );
}
