import { Readable } from 'node:stream';
import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { takeOwnRecord } from '#lib/usecases/rights/take-own-record.ts';

/** Everything that is kept of the client who asks, as one file; it begins at once. */
export const GET = defineRoute({ permission: 'own-record', limit: LIMITS.export }, async ({ actor, now }) => {
  const { fileName, zip } = await takeOwnRecord(actor, now);
  return new Response(Readable.toWeb(zip) as ReadableStream, {
    headers: {
      'content-type': 'application/zip',
      'content-disposition': `attachment; filename="${fileName}"`,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    },
  });
});
