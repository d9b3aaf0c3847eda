import type { FilmAsked } from '#lib/planning/steps/step-types.ts';
import type { PlacementRow, StepRecords } from './acts.ts';
import type { TeamPg } from './client.ts';
import { freeClipsOf } from './film-requests.ts';
import { idOf } from './id-of.ts';

type By = { memberId: string; at: Date };

/** Rungs in use of one ladder, the easiest first. */
export async function listLadderRungIds(tx: TeamPg, ladderId: string): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    `select id from rung where team_id = $1 and ladder_id = $2::uuid and retired_at is null order by position`,
    [tx.teamId, ladderId],
  );
  return rows.map((row) => row.id);
}

export async function insertFilmRequest(
  tx: TeamPg,
  film: Omit<FilmAsked, 'byDate'> & { byDate: string | null; clientId: string },
  by: By,
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into film_request (team_id, client_id, by_id, rung_id, side, angle, words, by_date, created_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9) returning id`,
    [
      tx.teamId,
      film.clientId,
      by.memberId,
      film.rungId,
      film.side,
      film.angle,
      film.words,
      film.byDate,
      by.at,
    ],
  );
  return idOf(rows);
}

/** Words to the client, which the phone shows as said by the coach. */
export async function insertCoachWord(
  tx: TeamPg,
  word: { clientId: string; text: string },
  by: By,
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into coach_word (team_id, client_id, by_id, text, created_at) values ($1, $2, $3, $4, $5) returning id`,
    [tx.teamId, word.clientId, by.memberId, word.text, by.at],
  );
  return idOf(rows);
}

/** Placements of a client from a day on, as they are before a step changes them. */
export async function listPlacementsFrom(
  tx: TeamPg,
  clientId: string,
  from: string,
): Promise<PlacementRow[]> {
  const { rows } = await tx.client.query<PlacementRow>(
    `select ladder_id as "ladderId", side, rung_id as "rungId", from_date as "from", why from placement
     where team_id = $1 and client_id = $2 and from_date >= $3 order by from_date, ladder_id, side`,
    [tx.teamId, clientId, from],
  );
  return rows;
}

/** Whether nothing was built on the versions: they are the newest, and no check-in was made by them. */
export async function areVersionsUnused(
  tx: TeamPg,
  clientId: string,
  versions: readonly number[],
): Promise<boolean> {
  const { rows } = await tx.client.query<{ newest: number | null; used: boolean }>(
    `select (select max(version) from plan where team_id = $1 and client_id = $2) as newest,
       exists (select from check_in where team_id = $1 and client_id = $2 and plan_version = any($3::int[])
         and deleted_at is null) as used`,
    [tx.teamId, clientId, versions],
  );
  return rows[0]?.newest === Math.max(...versions) && rows[0].used === false;
}

/** Takes back everything a proposed step wrote beside the reasons; placements stand again as they did. */
export async function takeBackStep(
  tx: TeamPg,
  { clientId, taken }: { clientId: string; taken: StepRecords },
): Promise<void> {
  const { planVersions, placementsBefore, filmId, limitId, wordId, goalIds } = taken;
  const run = (sql: string, ...values: unknown[]) => tx.client.query(sql, [tx.teamId, ...values]);
  if (planVersions.length > 0) {
    await run(
      `delete from placement where team_id = $1 and client_id = $2 and why = any($3)`,
      clientId,
      planVersions.map((version) => `plan version ${version}`),
    );
    await run(
      `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date, why)
       select $1, $2, r."ladderId", r."rungId", r.side, r."from", r.why
       from jsonb_to_recordset($3) as r("ladderId" uuid, "rungId" uuid, side text, "from" date, why text)
       on conflict do nothing`,
      clientId,
      JSON.stringify(placementsBefore),
    );
    await run(
      `update plan_item set paired_with_id = null where team_id = $1 and session_id in (select s.id from plan_session s
         join plan p on p.team_id = s.team_id and p.id = s.plan_id
         where p.team_id = $1 and p.client_id = $2 and p.version = any($3::int[]))`,
      clientId,
      planVersions,
    );
    await run(
      'delete from plan where team_id = $1 and client_id = $2 and version = any($3::int[])',
      clientId,
      planVersions,
    );
  }
  if (filmId) {
    await freeClipsOf(tx, filmId);
    await run('delete from film_request where team_id = $1 and id = $2 and done_at is null', filmId);
  }
  if (limitId) await run('delete from limit_rule where team_id = $1 and id = $2', limitId);
  if (wordId) await run('delete from coach_word where team_id = $1 and id = $2', wordId);
  if (goalIds.length > 0)
    await run('update goal set ended_on = null where team_id = $1 and id = any($2::uuid[])', goalIds);
}

/** Ids of the goals that have not ended. */
export async function listOpenGoalIds(tx: TeamPg, clientId: string): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    'select id from goal where team_id = $1 and client_id = $2 and ended_on is null',
    [tx.teamId, clientId],
  );
  return rows.map((row) => row.id);
}
