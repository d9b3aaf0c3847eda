import type { ClipState, Side } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type OwnClip = {
  id: string;
  requestId: string | null;
  rungId: string;
  rung: string;
  ladder: string;
  side: Side;
  filmedOn: string;
  state: ClipState;
  refusedWhy: string | null;
  seconds: number | null;
  bytes: number;
  length: number;
  offset: number;
  lookedAt: Date | null;
  lookedBy: string | null;
  verdict: string | null;
  keepUntil: string | null;
  pinned: boolean;
  createdAt: Date;
  words: { atSeconds: number | null; text: string; by: string }[];
};

/** The clips of a client, the newest first, with what was said of them. */
export async function listOwnClips(tx: TeamPg, clientId: string, limit: number): Promise<OwnClip[]> {
  const { rows } = await tx.client.query<OwnClip>(
    `select k.id, k.request_id as "requestId", k.rung_id as "rungId", r.name as rung, l.name as ladder, k.side,
       k.filmed_on::text as "filmedOn", k.state, k.refused_why as "refusedWhy", k.seconds, k.bytes,
       k.upload_length as length, k.upload_offset as "offset", k.looked_at as "lookedAt", m.name as "lookedBy", k.verdict,
       k.keep_until::text as "keepUntil", k.pinned_at is not null as pinned, k.created_at as "createdAt",
       coalesce((select jsonb_agg(jsonb_build_object('atSeconds', w.at_seconds, 'text', w.text, 'by', b.name)
           order by w.at_seconds, w.created_at) from coach_word w join member b on b.team_id = w.team_id and b.id = w.by_id
         where w.team_id = k.team_id and w.client_id = k.client_id and w.clip_id = k.id), '[]') as words
     from clip k join rung r on r.team_id = k.team_id and r.id = k.rung_id
     join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     left join member m on m.team_id = k.team_id and m.id = k.looked_by_id
     where k.team_id = $1 and k.client_id = $2::uuid order by k.created_at desc, k.id limit $3`,
    [tx.teamId, clientId, limit],
  );
  return rows;
}

export type WaitingFilm = {
  clipId: string;
  clientId: string;
  client: string;
  coachId: string | null;
  zone: string;
  rung: string;
  side: Side;
  seconds: number | null;
  filmedOn: string;
  receivedAt: Date;
  /** The words of what was asked; empty: nobody asked for it. */
  asked: string;
};

/** Films that nobody has looked at, the oldest first; of one coach's clients or of all. */
export async function listWaitingFilms(
  tx: TeamPg,
  { coachId, limit }: { coachId: string | null; limit: number },
): Promise<WaitingFilm[]> {
  const { rows } = await tx.client.query<WaitingFilm>(
    `select k.id as "clipId", k.client_id as "clientId", c.name as client, c.coach_id as "coachId", c.zone, r.name as rung, k.side,
       k.seconds, k.filmed_on::text as "filmedOn", k.received_at as "receivedAt", coalesce(f.words, '') as asked
     from clip k join client c on c.team_id = k.team_id and c.id = k.client_id
     join rung r on r.team_id = k.team_id and r.id = k.rung_id
     left join film_request f on f.team_id = k.team_id and f.id = k.request_id
     where k.team_id = $1 and k.state = 'ready' and k.looked_at is null and c.standing <> 'left'
       and ($2::uuid is null or c.coach_id = $2::uuid)
     order by k.received_at, k.id limit $3`,
    [tx.teamId, coachId, limit],
  );
  return rows;
}
