import type { Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

/** A film that was asked for, as it stands now. */
export type FilmRequestRow = {
  id: string;
  by: string;
  rungId: string;
  rung: string;
  ladder: string;
  /** Where the camera stands, in the words of the drill. */
  camera: string;
  side: Side;
  angle: string;
  words: string;
  byDate: string | null;
  askedAt: Date;
  /** The newest clip for it. */
  clipId: string | null;
  state: string | null;
  refusedWhy: string | null;
};

const REQUEST = `select f.id, m.name as by, f.rung_id as "rungId", r.name as rung, l.name as ladder, d.camera, f.side, f.angle,
    f.words, f.by_date::text as "byDate", f.created_at as "askedAt", k.id as "clipId", k.state, k.refused_why as "refusedWhy"
  from film_request f join member m on m.team_id = f.team_id and m.id = f.by_id
  join rung r on r.team_id = f.team_id and r.id = f.rung_id
  join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
  join drill d on d.team_id = r.team_id and d.id = r.drill_id
  left join lateral (select id, state, refused_why from clip k where k.team_id = f.team_id and k.client_id = f.client_id
      and k.request_id = f.id
    order by k.created_at desc, k.id limit 1) k on true
  where f.team_id = $1 and f.client_id = $2::uuid and f.taken_back_at is null and f.done_at is null`;

/** What is asked of a client and not looked at yet, the oldest first. */
export async function listFilmRequests(tx: TeamPg, clientId: string): Promise<FilmRequestRow[]> {
  const { rows } = await tx.client.query<FilmRequestRow>(`${REQUEST} order by f.created_at, f.id`, [
    tx.teamId,
    clientId,
  ]);
  return rows;
}

/** Clips that came for what is taken back stay, as ones that nobody asked for. */
export async function freeClipsOf(tx: TeamPg, requestId: string): Promise<void> {
  await tx.client.query(
    `update clip k set request_id = null from film_request f where f.team_id = $1 and f.id = $2::uuid and f.done_at is null
       and k.team_id = f.team_id and k.client_id = f.client_id and k.request_id = f.id`,
    [tx.teamId, requestId],
  );
}

/** Takes back what was asked for. Undefined: it is not there, was looked at, or was taken back already. */
export async function takeBackRequest(
  tx: TeamPg,
  requestId: string,
  at: Date,
): Promise<{ clientId: string } | undefined> {
  await freeClipsOf(tx, requestId);
  const { rows } = await tx.client.query<{ clientId: string }>(
    `update film_request set taken_back_at = $3 where team_id = $1 and id = $2::uuid and taken_back_at is null and done_at is null
     returning client_id as "clientId"`,
    [tx.teamId, requestId, at],
  );
  return rows[0];
}

/** An open request of a client, which a clip answers. */
export async function findOpenRequest(
  tx: TeamPg,
  asked: { requestId: string; clientId: string },
): Promise<{ rungId: string; side: Side; angle: string } | undefined> {
  const { rows } = await tx.client.query<{ rungId: string; side: Side; angle: string }>(
    `select rung_id as "rungId", side, angle from film_request
     where team_id = $1 and id = $2::uuid and client_id = $3::uuid and taken_back_at is null`,
    [tx.teamId, asked.requestId, asked.clientId],
  );
  return rows[0];
}

/** Whether a rung in use can be filmed on this side. */
export async function hasRungSide(tx: TeamPg, rungId: string): Promise<{ eachSide: boolean } | undefined> {
  const { rows } = await tx.client.query<{ eachSide: boolean }>(
    `select d.each_side as "eachSide" from rung r join drill d on d.team_id = r.team_id and d.id = r.drill_id
     where r.team_id = $1 and r.id = $2::uuid and r.retired_at is null`,
    [tx.teamId, rungId],
  );
  return rows[0];
}

/** The same rung, side and angle is asked for already and has not come. */
export async function isAskedAlready(
  tx: TeamPg,
  film: { clientId: string; rungId: string; side: Side; angle: string },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `select from film_request f where team_id = $1 and client_id = $2::uuid and rung_id = $3::uuid and side = $4 and angle = $5
       and taken_back_at is null and done_at is null`,
    [tx.teamId, film.clientId, film.rungId, film.side, film.angle],
  );
  return (rowCount ?? 0) > 0;
}

export type FilmRung = { rungId: string; name: string; ladder: string; eachSide: boolean; camera: string };

/** Rungs in use of the ladders that a client stands on or has in a plan, in the order of the library. */
export async function listFilmRungs(tx: TeamPg, clientId: string): Promise<FilmRung[]> {
  const { rows } = await tx.client.query<FilmRung>(
    `select r.id as "rungId", r.name, l.name as ladder, d.each_side as "eachSide", d.camera
     from rung r join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     join drill d on d.team_id = r.team_id and d.id = r.drill_id
     where r.team_id = $1 and r.retired_at is null and l.retired_at is null and l.id in (
       select ladder_id from placement where team_id = $1 and client_id = $2::uuid
       union select n.ladder_id from plan p join plan_session s on s.team_id = p.team_id and s.plan_id = p.id
         join plan_item i on i.team_id = s.team_id and i.session_id = s.id
         join rung n on n.team_id = i.team_id and n.id = i.rung_id where p.team_id = $1 and p.client_id = $2::uuid)
     order by l.position, l.name, r.position, r.name`,
    [tx.teamId, clientId],
  );
  return rows;
}
