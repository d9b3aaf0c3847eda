import { cutVolume } from './steps/cut-volume.ts';
import { askFilm, dropGoal, moreTime, toClinician, wordsOnly } from './steps/other-steps.ts';
import { askPassMark, oneBack, oneSideBack, stepUp } from './steps/rung-steps.ts';
import type { DraftReason, StepContext, StepDraft } from './steps/step-types.ts';

/**
 * What taking the proposed step of an open reason would do to plan, films and limits, with a line to the client: a draft
 * for a coach to read, change and take. Undefined where the step is to look, to answer, or to write a whole plan, and
 * where there is nothing to change and nothing to say. Pure; the same reason, plan and day give the same draft.
 */
export function stepDraft(reason: DraftReason, context: StepContext): StepDraft | undefined {
  const draft = draftOf(reason, context);
  const isEmpty = draft.stages.length === 0 && !draft.film && !draft.limit && draft.words === '';
  return isEmpty && draft.does.length === 0 ? undefined : draft;
}

function draftOf(reason: DraftReason, context: StepContext): StepDraft {
  switch (reason.step.kind) {
    case 'step-up':
      return stepUp(reason, context);
    case 'one-rung-back':
      return oneBack(reason, context);
    case 'one-side-back':
      return oneSideBack(reason, context);
    case 'cut-volume':
      return cutVolume(reason, context);
    case 'drop-a-goal':
      return dropGoal(reason, context);
    case 'ask-film':
      return askFilm(reason, context);
    case 'more-time':
      return moreTime(reason, context);
    case 'send-to-clinician':
      return toClinician(reason, context);
    case 'new-plan':
      return askPassMark(reason, context);
    default:
      return wordsOnly(reason);
  }
}
