import type { Actor } from '#lib/auth/actor.ts';
import { type AuditLine, insertAudit } from '#lib/db/audit.ts';
import { withTeam } from '#lib/db/client.ts';

/** One line for an act that changes no row (reading a file out, a refused look). Changes call insertAudit in their own transaction. */
export async function recordAudit(
  actor: Pick<Actor, 'scope' | 'userId' | 'role'>,
  line: AuditLine,
): Promise<void> {
  await withTeam(actor.scope, (tx) => insertAudit(tx, actor, line));
}
