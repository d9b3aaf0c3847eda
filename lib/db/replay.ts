import type { ReplayAct } from '#lib/checks/replay/replay-reasons.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type ReplayClient = { id: string; name: string; nightsDone: number };

/**
 * Clients that have nights, by name: some of them at a time, or one. `nightsDone`: finished nights before `from`.
 * `total`: how many there are in all.
 */
export async function listReplayClients(
  tx: TeamPg,
  asked: { clientId: string | null; skip: number; limit: number; from: string },
): Promise<{ clients: ReplayClient[]; total: number }> {
  const { rows } = await tx.client.query<ReplayClient & { total: number }>(
    `select c.id, c.name, count(*) over ()::int as total,
       (select count(*)::int from night_client n where n.team_id = $1 and n.client_id = c.id
          and n.done_at is not null and n.local_date < $5::date) as "nightsDone"
     from client c
     where c.team_id = $1 and (c.id = $2::uuid or ($2::uuid is null and c.standing = any (night_standings())))
     order by c.name, c.id offset $3 limit $4`,
    [tx.teamId, asked.clientId, asked.skip, asked.limit, asked.from],
  );
  return {
    clients: rows.map(({ total: _total, ...client }) => client),
    total: rows[0]?.total ?? 0,
  };
}

type Row = ReplayAct & { clientId: string };

/** What coaches did with the reasons of these clients since a date, and did not undo. */
export async function listReplayActs(
  tx: TeamPg,
  clientIds: readonly string[],
  since: string,
): Promise<Map<string, ReplayAct[]>> {
  const { rows } = await tx.client.query<Omit<Row, 'at' | 'kind'> & { at: Date; kind: CheckKind }>(
    `select r.client_id as "clientId", r.kind, r.subject_key as key, e.at,
       a.state, a."asideUntil", coalesce(a."asideUntilWorse", false) as "asideUntilWorse", a."withClientUntil", a."closedWhy"
     from reason_event e
     join reason r on r.team_id = e.team_id and r.id = e.reason_id,
     jsonb_to_record(e.body -> 'after') as a(state text, "asideUntil" text, "asideUntilWorse" boolean,
       "withClientUntil" text, "closedWhy" text)
     where e.team_id = $1 and r.client_id = any($2::uuid[]) and e.at >= $3::date and e.what <> 'undone'
       and jsonb_typeof(e.body -> 'after') = 'object'
       and not exists (select from reason_event u where u.team_id = $1 and u.reason_id = e.reason_id
         and u.what = 'undone' and u.body ->> 'actId' = e.body ->> 'actId')
     order by e.at, e.id`,
    [tx.teamId, clientIds, since],
  );
  const acts = new Map<string, ReplayAct[]>();
  for (const { clientId, at, ...act } of rows) {
    const there = acts.get(clientId) ?? [];
    there.push({ ...act, at: at.toISOString() });
    acts.set(clientId, there);
  }
  return acts;
}
