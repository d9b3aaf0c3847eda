import { insertActEvents, lockReasons, writeHolds } from '#lib/db/acts.ts';
import { overtakeApprovalsOf } from '#lib/db/approvals.ts';
import type { TeamPg } from '#lib/db/client.ts';
import {
  beginDaysOff,
  endDaysOff,
  endSessionsOf,
  listUnclosedReasonIds,
  type StandingBehind,
  type StandingClient,
  setStanding,
} from '#lib/db/standing-changes.ts';
import { RESTING_STANDINGS } from '#lib/domain/standing-steps.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';

type Applied = { id: string; after: Standing; from: string; memberId: string };

/**
 * Makes a change of standing hold: days off begin and end with it, and leaving closes what is open and ends the phone.
 * Answers with what it left behind, for the way back.
 */
export async function applyStanding(
  tx: TeamPg,
  client: StandingClient,
  change: Applied,
  now: Date,
): Promise<StandingBehind> {
  const behind: StandingBehind = { leftAt: client.leftAt?.toISOString() ?? null };
  const rests = RESTING_STANDINGS.includes(change.after);
  if (rests) {
    const absenceId = await beginDaysOff(tx, { clientId: client.id, from: change.from, at: now });
    if (absenceId) behind.absenceId = absenceId;
  } else if (RESTING_STANDINGS.includes(client.standing)) {
    behind.ended = await endDaysOff(tx, client.id, change.from);
  }
  await setStanding(tx, client.id, {
    standing: change.after,
    leftAt: change.after === 'left' ? now : null,
  });
  if (change.after === 'left') behind.reasons = await leave(tx, client, change, now);
  return behind;
}

/** Nothing of who left stays open, waits or is signed in. */
async function leave(tx: TeamPg, client: StandingClient, change: Applied, now: Date) {
  const before = await lockReasons(tx, await listUnclosedReasonIds(tx, client.id));
  const after = before.map((hold) => ({
    ...hold,
    state: 'closed',
    closedAt: now.toISOString(),
    closedWhy: 'left',
  }));
  await writeHolds(tx, after, now);
  const events = before.map((hold, index) => ({
    reasonId: hold.id,
    what: 'closed',
    level: null,
    body: {
      actId: change.id,
      clientId: client.id,
      act: 'left',
      words: '',
      before: hold,
      after: after[index] ?? null,
    },
  }));
  await insertActEvents(tx, events, { memberId: change.memberId, at: now });
  await overtakeApprovalsOf(tx, client.id, { words: 'the client left', at: now });
  if (client.userId) await endSessionsOf(tx, client.userId);
  return before;
}
