import { Readable } from 'node:stream';
import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import type { RouteHandler } from '#lib/edge/define-route.ts';
import { linkRefused } from '#lib/edge/handover-page.ts';
import { openLinkSchema } from '#lib/schemas/handover-link.ts';
import { openLinkPack } from '#lib/usecases/handover/open-link.ts';

const download = defineOpenRoute(
  { body: openLinkSchema, limit: { name: 'handover-pack', max: 10, windowSeconds: 3600 } },
  async ({ body, now }) => {
    const { fileName, bytes, zip } = await openLinkPack(body, now);
    return new Response(Readable.toWeb(zip) as ReadableStream, {
      headers: {
        'content-type': 'application/zip',
        'content-length': String(bytes),
        'content-disposition': `attachment; filename="${fileName}"`,
        'cache-control': 'no-store',
        'x-content-type-options': 'nosniff',
      },
    });
  },
);

export const POST: RouteHandler = async (request, context) => {
  const posted = request.clone();
  return linkRefused(await download(request, context), posted);
};
