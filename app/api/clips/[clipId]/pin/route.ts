import { defineRoute } from '#lib/edge/define-route.ts';
import { clipAddress, pinSchema } from '#lib/schemas/clip.ts';
import { pinClip } from '#lib/usecases/film/pin-clip.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: clipAddress, body: pinSchema },
  ({ actor, params, body, now }) => pinClip(actor, { clipId: params.clipId, ...body }, now),
);
