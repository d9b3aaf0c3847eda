import { defineRoute } from '#lib/edge/define-route.ts';
import { coverSchema } from '#lib/schemas/team.ts';
import { setCover } from '#lib/usecases/team/set-cover.ts';

export const POST = defineRoute({ permission: 'arrange-cover', body: coverSchema }, ({ actor, body, now }) =>
  setCover(actor, body, now),
);
