import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import {
  type ErasureLine,
  eraseClientRows,
  forgetFiles,
  listDueErasures,
  listErasures,
} from '#lib/db/erasures.ts';
import { ledgerScope } from '#lib/db/ledger.ts';
import { appendToEraseList } from '#lib/files/erase-list-file.ts';
import { stemOf } from '#lib/files/file-key.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { logger } from '#lib/logger.ts';

/**
 * Deletes the clients whose days are over: all rows and the line of the erase list in one transaction each, then the
 * files. Safe to run twice and to be killed: what is left of the files is in the line and is taken up again.
 */
export async function eraseDueClients(now: Date): Promise<number> {
  let erased = 0;
  for (const due of await listDueErasures(now)) {
    const line = { ...due, askedAt: due.askedAt.toISOString(), erasedAt: now.toISOString() };
    try {
      if (await eraseClient(line)) erased += 1;
    } catch (error) {
      logger().error({ error, receipt: due.receipt }, 'a client was not deleted; the next tick tries again');
    }
  }
  await removeFilesLeft();
  return erased;
}

/** One client; false where nobody of that id is there any more. */
export async function eraseClient(line: ErasureLine): Promise<boolean> {
  const done = await withTeamPg(ledgerScope(line.teamId), async (tx) => {
    const gone = await eraseClientRows(tx, { ...line, at: line.erasedAt });
    if (!gone) return false;
    const { clientId, receipt } = line;
    const system = { userId: null, role: 'system' } as const;
    await insertAudit(tx, system, { action: 'client-deleted', clientId, objectId: receipt, fields: [] });
    // Before the rows are gone for good: a line too many does no harm, one too few would.
    await appendToEraseList(toLine(line));
    return true;
  });
  return done;
}

function toLine({ teamId, clientId, receipt, origin, askedAt, erasedAt }: ErasureLine): ErasureLine {
  return { teamId, clientId, receipt, origin, askedAt, erasedAt };
}

/** Removes the files of deleted clients that still lie there. A file that is gone already counts as removed. */
export async function removeFilesLeft(): Promise<void> {
  const store = fileStore();
  for (const { teamId, clientId, filesLeft } of await listErasures()) {
    const removed: string[] = [];
    for (const key of filesLeft) {
      await store.removeAll(stemOf(key)).then(
        () => removed.push(key),
        (error: unknown) => logger().error({ error, clientId }, 'a file of a deleted client was not removed'),
      );
    }
    if (removed.length > 0) await withTeamPg(ledgerScope(teamId), (tx) => forgetFiles(tx, clientId, removed));
  }
}
