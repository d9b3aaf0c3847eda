import type { TeamPg } from './client.ts';

/** Clients of a coach who have not left. */
export async function listClientIdsOf(tx: TeamPg, memberId: string): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    `select id from client where team_id = $1 and coach_id = $2 and standing <> 'left' order by id`,
    [tx.teamId, memberId],
  );
  return rows.map((row) => row.id);
}

/** Whose the clients are now, locked until they are moved. */
export async function lockClientCoaches(
  tx: TeamPg,
  clientIds: readonly string[],
): Promise<{ id: string; name: string; coachId: string }[]> {
  const { rows } = await tx.client.query<{ id: string; name: string; coachId: string }>(
    `select id, name, coach_id as "coachId" from client where team_id = $1 and id = any($2::uuid[]) order by id for update`,
    [tx.teamId, clientIds],
  );
  return rows;
}

/** Moves each client to a coach and keeps the trace; ids of the moves. */
export async function insertMoves(
  tx: TeamPg,
  moves: { clientIds: readonly string[]; toId: string; byId: string; note: string; at: Date },
): Promise<string[]> {
  const { rows } = await tx.client.query<{ id: string }>(
    `with moved as (
       insert into client_move (team_id, client_id, from_id, to_id, by_id, note, at)
       select $1, c.id, c.coach_id, $3, $4, $5, $6 from client c where c.team_id = $1 and c.id = any($2::uuid[])
       returning id, client_id
     ), set_coach as (
       update client c set coach_id = $3 from moved where c.team_id = $1 and c.id = moved.client_id
     )
     select id from moved order by client_id`,
    [tx.teamId, moves.clientIds, moves.toId, moves.byId, moves.note, moves.at],
  );
  return rows.map((row) => row.id);
}

export type MoveRow = {
  id: string;
  clientId: string;
  fromId: string;
  toId: string;
  byId: string;
  /** The client is still where this move brought them. */
  stands: boolean;
  client: string;
};

export async function lockMoves(tx: TeamPg, moveIds: readonly string[]): Promise<MoveRow[]> {
  const { rows } = await tx.client.query<MoveRow>(
    `select v.id, v.client_id as "clientId", v.from_id as "fromId", v.to_id as "toId", v.by_id as "byId",
       c.coach_id = v.to_id as stands, c.name as client
     from client_move v join client c on c.team_id = v.team_id and c.id = v.client_id
     where v.team_id = $1 and v.id = any($2::uuid[]) order by v.client_id for update`,
    [tx.teamId, moveIds],
  );
  return rows;
}

/** Takes moves back: each client is with the coach of before, and the move did not happen. The audit keeps both. */
export async function takeBackMoves(tx: TeamPg, moveIds: readonly string[]): Promise<void> {
  await tx.client.query(
    `update client c set coach_id = v.from_id from client_move v
     where v.team_id = $1 and v.id = any($2::uuid[]) and c.team_id = v.team_id and c.id = v.client_id`,
    [tx.teamId, moveIds],
  );
  await tx.client.query('delete from client_move where team_id = $1 and id = any($2::uuid[])', [
    tx.teamId,
    moveIds,
  ]);
}

export type ClientMoveLine = {
  id: string;
  from: string;
  to: string;
  toId: string;
  by: string;
  note: string;
  at: Date;
  readAt: Date | null;
};

/** The moves of one client, newest first. */
export async function listMovesOf(tx: TeamPg, clientId: string): Promise<ClientMoveLine[]> {
  const { rows } = await tx.client.query<ClientMoveLine>(
    `select v.id, f.name as "from", t.name as "to", v.to_id as "toId", b.name as by, v.note, v.at, v.read_at as "readAt"
     from client_move v
     join member f on f.team_id = v.team_id and f.id = v.from_id
     join member t on t.team_id = v.team_id and t.id = v.to_id
     join member b on b.team_id = v.team_id and b.id = v.by_id
     where v.team_id = $1 and v.client_id = $2 order by v.at desc, v.id limit 50`,
    [tx.teamId, clientId],
  );
  return rows;
}

/** The new coach has read the note. False: it is not theirs to read, or was read before. */
export async function markMoveRead(
  tx: TeamPg,
  read: { moveId: string; memberId: string; at: Date },
): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'update client_move set read_at = $4 where team_id = $1 and id = $2 and to_id = $3 and read_at is null',
    [tx.teamId, read.moveId, read.memberId, read.at],
  );
  return rowCount === 1;
}

/** Every client who has not left, with whose they are. */
export async function listCoachedClients(
  tx: TeamPg,
): Promise<{ id: string; name: string; coachId: string }[]> {
  const { rows } = await tx.client.query<{ id: string; name: string; coachId: string }>(
    `select id, name, coach_id as "coachId" from client where team_id = $1 and standing <> 'left'`,
    [tx.teamId],
  );
  return rows;
}
