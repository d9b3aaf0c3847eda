import { z } from 'zod';
import { type TeamPg, type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { closeUnsent, listTeamsWithOutbox, markNotSent, markSent } from '#lib/db/outbox.ts';
import { listUnsentMails, type WaitingMail } from '#lib/db/outbox-mail.ts';
import { logger } from '#lib/logger.ts';
import { canSendMail, type MailOutcome, sendMail } from '#lib/mail/send-mail.ts';

const MAILS_A_TURN = 50;
/** A link or a notice that is older than this helps nobody; our own choice. */
const OLDEST_MS = 3 * 24 * 3_600_000;
const mailed = z.object({ to: z.string(), subject: z.string(), text: z.string() });

/**
 * Hands waiting mails to the mail server, at least once: a row is marked after the server took it. Without a mail server
 * in the settings they wait. Returns how many were taken.
 */
export async function deliverMails(now: Date): Promise<number> {
  if (!canSendMail()) return 0;
  let delivered = 0;
  for (const scope of await listTeamsWithOutbox('mail')) delivered += await deliverOfTeam(scope, now);
  return delivered;
}

async function deliverOfTeam(scope: TeamScope, now: Date): Promise<number> {
  return withTeamPg(scope, async (tx) => {
    let sent = 0;
    for (const row of await listUnsentMails(tx, now, MAILS_A_TURN)) {
      const outcome = await handOver(row, now);
      await write(tx, row.id, outcome, now);
      if (outcome.how === 'sent') sent += 1;
    }
    return sent;
  });
}

async function handOver({ id, at, body }: WaitingMail, now: Date): Promise<MailOutcome> {
  if (now.getTime() - at.getTime() > OLDEST_MS) return { how: 'refused', why: 'given up after 3 days' };
  return sendMail(mailed.parse(body), id);
}

async function write(tx: TeamPg, id: string, outcome: MailOutcome, now: Date): Promise<void> {
  if (outcome.how === 'sent') return markSent(tx, [id], now);
  logger().warn({ outboxId: id, why: outcome.why }, 'a mail was not taken');
  if (outcome.how === 'refused') return closeUnsent(tx, [id], outcome.why, now);
  return markNotSent(tx, [id], outcome.why);
}
