import type { Actor } from '#lib/auth/actor.ts';
import { listOpenReasons } from '#lib/db/acts.ts';
import { insertApproval, listApprovals, setApproval } from '#lib/db/approvals.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { hasLeave } from '#lib/db/team-members.ts';
import { canonicalJson } from '#lib/domain/canonical-json.ts';
import type { PreparedAct } from '#lib/schemas/team.ts';
import type { ActDone } from '../act-on-reason.ts';
import { assertMember } from '../assert-member.ts';
import { type Performed, type Prepared, performAct } from './perform-act.ts';

/** `waits`: kept for approval; `actId` is then the id of what waits, and undo withdraws it. */
export type PreparedDone = Performed & { waits?: true };

/**
 * An answer, a step or a plan of anybody of the team. Coaches and leads, and assistants with leave for this kind, act as
 * themselves. What another assistant sends is tried out whole, taken back, and kept for a coach to approve.
 */
export async function prepareAct(actor: Actor, prepared: Prepared, now: Date): Promise<PreparedDone> {
  const memberId = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    if (actor.role !== 'assistant' || (await hasLeave(tx, memberId, leaveFor(prepared.act))))
      return performAct(tx, actor, prepared, now);
    await tx.client.query('savepoint tried');
    await performAct(tx, actor, prepared, now);
    await tx.client.query('rollback to savepoint tried');
    return keep(tx, { ...actor, memberId }, prepared, now);
  });
}

/** Who may judge films may ask for them. */
function leaveFor(act: Prepared['act']): PreparedAct {
  return act === 'ask-film' ? 'film' : act;
}

async function keep(
  tx: TeamPg,
  actor: Actor & { memberId: string },
  { act, clientId, body }: Prepared,
  now: Date,
): Promise<ActDone & { waits: true }> {
  const reasonIds = (await listOpenReasons(tx, clientId)).map(({ id }) => id);
  const own = { preparedById: actor.memberId, clientId };
  for (const older of await listApprovals(tx, { ...own, state: 'waiting' })) {
    if (older.act !== act || aboutOf(older.body) !== aboutOf(body)) continue;
    await setApproval(tx, older.id, {
      state: 'withdrawn',
      decidedById: null,
      at: now,
      words: 'prepared anew',
    });
  }
  const approvalId = await insertApproval(tx, { ...own, act, body, context: { reasonIds }, at: now });
  await insertAudit(tx, actor, { action: 'act-prepared', clientId, objectId: approvalId, fields: [act] });
  const coach = (await findClient(tx, clientId))?.coach ?? 'a coach';
  const line = `Kept for approval by ${coach} or another coach. Nothing is sent or changed before that.`;
  return { actId: approvalId, line, folds: false, waits: true };
}

/** Words stand beside each other; a verdict takes the place of one on the same set. */
function aboutFilm(body: { clipId: unknown }): string {
  const { set = null, atSeconds = null, text = null } = body as Record<string, unknown>;
  return canonicalJson([body.clipId, set, atSeconds, text]);
}

/** Two acts of one kind about one thing: the newer takes the place of the older. */
function aboutOf(body: unknown): unknown {
  if (typeof body !== 'object' || body === null) return undefined;
  if ('questionId' in body) return body.questionId;
  if ('clipId' in body) return aboutFilm(body);
  if ('angle' in body && 'rungId' in body && 'side' in body)
    return canonicalJson([body.rungId, body.side, body.angle]);
  return 'reasonId' in body ? body.reasonId : 'all';
}
