import type { ComponentChildren, JSX } from 'preact';
import { padStore } from '#pad/store/padStore.ts';
import { Guard } from '#ui/loading/Guard.tsx';

interface PartProps {
  readonly id: string;
  readonly title: string;
  readonly lead?: string;
  readonly children: ComponentChildren;
}

/** One part of the answers under its heading. */
export function AnswerPart({ id, title, lead, children }: PartProps): JSX.Element {
  return (
    <section class="answers-part" aria-labelledby={id}>
      <h3 id={id}>{title}</h3>
      {lead !== undefined && <p class="answers-lead">{lead}</p>}
      <Guard store={padStore}>{children}</Guard>
    </section>
  );
}
