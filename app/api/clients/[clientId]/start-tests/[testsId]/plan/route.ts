import { defineRoute } from '#lib/edge/define-route.ts';
import { planOfTests, startAddress } from '#lib/schemas/start-tests.ts';
import { planFromTests } from '#lib/usecases/start/plan-from-tests.ts';

export const POST = defineRoute(
  { permission: 'edit-plans', params: startAddress, body: planOfTests },
  ({ actor, params, body, now }) => planFromTests(actor, { ...params, asked: body }, now),
);
