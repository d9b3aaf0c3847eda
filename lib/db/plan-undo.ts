import type { TeamPg } from './client.ts';

export type GoalState = { id: string; wantedBy: string | null; endedOn: string | null };

/** Every goal of a client as it stands, so that it can stand so again. */
export async function listGoalStates(tx: TeamPg, clientId: string): Promise<GoalState[]> {
  const { rows } = await tx.client.query<GoalState>(
    `select id, wanted_by as "wantedBy", ended_on as "endedOn" from goal where team_id = $1 and client_id = $2 order by id`,
    [tx.teamId, clientId],
  );
  return rows;
}

/** Goals stand again as they did; those begun since are gone. */
export async function restoreGoals(tx: TeamPg, clientId: string, goals: readonly GoalState[]): Promise<void> {
  const ids = goals.map(({ id }) => id);
  await tx.client.query('delete from goal where team_id = $1 and client_id = $2 and id <> all($3::uuid[])', [
    tx.teamId,
    clientId,
    ids,
  ]);
  await tx.client.query(
    `update goal g set wanted_by = r."wantedBy", ended_on = r."endedOn"
     from jsonb_to_recordset($3) as r(id uuid, "wantedBy" date, "endedOn" date)
     where g.team_id = $1 and g.client_id = $2 and g.id = r.id`,
    [tx.teamId, clientId, JSON.stringify(goals)],
  );
}
