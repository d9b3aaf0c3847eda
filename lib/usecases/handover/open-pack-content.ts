import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { listKeptClips } from '#lib/db/clips.ts';
import { findPackPeople } from '#lib/db/handover-packs.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { openRecordRows } from '#lib/db/record-rows.ts';
import { openRecord } from '#lib/db/records.ts';
import { listSettings } from '#lib/db/settings.ts';
import { listFilmStills } from '#lib/db/still-frames.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { stillKey } from '#lib/files/still-key.ts';
import { allRows } from '#lib/handover/all-rows.ts';
import { assessmentsOfRecord } from '#lib/handover/assessments-of-record.ts';
import type { PackContent, PackOptions } from '#lib/handover/pack-content.ts';

type Asked = { clientId: string; madeBy: string; options: PackOptions; now: Date };

/** A record leaves the house: what a few others took on a rung would be about them, so it needs many. */
function withoutFew(history: ClientHistory): ClientHistory {
  const enough = DEFAULT_LIMITS['stalled.usualTimeClients'];
  const rungs = history.rungs.map(({ usualDaysHere: here, ...rung }) =>
    here && here.passed >= enough ? { ...rung, usualDaysHere: here } : rung,
  );
  return { ...history, rungs };
}

/** What a pack of a client is made from, read inside the open transaction; refuses where there is no such client here. */
export async function openPackContent(
  tx: TeamPg,
  { clientId, madeBy, options, now }: Asked,
): Promise<PackContent> {
  const asOf = now.toISOString().slice(0, 10);
  const people = await findPackPeople(tx, clientId);
  const found = (await loadHistories(tx, [clientId], { from: null, asOf })).get(clientId);
  if (!people || !found) throw new AppError('not-found', 'This client is not here.');
  const record = openRecord(tx, clientId);
  const assessments = assessmentsOfRecord(await allRows(record.assessed));
  const { period, parts } = options;
  return {
    history: { ...withoutFew(found), assessments },
    record,
    rows: openRecordRows(tx, {
      clientId,
      from: period.from,
      to: period.to ?? localDateOf(now, found.client.zone),
      notes: parts.includes('notes'),
    }),
    limits: (await listSettings(tx, [clientId])).of(clientId).limits,
    about: { ...people, madeBy },
    picture: (id) => ({ id, read: () => fileStore().read(stillKey(tx.teamId, id)) }),
    filmStills: await listFilmStills(tx, clientId),
    films: await filmsOf(tx, clientId),
    made: now,
  };
}

async function filmsOf(tx: TeamPg, clientId: string): Promise<PackContent['films']> {
  const kept = await listKeptClips(tx, clientId);
  return kept.map(({ storageKey, ...film }) => ({ ...film, open: () => fileStore().open(storageKey) }));
}
