import { ledgerScope, listOwedNights, listOwedNightsOf, type OwedNight } from '#lib/db/ledger.ts';
import { NIGHT_BATCH_SIZE, nightBatchJob } from '#lib/jobs/night-batch.ts';
import { enqueue } from '#lib/jobs/queue.ts';

export type NightBatch = { teamId: string; localDate: string; clientIds: string[] };

/**
 * Queues the nights that are owed now. Of each client only the oldest: a night reads what the night before it wrote.
 * The rest follows when that one is finished (`oweNextNights`), or at the next tick. Returns the batches queued.
 */
export async function oweNights(now: Date): Promise<NightBatch[]> {
  return queueNights(await listOwedNights(now));
}

export async function queueNights(owed: OwedNight[]): Promise<NightBatch[]> {
  const batches = batchesOf(owed);
  for (const batch of batches) await enqueue(nightBatchJob, batch);
  return batches;
}

/** The next owed night of the clients whose night was just run. Who failed waits for the tick. */
export async function oweNextNights(done: NightBatch, now: Date): Promise<NightBatch[]> {
  const owed = await listOwedNightsOf(ledgerScope(done.teamId), done.clientIds, now);
  const batches = batchesOf(owed).filter((batch) => batch.localDate > done.localDate);
  for (const batch of batches) await enqueue(nightBatchJob, batch);
  return batches;
}

/** The oldest owed night of each client, gathered by team and date, at most NIGHT_BATCH_SIZE clients a batch. */
export function batchesOf(owed: OwedNight[]): NightBatch[] {
  const taken = new Set<string>();
  const gathered = new Map<string, NightBatch>();
  for (const { teamId, clientId, localDate } of [...owed].sort((a, b) =>
    a.localDate < b.localDate ? -1 : a.localDate > b.localDate ? 1 : 0,
  )) {
    if (taken.has(`${teamId} ${clientId}`)) continue;
    taken.add(`${teamId} ${clientId}`);
    const key = `${localDate} ${teamId}`;
    const batch = gathered.get(key) ?? { teamId, localDate, clientIds: [] };
    batch.clientIds.push(clientId);
    gathered.set(key, batch);
  }
  return [...gathered.values()].flatMap(({ clientIds, ...batch }) =>
    slices(clientIds, NIGHT_BATCH_SIZE).map((slice) => ({ ...batch, clientIds: slice })),
  );
}

function slices<T>(items: T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(items.length / size) }, (_, index) =>
    items.slice(index * size, (index + 1) * size),
  );
}
