import { defineRoute } from '#lib/edge/define-route.ts';
import { kickNotices } from '#lib/jobs/queue.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { filmAskSchema } from '#lib/schemas/clip.ts';
import { askFilm } from '#lib/usecases/film/ask-film.ts';

export const POST = defineRoute(
  { permission: 'prepare-acts', params: clientAddress, body: filmAskSchema },
  async ({ actor, params, body, now }) => {
    const done = await askFilm(actor, { clientId: params.clientId, film: body }, now);
    void kickNotices(actor.scope.teamId, done.actId); // nobody waits for the queue
    return Response.json(done, { status: done.waits ? 202 : 201 });
  },
);
