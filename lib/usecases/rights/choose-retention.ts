import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findRetention, type Retention, setRetention } from '#lib/db/retention.ts';

/** Says how long records are kept after leaving, and whether they are deleted by themselves then. */
export async function chooseRetention(actor: Actor, chosen: Retention): Promise<void> {
  await withTeamPg(actor.scope, async (tx) => {
    const before = await findRetention(tx);
    const fields = (['years', 'erases'] as const).filter((field) => before[field] !== chosen[field]);
    if (fields.length === 0) return;
    await setRetention(tx, chosen);
    await insertAudit(tx, actor, { action: 'retention-changed', fields });
  });
}
