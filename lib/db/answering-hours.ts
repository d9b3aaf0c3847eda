import type { AnsweringHours } from '#lib/domain/history.ts';
import type { TeamPg } from './client.ts';

/** Sets the hours in which questions count as waiting; null: every hour counts. */
export async function writeAnsweringHours(tx: TeamPg, hours: AnsweringHours | null): Promise<void> {
  await tx.client.query('update team set answering_hours = $2 where id = $1', [
    tx.teamId,
    JSON.stringify(hours ?? {}),
  ]);
}
