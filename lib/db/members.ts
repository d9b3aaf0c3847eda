import type { Role } from '#lib/domain/vocabulary.ts';
import type { TeamPg, TeamTx } from './client.ts';

export type MemberRole = Extract<Role, 'lead' | 'coach' | 'assistant'>;
export type NewMember = {
  id: string;
  userId: string;
  role: MemberRole;
  name: string;
  email: string;
  zone: string;
  at: Date;
};

export async function insertTeam(tx: TeamPg, team: { name: string; at: Date }): Promise<void> {
  await tx.client.query('insert into team (id, name, created_at) values ($1, $2, $3)', [
    tx.teamId,
    team.name,
    team.at,
  ]);
}

export async function insertMember(tx: TeamPg, member: NewMember): Promise<void> {
  await tx.client.query(
    `insert into member (team_id, id, user_id, role, name, email, zone, created_at) values ($1, $2, $3, $4, $5, $6, $7, $8)`,
    [tx.teamId, member.id, member.userId, member.role, member.name, member.email, member.zone, member.at],
  );
}

export type LinkClient = {
  id: string;
  userId: string | null;
  name: string;
  email: string | null;
  coachName: string;
  standing: string;
};

/** What an entry link needs to know of a client; locked, so that two links cannot be made at once. */
export async function findLinkClient(tx: TeamPg, clientId: string): Promise<LinkClient | undefined> {
  const { rows } = await tx.client.query<LinkClient>(
    `select c.id, c.user_id as "userId", c.name, c.email, m.name as "coachName", c.standing
     from client c join member m on m.team_id = c.team_id and m.id = c.coach_id
     where c.team_id = $1 and c.id = $2 for update of c`,
    [tx.teamId, clientId],
  );
  return rows[0];
}

export async function setClientUser(tx: TeamPg, clientId: string, userId: string): Promise<void> {
  await tx.client.query('update client set user_id = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    clientId,
    userId,
  ]);
}

/** The first time a client comes in: from `invited` to `starting`. */
export async function markJoined(tx: TeamPg, clientId: string, at: Date): Promise<void> {
  await tx.client.query(
    `update client set joined_at = coalesce(joined_at, $3), standing = case standing when 'invited' then 'starting' else standing end
     where team_id = $1 and id = $2`,
    [tx.teamId, clientId, at],
  );
}

export async function listClientNames(tx: TeamTx): Promise<{ id: string; name: string; standing: string }[]> {
  return tx.db.client.findMany({
    where: { teamId: tx.teamId, standing: { not: 'left' } },
    orderBy: { name: 'asc' },
    select: { id: true, name: true, standing: true },
  });
}
