import { defineRoute } from '#lib/edge/define-route.ts';
import { kickNotices } from '#lib/jobs/queue.ts';
import { checkInWordsSchema, clientCheckInAddress } from '#lib/schemas/check-in-words.ts';
import { sayOnCheckIn } from '#lib/usecases/say-on-check-in.ts';

export const POST = defineRoute(
  { permission: 'write-to-clients', params: clientCheckInAddress, body: checkInWordsSchema },
  async ({ actor, params, body, now }) => {
    const said = await sayOnCheckIn(actor, { ...params, words: body }, now);
    void kickNotices(actor.scope.teamId, said.wordId); // nobody waits for the queue, as with a check-in
    return Response.json(said, { status: 201 });
  },
);
