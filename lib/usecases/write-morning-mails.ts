import { env } from '#lib/config/env.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { listOwedNightsOf } from '#lib/db/ledger.ts';
import {
  closeMorning,
  dropUnsentMornings,
  findLastMorning,
  findMorningChoice,
  listMorningMembers,
  lockMorning,
  type MorningMember,
  mailKey,
} from '#lib/db/morning-mails.ts';
import { insertMail } from '#lib/db/outbox-mail.ts';
import { morningMailDue } from '#lib/domain/morning-mail-due.ts';
import { logger } from '#lib/logger.ts';
import { canSendMail } from '#lib/mail/send-mail.ts';
import { readMorning } from './read-morning.ts';

const HOUR_MS = 3_600_000;
/** A mail waits this long for nights that are still owed, as after a machine slept; then it says how far they got. */
const LONGEST_WAIT_MS = HOUR_MS;
/** Before the first mail of all, what came within a day is new. */
const FIRST_LOOK_MS = 24 * HOUR_MS;

/**
 * Leaves the morning mails that are due in the outbox, one a member and local date at most: what was decided for a date
 * is written down beside the mail, in one transaction. Returns how many were written. Without a mail server, and not
 * in the demo, nothing is decided.
 */
export async function writeMorningMails(now: Date): Promise<number> {
  if (!canSendMail() && env().PLUMBLINE_DEMO !== 'on') return 0;
  let written = 0;
  for (const member of await listMorningMembers()) {
    const date = morningMailDue(member, now);
    if (date === null) continue;
    try {
      if (await withTeamPg(member.scope, (tx) => decide(tx, member, date, now))) written += 1;
    } catch (error) {
      // One morning that cannot be read must not keep the others from their mail: the next tick tries again.
      logger().error({ error, memberId: member.memberId }, 'a morning mail was not written');
    }
  }
  return written;
}

/** True when a mail was written. */
async function decide(tx: TeamPg, member: MorningMember, date: string, now: Date): Promise<boolean> {
  const { memberId } = member;
  const choice = await findMorningChoice(tx, memberId);
  if (!choice || choice.mail === 'off') return false;
  const lastAt = (await findLastMorning(tx, memberId)) ?? new Date(now.getTime() - FIRST_LOOK_MS);
  const morning = await lockMorning(tx, { memberId, date, at: now });
  if (morning.decided) return false;
  const { away, clientIds, mail } = await readMorning(tx, { memberId, date, zone: choice.zone, lastAt, now });
  const close = (why: Parameters<typeof closeMorning>[1]['why']) =>
    closeMorning(tx, { id: morning.id, memberId, why, at: now });
  if (away) return close('covered').then(() => false);
  const owed = clientIds.length > 0 ? await listOwedNightsOf(member.scope, clientIds, now) : [];
  if (owed.length > 0 && now.getTime() - morning.since.getTime() < LONGEST_WAIT_MS) return false;
  if (choice.mail === 'when-new' && !mail.isNew) return close('nothing-new').then(() => false);
  await dropUnsentMornings(tx, memberId);
  const { subject, text } = mail;
  await insertMail(tx, {
    to: choice.email,
    subject,
    text,
    clientId: null,
    dedupeKey: mailKey({ memberId, date }),
    at: now,
  });
  await close('sent');
  return true;
}
