import type { Actor } from '#lib/auth/actor.ts';
import { takeBackRecords } from '#lib/db/act-records.ts';
import {
  type ActEvent,
  insertActEvents,
  listActEvents,
  lockReasons,
  type ReasonHold,
  writeHolds,
} from '#lib/db/acts.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { areVersionsUnused, takeBackStep } from '#lib/db/step-records.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from './assert-member.ts';
import { untellClient } from './tell-client.ts';
import { type UndoDone, undoLooseAct } from './undo-loose-act.ts';

const UNIQUE_VIOLATION = '23505';

/** Restores the reasons exactly as they were before the act. The events stay, with one that says "undone". */
export async function undoAct(actor: Actor, input: { actId: string }, now: Date): Promise<UndoDone> {
  const by = { memberId: assertMember(actor), at: now };
  return withTeamPg(actor.scope, async (tx) => {
    const events = await listActEvents(tx, input.actId);
    const [first] = events;
    if (!first) {
      const undone = await undoLooseAct(tx, actor, input.actId);
      if (undone) return undone;
      throw new AppError('not-found', 'This act is not there, or not in your team.');
    }
    if (events.some((event) => event.what === 'undone'))
      throw new AppError('conflict', 'This was undone already.');
    await assertUntouched(tx, events);
    await assertPlanUnused(tx, events);
    await restore(
      tx,
      events.flatMap((event) => event.body.before ?? []),
      now,
    );
    for (const { body } of events) {
      await takeBackRecords(tx, body, now);
      for (const id of [body.answerId, body.taken?.wordId]) if (id) await untellClient(tx, id);
      if (body.taken) await takeBackStep(tx, { clientId: body.clientId, taken: body.taken });
    }
    await insertActEvents(
      tx,
      events.map((event) => ({ ...event, what: 'undone' })),
      by,
    );
    for (const clientId of new Set(events.map((event) => event.body.clientId)))
      await insertAudit(tx, actor, { action: 'act-undone', clientId, objectId: input.actId, fields: [] });
    return { clientId: first.body.clientId };
  });
}

/** A night or another coach may have changed a reason since: then there is no way back to before. */
async function assertUntouched(tx: TeamPg, events: ActEvent[]): Promise<void> {
  const wanted = events.flatMap((event) => event.body.after ?? []);
  const found = new Map(
    (
      await lockReasons(
        tx,
        wanted.map((hold) => hold.id),
      )
    ).map((hold) => [hold.id, hold]),
  );
  if (wanted.every((hold) => same(hold, found.get(hold.id)))) return;
  throw new AppError('conflict', 'This has changed since, so it cannot be undone. Read the board again.');
}

/** A plan that was trained by, or changed again, is not taken away: the way back is a new version. */
async function assertPlanUnused(tx: TeamPg, events: ActEvent[]): Promise<void> {
  for (const { body } of events) {
    const versions = body.taken?.planVersions ?? [];
    if (versions.length === 0 || (await areVersionsUnused(tx, body.clientId, versions))) continue;
    throw new AppError(
      'conflict',
      'The plan of this step was changed or trained by since, so it cannot be undone. Write a new version of the plan.',
    );
  }
}

/** The night may have raised the same thing anew: one open reason a client, kind and subject is the rule. */
async function restore(tx: TeamPg, holds: ReasonHold[], now: Date): Promise<void> {
  try {
    await writeHolds(tx, holds, now);
  } catch (cause) {
    const doubled = cause instanceof Error && 'code' in cause && cause.code === UNIQUE_VIOLATION;
    if (doubled)
      throw new AppError('conflict', 'The same reason has come up again since. Read the board again.', {
        cause,
      });
    throw cause;
  }
}

function same(a: ReasonHold, b: ReasonHold | undefined): boolean {
  return (
    b !== undefined &&
    a.state === b.state &&
    a.asideUntil === b.asideUntil &&
    a.asideUntilWorse === b.asideUntilWorse &&
    a.withClientUntil === b.withClientUntil &&
    a.closedAt === b.closedAt &&
    // Events from before rows could be folded as known say nothing of it.
    (a.knownOn ?? null) === b.knownOn &&
    (a.knownWords ?? null) === b.knownWords
  );
}
