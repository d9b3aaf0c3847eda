import { Readable } from 'node:stream';
import { defineRoute } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { exportTeam } from '#lib/usecases/rights/export-team.ts';

export const GET = defineRoute(
  { permission: 'keep-records', limit: LIMITS['export-team'] },
  async ({ actor, now }) => {
    const { fileName, zip } = await exportTeam(actor, now);
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
