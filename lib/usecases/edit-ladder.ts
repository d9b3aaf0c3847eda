import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { listLibraryChanges } from '#lib/db/library-audit.ts';
import { findLadder, saveLadder } from '#lib/db/library-ladder.ts';
import { findPart } from '#lib/db/library-outline.ts';
import { listPeopleOnLadder, listUsedRungs } from '#lib/db/library-people.ts';
import { fillSwapsOf } from '#lib/db/library-swaps.ts';
import { findRungs } from '#lib/db/plans.ts';
import { AppError } from '#lib/errors.ts';
import { editLadder } from '#lib/planning/ladders/edit-ladder.ts';
import type { LadderEdit } from '#lib/planning/ladders/ladder-edit.ts';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import type { LadderChange } from '#lib/schemas/ladder.ts';
import { changedFields } from '#lib/views/ladders/changed-fields.ts';
import { type LadderTouch, ladderTouches } from '#lib/views/ladders/ladder-touches.ts';
import { saidChange } from '#lib/views/ladders/said-change.ts';
import { printOf } from './ladder-prints.ts';

/** Saved, or asked first: whom it touches, and the word to send back when the coach agrees. */
export type LadderEdited = { saved: true } | { saved: false; touches: LadderTouch[]; agree: string };

/**
 * One edit of one ladder, in one transaction. Of two coaches who had the same ladder open the second is told who changed
 * what. An edit that touches clients is kept only once those very touches were agreed to.
 */
export async function editTeamLadder(
  actor: Actor,
  input: { ladderId: string; change: LadderChange },
  now: Date,
): Promise<LadderEdited> {
  const { base, agreed, edit } = input.change;
  return withTeamPg(actor.scope, async (tx) => {
    const before = await findLadder(tx, input.ladderId, { lock: true });
    if (!before) throw new AppError('not-found', 'This ladder is not here.');
    if (printOf(before) !== base) throw await conflict(tx, before);
    await assertKnown(tx, edit);
    const used = await listUsedRungs(tx, before.id);
    const edited = editLadder(before, edit, { newId: randomUUID, used });
    if ('wrong' in edited) throw refused(edited.wrong);
    const after = await withPartNames(tx, edited.state);
    const touches = ladderTouches(before, after, await listPeopleOnLadder(tx, before.id, now));
    const agree = printOf(touches);
    if (touches.length > 0 && agree !== agreed) return { saved: false, touches, agree };
    const fields = changedFields(before, after);
    if (fields.length > 0) {
      await saveLadder(tx, after, now);
      await fillSwapsOf(tx, newRungs(before, after));
      await insertAudit(tx, actor, { action: 'ladder-changed', objectId: before.id, fields });
    }
    return { saved: true };
  });
}

async function withPartNames(tx: TeamPg, state: LadderState): Promise<LadderState> {
  const names = await findPart(tx, state.partId);
  if (!names) throw refused({ partId: 'is not a part of your skills: choose one from the list' });
  return { ...state, ...names };
}

/** Rungs named as swaps must be the team's own. */
async function assertKnown(tx: TeamPg, edit: LadderEdit): Promise<void> {
  const swaps = 'swaps' in edit ? edit.swaps : [];
  const known = await findRungs(
    tx,
    swaps.map((swap) => swap.insteadId),
  );
  const wrong = swaps.flatMap((swap, index) =>
    known.has(swap.insteadId)
      ? []
      : [[`swaps.${index}.insteadId`, 'is not a rung of your ladders: choose one from the list']],
  );
  if (wrong.length > 0) throw refused(Object.fromEntries(wrong));
}

function newRungs(before: LadderState, after: LadderState): string[] {
  const known = new Set(before.rungs.map((rung) => rung.id));
  return after.rungs.map((rung) => rung.id).filter((id) => !known.has(id));
}

function refused(wrong: Record<string, string>): AppError {
  const fields = Object.fromEntries(Object.entries(wrong).map(([path, words]) => [`edit.${path}`, words]));
  const [first] = Object.entries(wrong);
  return new AppError('invalid', `${first?.[0] ?? ''}: ${first?.[1] ?? ''}`, { fields });
}

async function conflict(tx: TeamPg, ladder: LadderState): Promise<AppError> {
  const [newest] = await listLibraryChanges(tx, ladder.id, 1);
  const said = newest ? saidChange(newest) : 'Somebody changed this ladder';
  return new AppError(
    'conflict',
    `${said}, after you opened it. Nothing was saved; what you typed is still here. Look at the ladder as it is now in another tab, then save yours over it or leave it.`,
    { fields: { base: printOf(ladder) } },
  );
}
