import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { setClipKeepDays } from '#lib/db/clip-sweep.ts';
import { findRetention, type Retention, setRetention } from '#lib/db/retention.ts';

/** `clipDays` left out: as it is. */
type Chosen = Omit<Retention, 'clipDays'> & { clipDays?: number | undefined };

/** Says how long records are kept after leaving, and whether they are deleted by themselves then. */
export async function chooseRetention(actor: Actor, { clipDays, ...chosen }: Chosen): Promise<void> {
  await withTeamPg(actor.scope, async (tx) => {
    const before = await findRetention(tx);
    const fields = (['years', 'erases'] as const).filter((field) => before[field] !== chosen[field]);
    const isFilms = clipDays !== undefined && clipDays !== before.clipDays;
    if (fields.length > 0) await setRetention(tx, chosen);
    if (isFilms) await setClipKeepDays(tx, clipDays);
    const changed = [...fields, ...(isFilms ? ['clipDays'] : [])];
    if (changed.length > 0) await insertAudit(tx, actor, { action: 'retention-changed', fields: changed });
  });
}
