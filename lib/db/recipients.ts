import type { CheckKind, Standing } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type RecipientRow = {
  id: string;
  name: string;
  standing: Standing;
  coachId: string;
  /** Days since a coach last looked, on the client's calendar; since the start when nobody has. */
  unseenDays: number;
  skills: string[];
  kinds: CheckKind[];
  /** Where the client stands now. */
  stands: { ladderId: string; rungId: string }[];
};

/** Every client who has not left, with what a message can be aimed by. One query. */
export async function listRecipients(tx: TeamPg, now: Date): Promise<RecipientRow[]> {
  const { rows } = await tx.client.query<RecipientRow>(
    `select c.id, c.name, c.standing, c.coach_id as "coachId",
       wall_clock(c.zone, $2)::date - wall_clock(c.zone, coalesce(seen.at, c.joined_at, c.invited_at))::date as "unseenDays",
       coalesce(goals.names, plan.skills_in_focus, '{}') as skills,
       array(select distinct r.kind from reason r where r.team_id = c.team_id and r.client_id = c.id
         and r.closed_at is null and r.tier is not null and r.state <> 'client-page') as kinds,
       coalesce((select jsonb_agg(jsonb_build_object('ladderId', p.ladder_id, 'rungId', p.rung_id)) from (
         select distinct on (ladder_id, side) ladder_id, rung_id from placement
         where team_id = c.team_id and client_id = c.id and from_date <= wall_clock(c.zone, $2)::date
         order by ladder_id, side, from_date desc, created_at desc) p), '[]'::jsonb) as stands
     from client c
     left join lateral (
       select max(s.at) as at from seen_mark s where s.team_id = c.team_id and s.client_id = c.id
     ) seen on true
     left join lateral (
       select array_agg(distinct k.name) as names from goal g
       join skill k on k.team_id = g.team_id and k.id = g.skill_id
       where g.team_id = c.team_id and g.client_id = c.id and g.ended_on is null
     ) goals on true
     left join lateral (
       select p.skills_in_focus from plan p
       where p.team_id = c.team_id and p.client_id = c.id order by p.version desc limit 1
     ) plan on true
     where c.team_id = $1 and c.standing <> 'left' order by c.id`,
    [tx.teamId, now],
  );
  return rows;
}

export type LadderChoice = { id: string; name: string; rungs: { id: string; name: string }[] };

/** The team's ladders in use with their rungs, easiest first. */
export async function listLadderChoices(tx: TeamPg): Promise<LadderChoice[]> {
  const { rows } = await tx.client.query<LadderChoice>(
    `select l.id, l.name, jsonb_agg(jsonb_build_object('id', r.id, 'name', r.position || '. ' || r.name)
       order by r.position, r.id) as rungs
     from ladder l join rung r on r.team_id = l.team_id and r.ladder_id = l.id and r.retired_at is null
     where l.team_id = $1 and l.retired_at is null group by l.id, l.name order by lower(l.name), l.id`,
    [tx.teamId],
  );
  return rows;
}

export type WrittenTo = { id: string; name: string; standing: Standing };

/** The clients with these ids, held until the transaction ends, so that nobody leaves in between. */
export async function lockWrittenTo(tx: TeamPg, ids: readonly string[]): Promise<WrittenTo[]> {
  const { rows } = await tx.client.query<WrittenTo>(
    'select id, name, standing from client where team_id = $1 and id = any($2::uuid[]) order by id for share',
    [tx.teamId, ids],
  );
  return rows;
}

/** Holds an act until the transaction ends, and says to whom its words went; empty: nothing was sent yet. */
export async function lockAct(tx: TeamPg, actId: string): Promise<{ name: string }[]> {
  await tx.client.query('select pg_advisory_xact_lock(hashtext($1::text))', [actId]);
  const { rows } = await tx.client.query<{ name: string }>(
    `select c.name from coach_word w join client c on c.team_id = w.team_id and c.id = w.client_id
     where w.team_id = $1 and w.act_id = $2::uuid`,
    [tx.teamId, actId],
  );
  return rows;
}

/** Writes words to each client under one act, each its own; the id of each, with the client. */
export async function insertWords(
  tx: TeamPg,
  words: readonly { clientId: string; text: string }[],
  act: { actId: string; memberId: string; at: Date },
): Promise<{ id: string; clientId: string }[]> {
  const { rows } = await tx.client.query<{ id: string; clientId: string }>(
    `insert into coach_word (team_id, client_id, by_id, act_id, text, created_at)
     select $1, n."clientId", $3, $4, n.text, $5
     from jsonb_to_recordset($2::jsonb) as n("clientId" uuid, text text)
     returning id, client_id as "clientId"`,
    [tx.teamId, JSON.stringify(words), act.memberId, act.actId, act.at],
  );
  return rows;
}
