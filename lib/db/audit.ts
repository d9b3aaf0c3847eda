import type { Role } from '#lib/domain/vocabulary.ts';
import type { TeamPg, TeamTx } from './client.ts';

export type AuditLine = {
  /** What was done, as a verb in the past: `plan-saved`, `client-exported`. */
  readonly action: string;
  readonly clientId?: string | null;
  readonly objectId?: string | null;
  /** Names of the fields that changed; never their values. */
  readonly fields: readonly string[];
};

/** One line of what was done, in the transaction that does it. The application can add lines, not change them. */
export async function insertAudit(
  tx: TeamTx | TeamPg,
  who: { readonly userId: string | null; readonly role: Role | 'system' },
  line: AuditLine,
): Promise<void> {
  const { action, clientId = null, objectId = null } = line;
  const fields = [...line.fields];
  if ('db' in tx) {
    const { teamId } = tx;
    await tx.db.audit.create({
      data: { teamId, actorUserId: who.userId, actorRole: who.role, action, clientId, objectId, fields },
      select: { id: true },
    });
    return;
  }
  await tx.client.query(
    `insert into audit (team_id, actor_user_id, actor_role, action, client_id, object_id, fields)
     values ($1, $2, $3, $4, $5, $6, $7)`,
    [tx.teamId, who.userId, who.role, action, clientId, objectId, fields],
  );
}
