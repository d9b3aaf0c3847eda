import { withTeamPg } from '#lib/db/client.ts';
import { listTeamsWithOutbox, listWaitingCheckIns, markHanded, markNotSent } from '#lib/db/outbox.ts';
import { afterCheckInJob } from '#lib/jobs/after-check-in.ts';
import { enqueue } from '#lib/jobs/queue.ts';

const ROWS_A_TURN = 200;

/**
 * Hands what submit transactions left in the outbox to the queue, at least once: a row is done when its job is, so that
 * one whose job was lost is handed on again. The job is safe to run twice. Returns how many were handed on.
 */
export async function deliverOutbox(): Promise<number> {
  let delivered = 0;
  for (const scope of await listTeamsWithOutbox('after-check-in')) {
    delivered += await withTeamPg(scope, async (tx) => {
      const waiting = await listWaitingCheckIns(tx, ROWS_A_TURN);
      const sent: string[] = [];
      const failed: string[] = [];
      for (const { id, clientId, checkInId } of waiting) {
        await enqueue(afterCheckInJob, { teamId: scope.teamId, clientId, checkInId }).then(
          () => sent.push(id),
          () => failed.push(id),
        );
        if (failed.length > 0) break; // the queue is down: the rest would wait in vain
      }
      await markHanded(tx, sent);
      await markNotSent(tx, failed, 'the queue does not answer');
      return sent.length;
    });
  }
  return delivered;
}
