import type { Actor } from '#lib/auth/actor.ts';
import { findBoardHead } from '#lib/db/board.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type KeptReply, listKeptReplies } from '#lib/db/kept-replies.ts';
import { type LadderChoice, listLadderChoices, listRecipients } from '#lib/db/recipients.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import type { RecipientFilter } from '#lib/schemas/reply.ts';
import { type Recipient, recipients } from '#lib/views/replies/recipients.ts';

export type Recipients = {
  clients: Recipient[];
  /** How many clients the team has, whatever the filter. */
  all: number;
  coaches: { id: string; name: string }[];
  skills: string[];
  kinds: CheckKind[];
  ladders: LadderChoice[];
  kept: KeptReply[];
};

/** The clients that the filter leaves, and what can be filtered by. */
export function loadRecipients(actor: Actor, filter: RecipientFilter, now: Date): Promise<Recipients> {
  return withTeamPg(actor.scope, async (tx) => {
    const rows = await listRecipients(tx, now);
    const coach = filter.coach === 'mine' ? (actor.memberId ?? undefined) : filter.coach;
    return {
      clients: recipients(rows, { ...filter, coach }),
      all: rows.length,
      coaches: (await findBoardHead(tx, actor.memberId, now)).coaches,
      skills: [...new Set(rows.flatMap((row) => row.skills))].sort((a, b) => a.localeCompare(b, 'en')),
      kinds: [...new Set(rows.flatMap((row) => row.kinds))].sort(),
      ladders: await listLadderChoices(tx),
      kept: (await listKeptReplies(tx)).filter((reply) => reply.retiredAt === null),
    };
  });
}
