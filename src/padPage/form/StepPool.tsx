import type { JSX } from 'preact';
import { useMemo } from 'preact/hooks';
import { CoreError } from '#core/base/errors.ts';
import { outlinePoints } from '#core/pool/poolOutline.ts';
import type { Depth, Outline, Pad, Pool } from '#pad/document/schema.ts';
import { padModel } from '#pad/model/assemble.ts';
import { drawableOutline } from '#pad/model/assemblePool.ts';
import { ChoiceField, SelectField } from '#ui/controls/ChoiceFields.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { symbolFor } from '#units/format.ts';
import { AddButton, RemoveButton } from './Entry.tsx';
import { Faults, Findings, NumberField, OneOfField } from './fields.tsx';
import { type Form, useForm } from './form.ts';
import { inserted, without } from './lists.ts';
import { outlineAs } from './outline.ts';
import { Plan } from './Plan.tsx';
import { volumeText } from './text.ts';

const shapes: readonly { readonly id: Outline['kind']; readonly label: string }[] = [
  { id: 'rectangle', label: 'Rectangle' },
  { id: 'circle', label: 'Circle' },
  { id: 'ellipse', label: 'Ellipse' },
  { id: 'stadium', label: 'Straight sides, two round ends alike' },
  { id: 'twoRadius', label: 'Two round ends of different size (kidney and the like)' },
  { id: 'polygon', label: 'Freeform: draw it' },
];

const depths: readonly { readonly id: Depth['kind']; readonly label: string }[] = [
  { id: 'uniform', label: 'Level' },
  { id: 'sloped', label: 'One slope' },
  { id: 'stations', label: 'Several' },
];

/** The pool with a known volume or with a shape; the volume so far is carried over. */
function poolAs(kind: string, pad: Pad): Pool {
  if (kind === pad.pool.kind) return pad.pool;
  if (kind === 'known') return { kind, volume: padModel(pad).volume };
  const none = { length: null, width: null };
  return {
    kind: 'shape',
    outline: { kind: 'rectangle', ...none },
    depth: { kind: 'uniform', depth: null },
  };
}

function depthAs(kind: string, pool: Pool, length: number | null): Depth {
  const before = pool.kind === 'shape' ? pool.depth : null;
  const [first, second] =
    before?.kind === 'sloped'
      ? [before.first, before.second]
      : before?.kind === 'uniform'
        ? [before.depth, before.depth]
        : [before?.stations[0]?.depth ?? null, before?.stations.at(-1)?.depth ?? null];
  if (kind === 'uniform') return { kind, depth: first };
  if (kind === 'sloped') return { kind, first, second };
  const stations = [
    { distance: 0, depth: first },
    { distance: length, depth: second },
  ];
  return { kind: 'stations', stations };
}

/** How much water: known, or worked out from the shape. */
export function StepPool(): JSX.Element {
  const form = useForm();
  const kind = useComputed(() => form.pad.value.pool.kind as string);
  const volume = useComputed(() => volumeText(form.pad.value, 'not known yet'));
  const choose = (id: string) =>
    form.change(['pool'], () => poolAs(id, form.pad.peek()), 'how the pool is described');
  return (
    <div class="form-fields">
      <ChoiceField
        id="form-pool-kind"
        label="What do you know?"
        choices={[
          { id: 'known', label: 'The volume' },
          { id: 'shape', label: 'The shape' },
        ]}
        value={kind}
        apply={choose}
      />
      {kind.value === 'known' ? (
        <NumberField at={['pool', 'volume']} label="Volume" what="the volume of the pool" />
      ) : (
        <Shape />
      )}
      <Findings at={['pool']} />
      {kind.value === 'shape' && (
        <p class="form-result">
          Volume: <strong>{volume}</strong>
        </p>
      )}
    </div>
  );
}

function kindsIn(form: Form) {
  const { pool } = form.pad.value;
  return pool.kind === 'shape' ? `${pool.outline.kind} ${pool.depth.kind}` : '';
}

function Shape(): JSX.Element {
  const form = useForm();
  const kinds = useComputed(() => kindsIn(form));
  const [outline = '', depth = ''] = kinds.value.split(' ');
  const kind = useMemo(() => outline, [outline]);
  return (
    <>
      <SelectField
        id="form-outline"
        label="Seen from above"
        choices={shapes}
        value={kind}
        apply={(id) =>
          form.set(
            ['pool', 'outline'],
            outlineAs(id as Outline['kind'], form.pad.peek().pool),
            'the shape of the pool',
          )
        }
      />
      <OutlineFields kind={kind as Outline['kind']} />
      {kind !== 'polygon' && <Preview />}
      <ChoiceField
        id="form-depth"
        label="Depth"
        choices={depths}
        value={depth}
        apply={(id) =>
          form.set(
            ['pool', 'depth'],
            depthAs(id, form.pad.peek().pool, reachOf(form.pad.peek().pool)),
            'how the depth is described',
          )
        }
      />
      <DepthFields kind={depth as Depth['kind']} />
      <Faults at={['pool', 'depth', 'stations']} />
    </>
  );
}

/** How far the outline reaches along its length, where that is known [m]. */
function reachOf(pool: Pool): number | null {
  const xs = pointsOf(pool).map(([x]) => x);
  return xs.length === 0 ? null : Math.max(...xs) - Math.min(...xs);
}

/** Points along the outline; none while it cannot be drawn. */
function pointsOf(pool: Pool): ReturnType<typeof outlinePoints> {
  try {
    const outline = drawableOutline(pool);
    return outline === null ? [] : outlinePoints(outline);
  } catch (error) {
    if (error instanceof CoreError) return [];
    throw error;
  }
}

const size = (name: string, label: string, hint?: string) => (
  <NumberField
    at={['pool', 'outline', name]}
    label={label}
    what={`the ${label.toLowerCase()} of the pool`}
    {...(hint === undefined ? {} : { hint })}
  />
);

function OutlineFields({ kind }: { kind: Outline['kind'] }): JSX.Element {
  switch (kind) {
    case 'rectangle':
      return pair(size('length', 'Length'), size('width', 'Width'));
    case 'ellipse':
      return pair(size('length', 'Longest axis'), size('width', 'Shortest axis'));
    case 'circle':
      return size('diameter', 'Diameter');
    case 'stadium':
      return (
        <>
          {pair(size('length', 'Length over all'), size('width', 'Width'))}
          <Faults at={['pool', 'outline']} />
        </>
      );
    case 'twoRadius':
      return <TwoRadius />;
    case 'polygon':
      return <Plan />;
  }
}

const pair = (first: JSX.Element, second: JSX.Element) => (
  <div class="form-pair">
    {first}
    {second}
  </div>
);

function TwoRadius(): JSX.Element {
  const form = useForm();
  const sides = useComputed(() => {
    const { pool } = form.pad.value;
    if (pool.kind !== 'shape' || pool.outline.kind !== 'twoRadius') return '';
    return pool.outline.sides.map((side) => side.kind).join(' ');
  });
  return (
    <>
      {size('length', 'Length over all', 'From tip to tip.')}
      {pair(
        size('firstRadius', 'Radius of one end'),
        size('secondRadius', 'Radius of the other end'),
      )}
      {sides.value.split(' ').map((kind, place) => (
        <div key={String(place)} class="form-pair">
          <OneOfField
            at={['pool', 'outline', 'sides', place, 'kind']}
            label={place === 0 ? 'One long side' : 'The other long side'}
            what="a side of the pool"
            choices={[
              { id: 'straight', label: 'Straight' },
              { id: 'inward', label: 'In' },
              { id: 'outward', label: 'Out' },
            ]}
          />
          {kind !== 'straight' && (
            <NumberField
              at={['pool', 'outline', 'sides', place, 'radius']}
              label="Radius of the bend"
              what="the radius of a bend"
            />
          )}
        </div>
      ))}
      <Faults at={['pool', 'outline']} />
    </>
  );
}

/** The outline in small, so that a slip of the keys shows. */
function Preview(): JSX.Element | null {
  const form = useForm();
  const points = useComputed(() => pointsOf(form.pad.value.pool));
  const all = points.value;
  if (all.length === 0) return null;
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  const [left, low] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - low];
  const pad = 0.04 * Math.max(width, height);
  const path = all.map(([x, y]) => `${(x - left).toFixed(3)},${(low + height - y).toFixed(3)}`);
  return (
    <svg
      class="form-preview"
      viewBox={`${-pad} ${-pad} ${width + 2 * pad} ${height + 2 * pad}`}
      role="img"
      aria-label="Outline of the pool from above"
    >
      <polygon class="form-plan-water form-plan-side" points={path.join(' ')} />
    </svg>
  );
}

const stationsAt = ['pool', 'depth', 'stations'] as const;
type Stations = Extract<Depth, { kind: 'stations' }>['stations'];

function DepthFields({ kind }: { kind: Depth['kind'] }): JSX.Element {
  const depth = (name: string, label: string) => (
    <NumberField at={['pool', 'depth', name]} label={label} what="the depth of the pool" />
  );
  if (kind === 'uniform') return depth('depth', 'Depth everywhere');
  if (kind === 'sloped') return pair(depth('first', 'At one end'), depth('second', 'At the other'));
  return <StationList />;
}

function StationList(): JSX.Element {
  const form = useForm();
  const many = useComputed(() => {
    const { pool } = form.pad.value;
    return pool.kind === 'shape' && pool.depth.kind === 'stations' ? pool.depth.stations.length : 0;
  });
  const unit = symbolFor(form.units.value, 'length');
  const add = () =>
    form.change(
      stationsAt,
      (before: Stations) =>
        inserted(before, Math.max(before.length - 1, 0), { distance: null, depth: null }),
      'a new depth',
    );
  return (
    <>
      <p class="field-help">Walk along the pool: the distance from one end, and the depth there.</p>
      <ol class="form-rows form-cells">
        {Array.from({ length: many.value }, (_, place) => (
          <li key={String(place)} class="form-row">
            <span class="form-row-number">{place + 1}</span>
            <NumberField
              at={[...stationsAt, place, 'distance']}
              label={`Distance, ${unit}`}
              what="a depth"
            />
            <NumberField
              at={[...stationsAt, place, 'depth']}
              label={`Depth, ${unit}`}
              what="a depth"
            />
            <RemoveButton
              isNarrow
              name={`depth ${place + 1}`}
              onRemove={() =>
                form.change(
                  stationsAt,
                  (before: Stations) => without(before, place),
                  'taking away a depth',
                )
              }
            />
          </li>
        ))}
      </ol>
      <AddButton id="form-station-add" onAdd={add}>
        Add a depth
      </AddButton>
    </>
  );
}
