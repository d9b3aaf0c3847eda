import type { MorningReason } from '#lib/views/morning/morning-mail.ts';
import type { NightCounts } from '#lib/views/night-so-far.ts';
import { pool, type TeamPg, type TeamScope, teamScope } from './client.ts';
import { notHeldBack } from './good-news.ts';

/** The rows of the outbox that say what was decided for a member and a local date; they are handed to nobody. */
const KIND = 'morning';

export type MorningMember = {
  scope: TeamScope;
  memberId: string;
  zone: string;
  hour: number;
  /** The newest local date for which a mail was written or left out. */
  decidedOn: string | null;
};

/** Everybody who has not left and wants a morning mail, of every team. */
export async function listMorningMembers(): Promise<MorningMember[]> {
  const { rows } = await pool().query<Omit<MorningMember, 'scope'> & { teamId: string }>(
    `select team_id as "teamId", member_id as "memberId", zone, hour, decided_on as "decidedOn" from morning_members()`,
  );
  return rows.map(({ teamId, ...member }) => ({ ...member, scope: teamScope(teamId) }));
}

export type MorningChoice = {
  name: string;
  email: string;
  zone: string;
  mail: 'off' | 'when-new' | 'always';
  hour: number;
};

export async function findMorningChoice(tx: TeamPg, memberId: string): Promise<MorningChoice | undefined> {
  const { rows } = await tx.client.query<MorningChoice>(
    `select name, email, zone, morning_mail as mail, morning_mail_hour as hour from member
     where team_id = $1 and id = $2::uuid and left_at is null`,
    [tx.teamId, memberId],
  );
  return rows[0];
}

export async function writeMorningChoice(
  tx: TeamPg,
  memberId: string,
  choice: Pick<MorningChoice, 'mail' | 'hour' | 'zone'>,
): Promise<void> {
  await tx.client.query(
    `update member set morning_mail = $3, morning_mail_hour = $4, zone = $5 where team_id = $1 and id = $2::uuid`,
    [tx.teamId, memberId, choice.mail, choice.hour, choice.zone],
  );
}

/** Holds a member's morning until the transaction ends: since when it waits, and whether it was decided. */
export async function lockMorning(
  tx: TeamPg,
  morning: { memberId: string; date: string; at: Date },
): Promise<{ id: string; since: Date; decided: boolean }> {
  const key = keyOf(morning);
  await tx.client.query(
    `insert into outbox (team_id, kind, dedupe_key, body, created_at) values ($1, '${KIND}', $2, '{}', $3)
     on conflict (team_id, kind, dedupe_key) do nothing`,
    [tx.teamId, key, morning.at],
  );
  const { rows } = await tx.client.query<{ id: string; since: Date; decided: boolean }>(
    `select id, created_at as since, sent_at is not null as decided from outbox
     where team_id = $1 and kind = '${KIND}' and dedupe_key = $2 for update`,
    [tx.teamId, key],
  );
  const [row] = rows;
  if (!row) throw new Error('a morning that was written is not there');
  return row;
}

/** When the last morning of a member was decided; null: never. */
export async function findLastMorning(tx: TeamPg, memberId: string): Promise<Date | null> {
  const { rows } = await tx.client.query<{ at: Date | null }>(
    `select max(sent_at) as at from outbox where team_id = $1 and kind = '${KIND}' and starts_with(dedupe_key, $2)`,
    [tx.teamId, `${memberId}:`],
  );
  return rows[0]?.at ?? null;
}

/** Writes down what was decided, and forgets mornings that are long over. */
export async function closeMorning(
  tx: TeamPg,
  morning: { id: string; memberId: string; why: 'sent' | 'nothing-new' | 'covered'; at: Date },
): Promise<void> {
  await tx.client.query(
    `update outbox set sent_at = $3, body = jsonb_build_object('decided', $4::text) where team_id = $1 and id = $2::uuid`,
    [tx.teamId, morning.id, morning.at, morning.why],
  );
  await tx.client.query(
    `delete from outbox where team_id = $1 and kind = '${KIND}' and starts_with(dedupe_key, $2)
       and created_at < $3::timestamptz - interval '60 days'`,
    [tx.teamId, `${morning.memberId}:`, morning.at],
  );
}

/** Mails of earlier mornings that never left help nobody once there is a new one. */
export async function dropUnsentMornings(tx: TeamPg, memberId: string): Promise<void> {
  await tx.client.query(
    `delete from outbox where team_id = $1 and kind = 'mail' and sent_at is null and starts_with(dedupe_key, $2)`,
    [tx.teamId, mailKey({ memberId, date: '' })],
  );
}

export function mailKey(morning: { memberId: string; date: string }): string {
  return `morning:${keyOf(morning)}`;
}

function keyOf({ memberId, date }: { memberId: string; date: string }): string {
  return `${memberId}:${date}`;
}

export type MorningTeam = {
  members: { id: string; name: string; role: string; left: boolean }[];
  covers: { memberId: string; coveredById: string; to: string }[];
  clients: { id: string; name: string; coachId: string }[];
};

/** Members, covers that hold on a date, and clients who have not left. */
export async function readMorningTeam(tx: TeamPg, date: string): Promise<MorningTeam> {
  const members = await tx.client.query<MorningTeam['members'][number]>(
    'select id, name, role, left_at is not null as left from member where team_id = $1 order by id',
    [tx.teamId],
  );
  const covers = await tx.client.query<MorningTeam['covers'][number]>(
    `select member_id as "memberId", covered_by_id as "coveredById", to_date as "to" from cover
     where team_id = $1 and $2::date between from_date and to_date order by from_date, id`,
    [tx.teamId, date],
  );
  const clients = await tx.client.query<MorningTeam['clients'][number]>(
    `select id, name, coach_id as "coachId" from client where team_id = $1 and standing <> 'left' order by id`,
    [tx.teamId],
  );
  return { members: members.rows, covers: covers.rows, clients: clients.rows };
}

/** Open reasons of these clients that stand on the board as rows, with when something about each was last new. */
export async function listMorningReasons(tx: TeamPg, clientIds: readonly string[]): Promise<MorningReason[]> {
  const { rows } = await tx.client.query<
    Omit<MorningReason, 'raisedAt' | 'newAt'> & { raisedAt: Date; newAt: Date }
  >(
    `select r.client_id as "clientId", r.kind, r.level, r.points, r.tier, r.sentence, r.since, r.raised_at as "raisedAt",
       greatest(r.raised_at, coalesce((select max(e.at) from reason_event e where e.team_id = r.team_id
         and e.reason_id = r.id and e.what in ('raised', 'reopened', 'worse', 'back', 'counted')), r.raised_at)) as "newAt"
     from reason r
     where r.team_id = $1 and r.client_id = any($2::uuid[]) and r.closed_at is null and r.state = 'open'
       and r.tier is not null and r.known_on is null and ${notHeldBack('r')}
     order by r.client_id, r.points desc, r.raised_at, r.id`,
    [tx.teamId, clientIds],
  );
  return rows.map((row) => ({
    ...row,
    raisedAt: row.raisedAt.toISOString(),
    newAt: row.newAt.toISOString(),
  }));
}

type Night = { localDate: string; endedAt: string | null } & NightCounts;

/** The team's newest night on a zone's clock, and which of these clients it did not reach. */
export async function findMorningNight(
  tx: TeamPg,
  on: { zone: string; clientIds: readonly string[]; now: Date },
): Promise<(Night & { missed: string[] }) | null> {
  const { rows } = await tx.client.query<Night & { missed: string[] }>(
    `select n.local_date as "localDate", to_char(wall_clock($2, n.finished_at), 'HH24:MI') as "endedAt",
       n.clients_due as due, n.clients_done as done, n.clients_failed as failed,
       case when n.finished_at is null then nights_to_come($1, n.local_date, $4) else 0 end as later,
       array(select c.name from night_client x join client c on c.team_id = x.team_id and c.id = x.client_id
         where x.team_id = n.team_id and x.local_date = n.local_date and x.done_at is null
           and x.failed_at is not null and x.client_id = any($3::uuid[]) order by c.name, c.id) as missed
     from night_run n where n.team_id = $1 order by n.local_date desc limit 1`,
    [tx.teamId, on.zone, on.clientIds, on.now],
  );
  return rows[0] ?? null;
}
