import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { insertQuestionOnce } from '#lib/db/questions.ts';
import { AppError } from '#lib/errors.ts';
import type { QuestionBody } from '#lib/schemas/question.ts';
import { assertConsent } from './rights/assert-consent.ts';

export async function askQuestion(
  actor: Actor,
  body: QuestionBody,
  now: Date,
): Promise<{ id: string; askedAt: string }> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client asks the coach a question.');
  const isKept = await withTeamPg(actor.scope, async (tx) => {
    await assertConsent(tx, clientId);
    return insertQuestionOnce(tx, { ...body, clientId, at: now });
  });
  if (!isKept) throw new AppError('conflict', 'A question with this id is kept already, with another text.');
  return { id: body.id, askedAt: now.toISOString() };
}
