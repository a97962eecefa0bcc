import type { JSX } from 'preact';
import { useComputed } from '#ui/controls/failure.ts';
import { NumberField } from './fields.tsx';
import { useForm } from './form.ts';
import { PartList } from './PartList.tsx';
import { withUsualPlumbing } from './usual.ts';

/** Everything between pool and pool, in the order the water meets it. */
export function StepPipes(): JSX.Element {
  const form = useForm();
  const isEmpty = useComputed(() => {
    const { suction, discharge } = form.pad.value.plumbing;
    return suction.length + discharge.length === 0;
  });
  const fill = () => form.store.edit(withUsualPlumbing, 'the usual set of pipes');
  return (
    <>
      <p>
        Follow the water. Leave out what you cannot see: with a few readings the answers find the
        rest.
      </p>
      {isEmpty.value && (
        <div class="form-offer">
          <p>
            No time to measure? A usual set is <strong>an assumption</strong>, not your pad: one
            pipe size, common lengths, fittings, strainer and filter (common practice, no source).
            Change what you know.
          </p>
          <button type="button" class="button button-quiet" onClick={fill}>
            Fill in a usual set
          </button>
        </div>
      )}
      <h3>Pool to pump (suction)</h3>
      <PartList at={['plumbing', 'suction']} side="suction" name="the suction side" />
      <h3>Pump to pool (discharge)</h3>
      <PartList at={['plumbing', 'discharge']} side="discharge" name="the discharge side" />
      <div class="form-fields">
        <NumberField
          at={['plumbing', 'staticHead']}
          label="Lift of the whole loop"
          what="the lift of the loop"
          hint="0 for a pool: the water returns to the surface it left, however high the pump or filter stands."
        />
      </div>
    </>
  );
}
