import type { Actor } from '#lib/auth/actor.ts';
import { listCheckInWords } from '#lib/db/check-in-words.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listSeen } from '#lib/db/clients.ts';
import { findPhoneClient, listRecentCheckIns } from '#lib/db/phone-reads.ts';
import { listDeletedCheckIns } from '#lib/db/raw-check-ins.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { type EarlierRow, earlierRows } from '#lib/views/phone-earlier.ts';

/** As far back as the phone offers days to check in for: two weeks, today included. */
const DAYS_BACK = 13;

export type Earlier = { date: string; zone: string; coachName: string; rows: EarlierRow[] };

/** One's own check-ins of the last two weeks, to correct or to delete; those deleted in their place. */
export async function loadEarlier(actor: Actor, now: Date): Promise<Earlier> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client has own check-ins.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const date = localDateOf(now, client.zone);
    const from = addDays(date, -DAYS_BACK);
    const rows = earlierRows(
      await listRecentCheckIns(tx, clientId, from),
      await listDeletedCheckIns(tx, clientId, from),
      { words: await listCheckInWords(tx, clientId, from), seen: await listSeen(tx, clientId) },
    );
    return { date, zone: client.zone, coachName: client.coachName, rows };
  });
}
