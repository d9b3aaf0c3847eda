import type { TeamPg } from './client.ts';

export type SavedView = { id: string; name: string; query: string };

/** The views that a member keeps, by name. */
export async function listViews(tx: TeamPg, memberId: string): Promise<SavedView[]> {
  const { rows } = await tx.client.query<SavedView>(
    `select id, name, query from saved_view where team_id = $1 and member_id = $2 order by lower(name), id`,
    [tx.teamId, memberId],
  );
  return rows;
}

/** Keeps a filter; the same name again takes the newer filter. */
export async function upsertView(
  tx: TeamPg,
  view: { memberId: string; name: string; query: string },
): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into saved_view (team_id, member_id, name, query) values ($1, $2, $3, $4)
     on conflict (team_id, member_id, name) do update set query = excluded.query returning id`,
    [tx.teamId, view.memberId, view.name, view.query],
  );
  return rows[0]?.id ?? '';
}

/** False: not there, or another member's. */
export async function renameView(
  tx: TeamPg,
  view: { memberId: string; id: string; name: string },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'update saved_view set name = $4 where team_id = $1 and member_id = $2 and id = $3',
    [tx.teamId, view.memberId, view.id, view.name],
  );
  return rowCount === 1;
}

export async function hasViewNamed(
  tx: TeamPg,
  view: { memberId: string; id: string; name: string },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'select from saved_view where team_id = $1 and member_id = $2 and name = $4 and id <> $3',
    [tx.teamId, view.memberId, view.id, view.name],
  );
  return rowCount !== 0;
}

export async function deleteView(tx: TeamPg, view: { memberId: string; id: string }): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'delete from saved_view where team_id = $1 and member_id = $2 and id = $3',
    [tx.teamId, view.memberId, view.id],
  );
  return rowCount === 1;
}
