import type { TeamPg } from '#lib/db/client.ts';
import { fillSwaps } from '#lib/db/swaps.ts';
import { insertToldHold } from '#lib/db/told-holds.ts';
import { holdOf, type ToldAtStart } from '#lib/domain/intake/told-at-start.ts';

/** Holds what each yes holds, from a day of the client on. Phone, plan and checks go by it as by every limit. */
export async function holdTold(
  tx: TeamPg,
  { clientId, told, from, at }: { clientId: string; told: readonly ToldAtStart[]; from: string; at: Date },
): Promise<void> {
  if (told.length === 0) return;
  // Teams made before there were swaps get theirs with the first limit that needs them.
  await fillSwaps(tx);
  for (const one of told) {
    await insertToldHold(tx, { ...holdOf(one), clientId, from, at });
  }
}
