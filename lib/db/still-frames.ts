import type { KeptStill } from '#lib/balance/kept-still.ts';
import type { TeamPg } from './client.ts';

/** A still of a question with its size in pixels. */
export async function findSizedStill(
  tx: TeamPg,
  stillId: string,
): Promise<{ clientId: string; storageKey: string; width: number; height: number } | undefined> {
  const { rows } = await tx.client.query<{
    clientId: string;
    storageKey: string;
    width: number;
    height: number;
  }>(
    `select client_id as "clientId", storage_key as "storageKey", width, height from question_still
     where team_id = $1 and id = $2::uuid`,
    [tx.teamId, stillId],
  );
  return rows[0];
}

type FrameValues = Pick<KeptStill, 'placed' | 'second' | 'plumb' | 'scale' | 'model'>;

export async function insertStillFrame(
  tx: TeamPg,
  of: { clientId: string; storageKey: string; at: Date },
  { placed, second, plumb, scale, model }: FrameValues,
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into still_frame (team_id, client_id, storage_key, joints, vertical, scale, mass_model, created_at)
     values ($1, $2, $3, $4, $5, $6, $7, $8) returning id`,
    [
      tx.teamId,
      of.clientId,
      of.storageKey,
      JSON.stringify({ placed, second }),
      JSON.stringify(plumb),
      JSON.stringify(scale),
      model,
      of.at,
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
