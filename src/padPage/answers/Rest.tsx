import type { JSX } from 'preact';
import { padModel } from '#pad/model/assemble.ts';
import { useComputed } from '#ui/controls/failure.ts';
import { AnswerPart } from './AnswerPart.tsx';
import { Evidence } from './Evidence.tsx';
import { Limits } from './Limits.tsx';
import { Missing, Nothing } from './Missing.tsx';
import type { AnswersModel } from './model.ts';
import { Shares } from './Shares.tsx';

interface RestProps {
  readonly id: string;
  readonly model: AnswersModel;
}

/** What stands below the ladder: limits, where the head goes, how all is known, what is still missing. */
export function Rest({ id, model }: RestProps): JSX.Element {
  const hasScene = useComputed(() => model.scene.value !== null);
  const hasLacks = useComputed(() =>
    Object.values(padModel(model.pad.value).missing).some((lacking) => lacking.length > 0),
  );
  if (!hasScene.value) return <Nothing model={model} />;
  return (
    <>
      <AnswerPart id={`${id}-limits`} title="Limits">
        <Limits model={model} />
      </AnswerPart>
      <AnswerPart id={`${id}-shares`} title="Where the head goes">
        <Shares model={model} />
      </AnswerPart>
      <AnswerPart id={`${id}-evidence`} title="How this is known">
        <Evidence model={model} />
      </AnswerPart>
      {hasLacks.value && (
        <AnswerPart id={`${id}-missing`} title="What is still missing">
          <Missing model={model} />
        </AnswerPart>
      )}
    </>
  );
}
