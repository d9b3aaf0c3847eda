import { type TeamPg, type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { listAllClients, lockClientRows } from '#lib/db/clients-at-once.ts';
import { forgetOutcomes } from '#lib/db/outcomes.ts';
import {
  computeRollups,
  deleteRollups,
  type KeptRollup,
  listRollups,
  mendWeeks,
  writeRollups,
} from '#lib/db/rollups.ts';

/** Each has a year and more of raw rows in memory at a time. */
const CLIENTS_A_BATCH = 20;

/** `week`: the text of the week from that date, where it did not say what its days say. */
export type RebuiltDay = {
  clientId: string;
  date: string;
  what: 'missing' | 'different' | 'too many' | 'week';
};
export type RebuiltBatch = { clients: number; days: number; mended: RebuiltDay[] };

/**
 * Computes all day rollups of a team again from its check-ins, some clients at a time, and writes those that are not as
 * they have to be; yields what each batch came to. A client who submits meanwhile waits for the batch, and the other way.
 */
export async function* rebuildTeamRollups(scope: TeamScope): AsyncGenerator<RebuiltBatch> {
  const ids = await withTeamPg(scope, listAllClients);
  for (let from = 0; from < ids.length; from += CLIENTS_A_BATCH)
    yield await withTeamPg(scope, (tx) => rebuildClients(tx, ids.slice(from, from + CLIENTS_A_BATCH)));
}

async function rebuildClients(tx: TeamPg, clientIds: string[]): Promise<RebuiltBatch> {
  await lockClientRows(tx, clientIds);
  const wanted = [...(await computeRollups(tx, clientIds, null))].flatMap(([clientId, rollups]) =>
    rollups.map((rollup): KeptRollup => ({ clientId, ...rollup })),
  );
  const kept = new Map((await listRollups(tx, clientIds)).map((rollup) => [keyOf(rollup), rollup]));
  const wrong = wanted.filter((rollup) => !isSame(rollup, kept.get(keyOf(rollup))));
  const named = new Set(wanted.map(keyOf));
  const tooMany = [...kept.values()].filter((rollup) => !named.has(keyOf(rollup)));
  await deleteRollups(tx, tooMany);
  await writeRollups(tx, wrong);
  for (const { clientId, date } of [...wrong, ...tooMany])
    await forgetOutcomes(tx, clientId, { from: date, to: date });
  const weeks = await mendWeeks(tx, clientIds);
  return {
    clients: clientIds.length,
    days: wanted.length,
    mended: [
      ...wrong.map((day) => told(day, kept.has(keyOf(day)) ? 'different' : 'missing')),
      ...tooMany.map((day) => told(day, 'too many')),
      ...weeks.map((week) => ({ ...week, what: 'week' as const })),
    ],
  };
}

function told({ clientId, date }: KeptRollup, what: RebuiltDay['what']): RebuiltDay {
  return { clientId, date, what };
}

function keyOf({ clientId, date }: { clientId: string; date: string }): string {
  return `${clientId} ${date}`;
}

function isSame(a: KeptRollup, b: KeptRollup | undefined): boolean {
  return (
    b !== undefined &&
    a.state === b.state &&
    a.load === b.load &&
    a.pain === b.pain &&
    a.count === b.count &&
    a.facts === b.facts
  );
}
