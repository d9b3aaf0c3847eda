import { z } from 'zod';
import { defineRoute } from '#lib/edge/define-route.ts';
import { limitAddress } from '#lib/schemas/limit.ts';
import { endLimit } from '#lib/usecases/end-limit.ts';

export const POST = defineRoute(
  { permission: 'edit-clients', params: limitAddress, body: z.strictObject({}) },
  ({ actor, params, now }) => endLimit(actor, params, now),
);
