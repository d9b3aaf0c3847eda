import { z } from 'zod';
import { type TeamPg, type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { closeUnsent, listTeamsWithOutbox, markNotSent, markSent } from '#lib/db/outbox.ts';
import { lockUnsentMail, type WaitingMail } from '#lib/db/outbox-mail.ts';
import { logger } from '#lib/logger.ts';
import { canSendMail, type MailOutcome, sendMail } from '#lib/mail/send-mail.ts';
import { metrics } from '#lib/metrics.ts';

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

/** One mail a transaction: when the worker is killed, at most the one it had in hand goes out twice. */
async function deliverOfTeam(scope: TeamScope, now: Date): Promise<number> {
  let sent = 0;
  for (let turn = 0; turn < MAILS_A_TURN; turn += 1) {
    const outcome = await withTeamPg(scope, (tx) => deliverNext(tx, now));
    if (!outcome) break;
    if (outcome.how === 'sent') sent += 1;
  }
  return sent;
}

async function deliverNext(tx: TeamPg, now: Date): Promise<MailOutcome | undefined> {
  const row = await lockUnsentMail(tx, now);
  if (!row) return undefined;
  const outcome = await handOver(row, now);
  await write(tx, row.id, outcome, now);
  return outcome;
}

async function handOver({ id, at, body }: WaitingMail, now: Date): Promise<MailOutcome> {
  if (now.getTime() - at.getTime() > OLDEST_MS) return { how: 'refused', why: 'given up after 3 days' };
  const mail = mailed.safeParse(body);
  return mail.success ? sendMail(mail.data, id) : { how: 'refused', why: 'this is no mail' };
}

async function write(tx: TeamPg, id: string, outcome: MailOutcome, now: Date): Promise<void> {
  metrics().delivered.inc({ kind: 'mail', outcome: outcome.how });
  if (outcome.how === 'sent') return markSent(tx, [id], now);
  logger().warn({ outboxId: id, why: outcome.why }, 'a mail was not taken');
  if (outcome.how === 'refused') return closeUnsent(tx, [id], outcome.why, now);
  return markNotSent(tx, [id], outcome.why);
}
