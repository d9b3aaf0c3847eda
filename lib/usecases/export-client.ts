import type { Readable } from 'node:stream';
import type { Actor } from '#lib/auth/actor.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { readRecord } from '#lib/db/records.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import type { ClientRecord } from '#lib/domain/record.ts';
import { AppError } from '#lib/errors.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { stillKey } from '#lib/files/still-key.ts';
import { assessmentsOfRecord } from '#lib/handover/assessments-of-record.ts';
import { type ExportPicture, exportFileName, exportZip } from '#lib/handover/export-zip.ts';
import { loadDays } from '#lib/handover/load-days.ts';

/** A record leaves the house: what a few others took on a rung would be about them, so it needs many. */
function withoutFew(history: ClientHistory): ClientHistory {
  const enough = DEFAULT_LIMITS['stalled.usualTimeClients'];
  const rungs = history.rungs.map(({ usualDaysHere: here, ...rung }) =>
    here && here.passed >= enough ? { ...rung, usualDaysHere: here } : rung,
  );
  return { ...history, rungs };
}

/** A client's whole record as a zip. Read in one transaction, then written piece by piece to whoever asked. */
export async function exportClient(
  actor: Actor,
  clientId: string,
  now: Date,
): Promise<{ fileName: string; zip: Readable }> {
  const { history, record } = await withTeamPg(actor.scope, async (tx) => {
    const found = (
      await loadHistories(tx, [clientId], { from: null, asOf: now.toISOString().slice(0, 10) })
    ).get(clientId);
    if (!found) throw new AppError('not-found', 'This client is not here.');
    await insertAudit(tx, actor, { action: 'client-exported', clientId, fields: [] });
    const read = await readRecord(tx, clientId);
    const assessments = assessmentsOfRecord(read.assessed);
    return { history: { ...withoutFew(found), assessments }, record: read };
  });
  return {
    fileName: exportFileName(clientId, localDateOf(now, history.client.zone)),
    zip: exportZip({
      history,
      record,
      days: loadDays(history),
      pictures: picturesOf(actor.scope.teamId, record),
      made: now,
    }),
  };
}

function picturesOf(teamId: string, record: ClientRecord): ExportPicture[] {
  const store = fileStore();
  return record.questions.flatMap((question) =>
    question.stills.map((id) => ({
      name: `stills/${id}.jpg`,
      read: () => store.read(stillKey(teamId, id)),
    })),
  );
}
