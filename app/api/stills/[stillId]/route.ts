import { defineRoute } from '#lib/edge/define-route.ts';
import { stillAddress } from '#lib/schemas/question.ts';
import { loadStill } from '#lib/usecases/load-still.ts';

export const GET = defineRoute(
  { permission: 'see-stills', params: stillAddress },
  async ({ actor, params }) =>
    new Response(new Uint8Array(await loadStill(actor, params.stillId)), {
      headers: {
        'content-type': 'image/jpeg',
        'content-disposition': 'inline; filename="still.jpg"',
        'cache-control': 'private, no-store',
        'x-content-type-options': 'nosniff',
      },
    }),
);
