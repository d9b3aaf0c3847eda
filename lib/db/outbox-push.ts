import type { TeamPg } from './client.ts';

type Pushed = { title: string; text: string; tag: string };

/** Leaves a notice for every phone of the client, once a phone. */
export async function insertPushes(
  tx: TeamPg,
  push: Pushed & { clientId: string; dedupeKey: string; at: Date },
): Promise<void> {
  const { title, text, tag } = push;
  await tx.client.query(
    `insert into outbox (team_id, kind, client_id, dedupe_key, body, created_at)
     select $1, 'push', $2, $3 || ':' || p.id, $4::jsonb || jsonb_build_object('phoneId', p.id), $5
     from push_subscription p where p.team_id = $1 and p.client_id = $2
     on conflict (team_id, kind, dedupe_key) do nothing`,
    [tx.teamId, push.clientId, push.dedupeKey, JSON.stringify({ title, text, tag }), push.at],
  );
}

export type WaitingPush = {
  id: string;
  /** Stored JSON: parse it. */
  body: unknown;
  at: Date;
  phoneId: string | null;
  /** Null with `phoneId`: the phone was switched off since. */
  endpoint: string | null;
  p256dh: string | null;
  auth: string | null;
};

/** Oldest first; what failed waits 1, 3, 7, 15 … minutes. Rows that another worker is delivering are left to it. */
export async function listWaitingPushes(tx: TeamPg, now: Date, limit: number): Promise<WaitingPush[]> {
  const { rows } = await tx.client.query<WaitingPush>(
    `select o.id, o.body, o.created_at as at, p.id as "phoneId", p.endpoint, p.p256dh, p.auth
     from outbox o left join push_subscription p
       on p.team_id = o.team_id and p.id = (o.body->>'phoneId')::uuid and p.client_id = o.client_id
     where o.team_id = $1 and o.kind = 'push' and o.sent_at is null
       and o.created_at + interval '1 minute' * (power(2, least(o.attempts, 12)) - 1) <= $2
     order by o.created_at, o.id limit $3 for update of o skip locked`,
    [tx.teamId, now, limit],
  );
  return rows;
}

export async function deletePhonesById(tx: TeamPg, ids: string[]): Promise<void> {
  await tx.client.query('delete from push_subscription where team_id = $1 and id = any($2::uuid[])', [
    tx.teamId,
    ids,
  ]);
}

/** Takes back notices that have not left yet: what they tell of was taken back. */
export async function deleteUnsentNotices(tx: TeamPg, dedupeKey: string): Promise<void> {
  await tx.client.query(
    `delete from outbox where team_id = $1 and kind in ('push', 'mail') and sent_at is null
       and (dedupe_key = $2 or starts_with(dedupe_key, $2 || ':'))`,
    [tx.teamId, dedupeKey],
  );
}
