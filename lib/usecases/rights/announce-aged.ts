import { env } from '#lib/config/env.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { insertErasureAsk } from '#lib/db/erasures.ts';
import { insertMail } from '#lib/db/outbox-mail.ts';
import {
  type AgedRecord,
  findRetention,
  listAgedRecords,
  listLeadEmails,
  listTeamsWithRetention,
} from '#lib/db/retention.ts';
import { exactDate } from '#lib/views/say-date.ts';
import { newReceipt } from './ask-erasure.ts';

/** Days between the announcement and the deletion. */
export const WARNING_DAYS = 30;
const DAY_MS = 86_400_000;
const SYSTEM = { userId: null, role: 'system' } as const;

/**
 * Announces the deletion of records whose years are over, in teams that switched this on: to the leads and to who
 * trained, 30 days before. Safe to run often: a record is announced once, and not again for a year when it was kept on.
 */
export async function announceAged(now: Date): Promise<number> {
  let announced = 0;
  for (const scope of await listTeamsWithRetention())
    announced += await withTeamPg(scope, (tx) => announceOfTeam(tx, now));
  return announced;
}

async function announceOfTeam(tx: TeamPg, now: Date): Promise<number> {
  const { years } = await findRetention(tx);
  const aged = await listAgedRecords(tx, { years, at: now, within: WARNING_DAYS, quiet: true });
  const fresh = aged.filter(({ dueAt }) => dueAt === null);
  const leads = fresh.length > 0 ? await listLeadEmails(tx) : [];
  for (const record of fresh) await announce(tx, record, { years, leads, now });
  return fresh.length;
}

type About = { years: number; leads: string[]; now: Date };

async function announce(tx: TeamPg, record: AgedRecord, { years, leads, now }: About): Promise<void> {
  const { clientId, keptUntil } = record;
  const due = new Date(Math.max(keptUntil.getTime(), now.getTime() + WARNING_DAYS * DAY_MS));
  const ask = { clientId, origin: 'retention', byId: null, words: '' } as const;
  await insertErasureAsk(tx, { ...ask, receipt: newReceipt(), at: now, due });
  await insertAudit(tx, SYSTEM, { action: 'deletion-announced', clientId, fields: [] });
  const on = exactDate(due.toISOString().slice(0, 10));
  const key = `retention:${clientId}:${now.toISOString().slice(0, 10)}`;
  for (const [index, to] of leads.entries())
    await insertMail(tx, {
      to,
      subject: `A record will be deleted on ${on}`,
      text: `The ${years} years of a client who left are over: the record will be deleted on ${on}.\nWho it is, and how to keep it on:\n${env().PLUMBLINE_ORIGIN}/team/records\n`,
      clientId,
      dedupeKey: `${key}:${index}`,
      at: now,
    });
  if (record.email)
    await insertMail(tx, {
      to: record.email,
      subject: `Your training record will be deleted on ${on}`,
      text: `You trained with us, and the years for which we keep a record are over. Yours will be deleted on ${on}.\nIf you want a copy, or want it kept, write to your coach before that day.\n`,
      clientId,
      dedupeKey: key,
      at: now,
    });
}
