import type { JSX } from 'preact';
import { stepElement } from '#padPage/form/steps.ts';
import { Table } from '#ui/charts/Table.tsx';
import * as evidence from './evidenceText.ts';
import type { AnswersModel } from './model.ts';

/** How the answers are known: bands, what to read next, what was assumed, what does not agree. */
export function Evidence({ model }: { readonly model: AnswersModel }): JSX.Element | null {
  const scene = model.scene.value;
  if (scene === null) return null;
  const units = model.units.value;
  const narrowing = evidence.narrowingTexts(scene, units);
  const contradictions = evidence.contradictionTexts(scene, units);
  const assumptions = evidence.assumptionTexts(scene, units);
  const residuals = evidence.residualTable(scene, units);
  const leftOut = evidence.leftOutText(scene);
  return (
    <div class="answers-evidence">
      {contradictions.length > 0 && (
        <Points title="These readings cannot all be right" items={contradictions} isWarning />
      )}
      <p>{evidence.widthText(scene)}</p>
      {narrowing.length > 0 && <Points title="What to read next" items={narrowing} />}
      <p>{evidence.agreementText(scene)}</p>
      {residuals !== null && <Table data={residuals} summary="Each reading beside the answer" />}
      {leftOut !== '' && (
        <p>
          {leftOut} <a href={`#${stepElement('pipes')}`}>Go to the pipes</a>
        </p>
      )}
      {assumptions.length > 0 && <Points title="What was assumed" items={assumptions} />}
    </div>
  );
}

interface PointsProps {
  readonly title: string;
  readonly items: readonly string[];
  readonly isWarning?: boolean;
}

function Points({ title, items, isWarning = false }: PointsProps): JSX.Element {
  return (
    <div class={isWarning ? 'answers-points is-warning' : 'answers-points'}>
      <h4>{title}</h4>
      <ul>
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </div>
  );
}
