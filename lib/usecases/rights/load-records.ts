import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type ErasedRow, type ErasureAskRow, listErased, listErasureAsks } from '#lib/db/erasures.ts';
import { type AgedRecord, findRetention, listAgedRecords, type Retention } from '#lib/db/retention.ts';
import { WARNING_DAYS } from './announce-aged.ts';

export type TeamRecords = {
  retention: Retention;
  /** Years are over, or will be within the days of the warning. */
  aged: AgedRecord[];
  asks: ErasureAskRow[];
  erased: ErasedRow[];
};

/** How long records are kept, whose years are over, who asked to be forgotten, and what was deleted. */
export function loadRecords(actor: Actor, now: Date): Promise<TeamRecords> {
  return withTeamPg(actor.scope, async (tx) => {
    const retention = await findRetention(tx);
    const { years } = retention;
    return {
      retention,
      aged: await listAgedRecords(tx, { years, at: now, within: WARNING_DAYS, quiet: false }),
      asks: await listErasureAsks(tx),
      erased: await listErased(tx),
    };
  });
}
