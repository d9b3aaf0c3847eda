import type { PlanLine } from '#lib/domain/plan-line.ts';
import type { Family, Measure, Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';
import { packPlans } from './history-plans.ts';
import { PLAN_ITEM_FROM, PLAN_ITEM_JSON, PLAN_SESSION_JSON } from './plan-json.ts';

export type LibraryRung = {
  id: string;
  name: string;
  position: number;
  ladderId: string;
  ladder: string;
  skill: string;
  part: string;
  family: Family;
  measure: Measure;
  eachSide: boolean;
  passSets: number;
  passTarget: number;
  usualWeeks: number;
  skillId: string;
  equipment: string[];
};

const RUNG_COLUMNS = `r.id, r.name, r.position, r.ladder_id as "ladderId", l.name as ladder, s.name as skill, p.name as part,
  l.family, d.measure, d.each_side as "eachSide", r.pass_sets as "passSets", r.pass_target as "passTarget",
  r.usual_weeks as "usualWeeks", s.id as "skillId", coalesce(d.equipment, '{}') as equipment
  from rung r join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
  join drill d on d.team_id = r.team_id and d.id = r.drill_id
  join part p on p.team_id = l.team_id and p.id = l.part_id
  join skill s on s.team_id = p.team_id and s.id = p.skill_id`;

/** Every rung of the team that can be planned, in the order of the library. */
export async function listPlannableRungs(tx: TeamPg): Promise<LibraryRung[]> {
  const { rows } = await tx.client.query<LibraryRung>(
    `select ${RUNG_COLUMNS} where r.team_id = $1 and r.retired_at is null and l.retired_at is null
     order by s.position, p.position, l.position, r.position`,
    [tx.teamId],
  );
  return rows;
}

export async function findRungs(tx: TeamPg, ids: string[]): Promise<Map<string, LibraryRung>> {
  const { rows } = await tx.client.query<LibraryRung>(
    `select ${RUNG_COLUMNS} where r.team_id = $1 and r.id = any($2::uuid[])`,
    [tx.teamId, ids],
  );
  return new Map(rows.map((row) => [row.id, row]));
}

/** The newest version number, with the client locked until the end of the transaction; 0: no plan yet. */
export async function lockPlanVersion(tx: TeamPg, clientId: string): Promise<number | undefined> {
  const { rowCount } = await tx.client.query(
    'select 1 from client where team_id = $1 and id = $2::uuid for update',
    [tx.teamId, clientId],
  );
  if (rowCount !== 1) return undefined;
  const { rows } = await tx.client.query<{ version: number }>(
    'select coalesce(max(version), 0)::int as version from plan where team_id = $1 and client_id = $2::uuid',
    [tx.teamId, clientId],
  );
  return rows[0]?.version ?? 0;
}

export type PlanSessionRow = {
  label: string;
  restSeconds: number | null;
  warmUp: string;
  warmUpMinutes: number;
  minutes: number | null;
};
export type PlanRow = {
  version: number;
  from: string;
  until: string | null;
  sessionsPerWeek: number;
  why: string;
  notes: string;
  easyWeeks: string[];
  testWeeks: string[];
  noKitWeeks: string[];
  acceptedWeekAu: number | null;
  skillsInFocus: string[];
  by: string | null;
  createdAt: Date;
  sessions: PlanSessionRow[];
  items: PlanLine[];
};

/** All versions of a client's plan, newest first. */
export async function listPlans(tx: TeamPg, clientId: string): Promise<PlanRow[]> {
  const { rows } = await tx.client.query<PlanRow>(
    `select q.version, q.from_date as "from", q.until_date as until, q.sessions_per_week as "sessionsPerWeek", q.why, q.notes,
       coalesce(q.easy_weeks, '{}')::text[] as "easyWeeks", coalesce(q.test_weeks, '{}')::text[] as "testWeeks",
       coalesce(q.no_kit_weeks, '{}')::text[] as "noKitWeeks", q.accepted_week_au as "acceptedWeekAu",
       coalesce(q.skills_in_focus, '{}') as "skillsInFocus", m.name as by, q.created_at as "createdAt",
       coalesce((select json_agg(${PLAN_SESSION_JSON}) from plan_session s
         where s.team_id = q.team_id and s.plan_id = q.id), '[]') as sessions,
       coalesce((select json_agg(${PLAN_ITEM_JSON}) from ${PLAN_ITEM_FROM}
         where s.team_id = q.team_id and s.plan_id = q.id), '[]') as items
     from plan q left join member m on m.team_id = q.team_id and m.id = q.by_id
     where q.team_id = $1 and q.client_id = $2::uuid order by q.version desc`,
    [tx.teamId, clientId],
  );
  return rows;
}

export type PlanToInsert = Omit<PlanRow, 'by' | 'createdAt'> & { clientId: string; byId: string; now: Date };

export async function insertPlan(tx: TeamPg, plan: PlanToInsert): Promise<void> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into plan (team_id, client_id, by_id, version, from_date, until_date, sessions_per_week, notes, why,
       easy_weeks, test_weeks, no_kit_weeks, accepted_week_au, skills_in_focus, created_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10::date[], $11::date[], $12::date[], $13, $14, $15) returning id`,
    [
      tx.teamId,
      plan.clientId,
      plan.byId,
      plan.version,
      plan.from,
      plan.until,
      plan.sessionsPerWeek,
      plan.notes,
      plan.why,
      plan.easyWeeks,
      plan.testWeeks,
      plan.noKitWeeks,
      plan.acceptedWeekAu,
      plan.skillsInFocus,
      plan.now,
    ],
  );
  const planId = rows[0]?.id;
  for (const [position, session] of plan.sessions.entries()) {
    const { label, restSeconds, warmUp, warmUpMinutes, minutes } = session;
    const made = await tx.client.query<{ id: string }>(
      `insert into plan_session (team_id, plan_id, label, position, rest_seconds, warm_up, warm_up_minutes, minutes)
       values ($1, $2, $3, $4, $5, $6, $7, $8) returning id`,
      [tx.teamId, planId, label, position, restSeconds, warmUp, warmUpMinutes, minutes],
    );
    await insertItems(
      tx,
      made.rows[0]?.id,
      plan.items.filter((item) => item.session === label),
    );
  }
  await packPlans(tx, [plan.clientId]);
}

// Rows travel as one JSON document: jsonb_to_recordset keeps the nulls that unnest of mixed types would not.
async function insertItems(tx: TeamPg, sessionId: string | undefined, items: PlanLine[]): Promise<void> {
  await tx.client.query(
    `insert into plan_item (team_id, session_id, position, rung_id, side, sets, target, minutes, times_per_week, support,
       stop_rule, not_two_days_running, no_kit_rung_id)
     select $1, $2, r.position, r."rungId", r.side, r.sets, r.target, r.minutes, r."timesPerWeek", r.support,
       r."stopRule", r."notTwoDaysRunning", r."noKitRungId"
     from jsonb_to_recordset($3) as r(position int, "rungId" uuid, side text, sets int, target float8, minutes float8,
       "timesPerWeek" float8, support text, "stopRule" text, "notTwoDaysRunning" boolean, "noKitRungId" uuid)`,
    [tx.teamId, sessionId, JSON.stringify(items.map((item, position) => ({ ...item, position })))],
  );
  await tx.client.query(
    `update plan_item i set paired_with_id = (select o.id from plan_item o
       where o.team_id = $1 and o.session_id = $2 and o.rung_id = r."pairedWith" and o.id <> i.id
         and (o.side = i.side or o.side = 'both' or i.side = 'both')
       order by o.side = i.side desc, o.position limit 1)
     from jsonb_to_recordset($3) as r("rungId" uuid, side text, "pairedWith" uuid)
     where i.team_id = $1 and i.session_id = $2 and i.rung_id = r."rungId" and i.side = r.side`,
    [tx.teamId, sessionId, JSON.stringify(items.filter((item) => item.pairedWith !== null))],
  );
}

export type StandingPlacement = { ladderId: string; side: Side; rungId: string };

/** Where the client stands on each ladder and side on a date. */
export async function listPlacementsOn(
  tx: TeamPg,
  clientId: string,
  date: string,
): Promise<StandingPlacement[]> {
  const { rows } = await tx.client.query<StandingPlacement>(
    `select distinct on (ladder_id, side) ladder_id as "ladderId", side, rung_id as "rungId" from placement
     where team_id = $1 and client_id = $2::uuid and from_date <= $3::date order by ladder_id, side, from_date desc`,
    [tx.teamId, clientId, date],
  );
  return rows;
}

/** One placement a ladder, side and day: a second one that day replaces the first. */
export async function upsertPlacement(
  tx: TeamPg,
  placement: StandingPlacement & { clientId: string; from: string; why: string },
): Promise<void> {
  await tx.client.query(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date, why)
     values ($1, $2, $3, $4, $5, $6, $7)
     on conflict (team_id, client_id, ladder_id, side, from_date) do update set rung_id = excluded.rung_id, why = excluded.why`,
    [
      tx.teamId,
      placement.clientId,
      placement.ladderId,
      placement.rungId,
      placement.side,
      placement.from,
      placement.why,
    ],
  );
}

/** Clients with a plan, by name, for copying from; not the one who is to get the copy. */
export async function listClientsWithPlans(
  tx: TeamPg,
  exceptId: string,
): Promise<{ id: string; name: string }[]> {
  const { rows } = await tx.client.query<{ id: string; name: string }>(
    `select c.id, c.name from client c where c.team_id = $1 and c.id <> $2::uuid
       and exists (select from plan p where p.team_id = c.team_id and p.client_id = c.id) order by lower(c.name), c.id`,
    [tx.teamId, exceptId],
  );
  return rows;
}
