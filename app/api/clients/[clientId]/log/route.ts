import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { kickOutbox } from '#lib/jobs/queue.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { logImport } from '#lib/schemas/log-import.ts';
import { checkLog, lookAtLog, takeLog, undoLog } from '#lib/usecases/import/log/import-log.ts';

/** A log of 5 MB, as JSON writes it: each of its signs may be escaped. */
const MAX_BYTES = 12 * 1024 * 1024;

export const POST = defineRoute(
  {
    permission: 'edit-clients',
    params: clientAddress,
    body: logImport,
    maxBytes: MAX_BYTES,
    limit: LIMITS.import,
  },
  async ({ actor, params, body, now }) => {
    const { clientId } = params;
    switch (body.do) {
      case 'look':
        return lookAtLog(actor, { ...body, clientId });
      case 'check':
        return checkLog(actor, { ...body, clientId }, now);
      case 'take':
        return kicked(takeLog(actor, { ...body, clientId }, now));
      case 'undo':
        return kicked(undoLog(actor, { ...body, clientId }, now));
    }
  },
);

/** Nobody waits for the queue: what is to be checked again is kept, and the tick finds what is left. */
async function kicked<Done>(act: Promise<Done>): Promise<Done> {
  const done = await act;
  void kickOutbox();
  return done;
}
