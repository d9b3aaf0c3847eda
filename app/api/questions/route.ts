import { defineRoute } from '#lib/edge/define-route.ts';
import { questionSchema } from '#lib/schemas/question.ts';
import { askQuestion } from '#lib/usecases/ask-question.ts';

export const POST = defineRoute(
  { permission: 'ask-coach', body: questionSchema },
  async ({ actor, body, now }) => Response.json(await askQuestion(actor, body, now), { status: 201 }),
);
