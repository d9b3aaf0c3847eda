import { z } from 'zod';
import { type TeamPg, type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { ledgerScope } from '#lib/db/ledger.ts';
import { closeUnsent, listTeamsWithOutbox, markNotSent, markSent } from '#lib/db/outbox.ts';
import { deletePhonesById, listWaitingPushes, type WaitingPush } from '#lib/db/outbox-push.ts';
import { logger } from '#lib/logger.ts';
import { metrics } from '#lib/metrics.ts';
import { type PushOutcome, sendPush } from '#lib/push/send-push.ts';

const ROWS_A_TURN = 50;
/** A notice of an answer that is older than this helps nobody; our own choice. */
const OLDEST_MS = 3 * 24 * 3_600_000;
const pushed = z.object({ title: z.string(), text: z.string(), tag: z.string() });

/**
 * Hands waiting notices to the push services, at least once: a row is marked after its service took it, and a repeat
 * takes the place of the same notice on the phone. `teamId` left out: every team. Returns how many were taken.
 */
export async function deliverNotices(now: Date, teamId?: string): Promise<number> {
  const scopes = teamId === undefined ? await listTeamsWithOutbox('push') : [ledgerScope(teamId)];
  let delivered = 0;
  for (const scope of scopes) delivered += await deliverOfTeam(scope, now);
  return delivered;
}

async function deliverOfTeam(scope: TeamScope, now: Date): Promise<number> {
  return withTeamPg(scope, async (tx) => {
    const waiting = await listWaitingPushes(tx, now, ROWS_A_TURN);
    const done = await Promise.all(waiting.map(async (row) => ({ row, outcome: await handOver(row, now) })));
    for (const { row, outcome } of done) await write(tx, row, outcome, now);
    return done.filter(({ outcome }) => outcome.how === 'sent').length;
  });
}

type Handed = PushOutcome | { how: 'closed'; why: string };

async function handOver({ body, at, endpoint, p256dh, auth }: WaitingPush, now: Date): Promise<Handed> {
  if (endpoint === null || p256dh === null || auth === null)
    return { how: 'closed', why: 'switched off on this phone' };
  if (now.getTime() - at.getTime() > OLDEST_MS) return { how: 'closed', why: 'given up after 3 days' };
  const notice = pushed.safeParse(body);
  if (!notice.success) return { how: 'closed', why: 'this is no notice' };
  return sendPush({ endpoint, p256dh, auth }, notice.data);
}

async function write(tx: TeamPg, { id, phoneId }: WaitingPush, outcome: Handed, now: Date): Promise<void> {
  metrics().delivered.inc({ kind: 'push', outcome: outcome.how });
  switch (outcome.how) {
    case 'sent':
      return markSent(tx, [id], now);
    case 'closed':
      return closeUnsent(tx, [id], outcome.why, now);
    case 'gone':
      if (phoneId) await deletePhonesById(tx, [phoneId]);
      return closeUnsent(tx, [id], 'the push service knows this phone no more', now);
    case 'failed':
      logger().warn({ outboxId: id, why: outcome.why }, 'a notice waits for the next try');
      return markNotSent(tx, [id], outcome.why);
  }
}
