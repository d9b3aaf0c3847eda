import { defineRoute } from '#lib/edge/define-route.ts';
import { kickNotices } from '#lib/jobs/queue.ts';
import { wordsFirstSchema } from '#lib/schemas/reply.ts';
import { writeFirst } from '#lib/usecases/write-first.ts';

/** A thousand ids of clients beside the text. */
const MAX_BYTES = 128 * 1024;

export const POST = defineRoute(
  { permission: 'write-to-clients', body: wordsFirstSchema, maxBytes: MAX_BYTES },
  async ({ actor, body, now }) => {
    const done = await writeFirst(actor, body, now);
    void kickNotices(actor.scope.teamId, done.actId);
    return done;
  },
);
