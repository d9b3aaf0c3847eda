import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type KeptReply, listKeptReplies } from '#lib/db/kept-replies.ts';

/** The team's kept replies by name: those in use and those that were retired. */
export async function loadKeptReplies(actor: Actor): Promise<{ used: KeptReply[]; retired: KeptReply[] }> {
  const all = await withTeamPg(actor.scope, listKeptReplies);
  return {
    used: all.filter((reply) => reply.retiredAt === null),
    retired: all.filter((reply) => reply.retiredAt !== null),
  };
}
