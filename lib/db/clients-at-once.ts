import type { TeamPg } from './client.ts';

/** Every client of the team, whatever their standing. */
export async function listAllClients(tx: TeamPg): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    'select id from client where team_id = $1 order by id',
    [tx.teamId],
  );
  return rows.map(({ id }) => id);
}

/** Holds the rows of clients as a submit does, one after the other in one order. */
export async function lockClientRows(tx: TeamPg, clientIds: string[]): Promise<void> {
  await tx.client.query(
    `select from client where team_id = $1 and id = any($2::uuid[]) order by id for no key update`,
    [tx.teamId, clientIds],
  );
}
