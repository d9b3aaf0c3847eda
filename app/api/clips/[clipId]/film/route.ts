import { answerRange } from '#lib/edge/answer-range.ts';
import { defineRoute } from '#lib/edge/define-route.ts';
import { clipAddress } from '#lib/schemas/clip.ts';
import { openClip } from '#lib/usecases/film/open-clip.ts';

export const GET = defineRoute(
  { permission: 'see-clips', params: clipAddress },
  async ({ actor, params, request }) => {
    const clip = await openClip(actor, params.clipId);
    return answerRange(request, { ...clip, type: 'video/mp4', name: 'film.mp4' });
  },
);
