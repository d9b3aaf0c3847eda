import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import type { MemberRole } from '#lib/db/members.ts';
import { ownerQuery, type TestTeam } from '#tests/integration/support/database.ts';

export type MemberActor = Actor & { memberId: string };

/** The lead of a test team as somebody who acts. */
export function leadOf(team: TestTeam): MemberActor {
  return { ...actorIn(team, 'lead', 'Ines Halloran'), userId: team.userId, memberId: team.memberId };
}

/** One more member of the team. */
export async function addMemberTo(
  team: TestTeam,
  role: MemberRole,
  name: string,
  zone = 'Europe/Berlin',
): Promise<MemberActor> {
  const actor = actorIn(team, role, name);
  const email = `${actor.userId}@test.example`;
  await ownerQuery('insert into "user" (id, name, email) values ($1, $2, $3)', [actor.userId, name, email]);
  await ownerQuery(
    'insert into member (team_id, id, user_id, role, name, email, zone) values ($1, $2, $3, $4, $5, $6, $7)',
    [team.teamId, actor.memberId, actor.userId, role, name, email, zone],
  );
  return actor;
}

function actorIn(team: TestTeam, role: MemberRole, name: string): MemberActor {
  const ids = { userId: randomUUID(), memberId: randomUUID() };
  return { ...ids, scope: team.scope, role, clientId: null, name, teamName: 'Low Wall' };
}

export async function giveTo(clientId: string, member: MemberActor): Promise<void> {
  await ownerQuery('update client set coach_id = $2 where id = $1', [clientId, member.memberId]);
}

export async function coachOf(clientId: string): Promise<string | undefined> {
  const [row] = await ownerQuery<{ coachId: string }>(
    'select coach_id as "coachId" from client where id = $1',
    [clientId],
  );
  return row?.coachId;
}

export async function auditOf(team: TestTeam): Promise<string[]> {
  const rows = await ownerQuery<{ action: string }>(
    'select action from audit where team_id = $1 order by at, id',
    [team.teamId],
  );
  return rows.map((row) => row.action);
}
