import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { listLibraryChanges } from '#lib/db/library-audit.ts';
import { findLadder, saveLadder } from '#lib/db/library-ladder.ts';
import { findPart, lockOutline } from '#lib/db/library-outline.ts';
import { listUsedRungs } from '#lib/db/library-people.ts';
import { saveSwaps } from '#lib/db/library-swaps.ts';
import { findRungs } from '#lib/db/plans.ts';
import { AppError } from '#lib/errors.ts';
import { editLadder } from '#lib/planning/ladders/edit-ladder.ts';
import type { LadderEdit } from '#lib/planning/ladders/ladder-edit.ts';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import type { LadderChange } from '#lib/schemas/ladder.ts';
import { changedFields } from '#lib/views/ladders/changed-fields.ts';
import type { LadderTouch } from '#lib/views/ladders/ladder-touches.ts';
import { saidChange } from '#lib/views/ladders/said-change.ts';
import { effectsOf, type LadderChanged } from './ladder-effects.ts';
import { printOf } from './ladder-prints.ts';
import { assertOpen } from './openings-open.ts';

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
    // Swaps reach into other ladders: one edit at a time in a team.
    await lockOutline(tx);
    const before = await findLadder(tx, input.ladderId, { lock: true });
    if (!before) throw new AppError('not-found', 'This ladder is not here.');
    if (printOf(before) !== base) throw await conflict(tx, before);
    await assertKnown(tx, edit);
    const used = await listUsedRungs(tx, before.id);
    const edited = editLadder(before, edit, { newId: randomUUID, used });
    if ('wrong' in edited) throw refused(edited.wrong);
    const after = await withPartNames(tx, edited.state);
    await assertOpen(tx, after, edit);
    const { changed, touches } = await effectsOf(tx, { before, after }, now);
    const agree = printOf(touches);
    if (touches.length > 0 && agree !== agreed) return { saved: false, touches, agree };
    await saveAll(tx, actor, changed, now);
    return { saved: true };
  });
}

async function withPartNames(tx: TeamPg, state: LadderState): Promise<LadderState> {
  const names = await findPart(tx, state.partId);
  if (!names) throw refused({ partId: 'is not a part of your skills: choose one from the list' });
  return { ...state, ...names };
}

/** Rungs named as swaps or in openings must be the team's own. */
async function assertKnown(tx: TeamPg, edit: LadderEdit): Promise<void> {
  const named = rungsNamed(edit);
  const known = await findRungs(
    tx,
    named.map(([, id]) => id),
  );
  const wrong = named.flatMap(([path, id]) =>
    known.has(id) ? [] : [[path, 'is not a rung of your ladders: choose one from the list']],
  );
  if (wrong.length > 0) throw refused(Object.fromEntries(wrong));
}

/** Rungs that an edit names, by the path of the field. */
function rungsNamed(edit: LadderEdit): [string, string][] {
  if ('swaps' in edit) return edit.swaps.map((swap, index) => [`swaps.${index}.insteadId`, swap.insteadId]);
  if (edit.act !== 'openings') return [];
  return edit.openings.flatMap(({ needsAll }, at) =>
    needsAll.flatMap((anyOf, need) =>
      anyOf.map((id, choice): [string, string] => [`openings.${at}.needsAll.${need}.${choice}`, id]),
    ),
  );
}

/** The ladder that was edited as a whole; of the others the swaps alone. */
async function saveAll(tx: TeamPg, actor: Actor, changed: LadderChanged[], now: Date): Promise<void> {
  for (const [index, { before, after }] of changed.entries()) {
    const fields = changedFields(before, after);
    if (fields.length === 0) continue;
    if (index === 0) await saveLadder(tx, after, now);
    else await saveSwaps(tx, after.rungs);
    await insertAudit(tx, actor, { action: 'ladder-changed', objectId: before.id, fields });
  }
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
