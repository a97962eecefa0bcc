import type { JSX } from 'preact';
import { useComputed } from '#ui/controls/failure.ts';
import { format } from '#units/format.ts';
import type { LadderRung } from './figures.ts';
import type { AnswersModel } from './model.ts';
import * as text from './text.ts';

/** The slowest speed for each need, fastest on top; a rung that is taken sets the speed of the picture. */
export function Ladder({ model }: { readonly model: AnswersModel }): JSX.Element {
  const rungs = model.rungs.value;
  if (rungs.length === 0) {
    return <p class="answers-lack">No needs are complete yet, so there is no ladder to climb.</p>;
  }
  return (
    <ol class="answers-ladder">
      {rungs.map((rung, place) => (
        <li key={rung.id}>
          {rung.kind === 'served' ? (
            <Rung model={model} rung={rung} number={place + 1} />
          ) : (
            <Unreached model={model} rung={rung} />
          )}
        </li>
      ))}
    </ol>
  );
}

interface RungProps {
  readonly model: AnswersModel;
  readonly rung: Extract<LadderRung, { kind: 'served' }>;
  readonly number: number;
}

function Rung({ model, rung, number }: RungProps): JSX.Element {
  const { units, prices, speed } = model;
  const { here, need } = rung;
  const chosen = useComputed(() => speed.value.value === here.speed);
  const paid = prices.value;
  const show = units.value;
  const crossed = [...new Set(here.crossed.map(text.limitName))];
  return (
    <button
      type="button"
      class="answers-rung"
      aria-pressed={chosen}
      onClick={() => speed.apply(here.speed)}
    >
      <span class="answers-rung-number" aria-hidden="true">
        {number}
      </span>
      <span class="answers-rung-name">{text.needName(need)}</span>
      <span class="answers-rung-speed">{text.rpm(here.speed, show)}</span>
      <span class="answers-rung-needs">{text.needText(need, show)}</span>
      <span class="answers-rung-facts">
        <Fact of="flow" words={format('flow', here.flow, show)} />
        <Fact of="power" words={format('power', here.power, show)} />
        <Fact of="velocity" words={velocities(rung, show)} />
        {paid !== null && <Fact of="money" words={`${text.hourText(here.power, paid)} an hour`} />}
      </span>
      {crossed.length > 0 && (
        <span class="answers-rung-crossed">Crosses the limit on {text.joined(crossed)}.</span>
      )}
    </button>
  );
}

function velocities({ here }: RungProps['rung'], units: Parameters<typeof text.rpm>[1]): string {
  const places = [here.suction, here.discharge].map((place) =>
    place === undefined ? null : format('velocity', place.velocity, units),
  );
  const [before, after] = places;
  if (before != null && after != null) return `${before} suction, ${after} return`;
  if (before != null) return `${before} suction`;
  return after == null ? '' : `${after} return`;
}

function Fact({ of, words }: { readonly of: string; readonly words: string }): JSX.Element | null {
  if (words === '') return null;
  return (
    <span class="answers-fact" data-quantity={of}>
      {words}
    </span>
  );
}

interface UnreachedProps {
  readonly model: AnswersModel;
  readonly rung: Extract<LadderRung, { kind: 'unreachable' }>;
}

function Unreached({ model, rung }: UnreachedProps): JSX.Element | null {
  const scene = model.scene.value;
  if (scene === null) return null;
  const units = model.units.value;
  return (
    <div class="answers-rung is-unreached">
      <span class="answers-rung-name">{text.needName(rung.need)}</span>
      <span class="answers-rung-needs">{text.needText(rung.need, units)}</span>
      <span class="answers-rung-crossed">{text.unreachableText(rung, scene, units)}</span>
    </div>
  );
}
