import { Readable } from 'node:stream';
import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { packSchema } from '#lib/schemas/pack.ts';
import { makePack } from '#lib/usecases/handover/make-pack.ts';

export const POST = defineRoute(
  { permission: 'export-clients', params: clientAddress, body: packSchema, limit: LIMITS.export },
  async ({ actor, params, body, now }) => {
    const { fileName, bytes, zip } = await makePack(actor, { clientId: params.clientId, options: body }, now);
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
