import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { ledgerScope } from '#lib/db/ledger.ts';
import {
  findStandingChange,
  listDueStandings,
  lockStandingClient,
  markStandingApplied,
  markStandingUndone,
} from '#lib/db/standing-changes.ts';
import { NEXT_STANDINGS } from '#lib/domain/standing-steps.ts';
import { applyStanding } from './apply-standing.ts';

/**
 * Makes the changes of standing whose day has come. Safe to run twice: a change that was made is not due any more. One
 * that no longer follows where the client stands by then is dropped, with a line in the audit.
 */
export async function applyDueStandings(now: Date): Promise<number> {
  const due = await listDueStandings(now);
  let made = 0;
  for (const { teamId, id } of due) {
    await withTeamPg(ledgerScope(teamId), async (tx) => {
      const known = await findStandingChange(tx, id);
      const client = known && (await lockStandingClient(tx, known.clientId));
      const change = client && (await findStandingChange(tx, id));
      if (!client || !change || change.appliedAt !== null) return;
      const audit = (action: string) =>
        insertAudit(
          tx,
          { userId: null, role: 'system' },
          { action, clientId: client.id, objectId: id, fields: ['standing'] },
        );
      if (!NEXT_STANDINGS[client.standing].includes(change.after)) {
        await markStandingUndone(tx, id, now);
        await audit('standing-dropped');
        return;
      }
      const { after, from, byId } = change;
      const behind = await applyStanding(tx, client, { id, after, from, memberId: byId }, now);
      await markStandingApplied(tx, id, { behind, before: client.standing, at: now });
      await audit('standing-applied');
      made += 1;
    });
  }
  return made;
}
