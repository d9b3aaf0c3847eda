import { parseWith } from '#lib/edge/parse-with.ts';
import { AppError } from '#lib/errors.ts';
import { PREPARED_BODY } from '#lib/schemas/prepared-act.ts';
import type { Prepared } from './perform-act.ts';

/** A stored act as its route would have read it. Refuses what is about another client. */
export function preparedFrom(stored: { act: string; clientId: string; body: unknown }): Prepared {
  const { act, clientId } = stored;
  if (act === 'plan') return { act, clientId, body: parseWith(PREPARED_BODY.plan, stored.body) };
  if (act === 'ask-film') return { act, clientId, body: parseWith(PREPARED_BODY['ask-film'], stored.body) };
  if (act === 'film') return { act, clientId, body: parseWith(PREPARED_BODY.film, stored.body) };
  const body = parseWith(act === 'answer' ? PREPARED_BODY.answer : PREPARED_BODY.step, stored.body);
  if ('clientId' in body && body.clientId !== clientId)
    throw new AppError('invalid', 'clientId: is another client than the one it was prepared for', {
      fields: { clientId: 'is another client than the one it was prepared for' },
    });
  if (act === 'answer' && body.act === 'answer') return { act, clientId, body };
  if (act === 'step' && body.act === 'take') return { act, clientId, body };
  throw new AppError('invalid', 'body: is not what was prepared', { fields: { body: 'is another act' } });
}
