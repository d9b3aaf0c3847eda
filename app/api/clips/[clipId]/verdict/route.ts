import { defineRoute } from '#lib/edge/define-route.ts';
import { kickOutbox } from '#lib/jobs/queue.ts';
import { clipAddress } from '#lib/schemas/clip.ts';
import { verdictBody } from '#lib/schemas/looking.ts';
import { lookAtFilm } from '#lib/usecases/looking/look-at-film.ts';
import { undoLook } from '#lib/usecases/looking/undo-look.ts';

/** What was seen of a set on a film, that it was looked at, and taking either back. */
export const POST = defineRoute(
  { permission: 'prepare-acts', params: clipAddress, body: verdictBody },
  async ({ actor, params, body, now }) => {
    const { clipId } = params;
    const done =
      body.act === 'undo'
        ? await undoLook(actor, { clipId, id: body.id }, now)
        : await lookAtFilm(actor, { ...body, clipId }, now);
    void kickOutbox(); // nobody waits for the queue: the tick finds what is left
    return Response.json(done, { status: 'waits' in done ? 202 : 201 });
  },
);
