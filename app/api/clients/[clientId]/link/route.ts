import { defineRoute } from '#lib/edge/define-route.ts';
import { kickMails } from '#lib/jobs/queue.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { inviteClient } from '#lib/usecases/invite-client.ts';

export const POST = defineRoute(
  { permission: 'invite-clients', params: clientAddress },
  async ({ actor, params, now }) => {
    const invitation = await inviteClient(actor, params.clientId, now);
    void kickMails(); // nobody waits for the queue: the tick finds what is left
    return Response.json(invitation, { status: 201 });
  },
);
