import { defineRoute } from '#lib/edge/define-route.ts';
import { wordsReadSchema } from '#lib/schemas/check-in-words.ts';
import { markWordsRead } from '#lib/usecases/mark-words-read.ts';

export const POST = defineRoute({ permission: 'check-in', body: wordsReadSchema }, ({ actor, body, now }) =>
  markWordsRead(actor, body.ids, now),
);
