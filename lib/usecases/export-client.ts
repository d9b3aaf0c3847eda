import type { Readable } from 'node:stream';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { readRecord } from '#lib/db/records.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { exportFileName, exportZip } from '#lib/handover/export-zip.ts';
import { loadDays } from '#lib/handover/load-days.ts';

/** A client's whole record as a zip. Read in one transaction, then written piece by piece to whoever asked. */
export async function exportClient(
  actor: Actor,
  clientId: string,
  now: Date,
): Promise<{ fileName: string; zip: Readable }> {
  const { history, record } = await withTeamPg(actor.scope, async (tx) => {
    const found = (await loadHistories(tx, [clientId], { from: null })).get(clientId);
    if (!found) throw new AppError('not-found', 'This client is not here.');
    await insertAudit(tx, actor, { action: 'client-exported', clientId, fields: [] });
    return { history: found, record: await readRecord(tx, clientId) };
  });
  return {
    fileName: exportFileName(clientId, localDateOf(now, history.client.zone)),
    zip: exportZip({ history, record, days: loadDays(history), made: now }),
  };
}
