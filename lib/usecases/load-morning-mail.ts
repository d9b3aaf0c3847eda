import type { Actor } from '#lib/auth/actor.ts';
import { env } from '#lib/config/env.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findLastMorning, findMorningChoice, type MorningChoice } from '#lib/db/morning-mails.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { canSendMail } from '#lib/mail/send-mail.ts';
import type { MorningMail } from '#lib/views/morning/morning-mail.ts';
import { assertMember } from './assert-member.ts';
import { readMorning } from './read-morning.ts';

const DAY_MS = 24 * 3_600_000;

export type MorningSetting = {
  choice: MorningChoice;
  /** What the mail would say now. */
  mail: MorningMail;
  away: boolean;
  /** `demo`: shown in its mailbox; `nowhere`: the settings name no mail server. */
  leaves: 'by-mail' | 'demo' | 'nowhere';
};

/** A member's own choice about the morning mail, and what it would say now. */
export function loadMorningMail(actor: Actor, now: Date): Promise<MorningSetting> {
  const memberId = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const choice = await findMorningChoice(tx, memberId);
    if (!choice) throw new AppError('not-found', 'You are not a member of this team any more.');
    const date = localDateOf(now, choice.zone);
    const lastAt = (await findLastMorning(tx, memberId)) ?? new Date(now.getTime() - DAY_MS);
    const { mail, away } = await readMorning(tx, { memberId, date, zone: choice.zone, lastAt, now });
    const leaves = env().PLUMBLINE_DEMO === 'on' ? 'demo' : canSendMail() ? 'by-mail' : 'nowhere';
    return { choice, mail, away, leaves };
  });
}
