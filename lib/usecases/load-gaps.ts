import type { Actor } from '#lib/auth/actor.ts';
import { type AssessmentRow, findAssessment, listAssessments } from '#lib/db/assessments.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { asksOfAssessment } from '#lib/planning/gaps/asks-of-assessment.ts';
import { findGaps, type GapResult } from '#lib/planning/gaps/find-gaps.ts';
import { firstAssessment } from '#lib/planning/gaps/first-assessment.ts';
import type { Ask, Assessment } from '#lib/planning/gaps/gap-types.ts';
import { assessmentSchema, type GapAddress } from '#lib/schemas/assessment.ts';
import { type GapFacts, loadGapFacts } from './gap-facts.ts';

export type GapsLoaded = GapFacts & {
  assessment: Assessment;
  asks: Ask[];
  /** The kept assessment that is shown, with what comes of it today; undefined: a new one is begun. */
  kept: { row: AssessmentRow; result: GapResult } | undefined;
  earlier: AssessmentRow[];
};

/**
 * The gap finder of a client: a kept assessment with its answer as of today (limits, pain and plan of today), or a new
 * one filled in from the history. Undefined: no such client or assessment here, or no ladder to assess.
 */
export function loadGaps(
  actor: Actor,
  clientId: string,
  address: GapAddress,
  now: Date,
): Promise<GapsLoaded | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const facts = await loadGapFacts(tx, clientId, now);
    if (!facts) return undefined;
    const earlier = await listAssessments(tx, clientId);
    if (address.assessment) {
      const row = await findAssessment(tx, clientId, address.assessment);
      const read = assessmentSchema.safeParse(row?.answers);
      if (!row || !read.success) return undefined;
      const asks = asksOfAssessment(facts.context.library, read.data);
      return {
        ...facts,
        assessment: read.data,
        asks,
        kept: { row, result: findGaps(asks, read.data, facts.context) },
        earlier,
      };
    }
    const last = assessmentSchema.safeParse(earlier[0]?.answers);
    const begun = firstAssessment(facts, {
      skillId: address.skill,
      aimRungId: address.aim,
      kit: last.success ? last.data.kit : undefined,
    });
    return begun && { ...facts, ...begun, kept: undefined, earlier };
  });
}
