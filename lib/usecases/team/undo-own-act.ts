import type { Actor } from '#lib/auth/actor.ts';
import { lockApproval, setApproval } from '#lib/db/approvals.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { isActOf } from '#lib/db/loose-acts.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from '../assert-member.ts';
import { undoAct } from '../undo-act.ts';
import type { UndoDone } from '../undo-loose-act.ts';

/** An assistant takes back what waits for approval, or an act of their own that they had leave for. */
export async function undoOwnAct(actor: Actor, input: { actId: string }, now: Date): Promise<UndoDone> {
  const memberId = assertMember(actor);
  const withdrawn = await withTeamPg(actor.scope, async (tx): Promise<UndoDone | undefined> => {
    const approval = await lockApproval(tx, input.actId);
    if (approval?.preparedById === memberId) {
      if (approval.state !== 'waiting')
        throw new AppError('conflict', 'This does not wait any more, so it cannot be withdrawn.');
      await setApproval(tx, approval.id, { state: 'withdrawn', decidedById: memberId, at: now });
      const { id: objectId, clientId } = approval;
      await insertAudit(tx, actor, { action: 'prepared-act-withdrawn', clientId, objectId, fields: [] });
      return { clientId, line: 'Withdrawn. Nobody is asked to approve it.' };
    }
    if (await isActOf(tx, input.actId, memberId)) return undefined;
    throw new AppError('forbidden', 'An assistant takes back own acts only.');
  });
  return withdrawn ?? undoAct(actor, input, now);
}
