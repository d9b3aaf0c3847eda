import type { TeamPg } from './client.ts';

/** JSON as it is kept: parse it by `lib/schemas/intake.ts`. */
export type IntakeRow = {
  answers: unknown;
  draft: unknown;
  draftAt: Date | null;
  sentKey: string | null;
  changes: unknown;
  completedAt: Date | null;
  createdAt: Date;
};

export async function findIntake(tx: TeamPg, clientId: string): Promise<IntakeRow | undefined> {
  const { rows } = await tx.client.query<IntakeRow>(
    `select answers, draft, draft_at as "draftAt", sent_key as "sentKey", changes, completed_at as "completedAt",
       created_at as "createdAt"
     from intake where team_id = $1 and client_id = $2`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

export async function saveIntakeDraft(
  tx: TeamPg,
  { clientId, draft, at }: { clientId: string; draft: object; at: Date },
): Promise<void> {
  await tx.client.query(
    `insert into intake (team_id, client_id, answers, draft, draft_at, created_at) values ($1, $2, '{}', $3, $4, $4)
     on conflict (team_id, client_id) do update set draft = excluded.draft, draft_at = excluded.draft_at`,
    [tx.teamId, clientId, JSON.stringify(draft), at],
  );
}

/** The draft goes: what was sent is what stands, and what it said before stays in `changes`. */
export async function completeIntake(
  tx: TeamPg,
  sent: { clientId: string; answers: object; key: string; changes: object[]; at: Date },
): Promise<void> {
  await tx.client.query(
    `insert into intake (team_id, client_id, answers, sent_key, completed_at, created_at) values ($1, $2, $3, $4, $5, $5)
     on conflict (team_id, client_id) do update set answers = excluded.answers, sent_key = excluded.sent_key,
       completed_at = excluded.completed_at, changes = intake.changes || $6::jsonb, draft = null, draft_at = null`,
    [tx.teamId, sent.clientId, JSON.stringify(sent.answers), sent.key, sent.at, JSON.stringify(sent.changes)],
  );
}

/** The last check-in before `away` or more days without one that ended in the `within` days up to today, or have not. */
export async function findLastBeforeBreak(
  tx: TeamPg,
  clientId: string,
  { today, away, within }: { today: string; away: number; within: number },
): Promise<string | null> {
  const { rows } = await tx.client.query<{ last: string | null }>(
    `with told as (
       select date from check_in where team_id = $1 and client_id = $2 and replaced_at is null and deleted_at is null
         and date <= $3::date
       union select $3::date
     ), apart as (select date, lag(date) over (order by date) as before from told)
     select max(before)::text as last from apart where date - before > $4::int and date > $3::date - $5::int`,
    [tx.teamId, clientId, today, away, within],
  );
  return rows[0]?.last ?? null;
}

export async function changeIntakeAnswers(
  tx: TeamPg,
  { clientId, answers, change }: { clientId: string; answers: object; change: object },
): Promise<void> {
  await tx.client.query(
    `update intake set answers = $3, changes = changes || jsonb_build_array($4::jsonb)
     where team_id = $1 and client_id = $2`,
    [tx.teamId, clientId, JSON.stringify(answers), JSON.stringify(change)],
  );
}

type StartFacts = {
  under18: boolean | null;
  birthYear: number | null;
  bodyMassKg: number | null;
  toldWeekAu: number | null;
  usualSessionMinutes: number | null;
  goal: string | null;
};

/** What the rest of the product reads of the start: null leaves a column as it is; nobody becomes of age here. */
export async function saveStartFacts(
  tx: TeamPg,
  clientId: string,
  facts: Partial<StartFacts>,
): Promise<void> {
  await tx.client.query(
    `update client set under18 = under18 or coalesce($3, false), birth_year = coalesce($4, birth_year),
       body_mass_kg = coalesce($5, body_mass_kg), told_week_au = coalesce($6, told_week_au),
       usual_session_minutes = coalesce($7::int, usual_session_minutes),
       goal = case when goal = '' then coalesce($8, '') else goal end
     where team_id = $1 and id = $2`,
    [
      tx.teamId,
      clientId,
      facts.under18 ?? null,
      facts.birthYear ?? null,
      facts.bodyMassKg ?? null,
      facts.toldWeekAu ?? null,
      facts.usualSessionMinutes ?? null,
      facts.goal ?? null,
    ],
  );
}

/** Names of skills that a client can want, in the order of the library. */
export async function listSkillsToWant(tx: TeamPg): Promise<string[]> {
  const { rows } = await tx.client.query<{ name: string }>(
    `select s.name from skill s where s.team_id = $1 and s.retired_at is null
     order by s.position, s.id`,
    [tx.teamId],
  );
  return rows.map(({ name }) => name);
}
