import type { TeamPg } from './client.ts';

export type SkillRow = { id: string; name: string };
export type GoalRow = { skillId: string; skill: string; wantedBy: string | null };
export type GoalToSet = { skillId: string; wantedBy: string | null };

/** Every skill of the team that can be a goal, in the order of the library. */
export async function listSkills(tx: TeamPg): Promise<SkillRow[]> {
  const { rows } = await tx.client.query<SkillRow>(
    'select id, name from skill where team_id = $1 and retired_at is null order by position, id',
    [tx.teamId],
  );
  return rows;
}

/** The goals of a client that have not ended, in the order of the library. */
export async function listOpenGoals(tx: TeamPg, clientId: string): Promise<GoalRow[]> {
  const { rows } = await tx.client.query<GoalRow>(
    `select g.skill_id as "skillId", s.name as skill, g.wanted_by as "wantedBy" from goal g
     join skill s on s.team_id = g.team_id and s.id = g.skill_id
     where g.team_id = $1 and g.client_id = $2::uuid and g.ended_on is null order by s.position, s.id`,
    [tx.teamId, clientId],
  );
  return rows;
}

/** The goals from a date on: those left out end on it, those kept take the new date, the others begin. */
export async function setGoals(
  tx: TeamPg,
  { clientId, from, goals }: { clientId: string; from: string; goals: GoalToSet[] },
): Promise<void> {
  const wanted = JSON.stringify(goals);
  await tx.client.query(
    `update goal set ended_on = greatest(from_date, $3::date) where team_id = $1 and client_id = $2::uuid and ended_on is null
       and skill_id not in (select r."skillId" from jsonb_to_recordset($4) as r("skillId" uuid))`,
    [tx.teamId, clientId, from, wanted],
  );
  await tx.client.query(
    `update goal set wanted_by = r."wantedBy" from jsonb_to_recordset($3) as r("skillId" uuid, "wantedBy" date)
     where team_id = $1 and client_id = $2::uuid and ended_on is null and skill_id = r."skillId"`,
    [tx.teamId, clientId, wanted],
  );
  await tx.client.query(
    `insert into goal (team_id, client_id, skill_id, wanted_by, from_date)
     select $1, $2, r."skillId", r."wantedBy", $3::date from jsonb_to_recordset($4) as r("skillId" uuid, "wantedBy" date)
     where not exists (select from goal g where g.team_id = $1 and g.client_id = $2::uuid and g.ended_on is null
       and g.skill_id = r."skillId")`,
    [tx.teamId, clientId, from, wanted],
  );
}
