import { withTeamPg } from '#lib/db/client.ts';
import { listTeamsWithOutbox, markHanded, markNotSent } from '#lib/db/outbox.ts';
import { listWaitingClips } from '#lib/db/outbox-clips.ts';
import { checkClipJob } from '#lib/jobs/check-clip.ts';
import { enqueue } from '#lib/jobs/queue.ts';

const ROWS_A_TURN = 200;

/** Hands clips that wait to be decoded to the queue once more, as after a queue lost what it held. */
export async function handOnClips(): Promise<number> {
  let handed = 0;
  for (const scope of await listTeamsWithOutbox('check-clip')) {
    handed += await withTeamPg(scope, async (tx) => {
      const sent: string[] = [];
      for (const { id, clipId } of await listWaitingClips(tx, ROWS_A_TURN)) {
        const isQueued = await enqueue(checkClipJob, { teamId: scope.teamId, clipId }).then(
          () => true,
          () => false,
        );
        if (!isQueued) {
          await markNotSent(tx, [id], 'the queue does not answer');
          break;
        }
        sent.push(id);
      }
      await markHanded(tx, sent);
      return sent.length;
    });
  }
  return handed;
}
