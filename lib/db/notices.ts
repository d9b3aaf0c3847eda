import type { TeamPg } from './client.ts';

export type NoticeChoice = { email: string | null; mail: boolean; endpoints: string[] };

/** How a client who has not left wants to be told; undefined: no such client. */
export async function findNoticeChoice(tx: TeamPg, clientId: string): Promise<NoticeChoice | undefined> {
  const { rows } = await tx.client.query<NoticeChoice>(
    `select c.email, coalesce(n.mail, false) as mail, array(select p.endpoint from push_subscription p
       where p.team_id = c.team_id and p.client_id = c.id order by p.created_at, p.id) as endpoints
     from client c left join client_notice n on n.team_id = c.team_id and n.client_id = c.id
     where c.team_id = $1 and c.id = $2::uuid and c.standing <> 'left'`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

export async function setMailNotice(
  tx: TeamPg,
  choice: { clientId: string; on: boolean; at: Date },
): Promise<void> {
  await tx.client.query(
    `insert into client_notice (team_id, client_id, mail, changed_at) values ($1, $2, $3, $4)
     on conflict (team_id, client_id) do update set mail = excluded.mail, changed_at = excluded.changed_at`,
    [tx.teamId, choice.clientId, choice.on, choice.at],
  );
}

type Phone = { clientId: string; endpoint: string; p256dh: string; auth: string; at: Date };

/**
 * Keeps a phone; of more than `most` the oldest go. The same again takes the newer keys. Whoever held this browser
 * before, in whichever team, is not told on it any more.
 */
export async function insertPhone(tx: TeamPg, phone: Phone, most: number): Promise<void> {
  await tx.client.query('select release_push_endpoint($1, $2)', [phone.endpoint, phone.clientId]);
  await tx.client.query(
    `insert into push_subscription (team_id, client_id, endpoint, p256dh, auth, created_at)
     values ($1, $2, $3, $4, $5, $6)
     on conflict (endpoint) do update set p256dh = excluded.p256dh, auth = excluded.auth`,
    [tx.teamId, phone.clientId, phone.endpoint, phone.p256dh, phone.auth, phone.at],
  );
  await tx.client.query(
    `delete from push_subscription where team_id = $1 and id in (select id from push_subscription
       where team_id = $1 and client_id = $2 order by created_at desc, id offset $3)`,
    [tx.teamId, phone.clientId, most],
  );
}

/** Forgets a phone of this client; somebody else's stays. */
export async function deletePhone(tx: TeamPg, phone: { clientId: string; endpoint: string }): Promise<void> {
  await tx.client.query(
    'delete from push_subscription where team_id = $1 and client_id = $2::uuid and endpoint = $3',
    [tx.teamId, phone.clientId, phone.endpoint],
  );
}
