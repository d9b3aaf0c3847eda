import type { TeamPg } from './client.ts';

export type LibraryChange = { by: string; at: Date; fields: string[] };

/** The newest changes of one ladder, or of the outline, by whom; newest first. */
export async function listLibraryChanges(
  tx: TeamPg,
  objectId: string,
  limit: number,
): Promise<LibraryChange[]> {
  const { rows } = await tx.client.query<LibraryChange>(
    `select coalesce(m.name, 'somebody') as by, a.at, a.fields
     from audit a left join member m on m.team_id = a.team_id and m.user_id = a.actor_user_id
     where a.team_id = $1 and a.object_id = $2 and a.action = any($3)
     order by a.at desc, a.id limit $4`,
    [tx.teamId, objectId, ['ladder-made', 'ladder-changed', 'outline-changed'], limit],
  );
  return rows;
}
