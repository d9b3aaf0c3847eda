import { defineRoute } from '#lib/edge/define-route.ts';
import { kickNotices } from '#lib/jobs/queue.ts';
import { clipAddress } from '#lib/schemas/clip.ts';
import { filmWordsBody } from '#lib/schemas/looking.ts';
import { lookAtFilm } from '#lib/usecases/looking/look-at-film.ts';
import { undoLook } from '#lib/usecases/looking/undo-look.ts';

/** Words of a coach at a moment of a film, and taking them back. */
export const POST = defineRoute(
  { permission: 'prepare-acts', params: clipAddress, body: filmWordsBody },
  async ({ actor, params, body, now }) => {
    if (body.act === 'undo') return undoLook(actor, { clipId: params.clipId, id: body.id }, now);
    const done = await lookAtFilm(actor, { ...body, clipId: params.clipId }, now);
    void kickNotices(actor.scope.teamId, done.actId); // nobody waits for the queue
    return Response.json(done, { status: done.waits ? 202 : 201 });
  },
);
