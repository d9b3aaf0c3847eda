import type { TeamPg } from './client.ts';
import { idOf } from './id-of.ts';

export type AssessmentRow = {
  id: string;
  skillId: string;
  skill: string;
  onDate: string;
  by: string;
  createdAt: Date;
  /** As it was kept: read it with the schema of assessments. */
  answers: unknown;
};

const COLUMNS = `a.id, a.skill_id as "skillId", s.name as skill, a.on_date as "onDate", m.name as by,
  a.created_at as "createdAt", a.answers
  from assessment a join skill s on s.team_id = a.team_id and s.id = a.skill_id
  join member m on m.team_id = a.team_id and m.id = a.by_id`;
const MOST = 50;

export async function insertAssessment(
  tx: TeamPg,
  made: { clientId: string; byId: string; skillId: string; onDate: string; answers: object; now: Date },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into assessment (team_id, client_id, by_id, skill_id, on_date, answers, created_at)
     values ($1, $2, $3, $4, $5, $6, $7) returning id`,
    [tx.teamId, made.clientId, made.byId, made.skillId, made.onDate, JSON.stringify(made.answers), made.now],
  );
  return idOf(rows);
}

/** The client's assessments, newest first. */
export async function listAssessments(tx: TeamPg, clientId: string): Promise<AssessmentRow[]> {
  const { rows } = await tx.client.query<AssessmentRow>(
    `select ${COLUMNS} where a.team_id = $1 and a.client_id = $2::uuid order by a.created_at desc, a.id limit ${MOST}`,
    [tx.teamId, clientId],
  );
  return rows;
}

export async function findAssessment(
  tx: TeamPg,
  clientId: string,
  assessmentId: string,
): Promise<AssessmentRow | undefined> {
  const { rows } = await tx.client.query<AssessmentRow>(
    `select ${COLUMNS} where a.team_id = $1 and a.client_id = $2::uuid and a.id = $3::uuid`,
    [tx.teamId, clientId, assessmentId],
  );
  return rows[0];
}
