import type { Actor } from '#lib/auth/actor.ts';
import { writeAnsweringHours } from '#lib/db/answering-hours.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import type { AnsweringHours } from '#lib/domain/history.ts';

/** Sets the team's answering hours: from now on the page and tonight's checks count by them. */
export async function setAnsweringHours(actor: Actor, hours: AnsweringHours | null): Promise<void> {
  await withTeamPg(actor.scope, async (tx) => {
    await writeAnsweringHours(tx, hours);
    await insertAudit(tx, actor, { action: 'answering-hours-set', fields: ['answering_hours'] });
  });
}
