import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { invitationAct, invitationAddress } from '#lib/schemas/team.ts';
import { renewMemberInvitation, withdrawInvitation } from '#lib/usecases/team/invite-member.ts';

export const POST = defineRoute(
  {
    permission: 'manage-team',
    params: invitationAddress,
    body: invitationAct,
    limit: LIMITS['invite-member'],
  },
  ({ actor, params, body, now }) =>
    body.do === 'renew'
      ? renewMemberInvitation(actor, params.invitationId, now)
      : withdrawInvitation(actor, { ...params, withdrawn: body.do === 'withdraw' }, now),
);
