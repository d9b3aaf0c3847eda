import type { TeamPg, TeamTx } from './client.ts';

export type Mail = { readonly to: string; readonly subject: string; readonly text: string };

/** Leaves a mail for the sender, once per key. */
export async function insertMail(
  tx: TeamPg,
  mail: Mail & { clientId: string; dedupeKey: string; at: Date },
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
