import { defineRoute } from '#lib/edge/define-route.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { linkAddress } from '#lib/schemas/handover-link.ts';
import { endLink } from '#lib/usecases/handover/end-link.ts';

export const POST = defineRoute(
  { permission: 'export-clients', params: linkAddress },
  async ({ actor, params, now }) => {
    await endLink(actor, params, now);
    return seeOther(`/clients/${params.clientId}/links`);
  },
);
