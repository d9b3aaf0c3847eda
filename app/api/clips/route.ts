import { defineRoute } from '#lib/edge/define-route.ts';
import { parseWith } from '#lib/edge/parse-with.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { otherVersion, readMetadata, tusResponse } from '#lib/edge/tus.ts';
import { clipAbout, uploadLength } from '#lib/schemas/clip.ts';
import { beginClip } from '#lib/usecases/film/begin-clip.ts';

/** Begins an upload: tus, creation. */
export const POST = defineRoute(
  { permission: 'send-clips', limit: LIMITS.clip },
  async ({ actor, request, now }) => {
    const other = otherVersion(request);
    if (other) return other;
    const length = parseWith(uploadLength, request.headers.get('upload-length') ?? undefined);
    const about = parseWith(clipAbout, readMetadata(request.headers.get('upload-metadata')));
    const { id, offset } = await beginClip(actor, { about, length }, now);
    return tusResponse(201, { location: `/api/clips/${id}`, 'upload-offset': offset });
  },
);
