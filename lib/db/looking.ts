import type { Fault, Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

/** A film as it is looked at, with the rung it shows. */
export type ClipToLook = {
  id: string;
  clientId: string;
  client: string;
  zone: string;
  requestId: string | null;
  asked: string | null;
  checkInId: string | null;
  setId: string | null;
  rungId: string;
  rung: string;
  ladder: string;
  /** What clean means on this ladder, and the faults it names. */
  clean: string;
  faults: Fault[];
  note: string;
  eachSide: boolean;
  measure: string;
  needsFilm: boolean;
  side: Side;
  angle: string | null;
  filmedOn: string;
  kind: string;
  state: string;
  width: number | null;
  height: number | null;
  fps: number | null;
  seconds: number | null;
  lookedAt: Date | null;
  lookedBy: string | null;
};

const CLIP = `select k.id, k.client_id as "clientId", c.name as client, c.zone, k.request_id as "requestId", f.words as asked,
    k.check_in_id as "checkInId", k.set_id as "setId", k.rung_id as "rungId", r.name as rung, l.name as ladder, l.clean,
    coalesce(l.faults, '{}') as faults, r.note, d.each_side as "eachSide", d.measure, r.needs_film as "needsFilm", k.side,
    k.angle, k.filmed_on::text as "filmedOn", k.kind, k.state, k.width, k.height, k.fps, k.seconds,
    k.looked_at as "lookedAt", m.name as "lookedBy"
  from clip k join client c on c.team_id = k.team_id and c.id = k.client_id
  join rung r on r.team_id = k.team_id and r.id = k.rung_id
  join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
  join drill d on d.team_id = r.team_id and d.id = r.drill_id
  left join film_request f on f.team_id = k.team_id and f.id = k.request_id
  left join member m on m.team_id = k.team_id and m.id = k.looked_by_id
  where k.team_id = $1`;

/** A film of the team; with `clientId`, only one of that client. */
export async function findClipToLook(
  tx: TeamPg,
  clipId: string,
  clientId: string | null = null,
): Promise<ClipToLook | undefined> {
  const { rows } = await tx.client.query<ClipToLook>(
    `${CLIP} and k.id = $2::uuid and ($3::uuid is null or k.client_id = $3::uuid)`,
    [tx.teamId, clipId, clientId],
  );
  return rows[0];
}

/** The films of a client that can be looked at, the newest day first. */
export async function listClipsToLook(tx: TeamPg, clientId: string, limit: number): Promise<ClipToLook[]> {
  const { rows } = await tx.client.query<ClipToLook>(
    `${CLIP} and k.client_id = $2::uuid and k.state = 'ready' order by k.filmed_on desc, k.created_at desc, k.id limit $3`,
    [tx.teamId, clientId, limit],
  );
  return rows;
}

/** Says that a coach looked: the film waits no more, and what was asked for is done. Returns whether it is news. */
export async function markLooked(
  tx: TeamPg,
  clipId: string,
  by: { memberId: string; at: Date },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `update clip set looked_at = $3, looked_by_id = $4 where team_id = $1 and id = $2::uuid and looked_at is null`,
    [tx.teamId, clipId, by.at, by.memberId],
  );
  await tx.client.query(
    `update film_request f set done_at = $3 from clip k
     where f.team_id = $1 and k.team_id = $1 and k.id = $2::uuid and f.id = k.request_id and f.done_at is null`,
    [tx.teamId, clipId, by.at],
  );
  return rowCount === 1;
}

/** Takes that back where nothing was said of the film: it waits again, is kept, and what was asked for is open. */
export async function unmarkLooked(tx: TeamPg, clipId: string): Promise<boolean> {
  const { rows } = await tx.client.query<{ requestId: string | null }>(
    `update clip k set looked_at = null, looked_by_id = null, keep_until = null
     where k.team_id = $1 and k.id = $2::uuid and k.state = 'ready' and k.looked_at is not null
       and not exists (select from set_verdict v where v.team_id = $1 and v.clip_id = k.id and v.undone_at is null)
       and not exists (select from coach_word w where w.team_id = $1 and w.client_id = k.client_id and w.clip_id = k.id)
     returning k.request_id as "requestId"`,
    [tx.teamId, clipId],
  );
  const [row] = rows;
  if (!row) return false;
  await tx.client.query(
    `update film_request f set done_at = null where f.team_id = $1 and f.id = $2::uuid and not exists (select from clip k
       where k.team_id = $1 and k.client_id = f.client_id and k.request_id = f.id and k.looked_at is not null)`,
    [tx.teamId, row.requestId],
  );
  return true;
}

/** A film and whose it is: words and stills are found by their client. */
type ClipOf = { clipId: string; clientId: string };

export type FilmWord = {
  id: string;
  atSeconds: number;
  text: string;
  by: string;
  at: Date;
  readAt: Date | null;
};

/** What coaches said of a film, in the order of its moments. */
export async function listFilmWords(tx: TeamPg, of: ClipOf): Promise<FilmWord[]> {
  const { rows } = await tx.client.query<FilmWord>(
    `select w.id, coalesce(w.at_seconds, 0) as "atSeconds", w.text, m.name as by, w.created_at as at, w.read_at as "readAt"
     from coach_word w join member m on m.team_id = w.team_id and m.id = w.by_id
     where w.team_id = $1 and w.client_id = $3::uuid and w.clip_id = $2::uuid order by 2, w.created_at, w.id`,
    [tx.teamId, of.clipId, of.clientId],
  );
  return rows;
}

export async function insertFilmWord(
  tx: TeamPg,
  word: { clientId: string; clipId: string; atSeconds: number; text: string },
  by: { memberId: string; at: Date },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into coach_word (team_id, client_id, by_id, clip_id, at_seconds, text, created_at)
     values ($1, $2, $3, $4, $5, $6, $7) returning id`,
    [tx.teamId, word.clientId, by.memberId, word.clipId, word.atSeconds, word.text, by.at],
  );
  return rows[0]?.id ?? '';
}

/** Takes words on a film back while no phone has shown them; false: they were read, or are not there. */
export async function deleteUnreadFilmWord(tx: TeamPg, clipId: string, wordId: string): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'delete from coach_word where team_id = $1 and clip_id = $2::uuid and id = $3::uuid and read_at is null',
    [tx.teamId, clipId, wordId],
  );
  return rowCount === 1;
}

/** Whether a verdict, words or the look at a film are this member's own. */
export async function isOwnLook(
  tx: TeamPg,
  { clipId, id, memberId }: { clipId: string; id: string; memberId: string },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    `select from set_verdict where team_id = $1 and clip_id = $2::uuid and id = $3::uuid and by_id = $4::uuid
     union all select from coach_word where team_id = $1 and clip_id = $2::uuid and id = $3::uuid and by_id = $4::uuid
     union all select from clip where team_id = $1 and id = $2::uuid and id = $3::uuid and looked_by_id = $4::uuid`,
    [tx.teamId, clipId, id, memberId],
  );
  return rowCount !== 0;
}

/** Where a set stands that a verdict is about: what counts of a client, done, on the rung of a film. */
export async function findSetDate(
  tx: TeamPg,
  set: { clientId: string; checkInId: string; rungId: string; side: Side; index: number },
): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ date: string }>(
    `select k.date::text as date from check_in_set s join check_in k on k.team_id = s.team_id and k.id = s.check_in_id
     where s.team_id = $1 and s.check_in_id = $2::uuid and s.rung_id = $3::uuid and s.side = $4 and s.idx = $5
       and k.client_id = $6::uuid and k.replaced_at is null and k.deleted_at is null and s.value is not null and s.how <> 'not-done'`,
    [tx.teamId, set.checkInId, set.rungId, set.side, set.index, set.clientId],
  );
  return rows[0]?.date;
}

/** Which of its drill and side a set is, counted from 1. */
export async function findSetNumber(
  tx: TeamPg,
  set: { checkInId: string; rungId: string; side: Side; index: number },
): Promise<number> {
  const { rows } = await tx.client.query<{ number: number }>(
    `select count(*)::int as number from check_in_set
     where team_id = $1 and check_in_id = $2::uuid and rung_id = $3::uuid and side = $4 and idx <= $5`,
    [tx.teamId, set.checkInId, set.rungId, set.side, set.index],
  );
  return rows[0]?.number ?? 0;
}

/** The local date of a check-in that counts; undefined: it does not, or is another client's. */
export async function findCountedDate(
  tx: TeamPg,
  clientId: string,
  checkInId: string,
): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ date: string }>(
    `select date::text as date from check_in
     where team_id = $1 and client_id = $2::uuid and id = $3::uuid and replaced_at is null and deleted_at is null`,
    [tx.teamId, clientId, checkInId],
  );
  return rows[0]?.date;
}

/** The side and number of the set that a film was sent with, and the check-in that counts now in place of its own. */
export async function findSetOfClip(
  tx: TeamPg,
  clipId: string,
): Promise<{ checkInId: string; side: Side; index: number; number: number } | undefined> {
  const { rows } = await tx.client.query<{ checkInId: string; side: Side; index: number; number: number }>(
    `with recursive stands as (
       select s.check_in_id as id, s.side, s.idx, 0 as step, (select count(*)::int from check_in_set o where o.team_id = s.team_id
         and o.check_in_id = s.check_in_id and o.rung_id = s.rung_id and o.side = s.side and o.idx <= s.idx) as number
       from clip k
       join check_in_set s on s.team_id = k.team_id and s.id = k.set_id where k.team_id = $1 and k.id = $2::uuid
       union all
       select n.id, o.side, o.idx, o.step + 1, o.number from stands o
       join check_in n on n.team_id = $1 and n.corrects_id = o.id
     ) select id as "checkInId", side, idx as index, number from stands order by step desc limit 1`,
    [tx.teamId, clipId],
  );
  return rows[0];
}

export type ClipStill = { id: string; atSeconds: number; at: Date };

/** Stills that were taken from a film, in the order of its moments. */
export async function listClipStills(tx: TeamPg, of: ClipOf): Promise<ClipStill[]> {
  const { rows } = await tx.client.query<ClipStill>(
    `select id, coalesce(at_seconds, 0) as "atSeconds", created_at as at from question_still
     where team_id = $1 and client_id = $3::uuid and clip_id = $2::uuid order by 2, created_at, id`,
    [tx.teamId, of.clipId, of.clientId],
  );
  return rows;
}
