import { Readable } from 'node:stream';
import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { exportClient } from '#lib/usecases/export-client.ts';

export const GET = defineRoute(
  { permission: 'export-clients', params: clientAddress, limit: LIMITS.export },
  async ({ actor, params, now }) => {
    const { fileName, zip } = await exportClient(actor, params.clientId, now);
    return new Response(Readable.toWeb(zip) as ReadableStream, {
      headers: {
        'content-type': 'application/zip',
        'content-disposition': `attachment; filename="${fileName}"`,
        'cache-control': 'no-store',
        'x-content-type-options': 'nosniff',
      },
    });
  },
);
