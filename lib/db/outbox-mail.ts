import type { TeamPg, TeamTx } from './client.ts';

export type Mail = { readonly to: string; readonly subject: string; readonly text: string };

/** Leaves a mail for the sender, once per key. */
export async function insertMail(
  tx: TeamPg,
  mail: Mail & { clientId: string | null; dedupeKey: string; at: Date },
): Promise<void> {
  const { to, subject, text } = mail;
  await tx.client.query(
    `insert into outbox (team_id, kind, client_id, dedupe_key, body, created_at) values ($1, 'mail', $2, $3, $4, $5)
     on conflict (team_id, kind, dedupe_key) do nothing`,
    [tx.teamId, mail.clientId, mail.dedupeKey, { to, subject, text }, mail.at],
  );
}

export type WaitingMail = { id: string; at: Date; body: unknown };

/** Newest first. The body is stored JSON: parse it. */
export async function listMails(tx: TeamTx, limit: number): Promise<WaitingMail[]> {
  const rows = await tx.db.outbox.findMany({
    where: { teamId: tx.teamId, kind: 'mail' },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take: limit,
    select: { id: true, createdAt: true, body: true },
  });
  return rows.map(({ id, createdAt, body }) => ({ id, at: createdAt, body }));
}

/** The oldest that was not sent; what failed waits 1, 3, 7, 15 … minutes. Rows of another worker are left to it. */
export async function lockUnsentMail(tx: TeamPg, now: Date): Promise<WaitingMail | undefined> {
  const { rows } = await tx.client.query<WaitingMail>(
    `select id, created_at as at, body from outbox
     where team_id = $1 and kind = 'mail' and sent_at is null
       and created_at + interval '1 minute' * (power(2, least(attempts, 12)) - 1) <= $2
     order by created_at, id limit 1 for update skip locked`,
    [tx.teamId, now],
  );
  return rows[0];
}
