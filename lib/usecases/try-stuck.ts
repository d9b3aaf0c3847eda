import { randomUUID } from 'node:crypto';
import { type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { forgetTries } from '#lib/db/outbox.ts';
import { AppError } from '#lib/errors.ts';
import { isQueueReady, kickMails, kickNotices, kickOutbox } from '#lib/jobs/queue.ts';
import type { StuckKind } from '#lib/schemas/stuck.ts';
import { handOnClips } from './film/hand-on-clips.ts';

const KICK: Record<StuckKind, (teamId: string) => Promise<void>> = {
  mail: () => kickMails(),
  push: (teamId) => kickNotices(teamId, randomUUID()),
  'after-check-in': () => kickOutbox(),
  'check-clip': async () => void (await handOnClips()),
};

/**
 * A coach asks for what waits in the outbox to be tried at once. Returns how much the worker has been given. Throws
 * `unavailable` when the queue does not answer: what waits stays and is tried at the next tick.
 */
export async function tryStuck(scope: TeamScope, kind: StuckKind): Promise<{ waiting: number }> {
  const waiting = await withTeamPg(scope, (tx) => forgetTries(tx, kind));
  if (!(await isQueueReady()))
    throw new AppError(
      'unavailable',
      'Not tried: the queue does not answer. What waits stays, and is tried again by itself.',
    );
  await KICK[kind](scope.teamId);
  return { waiting };
}
