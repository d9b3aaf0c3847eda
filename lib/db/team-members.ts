import type { TeamPg } from './client.ts';
import type { MemberRole } from './members.ts';

export type TeamMember = {
  id: string;
  userId: string;
  role: MemberRole;
  name: string;
  email: string;
  zone: string;
  /** The member's own date today. */
  today: string;
  createdAt: Date;
  leftAt: Date | null;
  /** Clients who have not left. */
  clients: number;
  /** Kinds of act an assistant does without approval. */
  leaves: string[];
};

const MEMBER = `select m.id, m.user_id as "userId", m.role, m.name, m.email, m.zone, wall_clock(m.zone, $2)::date as today,
    m.created_at as "createdAt", m.left_at as "leftAt",
    (select count(*)::int from client c where c.team_id = m.team_id and c.coach_id = m.id and c.standing <> 'left') as clients,
    array(select l.act from member_leave l where l.team_id = m.team_id and l.member_id = m.id order by l.act) as leaves
  from member m where m.team_id = $1`;

/** Everybody of the team who has not left, by name. */
export async function listTeamMembers(tx: TeamPg, now: Date): Promise<TeamMember[]> {
  const { rows } = await tx.client.query<TeamMember>(
    `${MEMBER} and m.left_at is null order by m.name, m.id`,
    [tx.teamId, now],
  );
  return rows;
}

/** One member, also one who left; undefined: not of this team. */
export async function findTeamMember(
  tx: TeamPg,
  memberId: string,
  now: Date,
): Promise<TeamMember | undefined> {
  const { rows } = await tx.client.query<TeamMember>(`${MEMBER} and m.id = $3::uuid`, [
    tx.teamId,
    now,
    memberId,
  ]);
  return rows[0];
}

/** Locks the members of the team, so that two leads cannot step down at once. */
export async function lockMembers(tx: TeamPg): Promise<{ id: string; role: MemberRole }[]> {
  const { rows } = await tx.client.query<{ id: string; role: MemberRole }>(
    'select id, role from member where team_id = $1 and left_at is null order by id for update',
    [tx.teamId],
  );
  return rows;
}

export async function setRole(tx: TeamPg, memberId: string, role: MemberRole): Promise<void> {
  await tx.client.query('update member set role = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    memberId,
    role,
  ]);
}

/** Marks a member as gone (or back, with null) and ends every session of theirs at once. */
export async function setMemberLeft(
  tx: TeamPg,
  member: { id: string; userId: string },
  leftAt: Date | null,
): Promise<void> {
  await tx.client.query('update member set left_at = $3 where team_id = $1 and id = $2', [
    tx.teamId,
    member.id,
    leftAt,
  ]);
  if (leftAt) await tx.client.query('delete from session where user_id = $1', [member.userId]);
}

/** Sets the kinds of act that an assistant does without approval. */
export async function setLeaves(tx: TeamPg, memberId: string, acts: readonly string[]): Promise<void> {
  await tx.client.query('delete from member_leave where team_id = $1 and member_id = $2', [
    tx.teamId,
    memberId,
  ]);
  await tx.client.query(
    'insert into member_leave (team_id, member_id, act) select $1, $2, act from unnest($3::text[]) as act',
    [tx.teamId, memberId, acts],
  );
}

export async function hasLeave(tx: TeamPg, memberId: string, act: string): Promise<boolean> {
  const { rowCount } = await tx.client.query(
    'select 1 from member_leave where team_id = $1 and member_id = $2 and act = $3',
    [tx.teamId, memberId, act],
  );
  return rowCount === 1;
}
