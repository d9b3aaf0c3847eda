import { defineRoute } from '#lib/edge/define-route.ts';
import { earlierQuery } from '#lib/schemas/reply.ts';
import { findAnswers } from '#lib/usecases/find-answers.ts';

export const GET = defineRoute(
  { permission: 'see-clients', query: earlierQuery },
  async ({ actor, query, now }) => ({ answers: await findAnswers(actor, query.words, now) }),
);
