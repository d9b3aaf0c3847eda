import { z } from 'zod';
import { defineRoute } from '#lib/edge/define-route.ts';
import { clientCheckInAddress } from '#lib/schemas/check-in-words.ts';
import { markCheckInSeen } from '#lib/usecases/mark-check-in-seen.ts';

export const POST = defineRoute(
  { permission: 'write-to-clients', params: clientCheckInAddress, body: z.strictObject({}) },
  ({ actor, params, now }) => markCheckInSeen(actor, params, now),
);
