import type { KeptStill } from '#lib/balance/kept-still.ts';
import type { TeamPg } from './client.ts';

export type SizedStill = {
  clientId: string;
  storageKey: string;
  width: number;
  height: number;
  /** The moment of a film that it was taken from; null: it came with a question. */
  film: { clipId: string; filmedOn: string; atSeconds: number } | null;
};

/** `film` of a still s, with the tables. */
const OF_FILM = `case when k.id is not null then
    jsonb_build_object('clipId', k.id, 'filmedOn', k.filmed_on, 'atSeconds', coalesce(s.at_seconds, 0)) end as film
  from question_still s left join clip k on k.team_id = s.team_id and k.id = s.clip_id`;

/** A still of a question or of a film with its size in pixels. */
export async function findSizedStill(tx: TeamPg, stillId: string): Promise<SizedStill | undefined> {
  const { rows } = await tx.client.query<SizedStill>(
    `select s.client_id as "clientId", s.storage_key as "storageKey", s.width, s.height, ${OF_FILM}
     where s.team_id = $1 and s.id = $2::uuid`,
    [tx.teamId, stillId],
  );
  return rows[0];
}

type FrameValues = Pick<KeptStill, 'placed' | 'second' | 'plumb' | 'scale' | 'model'>;

export async function insertStillFrame(
  tx: TeamPg,
  of: Pick<SizedStill, 'clientId' | 'storageKey' | 'film'> & { at: Date },
  { placed, second, plumb, scale, model }: FrameValues,
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into still_frame (team_id, client_id, storage_key, joints, vertical, scale, mass_model, created_at, clip_id, at_seconds)
     values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10) returning id`,
    [
      tx.teamId,
      of.clientId,
      of.storageKey,
      JSON.stringify({ placed, second }),
      JSON.stringify(plumb),
      JSON.stringify(scale),
      model,
      of.at,
      of.film?.clipId ?? null,
      of.film?.atSeconds ?? null,
    ],
  );
  return rows[0]?.id ?? '';
}

/** Frames of a client that were kept, newest first, each with the still it was placed on. */
export async function listStillFrames(tx: TeamPg, clientId: string, limit: number): Promise<KeptStill[]> {
  const { rows } = await tx.client.query<KeptStill>(
    `select f.id, s.id as "stillId", f.joints -> 'placed' as placed, f.joints -> 'second' as second, f.vertical as plumb,
       f.scale, f.mass_model as model, f.created_at as "at"
     from still_frame f join question_still s on s.team_id = f.team_id and s.storage_key = f.storage_key
     where f.team_id = $1 and f.client_id = $2 order by f.created_at desc, f.id limit $3`,
    [tx.teamId, clientId, limit],
  );
  return rows;
}

export type ListedStill = Pick<SizedStill, 'film'> & { id: string; at: Date };

/** Stills of a client, the newest first, wherever they came from. */
export async function listStills(tx: TeamPg, clientId: string, limit: number): Promise<ListedStill[]> {
  const { rows } = await tx.client.query<ListedStill>(
    `select s.id, s.created_at as at, ${OF_FILM}
     where s.team_id = $1 and s.client_id = $2::uuid order by s.created_at desc, s.id limit $3`,
    [tx.teamId, clientId, limit],
  );
  return rows;
}

/** Every still of a client that was taken from a film, with the day of the film. */
export async function listFilmStills(
  tx: TeamPg,
  clientId: string,
): Promise<{ id: string; filmedOn: string }[]> {
  const { rows } = await tx.client.query<{ id: string; filmedOn: string }>(
    `select s.id, k.filmed_on::text as "filmedOn" from question_still s
     join clip k on k.team_id = s.team_id and k.id = s.clip_id
     where s.team_id = $1 and s.client_id = $2::uuid order by k.filmed_on, s.id`,
    [tx.teamId, clientId],
  );
  return rows;
}
