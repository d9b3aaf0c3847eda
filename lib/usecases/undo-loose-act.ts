import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import type { TeamPg } from '#lib/db/client.ts';
import {
  deleteLooseAnswer,
  deleteLooseSeenMark,
  deleteWordsOfAct,
  type WordTakenBack,
} from '#lib/db/loose-acts.ts';
import { untellClient } from './tell-client.ts';

/** `clientId`: null where the act was on several. `line`: what became of it, where there is something to say. */
export type UndoDone = { clientId: string | null; line?: string };

/**
 * Takes back an act that no reason tells of, because none stood open: its id is then the id of the answer or of the mark
 * that it wrote, or the one that the words of a message share. Undefined: there is no such act.
 */
export async function undoLooseAct(tx: TeamPg, actor: Actor, actId: string): Promise<UndoDone | undefined> {
  const answered = await deleteLooseAnswer(tx, actId);
  if (answered) await untellClient(tx, actId);
  const words = answered ? [] : await deleteWordsOfAct(tx, actId);
  for (const word of words) await untellClient(tx, word.id);
  const seen = answered || words.length > 0 ? undefined : await deleteLooseSeenMark(tx, actId);
  const clientIds = [answered, seen, ...words.map((word) => word.clientId)].filter((id) => id !== undefined);
  if (clientIds.length === 0) return undefined;
  for (const clientId of clientIds)
    await insertAudit(tx, actor, { action: 'act-undone', clientId, objectId: actId, fields: [] });
  if (words.length === 0) return { clientId: clientIds[0] ?? null };
  return { clientId: words.length === 1 ? (words[0]?.clientId ?? null) : null, line: takenBack(words) };
}

function takenBack(words: readonly WordTakenBack[]): string {
  const read = words
    .filter((word) => word.readAt !== null)
    .map((word) => word.name)
    .sort((a, b) => a.localeCompare(b, 'en'));
  const whole = words.length === 1 ? 'Taken back.' : `Taken back from ${words.length} clients.`;
  if (read.length === 0) return `${whole} Nobody had read it yet.`;
  return `${whole} Read already by ${read.join(', ')}.`;
}
