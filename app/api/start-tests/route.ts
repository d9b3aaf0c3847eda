import { defineRoute } from '#lib/edge/define-route.ts';
import { answerStartTest } from '#lib/schemas/start-tests.ts';
import { answerTest } from '#lib/usecases/start/answer-test.ts';

export const POST = defineRoute({ permission: 'check-in', body: answerStartTest }, ({ actor, body, now }) =>
  answerTest(actor, body, now),
);
