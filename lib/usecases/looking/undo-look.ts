import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { insertAfterCheckIn } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { deleteUnreadFilmWord, isOwnLook, unmarkLooked } from '#lib/db/looking.ts';
import { listClipVerdicts, undoSetVerdict } from '#lib/db/set-verdicts.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from '../assert-member.ts';
import { untellClient } from '../tell-client.ts';
import { lockClip } from './do-look.ts';
import { followVerdict } from './give-verdict.ts';

type Undone = { clipId: string; id: string };

/** Takes back a verdict, words that nobody has read, or that a film was looked at; an assistant only their own. */
export function undoLook(actor: Actor, of: Undone, now: Date): Promise<{ line: string }> {
  const memberId = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    if (actor.role === 'assistant' && !(await isOwnLook(tx, { ...of, memberId })))
      throw new AppError('forbidden', 'An assistant takes back own acts only.');
    return undoLookIn(tx, actor, of, now);
  });
}

/** The same inside the caller's transaction. */
export async function undoLookIn(
  tx: TeamPg,
  actor: Actor,
  { clipId, id }: Undone,
  now: Date,
): Promise<{ line: string }> {
  const { clientId } = await lockClip(tx, clipId, ['ready', 'gone']);
  const line =
    (await verdictBack(tx, { clientId, clipId, id }, now)) ??
    (await wordBack(tx, clipId, id)) ??
    (await lookBack(tx, { clientId, clipId, id }));
  if (line === undefined)
    throw new AppError(
      'conflict',
      'There is nothing here to take back any more: it was read, or taken back already.',
    );
  await insertAudit(tx, actor, { action: 'act-undone', clientId, objectId: id, fields: ['film'] });
  return { line };
}

type Of = Undone & { clientId: string };

async function verdictBack(tx: TeamPg, { clientId, clipId, id }: Of, now: Date): Promise<string | undefined> {
  const given = (await listClipVerdicts(tx, clipId)).find((one) => one.id === id);
  if (!given) return undefined;
  await undoSetVerdict(tx, id, now);
  await followVerdict(tx, { clientId, clipId, checkInId: given.checkInId });
  await insertAfterCheckIn(tx, { clientId, checkInId: id, change: 'unseen' });
  return 'Taken back. The set counts as it did before.';
}

async function wordBack(tx: TeamPg, clipId: string, id: string): Promise<string | undefined> {
  if (!(await deleteUnreadFilmWord(tx, clipId, id))) return undefined;
  await untellClient(tx, id);
  return 'Taken back. Nobody had read it yet.';
}

async function lookBack(tx: TeamPg, { clientId, clipId, id }: Of): Promise<string | undefined> {
  if (id !== clipId || !(await unmarkLooked(tx, clipId))) return undefined;
  await insertAfterCheckIn(tx, { clientId, checkInId: clipId, change: 'waits' });
  return 'Taken back. The film waits again.';
}
