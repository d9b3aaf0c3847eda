import { env } from '#lib/config/env.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { findNoticeChoice } from '#lib/db/notices.ts';
import { insertMail } from '#lib/db/outbox-mail.ts';
import { deleteUnsentNotices, insertPushes } from '#lib/db/outbox-push.ts';

/** `id`: of the answer or the words; `by`: the coach's name. */
type Told = { clientId: string; what: 'answer' | 'words' | 'film'; id: string; by: string };

/**
 * Leaves notices of an answer, of words or of a film asked for in the outbox, in the transaction that wrote them, the ways the client chose.
 * They say from whom and where to look, nothing of what was said: a lock screen and a mailbox are read by others.
 */
export async function tellClient(tx: TeamPg, { clientId, what, id, by }: Told, at: Date): Promise<void> {
  const choice = await findNoticeChoice(tx, clientId);
  if (!choice) return;
  const title = { answer: `An answer from ${by}`, words: `Words from ${by}`, film: `${by} asks for a film` }[
    what
  ];
  const page = what === 'film' ? { name: 'Films', path: 'films' } : { name: 'Answers', path: 'answers' };
  const dedupeKey = keyOf(id);
  if (choice.endpoints.length > 0)
    await insertPushes(tx, { title, text: `On your ${page.name} page.`, tag: id, clientId, dedupeKey, at });
  if (!choice.mail || !choice.email) return;
  const where = `${env().PLUMBLINE_ORIGIN}/${page.path}`;
  const text = `On your ${page.name} page:\n${where}\n\nThese mails are switched off on your Answers page.\n`;
  await insertMail(tx, { to: choice.email, subject: title, text, clientId, dedupeKey, at });
}

/** The answer or the words were taken back: what has not left yet stays here. */
export async function untellClient(tx: TeamPg, id: string): Promise<void> {
  await deleteUnsentNotices(tx, keyOf(id));
}

function keyOf(id: string): string {
  return `notice:${id}`;
}
