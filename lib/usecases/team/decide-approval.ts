import type { Actor } from '#lib/auth/actor.ts';
import { listOpenReasons } from '#lib/db/acts.ts';
import { type ApprovalRow, lockApproval, setApproval } from '#lib/db/approvals.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';
import { approvalContext } from '#lib/schemas/prepared-act.ts';
import { assertMember } from '../assert-member.ts';
import { performAct } from './perform-act.ts';
import { preparedFrom } from './prepared-from.ts';

/** `overtaken`: what it was about changed meanwhile; nothing was done, and `line` says why. */
export type Approved = { state: 'approved' | 'overtaken'; actId: string | null; line: string };

/**
 * Does what an assistant prepared, as the coach who approves it; events and audit name who prepared it. `body`: the act
 * as the coach changed it. Where something changed meanwhile nothing is done and the approval is closed as overtaken.
 */
export async function approveAct(
  actor: Actor,
  input: { approvalId: string; body?: unknown },
  now: Date,
): Promise<Approved> {
  const decidedById = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const approval = await lockWaiting(tx, input.approvalId);
    const { id, clientId, act, preparedById } = approval;
    const prepared = preparedFrom({ act, clientId, body: input.body ?? approval.body });
    const audit = (action: string) =>
      insertAudit(tx, actor, {
        action,
        clientId,
        objectId: id,
        fields: [act, `prepared-by ${preparedById}`],
      });
    await tx.client.query('savepoint approving');
    try {
      await assertNothingNew(tx, approval);
      const done = await performAct(tx, { ...actor, preparedById }, prepared, now);
      const context = {
        ...approvalContext.parse(approval.context),
        ...(done.planUndo && { planUndo: done.planUndo }),
      };
      const changed = input.body === undefined ? {} : { body: prepared.body };
      const decided = { state: 'approved', decidedById, at: now, actId: done.actId } as const;
      await setApproval(tx, id, { ...decided, context, ...changed });
      await audit('act-approved');
      return { state: 'approved', actId: done.actId, line: done.line };
    } catch (error) {
      if (!isOvertaken(error)) throw error;
      await tx.client.query('rollback to savepoint approving');
      await setApproval(tx, id, { state: 'overtaken', decidedById, at: now, words: error.message });
      await audit('act-overtaken');
      const line = `Nothing was done: it changed meanwhile. ${error.message}`;
      return { state: 'overtaken', actId: null, line };
    }
  });
}

/** Gives it back to who prepared it, with words on what to change. */
export async function sendBackAct(
  actor: Actor,
  input: { approvalId: string; words: string },
  now: Date,
): Promise<{ line: string }> {
  const decidedById = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const { id, clientId, act, preparedBy } = await lockWaiting(tx, input.approvalId);
    await setApproval(tx, id, { state: 'sent-back', decidedById, at: now, words: input.words });
    await insertAudit(tx, actor, { action: 'act-sent-back', clientId, objectId: id, fields: [act] });
    return { line: `Sent back to ${preparedBy}: “${input.words}”` };
  });
}

async function lockWaiting(tx: TeamPg, approvalId: string): Promise<ApprovalRow> {
  const approval = await lockApproval(tx, approvalId);
  if (!approval) throw new AppError('not-found', 'This is not there, or not in your team.');
  if (approval.state === 'waiting') return approval;
  const who = approval.decidedBy ? ` by ${approval.decidedBy}` : '';
  throw new AppError('conflict', `This does not wait any more: it was ${SAID[approval.state]}${who}.`);
}

const SAID: Record<string, string> = {
  approved: 'approved',
  'sent-back': 'sent back',
  overtaken: 'closed as overtaken',
  withdrawn: 'withdrawn',
};

/** A step on a client's whole row was prepared without what came up since. */
async function assertNothingNew(tx: TeamPg, { act, clientId, context }: ApprovalRow): Promise<void> {
  if (act !== 'step') return;
  const known = approvalContext.parse(context).reasonIds;
  const fresh = (await listOpenReasons(tx, clientId)).find(({ id }) => !known.includes(id));
  if (fresh)
    throw new AppError('conflict', 'Something new has come up for this client since it was prepared.');
}

function isOvertaken(error: unknown): error is AppError {
  return error instanceof AppError && (error.code === 'conflict' || error.code === 'not-found');
}
