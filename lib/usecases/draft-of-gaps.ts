import type { Actor } from '#lib/auth/actor.ts';
import { findAssessment } from '#lib/db/assessments.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';
import { asksOfAssessment } from '#lib/planning/gaps/asks-of-assessment.ts';
import { findGaps } from '#lib/planning/gaps/find-gaps.ts';
import { assessmentSchema } from '#lib/schemas/assessment.ts';
import { planDraftSchema } from '#lib/schemas/plan-draft.ts';
import { gapDraft } from '#lib/views/gaps/gap-draft.ts';
import { loadGapFacts } from './gap-facts.ts';
import { type DraftSaved, savePlanDraftIn } from './save-plan-draft.ts';

/** Keeps the drills chosen for an assessment as a draft of the plan; nothing of the plan changes yet. */
export function draftOfGaps(
  actor: Actor,
  input: { clientId: string; assessmentId: string },
  now: Date,
): Promise<DraftSaved> {
  return withTeamPg(actor.scope, async (tx) => {
    const facts = await loadGapFacts(tx, input.clientId, now);
    const row = facts && (await findAssessment(tx, input.clientId, input.assessmentId));
    const read = assessmentSchema.safeParse(row?.answers);
    if (!facts || !row || !read.success) throw new AppError('not-found', 'This assessment is not here.');
    const result = findGaps(asksOfAssessment(facts.context.library, read.data), read.data, facts.context);
    if (result.chosen.length === 0)
      throw new AppError('invalid', 'No drill was chosen, so there is nothing to take into the plan.');
    const draft = planDraftSchema.parse(
      gapDraft(result, { context: facts.context, skill: row.skill, onDate: row.onDate }),
    );
    return savePlanDraftIn(tx, actor, { clientId: input.clientId, draft }, now);
  });
}
