import type { TeamPg } from './client.ts';
import { idOf } from './id-of.ts';

export type PackToInsert = {
  clientId: string;
  byId: string;
  why: string;
  options: unknown;
  sha256: string | null;
};

/** A pack that was made: who, why, of what, and the sum of its bytes; never the pack itself. */
export async function insertHandoverPack(tx: TeamPg, pack: PackToInsert): Promise<string> {
  const { rows } = await tx.client.query<{ id: string }>(
    `insert into handover_pack (team_id, client_id, by_id, why, options, sha256) values ($1, $2, $3, $4, $5, $6) returning id`,
    [tx.teamId, pack.clientId, pack.byId, pack.why, JSON.stringify(pack.options), pack.sha256],
  );
  return idOf(rows);
}

export type PackPeople = {
  team: string;
  coach: string;
  goal: string;
  birthYear: number | null;
  usualSessionMinutes: number | null;
};

/** The names that stand on a pack of a client, and what of the client the history does not carry. */
export async function findPackPeople(tx: TeamPg, clientId: string): Promise<PackPeople | undefined> {
  const { rows } = await tx.client.query<PackPeople>(
    `select t.name as team, m.name as coach, c.goal, c.birth_year as "birthYear",
       c.usual_session_minutes as "usualSessionMinutes"
     from client c join team t on t.id = c.team_id join member m on m.team_id = c.team_id and m.id = c.coach_id
     where c.team_id = $1 and c.id = $2::uuid`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

/** The name of a member, for "made by". */
export async function findMemberName(tx: TeamPg, memberId: string): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ name: string }>(
    'select name from member where team_id = $1 and id = $2',
    [tx.teamId, memberId],
  );
  return rows[0]?.name;
}
