import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { kickMails } from '#lib/jobs/queue.ts';
import { clientImport } from '#lib/schemas/client-import.ts';
import { importClients, previewClientList } from '#lib/usecases/import/import-clients.ts';

/** A list of 1 MB, as JSON writes it: each of its signs may be escaped. */
const MAX_BYTES = 2.5 * 1024 * 1024;

export const POST = defineRoute(
  { permission: 'edit-clients', body: clientImport, maxBytes: MAX_BYTES, limit: LIMITS.import },
  async ({ actor, body, now }) => {
    if (body.do === 'check') return previewClientList(actor, body.text, now);
    const done = await importClients(actor, body, now);
    if (body.links === 'mail') void kickMails();
    return Response.json(done, { status: 201 });
  },
);
