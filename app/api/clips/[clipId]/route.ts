import { defineRoute } from '#lib/edge/define-route.ts';
import { parseWith } from '#lib/edge/parse-with.ts';
import { otherVersion, TUS_PATCH_TYPE, tusResponse } from '#lib/edge/tus.ts';
import { clipAddress, uploadOffset } from '#lib/schemas/clip.ts';
import { dropClip, loadUpload, receiveClip } from '#lib/usecases/film/receive-clip.ts';

const own = { permission: 'send-clips', params: clipAddress } as const;

/** Where an upload stands. */
export const HEAD = defineRoute(own, async ({ actor, params, request }) => {
  const upload = await loadUpload(actor, params.clipId);
  return (
    otherVersion(request) ??
    tusResponse(200, { 'upload-offset': upload.offset, 'upload-length': upload.length })
  );
});

/** Goes on with an upload from where it stands. */
export const PATCH = defineRoute(own, async ({ actor, params, request }) => {
  const other = otherVersion(request);
  if (other) return other;
  if (request.headers.get('content-type') !== TUS_PATCH_TYPE) return tusResponse(415);
  const offset = parseWith(uploadOffset, request.headers.get('upload-offset') ?? undefined);
  const chunks = request.body ?? new Blob([]).stream();
  const received = await receiveClip(actor, { clipId: params.clipId, offset, chunks });
  if (received.kind === 'busy') return tusResponse(423);
  return tusResponse(received.kind === 'at' ? 204 : 409, { 'upload-offset': received.offset });
});

/** Gives an upload up: tus, termination. */
export const DELETE = defineRoute(own, async ({ actor, params }) => {
  await dropClip(actor, params.clipId);
  return tusResponse(204);
});
