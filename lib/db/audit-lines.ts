import type { Role } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type AuditLineRow = {
  id: string;
  at: Date;
  action: string;
  fields: string[];
  objectId: string | null;
  role: Role | 'system';
  userId: string | null;
  /** Null: the system, or somebody whose account is gone. */
  by: string | null;
  clientId: string | null;
  /** Null: about nobody, or about somebody who was deleted. */
  client: string | null;
  /** Whom the act was about: a member, as where a role was changed, or the reader that a link was made for. */
  member: string | null;
};
export type AuditSearch = {
  actions: readonly string[] | null;
  clientId: string | null;
  memberId: string | null;
  /** Only lines older than this one. */
  before: { at: string; id: string } | null;
  limit: number;
};

/** Lines of the team's audit, newest first. */
export async function listAuditLines(tx: TeamPg, search: AuditSearch): Promise<AuditLineRow[]> {
  const { rows } = await tx.client.query<AuditLineRow>(
    `select a.id, a.at, a.action, coalesce(a.fields, '{}') as fields, a.object_id as "objectId", a.actor_role as role,
       a.actor_user_id as "userId", coalesce(m.name, case when own.user_id = a.actor_user_id then own.name end, g.name) as by,
       a.client_id as "clientId", own.name as client, coalesce(about.name, link.for_whom) as member
     from audit a
     left join member m on m.team_id = a.team_id and m.user_id = a.actor_user_id
     left join client own on own.team_id = a.team_id and own.id = a.client_id
     left join lateral (select g.name from guardian g where g.team_id = a.team_id and g.client_id = a.client_id
       and g.user_id = a.actor_user_id limit 1) g on true
     left join member about on about.team_id = a.team_id and about.id::text = a.object_id
     left join handover_link link on link.team_id = a.team_id and link.id::text = a.object_id
     where a.team_id = $1 and ($2::text[] is null or a.action = any($2)) and ($3::uuid is null or a.client_id = $3)
       and ($4::uuid is null or a.actor_user_id = (select user_id from member where team_id = $1 and id = $4))
       and ($5::timestamptz is null or (a.at, a.id) < ($5, $6::uuid))
     order by a.at desc, a.id desc limit $7`,
    [
      tx.teamId,
      search.actions,
      search.clientId,
      search.memberId,
      search.before?.at ?? null,
      search.before?.id ?? null,
      search.limit,
    ],
  );
  return rows;
}

/** Notes that a member read a client's record: one line an hour for each member and client. */
export async function insertRead(
  tx: TeamPg,
  read: { userId: string; role: Role; clientId: string; what: string; at: Date | null },
): Promise<void> {
  await tx.client.query(
    `insert into audit (team_id, actor_user_id, actor_role, action, client_id, fields, at)
     select $1, $2, $3, 'record-read', $4, array[$5], coalesce($6, now())
     where exists (select from client where team_id = $1 and id = $4)
     on conflict (team_id, client_id, actor_user_id, (date_trunc('hour', at at time zone 'UTC')))
       where action = 'record-read' do nothing`,
    [tx.teamId, read.userId, read.role, read.clientId, read.what, read.at],
  );
}
