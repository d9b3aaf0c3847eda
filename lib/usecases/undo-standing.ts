import type { Actor } from '#lib/auth/actor.ts';
import { insertActEvents, lockReasons, writeHolds } from '#lib/db/acts.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import {
  findStandingChange,
  listStandingChanges,
  lockStandingClient,
  markStandingUndone,
  type StandingChangeRow,
  setStanding,
  takeBackDaysOff,
} from '#lib/db/standing-changes.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from './assert-member.ts';

/** Takes the newest change of standing back, with the days off it began or ended and the reasons it closed. */
export async function undoStanding(
  actor: Actor,
  input: { clientId: string; changeId: string },
  now: Date,
): Promise<void> {
  const memberId = assertMember(actor);
  await withTeamPg(actor.scope, async (tx) => {
    const client = await lockStandingClient(tx, input.clientId);
    const change = client && (await findStandingChange(tx, input.changeId));
    if (change?.clientId !== input.clientId || !client)
      throw new AppError('not-found', 'This change is not there any more, or is not of this client.');
    const [newest] = await listStandingChanges(tx, client.id);
    const moved = change.appliedAt !== null && client.standing !== change.after;
    if (newest?.id !== change.id || moved)
      throw new AppError('conflict', 'The standing was changed again since, so this cannot be undone.');
    if (change.appliedAt) await takeBack(tx, change, { memberId, now });
    await markStandingUndone(tx, change.id, now);
    await insertAudit(tx, actor, {
      action: 'standing-undone',
      clientId: client.id,
      objectId: change.id,
      fields: ['standing'],
    });
  });
}

async function takeBack(
  tx: TeamPg,
  { id, clientId, before, behind }: StandingChangeRow,
  { memberId, now }: { memberId: string; now: Date },
): Promise<void> {
  await setStanding(tx, clientId, { standing: before, leftAt: behind.leftAt ?? null });
  await takeBackDaysOff(tx, { absenceId: behind.absenceId, ended: behind.ended ?? [] });
  const reasons = behind.reasons ?? [];
  const found = await lockReasons(
    tx,
    reasons.map((hold) => hold.id),
  );
  const still = reasons.filter((hold) => found.find((one) => one.id === hold.id)?.closedWhy === 'left');
  await writeHolds(tx, still, now);
  const about = { actId: id, clientId, act: 'left', words: '', before: null };
  const events = still.map((hold) => ({
    reasonId: hold.id,
    what: 'undone',
    level: null,
    body: { ...about, after: hold },
  }));
  await insertActEvents(tx, events, { memberId, at: now });
}
