import type { Actor } from '#lib/auth/actor.ts';
import { may } from '#lib/auth/permissions.ts';
import { listApprovals } from '#lib/db/approvals.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type CoverRow, listCovers } from '#lib/db/covers.ts';
import { type InvitationRow, listInvitations } from '#lib/db/invitations.ts';
import { listTeamMembers, type TeamMember } from '#lib/db/team-members.ts';

export type TeamLoaded = {
  members: TeamMember[];
  /** Only for those who may change the team. */
  invitations: InvitationRow[];
  /** Now and to come. */
  covers: CoverRow[];
  waiting: number;
  today: string;
};

/** Who is in the team, who covers for whom, who is asked in. */
export function loadTeam(actor: Actor, now: Date): Promise<TeamLoaded> {
  return withTeamPg(actor.scope, async (tx) => {
    const members = await listTeamMembers(tx, now);
    const today = members.find((member) => member.id === actor.memberId)?.today ?? '';
    return {
      members,
      invitations: may(actor.role, 'manage-team') ? await listInvitations(tx) : [],
      covers: await listCovers(tx, today),
      waiting: (await listApprovals(tx, { state: 'waiting' })).length,
      today,
    };
  });
}
