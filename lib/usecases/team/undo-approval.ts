import type { Actor } from '#lib/auth/actor.ts';
import { lockApproval, setApproval } from '#lib/db/approvals.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { restoreGoals } from '#lib/db/plan-undo.ts';
import { areVersionsUnused, takeBackStep } from '#lib/db/step-records.ts';
import { AppError } from '#lib/errors.ts';
import { lookAct } from '#lib/schemas/looking.ts';
import { type ApprovalContext, approvalContext } from '#lib/schemas/prepared-act.ts';
import { assertMember } from '../assert-member.ts';
import { takeBackFilmIn } from '../film/take-back-film.ts';
import { undoLookIn } from '../looking/undo-look.ts';
import { undoAct } from '../undo-act.ts';

/** Takes a decision back: what was done is undone as any act is, and the prepared act waits again. */
export async function undoApproval(actor: Actor, approvalId: string, now: Date): Promise<{ line: string }> {
  assertMember(actor);
  const approval = await withTeamPg(actor.scope, (tx) => lockApproval(tx, approvalId));
  if (!approval) throw new AppError('not-found', 'This is not there, or not in your team.');
  if (approval.state !== 'approved' && approval.state !== 'sent-back')
    throw new AppError('conflict', 'There is nothing here to take back any more.');
  const { actId, act } = approval;
  const isOfBoard = act === 'answer' || act === 'step';
  if (approval.state === 'approved' && isOfBoard && actId) await undoAct(actor, { actId }, now);
  await withTeamPg(actor.scope, async (tx) => {
    const { planUndo, reasonIds } = approvalContext.parse(approval.context);
    if (approval.state === 'approved' && act === 'film' && actId)
      await undoLookIn(tx, actor, { clipId: lookAct.parse(approval.body).clipId, id: actId }, now);
    if (approval.state === 'approved' && act === 'ask-film' && actId)
      await takeBackFilmIn(tx, actor, actId, now);
    if (approval.state === 'approved' && act === 'plan') await takeBackPlan(tx, approval.clientId, planUndo);
    await setApproval(tx, approvalId, {
      state: 'waiting',
      decidedById: null,
      at: null,
      context: { reasonIds },
    });
    const { clientId } = approval;
    await insertAudit(tx, actor, {
      action: 'decision-undone',
      clientId,
      objectId: approvalId,
      fields: [act],
    });
  });
  return { line: 'Taken back. It waits for approval again.' };
}

async function takeBackPlan(tx: TeamPg, clientId: string, undo: ApprovalContext['planUndo']): Promise<void> {
  const versions = undo ? [undo.version] : [];
  if (!undo || !(await areVersionsUnused(tx, clientId, versions)))
    throw new AppError(
      'conflict',
      'This plan was changed or trained by since, so it cannot be undone. Write a new version of the plan.',
    );
  const made = { filmId: null, limitId: null, wordId: null, goalIds: [] };
  await takeBackStep(tx, {
    clientId,
    taken: { planVersions: versions, placementsBefore: undo.placements, ...made },
  });
  await restoreGoals(tx, clientId, undo.goals);
}
