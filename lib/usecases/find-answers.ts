import type { Actor } from '#lib/auth/actor.ts';
import { findBoardHead } from '#lib/db/board.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findEarlierAnswers } from '#lib/db/earlier-answers.ts';
import { earlierReply } from '#lib/views/replies/earlier-reply.ts';
import type { EarlierReply } from '#lib/views/replies/reply-types.ts';

/** How many earlier answers a search shows. Our own choice. */
export const FOUND_AT_MOST = 12;

/** The team's earlier answers that hold these words in any form, best first. */
export function findAnswers(actor: Actor, words: string, now: Date): Promise<EarlierReply[]> {
  return withTeamPg(actor.scope, async (tx) => {
    const head = await findBoardHead(tx, actor.memberId, now);
    return (await findEarlierAnswers(tx, words, FOUND_AT_MOST)).map((answer) => earlierReply(answer, head));
  });
}
