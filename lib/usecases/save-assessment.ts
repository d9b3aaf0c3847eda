import type { Actor } from '#lib/auth/actor.ts';
import { insertAssessment } from '#lib/db/assessments.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { loadGapLibrary } from '#lib/db/gap-library.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { GapLadder } from '#lib/planning/gaps/gap-types.ts';
import type { AssessmentInput } from '#lib/schemas/assessment.ts';

/** Keeps an assessment; earlier ones stay as they are. */
export async function saveAssessment(
  actor: Actor,
  input: { clientId: string; assessment: AssessmentInput },
  now: Date,
): Promise<{ assessmentId: string }> {
  const { memberId } = actor;
  if (!memberId) throw new AppError('forbidden', 'Only a coach assesses a client.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, input.clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    assertLadders(await loadGapLibrary(tx), input.assessment);
    const assessmentId = await insertAssessment(tx, {
      clientId: client.id,
      byId: memberId,
      skillId: input.assessment.skillId,
      onDate: localDateOf(now, client.zone),
      answers: input.assessment,
      now,
    });
    await insertAudit(tx, actor, {
      action: 'assessment-saved',
      clientId: client.id,
      objectId: assessmentId,
      fields: [],
    });
    return { assessmentId };
  });
}

/** Every rung named is one in use, of the ladder it is said of. */
function assertLadders(library: readonly GapLadder[], assessment: AssessmentInput): void {
  const fields: Record<string, string> = {};
  const aim = library.find(({ rungs }) => rungs.some(({ id }) => id === assessment.aimRungId));
  if (aim?.skillId !== assessment.skillId)
    fields.aimRungId = 'is not a rung of this skill in use: choose one from the list';
  const known = new Set<string>();
  for (const [at, part] of assessment.parts.entries()) {
    const ladder = library.find(({ id }) => id === part.ladderId);
    const has = (rungId: string) => ladder?.rungs.some(({ id }) => id === rungId) === true;
    if (!ladder || known.has(part.ladderId))
      fields[`parts.${at}.ladderId`] = ladder ? 'is there twice' : 'is not a ladder of yours in use';
    else if (!has(part.askedRungId))
      fields[`parts.${at}.askedRungId`] = 'is not a rung of this ladder: choose one from the list';
    known.add(part.ladderId);
    for (const [side, { rungId }] of part.sides.entries())
      if (ladder && rungId !== null && !has(rungId))
        fields[`parts.${at}.sides.${side}.rungId`] = 'is not a rung of this ladder: choose one from the list';
  }
  const [first] = Object.entries(fields);
  if (first) throw new AppError('invalid', `${first[0]}: ${first[1]}`, { fields });
}
