import { z } from 'zod';
import { defineRoute } from '#lib/edge/define-route.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { loadStepDraft, openStepDraft } from '#lib/usecases/load-step-draft.ts';

const reason = z.object({
  reasonId: z.uuid({ error: 'must be the id of a reason of this client' }).optional(),
});

/** What taking the proposed step would do; `draft` is null where there is nothing to draft. */
export const GET = defineRoute(
  { permission: 'prepare-acts', params: clientAddress, query: reason },
  async ({ actor, params, query, now }) => ({
    draft: await loadStepDraft(actor, { ...params, ...query }, now),
  }),
);

/** Keeps it for the plan editor; answers with the address to open. */
export const POST = defineRoute(
  { permission: 'edit-plans', params: clientAddress, body: reason },
  ({ actor, params, body, now }) => openStepDraft(actor, { ...params, ...body }, now),
);
