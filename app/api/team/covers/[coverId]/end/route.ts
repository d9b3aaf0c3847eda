import { defineRoute } from '#lib/edge/define-route.ts';
import { coverAddress } from '#lib/schemas/team.ts';
import { stopCover } from '#lib/usecases/team/set-cover.ts';

export const POST = defineRoute(
  { permission: 'arrange-cover', params: coverAddress },
  ({ actor, params, now }) => stopCover(actor, params.coverId, now),
);
