import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { invitationSchema } from '#lib/schemas/team.ts';
import { inviteMember } from '#lib/usecases/team/invite-member.ts';

export const POST = defineRoute(
  { permission: 'manage-team', body: invitationSchema, limit: LIMITS['invite-member'] },
  async ({ actor, body, now }) => Response.json(await inviteMember(actor, body, now), { status: 201 }),
);
