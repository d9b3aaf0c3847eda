import type { TeamPg } from '#lib/db/client.ts';
import { findKeptReply } from '#lib/db/kept-replies.ts';
import { unfilledInWords } from '#lib/domain/reply-fields.ts';
import { AppError } from '#lib/errors.ts';

/** A text that started from a kept reply goes out only with every field filled in by hand. */
export async function assertFilled(
  tx: TeamPg,
  { text, keptReplyId }: { text: string; keptReplyId?: string | undefined },
): Promise<void> {
  if (keptReplyId === undefined) return;
  if (!(await findKeptReply(tx, keptReplyId)))
    throw new AppError('not-found', 'This kept reply is not there, or not in your team.');
  const left = unfilledInWords(text);
  if (left !== '') throw new AppError('invalid', `text: ${left}`, { fields: { text: left } });
}
