/**
 * Every figure the site works out of a pad, as plain data with its unit in its name: from the same
 * functions that the pages call, so that another program can check them.
 */

import { documentProblemSentence } from '#pad/document/documentProblems.ts';
import { parsePad } from '#pad/document/file.ts';
import type { Pad } from '#pad/document/schema.ts';
import { type AssumptionCode, assumptionSentence } from '#pad/messages/assumptions.ts';
import { type Path, pathKey } from '#pad/messages/path.ts';
import { type Problem, problemSentence } from '#pad/messages/problems.ts';
import { type PadModel, padModel } from '#pad/model/assemble.ts';
import { lazy } from '#pad/model/memo.ts';
import { metric } from '#units/choice.ts';
import { cheapestAnswer } from './cheapestAnswer.ts';
import { dayAnswer, yearAnswer } from './dayAnswers.ts';
import { ladderAnswer, limitsAnswer, speedsAnswer } from './speedAnswers.ts';

/** A question that could not be worked out, whatever the others did. */
interface Failed {
  readonly error: string;
}

export interface ToldProblem {
  readonly code: string;
  readonly path: string;
  readonly sentence: string;
}

function told(
  problem: { readonly code: string; readonly path: Path },
  sentence: string,
): ToldProblem {
  return { code: problem.code, path: pathKey(problem.path), sentence };
}

const toldHere = (problem: Problem) => told(problem, problemSentence(problem, metric));

function toldAssumptions({ assumptions }: PadModel): readonly {
  readonly code: AssumptionCode;
  readonly sentence: string;
}[] {
  return assumptions.map((each) => ({
    code: each.code,
    sentence: assumptionSentence(each, metric),
  }));
}

function toldMissing({ missing }: PadModel): Readonly<Record<string, readonly ToldProblem[]>> {
  return Object.fromEntries(
    Object.entries(missing).map(([answer, problems]) => [answer, problems.map(toldHere)]),
  );
}

/** A question asked alone: what it throws is told in its place and hides no other answer. */
function asked<Answer>(question: () => Answer): Answer | Failed {
  try {
    return question();
  } catch (error) {
    return { error: error instanceof Error ? error.message : String(error) };
  }
}

/** The answers to a pad that could be read. */
export function answersOf(pad: Pad) {
  const model = lazy(() => padModel(pad));
  return {
    problems: asked(() => model().problems.map(toldHere)),
    assumptions: asked(() => toldAssumptions(model())),
    missing: asked(() => toldMissing(model())),
    poolVolumeM3: asked(() => model().volume),
    speeds: asked(() => speedsAnswer(pad, model())),
    limits: asked(() => limitsAnswer(pad, model())),
    ladder: asked(() => ladderAnswer(model())),
    day: asked(() => dayAnswer(pad, model())),
    year: asked(() => yearAnswer(pad, model())),
    cheapestDay: asked(() => cheapestAnswer(pad)),
  };
}

/** The answers to the text of a pad file, or why it is not one. */
export function answersTo(file: string, text: string) {
  const parsed = parsePad(text);
  if (parsed.ok) return { file, accepted: true as const, ...answersOf(parsed.pad) };
  const problems = parsed.problems.map((problem) =>
    told(problem, documentProblemSentence(problem, metric)),
  );
  return { file, accepted: false as const, sentence: parsed.sentence, problems };
}
