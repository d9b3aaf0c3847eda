import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { deleteStandingUploads, letClipsGo, listTeamsWithClips, sayKeepUntil } from '#lib/db/clip-sweep.ts';
import { CLIP_BOUNDS } from '#lib/domain/clip-bounds.ts';
import { stemOf } from '#lib/files/file-key.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { clearWorkFolders } from '#lib/files/video/work-folder.ts';

const HOUR_MS = 3_600_000;
/** The last day of a clip stands on the pages of both sides for at least so long before. */
const NOTICE_DAYS = 30;
const SYSTEM = { userId: null, role: 'system' } as const;

/**
 * Lets go of uploads that stand still for a day and of clips whose last day is over, each with a line of the audit; says of
 * those that were looked at until which day they are kept. A file whose removal fails is tried again: the row waits for it.
 */
export async function sweepClips(now: Date): Promise<number> {
  await clearWorkFolders();
  const store = fileStore();
  let gone = 0;
  for (const scope of await listTeamsWithClips())
    gone += await withTeamPg(scope, async (tx) => {
      const since = new Date(now.getTime() - CLIP_BOUNDS.stillHours * HOUR_MS);
      const standing = await deleteStandingUploads(tx, since);
      await sayKeepUntil(tx, now, NOTICE_DAYS);
      const over = await letClipsGo(tx, now);
      for (const [action, clips] of [
        ['upload-let-go', standing],
        ['clip-let-go', over],
      ] as const)
        for (const { id: objectId, clientId, storageKey } of clips) {
          await insertAudit(tx, SYSTEM, { action, clientId, objectId, fields: [] });
          await store.removeAll(stemOf(storageKey));
        }
      return standing.length + over.length;
    });
  return gone;
}
