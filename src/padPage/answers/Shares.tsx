import type { JSX } from 'preact';
import { ShareBar } from '#ui/charts/Bars.tsx';
import { Table, type TableData } from '#ui/charts/Table.tsx';
import { useComputed } from '#ui/controls/failure.ts';
import { useSettled } from '#ui/controls/settle.ts';
import type { AnswersModel } from './model.ts';
import { headBar, partsTable } from './shares.ts';
import { rpm } from './text.ts';

const noTable: TableData = { caption: '', columns: [], rows: [] };

/** Where the head goes at the speed chosen, piece by piece and part by part. */
export function Shares({ model }: { readonly model: AnswersModel }): JSX.Element {
  const { here, scene, units } = model;
  const bar = useComputed(() => headBar(model.pieces.value, units.value));
  const words = useComputed(() => {
    const now = here.value;
    if (now === null || now.flow === 0)
      return 'No water moves at this speed, so no part takes any head.';
    const most = bar.value.reduce((one, other) => (other.amount > one.amount ? other : one));
    return `At ${rpm(now.speed, units.value)} the most goes here: ${most.label}, ${most.shown}.`;
  });
  const table = useSettled(
    useComputed(() => {
      const [pad, now] = [scene.value, here.value];
      return pad === null || now === null ? noTable : partsTable(pad, now, units.value);
    }),
    250,
  );
  const flows = useComputed(() => bar.value.length > 0);
  return (
    <>
      <p class="answers-words">{words}</p>
      {flows.value && (
        <>
          <ShareBar shares={bar} of="head" title="Share of the head that each part takes" />
          <Table data={table} summary="Every part as a table" />
        </>
      )}
    </>
  );
}
