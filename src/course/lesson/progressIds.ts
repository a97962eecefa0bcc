import { capstoneSteps } from '#course/CapstoneSteps/steps.ts';
import { us } from '#units/choice.ts';
import { checksIn } from './checksIn.ts';

/** The steps of a capstone count as its self-checks, each under the capstone's id and its own. */
function stepsIn(text: string): readonly string[] {
  const [, id] = /<CapstoneSteps\s[^>]*?\bid="([^"]+)"/.exec(text) ?? [];
  return id === undefined ? [] : capstoneSteps(us).map((step) => `${id}-${step.id}`);
}

/** Everything in a lesson's text that its progress hangs on. */
export function progressIds(text: string): readonly string[] {
  return [...checksIn(text), ...stepsIn(text)];
}
